import { dangersOf } from '../../dangers.ts'
import { pickRefrigerant } from '../../fields/index.ts'
import { resolvePlace } from '../../instrument/index.ts'
import type { Assumption, Computation, Computed } from '../../operation.ts'
import { mass, type Quantity, type Uncertain } from '../../quantity/index.ts'
import { propertySources, propertyWarnings } from '../property-sources.ts'
import { AIR_SOURCE, airTakenIn } from './air.ts'
import { bandWarnings } from './band-warnings.ts'
import { decideCase } from './cases.ts'
import { conclusionOf, onTheScaleText } from './conclusion.ts'
import { correctionOf } from './correction.ts'
import type { CouplingLoss } from './couplings.ts'
import { type Estimate, settle, total } from './estimate.ts'
import { fullChargeOf } from './full-charge.ts'
import { serviceHoseHoldUp } from './hold-up.ts'
import { type Inventory, massQuantity } from './inventory.ts'
import { type ChargeInput, type Job, negative } from './job.ts'
import { massText, shownUnit } from './mass-text.ts'
import { recoveredAgainst } from './recovered.ts'
import type { ChargeResult } from './result.ts'
import { checkSizes } from './sizes.ts'
import { againstCharge, againstScale } from './tolerance.ts'
import { unusedChargeFields } from './unused.ts'

/** Cautions of every such job; a refrigerant that burns adds its own. */
export const ALWAYS = [
  'pressure',
  'cold-burns',
  'decomposition',
  'no-venting',
  'weigh-the-charge',
  'maker-first',
  'local-rules',
] as const

const MEASURE =
  'The weighed charge is the measure, not a pressure: pressures follow the heat load, the air and the engine speed.'

