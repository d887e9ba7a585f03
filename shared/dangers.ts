import type { CautionId } from './cautions.ts'
import { burns, type CompressorDrive, isCarbonDioxide } from './fields/index.ts'
import type { Refrigerant } from './refrigerant/index.ts'

/** What is done to the machine, as far as it can hurt somebody. */
export type Act =
  | 'handles'
  | 'parts-couplings'
  | 'opens'
  | 'recovers'
  | 'pressurises'
  | 'evacuates'
  | 'charges'
  | 'runs'
  | 'lifts-cab'

/** What is known of a job before anything is read. */
export interface JobFacts {
  readonly refrigerant?: Refrigerant | undefined
  readonly compressorDrive?: CompressorDrive | undefined
  readonly does?: readonly Act[]
}

const LOOSE: readonly CautionId[] = ['pressure', 'cold-burns', 'asphyxiation']

const OF_ACT: Readonly<Record<Act, readonly CautionId[]>> = {
  handles: LOOSE,
  'parts-couplings': [
    ...LOOSE,
    'whipping-line',
    'trapped-liquid',
    'parted-half',
    'stuck-coupling',
    'first-aid-eyes',
    'first-aid-frostbite',
  ],
  opens: [
    ...LOOSE,
    'goggles-even-empty',
    'trapped-liquid',
    'first-aid-eyes',
    'first-aid-frostbite',
    'first-aid-inhalation',
  ],
  recovers: [...LOOSE, 'full-cylinder', 'no-disposable-refill', 'do-not-mix'],
  pressurises: [
    'pressure',
    'asphyxiation',
    'whipping-line',
    'no-oxygen',
    'no-air',
    'nitrogen-regulator',
  ],
  evacuates: ['compressor-in-vacuum'],
  charges: [
    ...LOOSE,
    'no-high-side-running',
    'warm-water-only',
    'no-liquid-to-suction',
    'weigh-the-charge',
  ],
  runs: ['rotating-parts'],
  'lifts-cab': ['lifted-cab', 'machine-secured', 'bystanders', 'working-alone'],
}

/** Acts in which refrigerant may get out, or parts under voltage be touched. */
const GETS_IN: readonly Act[] = ['parts-couplings', 'opens', 'recovers']

/**
 * What is dangerous about a job: by what is done, by the refrigerant and by the compressor's drive,
 * before any reading exists. The one place that decides it, for every operation and the work order.
 */
export function dangersOf({
  refrigerant,
  compressorDrive,
  does = [],
}: JobFacts): readonly CautionId[] {
  const getsIn = GETS_IN.some((act) => does.includes(act))
  const ids = [
    ...does.flatMap((act) => OF_ACT[act]),
    ...(refrigerant ? ofRefrigerant(refrigerant, does, getsIn) : []),
    ...(compressorDrive === 'electric' && getsIn
      ? (['high-voltage', 'electric-compressor-oil'] as const)
      : []),
  ]
  return [...new Set(ids)]
}

function ofRefrigerant(
  r: Refrigerant,
  does: readonly Act[],
  getsIn: boolean,
): readonly CautionId[] {
  if (isCarbonDioxide(r)) {
    return [
      'carbon-dioxide',
      ...(getsIn ? (['carbon-dioxide-release'] as const) : []),
      ...(does.includes('parts-couplings') ? (['carbon-dioxide-couplings'] as const) : []),
      ...(does.includes('charges') ? (['dry-ice'] as const) : []),
      ...(does.includes('pressurises') ? (['carbon-dioxide-test-pressure'] as const) : []),
    ]
  }
  const fluorinated = isFluorinated(r)
  return [
    ...(burns(r) ? ofFlammable(does, fluorinated) : []),
    ...(getsIn ? (['no-venting'] as const) : []),
    ...(getsIn && fluorinated ? (['decomposition', 'first-aid-hydrogen-fluoride'] as const) : []),
  ]
}

const ofFlammable = (does: readonly Act[], fluorinated: boolean): readonly CautionId[] => [
  'flammable',
  ...(does.includes('evacuates') ? (['pump-exhaust-outdoors'] as const) : []),
  ...(does.includes('recovers') && !fluorinated ? (['hydrocarbons-rated-machine'] as const) : []),
  ...(does.includes('charges') && !fluorinated ? (['no-flammable-retrofit'] as const) : []),
]

/** Substances that hold no fluorine; `tests/data/complete.test.ts` holds it to their families. */
const UNFLUORINATED: ReadonlySet<string> = new Set([
  'R-744',
  'R-290',
  'R-600',
  'R-600a',
  'R-601a',
  'R-1270',
])

/** Whether any of its substances holds fluorine: only then does a flame make hydrogen fluoride of it. */
export const isFluorinated = (r: Refrigerant): boolean =>
  r.info.composition.some(({ substance }) => !UNFLUORINATED.has(substance))

/** Every caution that {@link dangersOf} may give, for an operation's `mayAlso`. */
export const ALL_DANGERS: readonly CautionId[] = [
  ...new Set<CautionId>([
    ...Object.values(OF_ACT).flat(),
    'flammable',
    'pump-exhaust-outdoors',
    'hydrocarbons-rated-machine',
    'no-flammable-retrofit',
    'carbon-dioxide',
    'carbon-dioxide-release',
    'carbon-dioxide-couplings',
    'carbon-dioxide-test-pressure',
    'dry-ice',
    'no-venting',
    'decomposition',
    'first-aid-hydrogen-fluoride',
    'high-voltage',
    'electric-compressor-oil',
  ]),
]
