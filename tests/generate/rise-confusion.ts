import { randomFrom } from '../../shared/random.ts'
import { judgeRise } from '../../shared/service/evacuation/rise-verdict.ts'
import { RISE_VERDICTS, type RiseVerdict } from '../../shared/service/evacuation/rise-view.ts'
import {
  HARD_AXES,
  HELD_OUT_AXES,
  MICRON,
  type RiseCase,
  randomCases,
  riseGrid,
  simulateRise,
  TUNING_AXES,
} from './rise-simulation.ts'

type Confusion = Readonly<Record<string, Readonly<Record<RiseVerdict, number>>>>

/** The three classes of the grid. */
export const THREE = ['leaking', 'wet', 'tight-and-dry'] as const
/** Refrigerant that boils out of oil or of a trapped pocket. */
export const ABOVE_WATER = ['levels-off-above-water'] as const
const UNDECIDED: readonly RiseVerdict[] = ['too-short-to-tell', 'cannot-tell']

/** Reads one simulated case as a mechanic would give it: temperature known to 2 °F, gauge to 10 %. */
function readCase(entry: RiseCase, random: () => number): RiseVerdict {
  const points = simulateRise(entry, random)
  const last = points.at(-1)?.pressurePa ?? 0
  return judgeRise({
    points,
    temperature: { si: entry.temperatureC + 273.15 + 2 * (random() - 0.5), plusMinus: 1.1 },
    barometerPa: 101_325,
    proportional: true,
    levelPlusMinusPa: 0.1 * last,
    negligibleSlope: (10 * MICRON) / 60,
    dryBelowPa: 1000 * MICRON,
  }).verdict
}

const emptyRow = () =>
  Object.fromEntries(RISE_VERDICTS.map((name) => [name, 0])) as Record<RiseVerdict, number>

export function confusion(cases: readonly RiseCase[], seed: number): Confusion {
  const random = randomFrom(seed)
  const table = new Map<string, Record<RiseVerdict, number>>()
  for (const entry of cases) {
    const row = table.get(entry.truth) ?? emptyRow()
    row[readCase(entry, random)] += 1
    table.set(entry.truth, row)
  }
  return Object.fromEntries(table)
}

/** Shares of right verdicts: of all cases, and of those that were decided. */
export function accuracy(table: Confusion) {
  const cells = Object.entries(table).flatMap(([truth, row]) =>
    RISE_VERDICTS.map((verdict) => ({ truth, verdict, count: row[verdict] })),
  )
  const total = (list: typeof cells) => list.reduce((sum, { count }) => sum + count, 0)
  const right = total(cells.filter(({ truth, verdict }) => truth === verdict))
  const decided = total(cells.filter(({ verdict }) => !UNDECIDED.includes(verdict)))
  return { cases: total(cells), ofAll: right / total(cells), ofDecided: right / decided }
}

function print(title: string, table: Confusion): void {
  const { cases, ofAll, ofDecided } = accuracy(table)
  console.log(`\n${title}: ${cases} cases`)
  console.log(['really'.padEnd(24), ...RISE_VERDICTS.map((name) => name.padStart(24))].join(''))
  for (const [truth, row] of Object.entries(table)) {
    console.log(
      [truth.padEnd(24), ...RISE_VERDICTS.map((name) => String(row[name]).padStart(24))].join(''),
    )
  }
  console.log(
    `right: ${(100 * ofAll).toFixed(2)} % of all, ${(100 * ofDecided).toFixed(2)} % of the decided`,
  )
}

if (import.meta.main) {
  print('Tuning grid', confusion(riseGrid(TUNING_AXES), 1))
  print('Held-out grid', confusion(riseGrid(HELD_OUT_AXES), 20_261_125))
  print('Drawn between the held-out values', confusion(randomCases(THREE, 700, 4242), 5))
  // where honesty matters more than a verdict: short watches and coarse gauges
  print(
    'Hard grid, short watches and coarse gauges (undecided is a fair answer)',
    confusion(riseGrid(HARD_AXES), 7),
  )
  print('Refrigerant from the oil or a pocket', confusion(randomCases(ABOVE_WATER, 800, 8), 8))
  // both at once: one hides the other, so naming either sends the mechanic to repair, dry and test again
  print('Water and a leak together', confusion(randomCases(['wet-and-leaking'], 800, 6), 6))
}
