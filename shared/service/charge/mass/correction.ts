import data from '../../../../data/service/charge.json' with { type: 'json' }
import { settle, type Tied, tied, total } from '../../../quantity/index.ts'
import { checkBelongs } from '../input/belongs.ts'
import type { ChargeInput } from '../input/fields.ts'
import { couplingsOf, hasSpill, partsOf, sectionsOf } from '../input/gather.ts'
import type { Setting } from '../space/setting.ts'
import { type CouplingLoss, couplingLoss, isKnown } from './coupling.ts'
import { type Inventory, partChange, sectionInventory } from './inventory.ts'
import { type ChargeJob, negative, withinLabel } from './job.ts'
import { chargeSource } from './line-check.ts'
import { massOf } from './shown.ts'

const { advice: ADVICE } = data

/** Couplers parted, or a section opened, with everything else still sealed: what must go back in. */
export function correctionOf(setting: Setting, input: ChargeInput): ChargeJob {
  const placed = {
    couplings: couplingsOf(input),
    sections: sectionsOf(input),
    parts: partsOf(input),
  }
  checkBelongs(input, {
    couplings: placed.couplings.length,
    sections: placed.sections.length,
    parts: placed.parts.length,
  })
  const needs = needsOf(
    input,
    placed.couplings.map(({ item }) => item),
  )
  const couplings = placed.couplings.flatMap(
    ({ item, path }) => couplingLoss(setting, input, item, path) ?? [],
  )
  const sections = placed.sections.map(({ item, path }) => sectionInventory(setting, item, path))
  const parts = placed.parts.map(({ item, path }) => partChange(setting, item, path))
  assume(setting, input, couplings, sections)
  const job = { couplings, sections, parts, needs, advice: adviceFor(input, couplings, sections) }
  const change = total(parts.map(({ mass }) => mass))
  const held = (chosen: readonly Tied[]) => total([...chosen, ...sections.map(({ mass }) => mass)])
  const known = couplings.filter(isKnown)
  const missing = held(known.map(({ least }) => least))
  const range = {
    from: held(couplings.map(({ least }) => least)),
    to: held(couplings.map(({ most }) => most)),
  }
  withinLabel(range.from, input.labelCharge)
  const frame = {
    ...job,
    totalTarget: input.labelCharge && total([tied(input.labelCharge, 'label charge'), change]),
    changeOfCharge: parts.length > 0 ? change : undefined,
  }
  const complete = needs.length === 0 && known.length === couplings.length
  const own =
    complete && couplings.length + sections.length + parts.length > 0
      ? total([missing, change])
      : undefined
  if (input.makerCorrection) {
    const toAdd = tied(input.makerCorrection, "maker's figure")
    setting.notes.steps.push({
      what: 'Mass to add',
      formula: "the maker's figure, which overrides our own",
      values: { maker: input.makerCorrection },
      gives: massOf(toAdd),
    })
    return { ...frame, kind: 'correction', toAdd, missing: toAdd, ownEstimate: own, needs: [] }
  }
  const open = { ...frame, toAdd: undefined, missing: undefined, ownEstimate: undefined }
  if (needs.length > 0) return { ...open, kind: 'measure' }
  if (couplings.some(({ evidence }) => evidence === 'what-if')) {
    return { ...open, kind: 'what-if', range: withChange(range, change) }
  }
  // Beside a section a bound stays a bound: it is told, and never added to what is known.
  if (!complete && sections.length === 0) return { ...open, kind: 'bound', range }
  const toAdd = total([missing, change])
  if (settle(toAdd).si < 0) throw negative('The mass to add', 'parts')
  sumStep(setting, toAdd, known, [...sections, ...parts])
  return {
    ...frame,
    kind: 'correction',
    toAdd,
    missing,
    range: complete ? undefined : range,
    ownEstimate: undefined,
  }
}

const withChange = ({ from, to }: { from: Tied; to: Tied }, change: Tied) => ({
  from: total([from, change]),
  to: total([to, change]),
})

/** What has to be found out before anything can be said of the couplings. */
function needsOf(
  { job, couplingType, makerCorrection }: ChargeInput,
  couplings: readonly Parameters<typeof hasSpill>[0][],
): readonly string[] {
  if (makerCorrection) return []
  if (job === 'section-opened' && couplings.length === 0) return []
  const unmeasured = couplings.length === 0 || couplings.some((entry) => !hasSpill(entry))
  const byMaker = couplings.every(({ spillVolume, spillFrom }) => spillVolume ?? spillFrom)
  return [
    ...(couplingType === undefined && (unmeasured || !byMaker) ? ['couplingType'] : []),
    ...(unmeasured ? ['parted'] : []),
  ]
}

function assume(
  { notes }: Setting,
  input: ChargeInput,
  couplings: readonly CouplingLoss[],
  sections: readonly Inventory[],
): void {
  const { assumptions } = data
  notes.assumptions.push({ field: 'labelCharge', ...assumptions['full-before'] })
  if (couplings.some((entry) => !isKnown(entry))) {
    notes.assumptions.push({ field: 'sealed', ...assumptions['valves-before-seal'] })
    notes.sources.push(chargeSource(data.couplings.boundSource as 'companion-valves'))
  } else if (input.sealed === undefined) {
    const which = input.job === 'couplers-parted' ? 'halves-sealed' : 'section-sealed'
    notes.assumptions.push({ field: 'sealed', ...assumptions[which] })
  }
  if (sections.length > 0) {
    notes.assumptions.push({ field: 'sections', ...assumptions['as-shut-off'] })
  }
  if (couplings.length === 0) return
  notes.sources.push(chargeSource('coupler-catalogue'))
  if (couplings.every(({ air }) => air === undefined)) {
    notes.assumptions.push({ field: 'airInclusion', ...assumptions['no-air'] })
  }
}

function sumStep(
  { notes }: Setting,
  toAdd: Tied,
  couplings: readonly CouplingLoss[],
  items: readonly Inventory[],
): void {
  const named = [
    ...couplings.map(({ name, least }) => ({ name, mass: least })),
    ...items.map(({ name, mass }) => ({ name, mass })),
  ]
  notes.steps.push({
    what: 'Mass to add',
    formula: 'sum of what is missing',
    values: Object.fromEntries(
      named.map(({ name, mass }, index) => [`${index + 1} ${name}`, massOf(mass)]),
    ),
    gives: massOf(toAdd),
  })
}

const adviceFor = (
  input: ChargeInput,
  couplings: readonly CouplingLoss[],
  sections: readonly Inventory[],
): readonly string[] => [
  ...(couplings.some(({ evidence }) => evidence === 'what-if') ? [ADVICE['what-if']] : []),
  ...(sections.length > 0 ? [ADVICE.section] : []),
  ...(input.job === 'couplers-parted' ? [ADVICE.couplings] : []),
  ...(input.recovered ? [ADVICE['recovered-back']] : []),
]
