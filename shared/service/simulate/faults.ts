import { type FaultKind, type Faults, faultOf, faultsOf, NO_FAULTS } from '../../cycle/index.ts'
import type { Machine } from '../../cycle/types.ts'
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import { fraction, pressureDifference, type Quantity, say } from '../../quantity/index.ts'
import { plausible } from '../plausible.ts'
import { SETTINGS, type Setting, type SimulateInput } from './fields.ts'
import { TEXTS, withoutBand } from './texts.ts'

/** How the model keeps the size of a fault, and how far it goes. */
interface Size {
  readonly of: keyof Faults
  /** Faults that a smaller size and a larger one make. */
  readonly kinds: readonly [smaller: FaultKind, larger: FaultKind]
  /** What may be asked, SI. */
  readonly limits: readonly [least: number, most: number]
  readonly isPressure?: boolean
}

const SIZES: Readonly<Record<Setting, Size>> = {
  chargeNow: { of: 'charge', kinds: ['undercharge', 'overcharge'], limits: [0.1, 2] },
  condenserAir: { of: 'condenserAir', kinds: ['condenser-air', 'condenser-air'], limits: [0.1, 1] },
  evaporatorAir: {
    of: 'evaporatorAir',
    kinds: ['evaporator-air', 'evaporator-air'],
    limits: [0.1, 1],
  },
  restriction: {
    of: 'restrictionPa',
    kinds: ['restriction', 'restriction'],
    limits: [0, 2e6],
    isPressure: true,
  },
  valveOpening: {
    of: 'valveStuck',
    kinds: ['valve-stuck-closed', 'valve-stuck-open'],
    limits: [0.02, 1],
  },
  compressorLeak: {
    of: 'leakage',
    kinds: ['compressor-leak', 'compressor-leak'],
    limits: [0, 0.8],
  },
  airInside: { of: 'airPa', kinds: ['air', 'air'], limits: [0, 6e5], isPressure: true },
  stroke: {
    of: 'strokeStuck',
    kinds: ['stroke-stuck-low', 'stroke-stuck-high'],
    limits: [0.05, 1],
  },
}

/** A fault as it is in the machine. */
export interface Present {
  readonly fault: FaultKind
  readonly setting: Setting
  readonly size: Quantity<'fraction'> | Quantity<'pressureDifference'>
}

/** The size of a setting in a set of faults, as people write it; nothing where it does not apply. */
const sizeIn = (setting: Setting, faults: Faults): number | undefined => faults[SIZES[setting].of]

export const shownSize = (setting: Setting, si: number) =>
  SIZES[setting].isPressure ? pressureDifference(si).sized(USUAL_PA) : fraction(si)

/** Nothing at all is shown in the units of this. */
const USUAL_PA = 1e5

/** Sizes at the ends of what the model calls as bad as it gets. */
export function worstOf(setting: Setting, machine: Machine): readonly [number, number] {
  const [smaller, larger] = SIZES[setting].kinds
  const at = (kind: FaultKind, severity: number) =>
    sizeIn(setting, faultOf(machine, kind, severity)) as number
  const [a, b] =
    smaller === larger ? [at(smaller, 0), at(smaller, 1)] : [at(smaller, 1), at(larger, 1)]
  return [Math.min(a, b), Math.max(a, b)]
}

/** What a setting's size is called as a fault. */
function kindOf(setting: Setting, machine: Machine, size: number): FaultKind {
  const [smaller, larger] = SIZES[setting].kinds
  return size < (sizeIn(setting, faultOf(machine, larger, 0)) as number) ? smaller : larger
}

/** @throws {CalcError} `refused` where the machine has nothing that could fail this way. */
export function requireSetting(setting: Setting, machine: Machine, field: string): void {
  if (faultsOf(machine).includes(SIZES[setting].kinds[0])) return
  throw new CalcError('refused', `This invented machine cannot have the fault "${setting}".`, {
    path: [field],
    hint:
      setting === 'stroke'
        ? 'Only the tractor has a stroke that varies.'
        : 'It has an orifice, which neither opens nor shuts.',
  })
}

