import data from '../../../data/service/air-check.json' with { type: 'json' }
import type { Figure, Level, Told } from '../../answer/told.ts'
import { pickRefrigerant } from '../../fields/index.ts'
import { GAUGE_STEP_PA } from '../../instrument/index.ts'
import type { AtRest } from '../../physics/at-rest.ts'
import { pressureDifference, type Quantity } from '../../quantity/index.ts'
import { type Condition, isOpen } from '../condition.ts'
import { mixingBasis } from '../mixing-sources.ts'
import type { AirCheckInput } from './fields.ts'
import type { Verdict } from './verdict.ts'

const { headlines, labels, says, next } = data

export interface Known {
  readonly input: AirCheckInput
  readonly found: AtRest
  readonly verdict: Verdict
  readonly conditions: readonly Condition[]
  readonly farAbove: boolean
  readonly pressure: Quantity
  readonly temperature: Quantity<'temperature'>
  /** What the refrigerant alone would have: its own contents', or the bubble line's. */
  readonly alone: Quantity<'gaugePressure'>
  readonly above: Quantity<'pressureDifference'>
  readonly limit:
    | { readonly gauge: Quantity<'gaugePressure'> | undefined; readonly computed: boolean }
    | undefined
  readonly air: {
    readonly ofVapour: Quantity<'fraction'>
    readonly mass?: Quantity<'mass'>
    readonly isUpperBound?: boolean
  }
}

/** Whether there is air in it, and what to do about it. */
export function airCheckTold(known: Known): Told {
  const { verdict, farAbove, found, pressure, temperature, above, limit } = known
  const sentence = sentenceOf(known)
  const byLimit = verdict === 'over-limit' || verdict === 'within-limit'
  const ownContents = found.from === 'contents'
  const zeotrope = found.bubble?.si !== found.dew?.si
  return {
    level: levelOf(known),
    headline: headlines[sentence],
    figures: [
      { id: 'pressure', label: labels.pressure, value: pressure },
      { id: 'temperature', label: labels.temperature, value: temperature, says: says.temperature },
      {
        id: 'saturation',
        label: ownContents ? labels.expected : labels.saturation,
        value: known.alone,
        step: GAUGE_STEP_PA,
        says: ownContents ? says.expected : zeotrope ? says['saturation-blend'] : says.saturation,
        basis: mixingBasis(pickRefrigerant(known.input.refrigerant)),
      },
      ...(byLimit && limit?.gauge ? [limitFigure(limit.gauge, limit.computed)] : []),
      ...(sentence === 'no-air-shown'
        ? [
            {
              id: 'band',
              label: labels.band,
              value: widthFigure(above),
              says: says.band,
            },
          ]
        : [{ id: 'above', label: labels.above, value: above, says: says.above }]),
      ...(verdict === 'over-limit' || verdict === 'air-shown' ? airFigures(known, farAbove) : []),
    ].slice(0, 6),
    next: next[nextOf(known, sentence)],
  }
}

/** The band as a figure of its own: "within 3 psi". */
const widthFigure = (above: Quantity<'pressureDifference'>) =>
  pressureDifference(above.plusMinus ?? 0)

function levelOf({ verdict, farAbove }: Known): Level {
  if (farAbove) return 'stop'
  return verdict === 'within-limit' || verdict === 'no-air-shown' ? 'fine' : 'check'
}

function sentenceOf({ verdict, farAbove, conditions, found }: Known): keyof typeof headlines {
  if (farAbove) return 'full'
  if (verdict !== 'cannot-tell') return verdict
  if (conditions.some(isOpen)) return 'conditions'
  return found.state === 'between' ? 'between' : 'cannot-tell'
}

const limitFigure = (gauge: Quantity<'gaugePressure'>, computed: boolean): Figure => ({
  id: 'limit',
  label: labels.limit,
  value: gauge,
  step: GAUGE_STEP_PA,
  safe: 'down',
  says: computed ? says['limit-computed'] : says.limit,
})

/** The share of air, and its mass where the volume tells it. */
function airFigures({ air }: Known, farAbove: boolean): readonly Figure[] {
  if (farAbove) return []
  const share = { id: 'share', label: labels.share, value: air.ofVapour, says: says.share }
  if (!air.mass) return [share]
  const bound = air.isUpperBound ? says['air-most'] : undefined
  return [share, { id: 'air', label: labels.air, value: air.mass, says: bound }]
}

function nextOf({ verdict, input }: Known, sentence: keyof typeof headlines): keyof typeof next {
  if (sentence === 'full' || sentence === 'conditions' || sentence === 'between') return sentence
  if (input.container === 'system' && (verdict === 'over-limit' || verdict === 'air-shown')) {
    return 'system'
  }
  if (verdict === 'over-limit' && input.recycled === false) return 'not-recycled'
  return verdict
}
