import data from '../../../../data/service/charge.json' with { type: 'json' }
import { pickRefrigerant } from '../../../fields/index.ts'
import { resolvePlace } from '../../../instrument/index.ts'
import { newNotes, withNotes } from '../../../notes.ts'
import type { Assumption, Computation, Computed } from '../../../operation.ts'
import {
  atWorst,
  mass,
  type Quantity,
  settle,
  type Tied,
  total,
  volume,
} from '../../../quantity/index.ts'
import { propertySources } from '../../property-sources.ts'
import { type Decision, decide, refuseDangerous } from '../input/decide.ts'
import type { AskedCharge, ChargeInput } from '../input/fields.ts'
import { withJob } from '../input/job.ts'
import { withReadings } from '../input/readings.ts'
import { airLetIn } from '../mass/air.ts'
import { correctionOf } from '../mass/correction.ts'
import { type CouplingLoss, isKnown } from '../mass/coupling.ts'
import { fullChargeOf } from '../mass/full-charge.ts'
import type { Inventory } from '../mass/inventory.ts'
import type { ChargeJob } from '../mass/job.ts'
import { massOf, volumeOf } from '../mass/shown.ts'
import { type Densities, densitiesOf } from '../space/densities.ts'
import { LIKE_PARTS_SOURCE, likePartsOf } from '../space/like-parts.ts'
import type { Setting } from '../space/setting.ts'
import { againstChargeText } from './against-charge.ts'
import { type Judgement, judge } from './judge.ts'
import type { ChargeResult } from './result.ts'
import { toldOf } from './told.ts'
import { cautionsOf, warn } from './warn.ts'

/** The mass to weigh in after couplers were parted, a section or the system was opened, or pressure was lost. */
export function computeCharge(
  asked: AskedCharge,
  densities: Densities = densitiesOf(pickRefrigerant(asked.refrigerant)),
): Computation<Computed<ChargeResult>> {
  const r = pickRefrigerant(asked.refrigerant)
  const notes = newNotes()
  const given = withJob(asked, notes)
  refuseDangerous(r, given)
  const decision = decide(given)
  const input = withReadings(given, notes)
  const setting: Setting = { r, densities, place: resolvePlace(input), notes, usesPlace: false }
  const job =
    decision.kind === 'correction'
      ? correctionOf(setting, input)
      : fullChargeOf(setting, input, decision.applied)
  const judgement = judge(setting, input, job)
  const air = airLetIn(setting, input, job.couplings)
  warn(setting, input, decision, job, judgement, air !== undefined)
  notes.cautions.push(...cautionsOf(setting, input, job))
  notes.sources.push(...propertySources(r))
  if (setting.usesPlace) {
    notes.assumptions.push(...setting.place.assumptions)
    notes.sources.push(...setting.place.sources)
    notes.warnings.push(...setting.place.warnings)
  }
  const result = { ...resultOf(input, decision, job, judgement, setting), air }
  const told = toldOf(input, decision, job, judgement)
  return { ...withNotes(result, { ...notes, assumptions: distinct(notes.assumptions) }), told }
}

function resultOf(
  input: ChargeInput,
  decision: Decision,
  job: ChargeJob,
  judgement: Judgement,
  { notes }: Setting,
) {
  const unit = (quantity: Quantity<'mass'>) => quantity.in(input.massUnit)
  const shown = (figure: Tied | undefined) => figure && unit(massOf(figure))
  const { toAdd, tolerance, charge, bound, scale, settles } = judgement
  const settled = toAdd && settle(toAdd)
  const band = settled?.plusMinus
  const like = likePartsOf(job.couplings.flatMap(({ mouth }) => mouth ?? []))
  if (like) notes.sources.push(LIKE_PARTS_SOURCE)
  const whatIf = job.kind === 'what-if' ? job.range : undefined
  return {
    appliedJob: decision.applied,
    why: decision.why,
    kind: job.kind,
    massToAdd: shown(toAdd),
    massToAddFrom:
      settled && band !== undefined ? unit(mass(Math.max(0, settled.si - band))) : undefined,
    massToAddTo: settled && band !== undefined ? unit(mass(settled.si + band)) : undefined,
    bound: bound && {
      most: unit(mass(bound.mostKg)),
      space: volume(atWorst(settle(total(job.couplings.map(({ space }) => space))))),
      verdict: bound.verdict,
    },
    likeParts: like && { ...like, source: LIKE_PARTS_SOURCE.id },
    whatIfFrom: shown(whatIf?.from),
    whatIfTo: shown(whatIf?.to),
    setOnScale: shown(judgement.onScale),
    holdUp: shown(judgement.holdUp),
    totalTarget: shown(job.totalTarget),
    changeOfCharge: shown(job.changeOfCharge),
    ownEstimate: shown(job.ownEstimate),
    recovered: input.recovered && unit(input.recovered),
    lost: shown(judgement.lost),
    newRefrigerant: shown(judgement.newRefrigerant),
    couplings: job.couplings.map((entry) => shownCoupling(entry, shown)),
    sections: job.sections.map((entry) => shownInventory(entry, unit)),
    parts: job.parts.map((entry) => shownInventory(entry, unit)),
    needs: job.needs,
    againstCharge:
      charge && tolerance
        ? {
            from: unit(tolerance.from),
            to: unit(tolerance.to),
            verdict: charge,
            text: againstChargeText(charge, settles),
          }
        : undefined,
    againstScale: scale && { ...scale, smallest: unit(scale.smallest) },
    measure: data.measure,
    advice: job.advice,
  }
}

function shownCoupling(
  entry: CouplingLoss,
  shown: (figure: Tied | undefined) => Quantity<'mass'> | undefined,
) {
  const { name, evidence, contents, partings, density, space, least, most } = entry
  const loss = isKnown(entry)
    ? { loss: shown(most) }
    : { lossFrom: shown(least), lossTo: shown(most) }
  return { name, evidence, contents, partings, density, space: volumeOf(space), ...loss }
}

const shownInventory = (entry: Inventory, unit: (q: Quantity<'mass'>) => Quantity<'mass'>) => ({
  name: entry.name,
  mass: unit(massOf(entry.mass)),
  density: entry.density,
  volume: entry.volume,
  lineChecks: entry.checks,
})

/** Two couplings share what was assumed of their caliper, and that is said once. */
function distinct(entries: readonly Assumption[]): Assumption[] {
  const said = new Set<string>()
  return entries.filter(({ taken, because }) => {
    const sentence = `${taken}; ${because}`
    const before = said.has(sentence)
    said.add(sentence)
    return !before
  })
}
