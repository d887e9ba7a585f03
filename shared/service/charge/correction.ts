import type { Assumption, Step } from '../../operation.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { type CouplingLoss, couplingLoss } from './couplings.ts'
import { type Estimate, reading, settle, total } from './estimate.ts'
import { couplingsOf, hasSpill, partsOf, sectionsOf } from './gather.ts'
import { type Inventory, massQuantity, partChange, sectionInventory } from './inventory.ts'
import { type ChargeInput, type Job, negative, withinLabel } from './job.ts'
import { checkSource } from './line-check.ts'
import { requireItems } from './require-items.ts'

const FULL_BEFORE: Assumption = {
  field: 'labelCharge',
  taken: 'the machine held its full charge before the job',
  because:
    'a correction puts back only what this job took out; whether the charge was right before, only recovering and weighing it tells',
}

const AS_SHUT_OFF: Assumption = {
  field: 'sections',
  taken: 'each section held what is given when it was shut off',
  because:
    'what it held then is what is missing: shut off at rest or pumped down it held something else',
}

const NO_AIR: Assumption = {
  field: 'airInclusion',
  taken: 'no air was taken in on rejoining',
  because:
    "no inclusion volume was given; threaded poppet couplings force the air out while joining, by their maker's word, and no figure was found in print",
}

/** Couplers parted, or a section opened, with everything else still sealed: what must go back in. */
export function correctionOf(r: Refrigerant, input: ChargeInput, barometerPa: number): Job {
  const { couplings: placed, assumptions } = couplingsOf(input, input.case === 'couplers-parted')
  const placedSections = sectionsOf(input)
  const placedParts = partsOf(input)
  requireItems(input, placed.length, placedSections.length, placedParts.length)
  const couplings = placed
    .filter(({ item }) => !input.makerCorrection || hasSpill(item))
    .map(({ item, path }) => couplingLoss(r, item, input.whatIf, barometerPa, path))
  const sections = placedSections.map(({ item, path }) =>
    sectionInventory(r, item, barometerPa, path),
  )
  const parts = placedParts.map(({ item, path }) => partChange(r, item, barometerPa, path))
  const items = [...sections, ...parts]
  const known = couplings.length === placed.length && couplings.every(({ loss }) => loss)
  const change = total(parts.map((entry) => entry.mass))
  const held = (pick: (entry: CouplingLoss) => Estimate) =>
    total([...couplings.map(pick), ...sections.map((entry) => entry.mass)])
  const missing = held((entry) => entry.least)
  const own = known && placed.length + items.length > 0 ? total([missing, change]) : undefined
  const toAdd = input.makerCorrection ? reading(input.makerCorrection) : own
  withinLabel(
    held((entry) => entry.least),
    input.labelCharge,
  )
  if (toAdd && settle(toAdd).si < 0) throw negative('The mass to add', 'parts')
  const steps = [...couplings, ...items].map((entry) => entry.step)
  return {
    toAdd,
    whatIf: toAdd
      ? undefined
      : {
          from: total([missing, change]),
          to: total([held((entry) => entry.most), change]),
        },
    missing: toAdd && (own && !input.makerCorrection ? missing : toAdd),
    totalTarget: input.labelCharge && total([reading(input.labelCharge), change]),
    changeOfCharge: parts.length > 0 ? change : undefined,
    ownEstimate: input.makerCorrection ? own : undefined,
    couplings,
    sections,
    parts,
    steps: [...steps, ...(toAdd ? [sumStep(input, toAdd, couplings, items)] : [])],
    sources: [
      ...items.flatMap((entry) => [...entry.sources, ...entry.checks.map(({ source }) => source)]),
      ...(couplings.length > 0 ? [checkSource('coupler-catalogue')] : []),
    ],
    assumptions: [
      FULL_BEFORE,
      ...(input.sealed === undefined ? [sealedAssumption(input)] : []),
      ...assumptions,
      ...(sections.length > 0 ? [AS_SHUT_OFF] : []),
      ...(couplings.length > 0 && couplings.every(({ air }) => air === undefined) ? [NO_AIR] : []),
      ...[...couplings, ...items].flatMap((entry) => entry.assumptions),
    ],
    warnings: [
      ...[...couplings, ...items].flatMap((entry) => entry.warnings),
      ...(input.labelCharge
        ? []
        : [
            {
              code: 'label-charge-missing',
              message:
                'Without the label charge there is no total to check against: read it from the machine and give labelCharge.',
            },
          ]),
    ],
    advice: adviceFor(input, toAdd === undefined, sections),
  }
}

function sumStep(
  { makerCorrection }: ChargeInput,
  toAdd: Estimate,
  couplings: readonly CouplingLoss[],
  items: readonly Inventory[],
): Step {
  if (makerCorrection) {
    return {
      what: 'Mass to add',
      formula: "the maker's figure, which goes before our own",
      values: { maker: makerCorrection },
      gives: massQuantity(toAdd),
    }
  }
  const named = [
    ...couplings.map((entry) => ({ name: entry.name, mass: entry.least })),
    ...items.map((entry) => ({ name: entry.name, mass: entry.mass })),
  ]
  return {
    what: 'Mass to add',
    formula: 'sum of what is missing',
    values: Object.fromEntries(
      named.map(({ name, mass }, index) => [`${index + 1} ${name}`, massQuantity(mass)]),
    ),
    gives: massQuantity(toAdd),
  }
}

const sealedAssumption = (input: ChargeInput): Assumption => ({
  field: 'sealed',
  taken:
    input.case === 'couplers-parted'
      ? 'both coupler halves sealed and stayed sealed'
      : 'the shut-off at both ends of the section stayed sealed',
  because: 'it was not said; if one let refrigerant through, only a weighed full charge is right',
})

function adviceFor(
  input: ChargeInput,
  whatIf: boolean,
  sections: readonly Inventory[],
): readonly string[] {
  return [
    ...(whatIf
      ? [
          'A what-if is no measurement: recover, evacuate and weigh in the full charge, unless the maker of the couplers or a measurement gives the spill volume.',
        ]
      : []),
    ...(sections.length > 0
      ? [
          'Evacuate the section before it is opened to the rest again, and replace the drier when the section held it or stood open.',
        ]
      : []),
    ...(input.case === 'couplers-parted'
      ? [
          'Hold the fixed half when turning a threaded coupling, so that the line does not twist; cap both halves while they are apart (common practice).',
        ]
      : []),
    ...(input.recovered
      ? ['What was recovered goes back only after it was recycled or reclaimed as the rules ask.']
      : []),
  ]
}