/** The mass to weigh in after couplers were parted, a section or the system was opened, or pressure was lost. */
export function computeCharge(input: ChargeInput): Computation<Computed<ChargeResult>> {
  const r = pickRefrigerant(input.refrigerant)
  checkSizes(input)
  const place = resolvePlace(input)
  const decision = decideCase(input)
  const job =
    decision.kind === 'correction'
      ? correctionOf(r, input, place.barometerPa)
      : fullChargeOf(r, input, decision.applied, place.barometerPa)
  const recovered = recoveredAgainst(job, input.recovered, input.labelCharge)
  const toAdd = recovered.toAdd
  const unit = (quantity: Quantity<'mass'>) => quantity.in(shownUnit(input.massUnit))
  const shown = (estimate: Estimate | undefined) => estimate && unit(massQuantity(estimate))
  const holdUp = serviceHoseHoldUp(r, {
    bore: input.serviceHoseBore,
    length: input.serviceHoseLength,
    holds: input.serviceHoseHolds,
    starts: input.serviceHoseStarts,
    ambient: input.ambient,
  })
  const onScale = toAdd && (holdUp ? total([toAdd, holdUp.mass]) : toAdd)
  const setOnScale = shown(onScale)
  if (setOnScale && setOnScale.si < 0) throw negative('The mass to set on the scale', 'massToAdd')
  const air = airOf(job.couplings, input, place.barometerPa)
  const settled = toAdd && settle(toAdd)
  const band = settled?.plusMinus
  const missing = missingOf(job)
  const charge = missing && againstCharge(missing, input.chargeTolerance)
  const scale = settled && againstScale(settled, input.scaleResolution, input.scaleTolerance)
  const kind = job.whatIf ? 'what-if' : decision.kind
  const usesPressure = [
    input,
    ...(input.couplings ?? []),
    ...(input.sections ?? []),
    ...(input.parts ?? []),
  ].some(({ pressure }) => pressure?.kind === 'gaugePressure')
  return {
    result: {
      appliedCase: decision.applied,
      why: decision.why,
      kind,
      conclusion: conclusionOf(
        kind,
        toAdd ? massText(massQuantity(toAdd), input.massUnit) : '',
        charge?.verdict,
        scale?.verdict,
        recovered.beyondHeld,
      ),
      massToAdd: shown(toAdd),
      massToAddFrom:
        settled && band !== undefined ? unit(mass(Math.max(0, settled.si - band))) : undefined,
      massToAddTo: settled && band !== undefined ? unit(mass(settled.si + band)) : undefined,
      whatIfFrom: job.whatIf && unit(mass(low(job.whatIf.from))),
      whatIfTo: job.whatIf && unit(mass(high(job.whatIf.to))),
      setOnScale,
      onTheScale: onTheScaleText(
        setOnScale && massText(setOnScale, input.massUnit),
        holdUp && massText(massQuantity(holdUp.mass), input.massUnit),
        charge?.verdict === 'inside' && scale?.verdict === 'too-small',
      ),
      holdUp: shown(holdUp?.mass),
      totalTarget: shown(job.totalTarget),
      changeOfCharge: shown(job.changeOfCharge),
      ownEstimate: shown(job.ownEstimate),
      recovered: input.recovered && unit(input.recovered),
      lost: shown(recovered.lost),
      newRefrigerant: shown(recovered.newRefrigerant),
      couplings: job.couplings.map((entry) => ({
        name: entry.name,
        contents: entry.contents,
        partings: entry.partings,
        density: entry.density,
        spillVolume: entry.spillVolume,
        loss: shown(entry.loss),
        lossFrom: entry.loss ? undefined : shown(entry.least),
        lossTo: entry.loss ? undefined : shown(entry.most),
      })),
      sections: job.sections.map((entry) => shownInventory(entry, unit)),
      parts: job.parts.map((entry) => shownInventory(entry, unit)),
      air: air && { mass: air.mass, partialPressure: air.partialPressure },
      againstCharge: charge && {
        from: unit(charge.from),
        to: unit(charge.to),
        verdict: charge.verdict,
        text: charge.text,
      },
      againstScale: scale && {
        smallest: unit(scale.smallest),
        verdict: scale.verdict,
        text: scale.text,
      },
      measure: MEASURE,
      advice: job.advice,
    },
    steps: [
      ...job.steps,
      ...recovered.steps,
      ...(air?.steps ?? []),
      ...(holdUp?.steps ?? []),
      ...(holdUp && toAdd && setOnScale
        ? [
            {
              what: 'Mass to set on the scale',
              formula: 'mass to add + what stays in the service hose',
              values: {
                'mass to add': massQuantity(toAdd),
                'in the hose': massQuantity(holdUp.mass),
              },
              gives: setOnScale,
            },
          ]
        : []),
    ],
    cautions: [...ALWAYS, ...dangersOf({ refrigerant: r })],
    sources: [
      ...job.sources,
      ...propertySources(r),
      ...(air ? [AIR_SOURCE] : []),
      ...[charge?.source, scale?.source].flatMap((entry) => entry ?? []),
    ],
    assumptions: distinct([
      ...(usesPressure || air ? place.assumptions : []),
      ...job.assumptions,
      ...(holdUp?.assumptions ?? [
        {
          field: 'serviceHoseLength',
          taken: 'nothing for what the service hose keeps',
          because: 'its bore and length were not given',
        },
      ]),
    ]),
    warnings: [
      ...propertyWarnings(r),
      ...(usesPressure || air ? place.warnings : []),
      ...job.warnings,
      ...recovered.warnings,
      ...unusedChargeFields(input, job, decision.kind),
      ...bandWarnings(kind, settled, charge?.to.si),
    ],
  }
}

/** Two couplings named by couplingsOn share their fields, and with them what was taken for these. */
const distinct = (entries: readonly Assumption[]): readonly Assumption[] => [
  ...new Map(entries.map((entry) => [JSON.stringify(entry), entry])).values(),
]

/** What has left the machine; a what-if stands for the middle of its range and half its width. */
function missingOf({ missing, whatIf }: Job): Uncertain | undefined {
  if (!whatIf) return missing && settle(missing)
  const [from, to] = [low(whatIf.from), high(whatIf.to)]
  return { si: (from + to) / 2, plusMinus: (to - from) / 2 }
}

const low = (estimate: Estimate) => {
  const { si, plusMinus } = settle(estimate)
  return Math.max(0, si - (plusMinus ?? 0))
}
const high = (estimate: Estimate) => {
  const { si, plusMinus } = settle(estimate)
  return si + (plusMinus ?? 0)
}

function shownInventory(entry: Inventory, unit: (q: Quantity<'mass'>) => Quantity<'mass'>) {
  return {
    name: entry.name,
    mass: unit(massQuantity(entry.mass)),
    density: entry.density,
    volume: entry.volume,
    lineChecks: entry.checks.map((check) => ({ ...check, source: check.source.id })),
  }
}

function airOf(couplings: readonly CouplingLoss[], input: ChargeInput, barometerPa: number) {
  const taken = couplings.flatMap((entry) => entry.air ?? [])
  if (taken.length === 0) return undefined
  return airTakenIn(total(taken), input.ambient, barometerPa, input.vapourSpace)
}
