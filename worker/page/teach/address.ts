import { GAUGES, type Gauge, MOVES, type Move } from '../../../shared/service/lesson/gauges.ts'
import { TOPIC_IDS } from '../../../shared/service/lesson/topics.ts'
import { writeKept } from '../kept.ts'
import { redraw } from '../redraw.ts'

/** How far a class is with a case: all of it stands in the address, so that it outlives a reload. */
export interface Case {
  readonly topic: string
  readonly seed: number
  readonly moves: Partial<Readonly<Record<Gauge, Move>>>
  /** Whether the prediction is fixed; it is not changed afterwards. */
  readonly fixed: boolean
  readonly suspected?: string | undefined
  readonly bought: readonly string[]
  readonly named?: string | undefined
  /** Row of the sweep that is looked at; without it the machine as in the case. */
  readonly row?: number | undefined
  /** Whether the sheet to print is looked at. */
  readonly sheet: boolean
}

const NONE = '-'
/** Seeds that are easy to say aloud. */
const MOST_SEED = 9999

export const OPEN_CASE = 'teach:case'

/** The case that an address such as `teach/high-head/7?moves=…` names; undefined where it names none. */
export function caseIn(address: string): Case | undefined {
  const [path = '', query = ''] = address.split('?')
  const [, topic = '', number = '', page] = path.split('/')
  const seed = Number(number)
  if (!TOPIC_IDS.includes(topic) || number === '' || !Number.isInteger(seed) || seed < 0) return
  const said = new URLSearchParams(query)
  const list = (name: string) => (said.get(name) ?? '').split('.').filter((each) => each !== '')
  const moves = list('moves')
  const row = Number(said.get('row') ?? Number.NaN)
  return {
    topic,
    seed,
    moves: Object.fromEntries(
      GAUGES.flatMap((gauge, index) => {
        const move = MOVES.find((each) => each === moves[index])
        return move ? [[gauge, move]] : []
      }),
    ),
    fixed: said.has('fixed') && moves.every((each) => each !== NONE),
    suspected: said.get('suspected') ?? undefined,
    bought: list('bought'),
    named: said.get('named') ?? undefined,
    row: Number.isInteger(row) ? row : undefined,
    sheet: page === 'sheet',
  }
}

/** The address of a case, as far as the class is. */
export function addressOf(now: Case): string {
  const { topic, seed, moves, fixed, suspected, bought, named, row, sheet } = now
  const said = new URLSearchParams()
  const put = (name: string, value: string | undefined) => value && said.set(name, value)
  if (GAUGES.some((gauge) => moves[gauge])) {
    put('moves', GAUGES.map((gauge) => moves[gauge] ?? NONE).join('.'))
  }
  put('suspected', suspected)
  if (fixed) put('fixed', 'yes')
  put('bought', bought.join('.'))
  put('named', named)
  put('row', row?.toString())
  const query = said.toString()
  return `#/teach/${topic}/${seed}${sheet ? '/sheet' : ''}${query === '' ? '' : `?${query}`}`
}

/** What tells a case from every other. */
export const nameOf = ({ topic, seed }: Case): string => `/${topic}/${seed}`

/** Takes a case one step on. The address changes in its place: going back leads out of the case, not through each tick. */
export function goOn(now: Case): void {
  const address = addressOf(now)
  history.replaceState(null, '', address)
  writeKept(OPEN_CASE, address)
  redraw()
}

/** A case of a saying that nobody has seen yet. */
export const freshCase = (
  topic: string,
  seed = 1 + Math.floor(Math.random() * MOST_SEED),
): Case => ({
  topic,
  seed,
  moves: {},
  fixed: false,
  bought: [],
  sheet: false,
})
