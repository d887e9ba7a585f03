import data from '../../../../data/service/charge.json' with { type: 'json' }
import type { Figure, Told } from '../../../answer/told.ts'
import { SCALE_STEP_KG } from '../../../instrument/index.ts'
import { atWorst, mass, type Quantity, settle, total, volume } from '../../../quantity/index.ts'
import type { Decision } from '../input/decide.ts'
import type { ChargeInput } from '../input/fields.ts'
import type { ChargeJob } from '../mass/job.ts'
import { massOf } from '../mass/shown.ts'
import { likePartsOf } from '../space/like-parts.ts'
import type { Judgement } from './judge.ts'

const { told: SENTENCES, says, madeOf } = data

/** A bound of some grams is told in tenths. */
const BOUND_STEP_KG = 0.0001
const TOLERANCE_STEP_KG = 0.001
type SentenceId = keyof typeof SENTENCES

/** The answer in a mechanic's words. */
export function toldOf(
  input: ChargeInput,
  decision: Decision,
  job: ChargeJob,
  judgement: Judgement,
): Told {
  const { level, headline, next } = SENTENCES[sentenceOf(input, decision, job, judgement)]
  const figures = figuresOf(input, job, judgement)
  return {
    level: level as Told['level'],
    headline: fillMadeOf(headline, figures),
    next,
    figures: figures.slice(0, 6),
  }
}

/** A full charge that is not the label's says what it is made of. */
function fillMadeOf(headline: string, figures: readonly Figure[]): string {
  const known = new Set(figures.map(({ id }) => id))
  const parts = Object.entries(madeOf).flatMap(([id, text]) => (known.has(id) ? [text] : []))
  const whole = parts.length > 1 && known.has('labelCharge')
  return headline.replace('{madeOf}', whole ? ` (${parts.join(', ')})` : '')
}

function sentenceOf(
  { makerCorrection, labelCharge }: ChargeInput,
  { applied, notTwoValves }: Decision,
  job: ChargeJob,
  judgement: Judgement,
): SentenceId {
  const { bound, charge, scale, beyondHeld, nothingToAdd } = judgement
  switch (job.kind) {
    case 'measure':
      return job.needs.includes('parted') ? 'measure' : 'measure-type'
    case 'bound':
      if (bound?.verdict === 'inside') return 'bound-inside'
      return labelCharge ? 'bound-loose-charge' : 'bound-loose'
    case 'what-if':
      return charge === 'inside' ? 'what-if-inside' : 'what-if-outside'
    case 'full-charge':
      if (!job.toAdd) return notTwoValves ? 'label-gone-not-two-valves' : 'label-gone'
      if (notTwoValves) return 'full-not-two-valves'
      return applied === 'pressure-lost' ? 'full-after-leak' : 'full-charge'
    case 'correction':
      if (beyondHeld) return 'beyond-held'
      if (nothingToAdd) return 'nothing-to-add'
      if (bound?.verdict === 'too-loose') {
        return labelCharge ? 'bound-loose-charge' : 'bound-loose'
      }
      if (scale?.verdict !== 'weighable') return 'too-fine-for-scale'
      if (makerCorrection) return 'maker-adds'
      if (charge !== 'outside') return 'weigh-in-or-full'
      return judgement.holdUp ? 'weigh-in' : 'weigh-in-plain'
  }
}

function figuresOf(input: ChargeInput, job: ChargeJob, judgement: Judgement): readonly Figure[] {
  const { massUnit, scaleDivision, labelCharge } = input
  const { bound, tolerance, toAdd, onScale, holdUp } = judgement
  const step = scaleDivision?.si ?? SCALE_STEP_KG
  const unit = (quantity: Quantity<'mass'>) => quantity.in(massUnit)
  const list: (Figure | undefined)[] = [
    // Where more is gone than can be, the answer is the full charge, and nothing is set on a scale.
    onScale && !judgement.beyondHeld
      ? { id: 'setOnScale', label: 'Set on scale', value: unit(massOf(onScale)), step }
      : undefined,
    job.kind === 'full-charge' && labelCharge && onScale && (holdUp || job.changeOfCharge)
      ? { id: 'labelCharge', label: 'Label', value: unit(labelCharge), says: says.label, step }
      : undefined,
    bound && {
      id: 'bound',
      label: 'Bound',
      value: unit(mass(bound.mostKg)),
      step: BOUND_STEP_KG,
      safe: 'up',
      says: says[job.couplings.every(isLiquid) ? 'bound-liquid' : 'bound'],
    },
    job.kind === 'what-if' && job.range
      ? {
          id: 'most',
          label: 'At most',
          value: unit(mass(atWorst(settle(job.range.to)))),
          step: BOUND_STEP_KG,
          safe: 'up',
          basis: 'assumed',
        }
      : undefined,
    job.kind === 'correction' && toAdd && (!onScale || holdUp || judgement.beyondHeld)
      ? { id: 'missing', label: 'Missing', value: unit(massOf(toAdd)), step, says: says.missing }
      : undefined,
    tolerance && {
      id: 'tolerance',
      label: 'Tolerance',
      value: unit(tolerance.from),
      step: TOLERANCE_STEP_KG,
      safe: 'down',
      says: says[`tolerance-${tolerance.basis}`],
      basis: tolerance.basis === 'scaled' ? 'common practice' : undefined,
    },
    bound && {
      id: 'space',
      label: 'Space',
      value: volume(atWorst(settle(total(job.couplings.map(({ space }) => space))))).in('mL'),
      safe: 'up',
      says: says.space,
    },
    likePartsFigure(job),
    onScale && holdUp
      ? { id: 'inHose', label: 'In the hose', value: unit(massOf(holdUp)), says: says.hose, step }
      : undefined,
    job.changeOfCharge && {
      id: 'change',
      label: 'Change',
      value: unit(massOf(job.changeOfCharge)),
      step,
      says: says.change,
    },
    job.totalTarget && labelCharge && job.kind !== 'full-charge'
      ? {
          id: 'labelCharge',
          label: 'Charge',
          value: unit(massOf(job.totalTarget)),
          says: says.charge,
        }
      : undefined,
    input.recovered && {
      id: 'recovered',
      label: 'Recovered',
      value: unit(input.recovered),
      says: says.recovered,
    },
  ]
  return list.filter((figure): figure is Figure => figure !== undefined)
}

const isLiquid = ({ contents }: ChargeJob['couplings'][number]) => contents.includes('liquid')

/** ISO 14541 beside a bound by caliper: a labelled range, secondary. */
function likePartsFigure({ couplings }: ChargeJob): Figure | undefined {
  const mouths = couplings.map(({ mouth }) => mouth)
  if (mouths.some((mouth) => !mouth)) return undefined
  const range = likePartsOf(mouths.flatMap((mouth) => mouth ?? []))
  return (
    range && {
      id: 'likeParts',
      label: 'Like parts',
      value: range.to.in('mL'),
      says: says['like-parts'],
      basis: 'secondary',
    }
  )
}
