import data from '../../../data/service/charging.json' with { type: 'json' }
import type { Figure, Told } from '../../answer/told.ts'
import type { Quantity } from '../../quantity/index.ts'
import type { Amount } from './amounts.ts'
import type { ChargingInput } from './fields.ts'
import type { Flow } from './flow.ts'

const { told: SENTENCES, says } = data

/** What was computed, as far as it is told. */
interface Computed {
  readonly amount: Amount
  readonly leaves: Quantity
  readonly stop: Quantity | undefined
  readonly latest: Quantity | undefined
  readonly coarse: boolean
  readonly holdUp: Quantity | undefined
  readonly cans: { readonly opened: number; readonly fromLast: Quantity } | undefined
  readonly flow: Flow | undefined
  readonly sourcePressure: Quantity | undefined
  readonly tooEmpty: boolean
}

/** The answer in a mechanic's words. */
export function toldOf({ scale, scaleDivision }: ChargingInput, computed: Computed): Told {
  const { level, headline, next } = SENTENCES[sentenceOf(computed)]
  const { amount, leaves, stop, latest, holdUp, cans, flow, sourcePressure } = computed
  const step = scaleDivision?.si
  const nothing = amount.enough
  const tolerance: Figure = {
    id: 'tolerance',
    label: 'Tolerance',
    value: amount.tolerance,
    says: says[`tolerance-${amount.basis}`],
    basis: amount.basis === 'scaled' ? 'common practice' : undefined,
  }
  const list: (Figure | undefined)[] = [
    stop && { id: 'stop', label: 'Stop at', value: stop, step },
    { id: 'toAdd', label: 'To add', value: amount.toAdd, step },
    holdUp && { id: 'leaves', label: 'Leaves source', value: leaves, step, says: says.hose },
    stop &&
      latest && {
        id: 'latest',
        label: 'Not beyond',
        value: latest,
        step,
        safe: scale === 'under-source' ? 'up' : 'down',
      },
    tolerance,
    cans && {
      id: 'cans',
      label: 'Cans',
      value: cans.opened,
      says: says.cans,
    },
    sourcePressure && flow && flow !== 'back-into-source'
      ? {
          id: 'sourcePressure',
          label: 'Source',
          value: sourcePressure,
          says: says[`flow-${flow}`],
        }
      : undefined,
  ]
  const figures = nothing
    ? [tolerance]
    : list.filter((figure): figure is Figure => figure !== undefined).slice(0, 6)
  const named = figures.some(({ id }) => id === 'leaves')
    ? figures
    : [...figures.slice(0, 5), { id: 'leaves', label: 'Leaves source', value: leaves, step }]
  return {
    level: level as Told['level'],
    headline,
    figures: headline.includes('{leaves') ? named : figures,
    next,
  }
}

function sentenceOf({
  amount,
  stop,
  coarse,
  holdUp,
  flow,
  tooEmpty,
}: Computed): keyof typeof SENTENCES {
  if (amount.enough) return 'nothing-to-add'
  if (flow === 'back-into-source') return 'flows-back'
  if (coarse) return 'too-coarse'
  if (tooEmpty) return 'source-too-empty'
  if (stop) return 'stop-at'
  return holdUp ? 'let-out' : 'let-out-plain'
}
