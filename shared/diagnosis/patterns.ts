import data from '../../data/service/patterns.json' with { type: 'json' }
import type { Machine, MeteringDevice } from '../fields/index.ts'
import { keptWith } from '../kept.ts'
import { quantity } from '../quantity/index.ts'
import { sourceTable } from '../source-table.ts'
import type { Source } from '../sources.ts'
import { limitsOf, possibleLevels, type SignId, type SignLevel, type Signs } from './signs.ts'

const sourceOf = sourceTable(data.sources)
type SourceId = keyof typeof data.sources

interface Row {
  readonly id: string
  readonly when: Readonly<Partial<Record<SignId, readonly SignLevel[]>>>
  readonly headline: string
  /** Said instead where the figures that it names were read. */
  readonly ifRead?: string
  readonly causes: readonly string[]
  readonly next: readonly string[]
  /** Patterns that say less than this one and are left out beside it. */
  readonly covers: readonly string[]
  /** Only with a valve, or only with an orifice: the other does the same by design. */
  readonly device?: string
  /** Only on a stationary machine: behind a receiver there is hardly any subcooling. */
  readonly machine?: string
  readonly source: string
}

const ROWS = data.patterns as unknown as readonly Row[]

/** By how much a subcooling may show too large that is counted from the discharge pressure, K. */
export const FROM_DISCHARGE_K = quantity(
  'temperatureDifference',
  data.fromDischarge.value,
  data.fromDischarge.unit,
).si

/** Ids of the patterns that are known. */
export const PATTERN_IDS = ROWS.map(({ id }) => id) as [string, ...string[]]

/** Causes that the readings fit, and what to do first. */
export interface Pattern {
  readonly id: string
  /** The signs it goes by, in words: "superheat high". */
  readonly signs: readonly string[]
  /** Sentences with slots for figures: the first counts whose figures are all there. */
  readonly headlines: readonly string[]
  readonly causes: readonly string[]
  readonly next: readonly string[]
  readonly sources: readonly Source[]
}

/** What is known of the machine that was read. */
export interface PatternFacts {
  readonly machine?: Machine | undefined
  readonly meteringDevice?: MeteringDevice | undefined
  readonly liquidStore?: string | undefined
}

/**
 * Patterns of a running machine that the signs surely show, the most telling first.
 *
 * A sign counts only where its whole ± lies on one side, so a better instrument adds patterns and
 * takes none away but for one that says more.
 */
export function patternsOf(
  signs: Signs,
  { machine, meteringDevice, liquidStore }: PatternFacts,
): readonly Pattern[] {
  const fed = meteringDevice && (isValve(meteringDevice) ? 'valve' : 'orifice')
  const known = new Map<SignId, readonly SignLevel[]>()
  for (const [id, figure] of Object.entries(signs) as [SignId, Signs[SignId]][]) {
    // What a cold store evaporates at is no sign of anything.
    if (BY_EVAPORATING.includes(id) && machine === 'refrigerated-cargo') continue
    if (!figure) continue
    const levels = possibleLevels(id, figure, machine)
    // Behind a receiver there is hardly any subcooling, whatever the charge.
    if (id === 'subcooling' && liquidStore === 'receiver' && levels.includes('low')) continue
    known.set(id, levels)
  }
  const shows = (row: Row) =>
    (row.device === undefined || row.device === fed) &&
    (row.machine === undefined || row.machine === machine) &&
    wantedBy(row).every(([id, wanted]) => known.get(id)?.every((level) => wanted.includes(level)))
  const shown = ROWS.filter(shows)
  const covered = new Set(shown.flatMap(({ covers }) => covers))
  return shown.filter(({ id }) => !covered.has(id)).map((row) => patternOf(row, machine))
}

/** The signs of a row with the levels that each may have. */
const wantedBy = keptWith(
  ({ when }: Row) => Object.entries(when) as readonly [SignId, readonly SignLevel[]][],
)

const BY_EVAPORATING: readonly SignId[] = ['evaporating', 'fed', 'coldish']

const isValve = (device: MeteringDevice) =>
  device === 'expansion-valve' || device === 'electronic-valve'

function patternOf(row: Row, machine: Machine | undefined) {
  const { id, headline, ifRead, causes, next, source } = row
  const entries = wantedBy(row)
  const limits = entries.map(([sign]) => limitsOf(sign, machine))
  return {
    id,
    signs: entries.map(([, wanted], index) => `${limits[index]?.name} ${wanted.join(' or ')}`),
    headlines: ifRead === undefined ? [headline] : [ifRead, headline],
    causes,
    next,
    sources: [source, ...limits.flatMap(({ sources }) => sources)].map((key) =>
      sourceOf(key as SourceId),
    ),
  }
}