/** A size as given, SI of the model: a mass as a share of the label charge. */
export function sizeOf(setting: Setting, given: Quantity, machine: Machine, field: string): number {
  requireSetting(setting, machine, field)
  const { limits, isPressure = false } = SIZES[setting]
  const kinds = isPressure
    ? ['pressureDifference']
    : setting === 'chargeNow'
      ? ['fraction', 'mass']
      : ['fraction']
  if (!kinds.includes(given.kind)) {
    throw new CalcError('wrong-kind', `"${setting}" has sizes of another kind.`, {
      path: [field],
      hint: isPressure
        ? 'Give a pressure difference, such as 40 psi.'
        : 'Give a percentage, such as 70 %.',
    })
  }
  const size = given.kind === 'mass' ? given.si / machine.charge : withoutBand(given, field).si
  plausible(shownSize(setting, size), ...limits, 'A size', [field])
  return size
}

/** The faults with one size changed. */
export const withSize = (faults: Faults, setting: Setting, size: number): Faults => ({
  ...faults,
  [SIZES[setting].of]: size,
})

/** The faults with one of them taken out. */
export function withoutFault(faults: Faults, setting: Setting): Faults {
  const { of } = SIZES[setting]
  const { [of]: _, ...others } = faults
  return { ...NO_FAULTS, ...others }
}

/**
 * What is wrong with the machine that was asked for, all together.
 *
 * @throws {CalcError} for a fault that it cannot have, and where two fields say the same thing.
 */
export function faultsIn(input: SimulateInput, machine: Machine, notes: Notes): Faults {
  let faults = NO_FAULTS
  if (input.fault === undefined && input.severity !== undefined) {
    throw new CalcError('missing-input', 'There is a severity, and no fault that it is of.', {
      path: ['fault'],
      hint: 'Give the fault too, such as undercharge.',
    })
  }
  for (const each of bySeverityIn(input)) {
    for (const { setting, size } of bySeverity(each, machine, notes)) {
      requireOnce(faults, setting, each.path)
      faults = withSize(faults, setting, size.si)
    }
  }
  for (const setting of SETTINGS) {
    const given = input[setting]
    if (given === undefined) continue
    const size = sizeOf(setting, given, machine, setting)
    requireOnce(faults, setting, [setting])
    faults = withSize(faults, setting, size)
  }
  return faults
}

/** @throws {CalcError} `bad-input` at `path` where a fault that was given before has this size already. */
function requireOnce(faults: Faults, setting: Setting, path: CalcError['path']): void {
  if (sizeIn(setting, faults) === sizeIn(setting, NO_FAULTS)) return
  throw new CalcError('bad-input', `The fault and "${setting}" both say how bad it is.`, {
    path,
    hint: 'Give one of them.',
  })
}

/** Faults that are given by how bad they are, with the fields that say so. */
const bySeverityIn = ({ fault, severity, faults = [] }: SimulateInput) => [
  ...(fault ? [{ kind: fault, severity, path: ['fault'], at: ['severity'] }] : []),
  ...faults.map((each, index) => ({
    kind: each.fault,
    severity: each.severity,
    path: ['faults', index, 'fault'],
    at: ['faults', index, 'severity'],
  })),
]

/** Severity without a figure. */
const HALF = 0.5

function bySeverity(
  { kind, severity, path, at }: ReturnType<typeof bySeverityIn>[number],
  machine: Machine,
  notes: Notes,
): readonly Present[] {
  if (!faultsOf(machine).includes(kind)) {
    throw new CalcError('refused', `This invented machine cannot have the fault "${kind}".`, {
      path,
      hint: `It can have: ${faultsOf(machine).join(', ')}.`,
    })
  }
  const given = severity && withoutBand(severity, at.join('.'))
  if (given === undefined) {
    notes.assumptions.push({ field: at.join('.'), taken: TEXTS.half, because: 'none was given' })
  } else plausible(given, 0, 1, 'A severity', at)
  const found = presentIn(faultOf(machine, kind, given?.si ?? HALF), machine)
  for (const { setting, size } of found) {
    const taken = `${TEXTS.settings[setting]} ${say(size)}`
    notes.assumptions.push({ field: setting, taken, because: TEXTS.bySeverity, short: taken })
  }
  return found
}

/** The faults that are really there. */
export function presentIn(faults: Faults, machine: Machine): readonly Present[] {
  return SETTINGS.flatMap((setting): readonly Present[] => {
    const size = sizeIn(setting, faults)
    if (size === undefined || size === sizeIn(setting, NO_FAULTS)) return []
    return [{ fault: kindOf(setting, machine, size), setting, size: shownSize(setting, size) }]
  })
}
