import type { CautionId } from './cautions.ts'
import { burns, type CompressorDrive, isCarbonDioxide } from './fields/index.ts'
import type { Refrigerant } from './refrigerant/index.ts'

/** What is done to the machine, as far as it can hurt somebody. */
export type Act =
  | 'handles'
  | 'opens'
  | 'recovers'
  | 'pressurises'
  | 'evacuates'
  | 'charges'
  | 'runs'

/** What is known of a job before anything is read. */
export interface JobFacts {
  readonly refrigerant?: Refrigerant | undefined
  readonly compressorDrive?: CompressorDrive | undefined
  readonly does?: readonly Act[]
}

const OF_ACT: Readonly<Record<Act, readonly CautionId[]>> = {
  handles: ['pressure', 'cold-burns', 'asphyxiation'],
  opens: ['pressure', 'cold-burns', 'asphyxiation'],
  recovers: ['full-cylinder', 'no-disposable-refill', 'do-not-mix'],
  pressurises: ['pressure', 'no-oxygen', 'no-air', 'nitrogen-regulator', 'asphyxiation'],
  evacuates: ['compressor-in-vacuum'],
  charges: [
    'pressure',
    'cold-burns',
    'asphyxiation',
    'no-high-side-running',
    'warm-water-only',
    'no-liquid-to-suction',
    'weigh-the-charge',
  ],
  runs: ['rotating-parts'],
}

/**
 * What is dangerous about a job: by what is done, by the refrigerant and by the compressor's drive,
 * before any reading exists. The one place that decides it, for every operation and the work order.
 */
export function dangersOf({
  refrigerant,
  compressorDrive,
  does = [],
}: JobFacts): readonly CautionId[] {
  const opens = does.includes('opens') || does.includes('recovers')
  return [
    ...does.flatMap((act) => OF_ACT[act]),
    ...(refrigerant ? ofRefrigerant(refrigerant, opens) : []),
    ...(compressorDrive === 'electric' && opens
      ? (['electric-compressor-oil', 'high-voltage'] as const)
      : []),
  ]
}

function ofRefrigerant(r: Refrigerant, opens: boolean): readonly CautionId[] {
  const co2 = isCarbonDioxide(r)
  const venting: readonly CautionId[] = co2 ? [] : ['no-venting']
  const flame: readonly CautionId[] = isFluorinated(r) ? ['decomposition'] : []
  return [
    ...(burns(r) ? (['flammable'] as const) : []),
    ...(co2 ? (['carbon-dioxide'] as const) : []),
    ...(opens ? [...venting, ...flame] : []),
  ]
}

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
    'carbon-dioxide',
    'no-venting',
    'decomposition',
    'electric-compressor-oil',
    'high-voltage',
  ]),
]
