import figures from '../../../../data/service/diagnosis.json' with { type: 'json' }
import { type Architecture, type Preset, presets } from '../../../cycle/index.ts'
import { CalcError } from '../../../errors.ts'
import { isCarbonDioxide, isVehicle } from '../../../fields/index.ts'
import { type Refrigerant, saturationPressure } from '../../../refrigerant/index.ts'
import { machineFor } from '../../simulate/machines.ts'
import type { DiagnoseInput } from './fields.ts'

/** How well the machine is known. */
export const KNOWLEDGE = ['model', 'baseline', 'kind', 'unknown'] as const
export type Knowledge = (typeof KNOWLEDGE)[number]

/** Kinds of machines that it may be, with how common they are. */
export interface Kinds {
  readonly knowledge: Knowledge
  readonly presets: readonly { readonly preset: Preset; readonly share: number }[]
  /** Designation of the refrigerant that the model computes with. */
  readonly modelRefrigerant: string
}

/** What each kind is, by the fields that ask for it. */
const FACTS: Readonly<
  Record<
    Architecture,
    {
      readonly vehicle: boolean
      readonly valve: boolean
      readonly store: DiagnoseInput['liquidStore']
      readonly displacement: DiagnoseInput['displacement']
    }
  >
> = {
  valve: { vehicle: true, valve: true, store: 'none', displacement: 'fixed' },
  'valve-receiver': { vehicle: true, valve: true, store: 'receiver', displacement: 'fixed' },
  'orifice-accumulator': {
    vehicle: true,
    valve: false,
    store: 'accumulator',
    displacement: 'fixed',
  },
  'valve-receiver-variable': {
    vehicle: true,
    valve: true,
    store: 'receiver',
    displacement: 'variable',
  },
  'stationary-orifice': { vehicle: false, valve: false, store: 'none', displacement: 'fixed' },
  'stationary-valve': { vehicle: false, valve: true, store: 'none', displacement: 'fixed' },
}

/**
 * The kinds that what was said leaves open; of several refrigerants in the model the own one, else
 * one that runs at other pressures but the same temperatures.
 *
 * @throws {CalcError} `refused` for carbon dioxide, `bad-input` for a machine that the model has none of.
 */
export function kindsOf(input: DiagnoseInput, r: Refrigerant): Kinds {
  if (isCarbonDioxide(r)) {
    throw new CalcError('refused', 'The machine model knows no R-744.', {
      path: ['refrigerant'],
      hint: 'Judge its readings by the equipment maker’s figures.',
    })
  }
  if (input.modelMachine !== undefined) {
    const own = machineFor(input.modelMachine, input.refrigerant)
    return {
      knowledge: input.baseline ? 'baseline' : 'model',
      presets: [{ preset: own, share: 1 }],
      modelRefrigerant: own.machine.refrigerant,
    }
  }
  const open = presets().filter(({ architecture }) => fits(architecture, input))
  const own = open.filter(({ machine }) => machine.refrigerant === r.info.id)
  // Where several stay open, those that the effects are known of ahead of time.
  const chosen =
    own.length === 1 || TABLED.includes(r.info.id)
      ? own
      : open.filter(({ machine }) => stands(machine.refrigerant, r, open))
  const [first] = chosen
  if (first === undefined) {
    throw new CalcError('bad-input', 'The machine model has no machine of this kind.', {
      path: [input.architecture ? 'architecture' : 'liquidStore'],
      hint: 'It knows: expansion valve alone, with receiver, with receiver and variable stroke; orifice tube with accumulator; stationary with fixed orifice or valve, no store.',
    })
  }
  const settled = chosen.length === 1
  return {
    knowledge: settled ? (input.baseline ? 'baseline' : 'kind') : 'unknown',
    presets: chosen.map((one) => ({ preset: one, share: figures.kinds[one.architecture] })),
    modelRefrigerant: first.machine.refrigerant,
  }
}

function fits(architecture: Architecture, input: DiagnoseInput): boolean {
  if (input.architecture !== undefined) return architecture === input.architecture
  const { vehicle, valve, store, displacement } = FACTS[architecture]
  const { machine, meteringDevice, liquidStore } = input
  const isValve = meteringDevice === 'expansion-valve' || meteringDevice === 'electronic-valve'
  return (
    (machine === undefined || isVehicle(machine) === vehicle) &&
    (meteringDevice === undefined || isValve === valve) &&
    (liquidStore === undefined || liquidStore === store) &&
    (input.displacement === undefined || input.displacement === displacement)
  )
}

/** The same input with what an architecture or a machine of the model says of machine and device. */
export function withFacts(
  input: DiagnoseInput,
  { presets: [only, ...others] }: Kinds,
): DiagnoseInput {
  if (!only || others.length > 0 || !(input.architecture ?? input.modelMachine)) return input
  const { vehicle, valve, store } = FACTS[only.preset.architecture]
  return {
    ...input,
    machine: input.machine ?? (vehicle ? 'off-road' : 'stationary'),
    liquidStore: input.liquidStore ?? store,
    meteringDevice:
      input.meteringDevice ??
      (valve ? 'expansion-valve' : vehicle ? 'orifice-tube' : 'fixed-orifice'),
  }
}

/** Refrigerants whose effects are known ahead of time: several kinds are averaged over only with these. */
const TABLED: readonly string[] = ['R-134a', 'R-410A']

/** Of a refrigerant that the model has no machine with: high pressures like R-410A, all else like R-134a. */
function stands(model: string, r: Refrigerant, open: readonly Preset[]): boolean {
  const like = hasHighPressure(r) ? 'R-410A' : 'R-134a'
  const has = open.some(({ machine }) => machine.refrigerant === like)
  return model === (has ? like : 'R-134a')
}

/** 40 °C, where R-410A boils at 24 bar and the highest of the others, R-455A, at 20. */
const WARM_K = 313.15
const HIGH_PA = 22e5

const hasHighPressure = (r: Refrigerant) => saturationPressure(r, WARM_K, 'bubble') > HIGH_PA
