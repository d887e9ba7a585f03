/**
 * How much one request may ask for, counted before anything is computed: an input of most operations
 * counts one, one that takes the time of several counts as many. A thousand are about a tenth of a second.
 */
export const MOST_WORK = 10_000

/**
 * Inputs that count more than one: the time of the example beside that of `saturation` (`npm run bench`), rounded;
 * of a table, which a few words make two thousand rows long, that of some hundred rows.
 */
export const WEIGHTS: Readonly<Record<string, number>> = {
  table: 30,
  readings: 4,
  diagnose: 130,
  charge: 6,
  oil: 2,
  recovery: 10,
  'air-check': 2,
  contamination: 240,
  rules: 4,
  'leak-test': 3,
  fractionation: 120,
  evacuation: 33,
  charging: 3,
  'cooling-check': 5,
  retrofit: 3,
  'work-order': 25,
  simulate: 16,
  lesson: 13,
}

/**
 * Inputs that are worked out several times over, as so many of them: three rows of a sweep, each led from
 * the one before, and causes that a case is weighed against.
 */
const ROWS: Readonly<Record<string, (item: Partial<Record<string, unknown>>) => number>> = {
  simulate: ({ sweep, sweepPoints }) =>
    sweep === undefined
      ? 0
      : Math.ceil((typeof sweepPoints === 'number' ? sweepPoints : MOST_SWEPT) / ROWS_AN_INPUT),
  lesson: ({ named }) => (named === undefined ? 0 : MOST_ROWS),
}
const MOST_SWEPT = 60
const ROWS_AN_INPUT = 3
const MOST_ROWS = 70

/** Values in an item that count as one item more. */
const VALUES_AN_ITEM = 100

export const weightOf = (operation: string): number => WEIGHTS[operation] ?? 1

/** What an item of an operation counts. */
export const workOf = (operation: string, item: unknown): number =>
  weightOf(operation) * (1 + Math.floor(valuesIn(item) / VALUES_AN_ITEM) + rowsIn(operation, item))

function rowsIn(operation: string, item: unknown): number {
  if (typeof item !== 'object' || item === null) return 0
  return Math.min(Math.max(ROWS[operation]?.({ ...item }) ?? 0, 0), MOST_ROWS)
}

function valuesIn(tree: unknown): number {
  if (typeof tree !== 'object' || tree === null) return 1
  // Without recursion: a body may be nested deeper than the stack goes.
  const open: object[] = [tree]
  let count = 0
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    for (const value of Object.values(part) as unknown[]) {
      count += 1
      if (typeof value === 'object' && value !== null) open.push(value)
    }
  }
  return count
}
