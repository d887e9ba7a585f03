import { parseArgs } from 'node:util'

export interface Options {
  readonly seed: number
  /** Empty: every room. */
  readonly rooms: readonly string[]
  /** Faults a room. */
  readonly count: number
  /** Of those drawn only the faults of these lines, `file:line`; empty: all. */
  readonly only: readonly string[]
  /** Only say what would be drawn. */
  readonly list: boolean
  /** Ask the room's own tests alone: quick, and hard on them. */
  readonly own: boolean
  /** How many copies of the tree are tried at once, at most 2. */
  readonly jobs: number
}

export const HELP = `Usage: npm run mutants -- [options]

Puts faults into a copy of the tree, one at a time, and counts those that a test sees.

  --seed <number>    which faults are drawn, and the chance in property tests (default: the time)
  --room <name>      only this room; may be given again
  --count <number>   faults a room (default 30)
  --only <file:line> of those drawn only this one, to ask a survivor again; may be given again
  --list             print the faults that would be drawn, and stop
  --own              ask the room's own tests alone: quicker, and lower
  --jobs <1 or 2>    how many are tried at once (default 1)`

const whole = (text: string, name: string, least: number, most: number): number => {
  const value = Number(text)
  if (!Number.isInteger(value) || value < least || value > most) {
    throw new Error(`--${name} needs a whole number from ${least} to ${most}, not "${text}"`)
  }
  return value
}

/** Reads the command line; `undefined` asks for help. */
export function readOptions(args: readonly string[], now: number): Options | undefined {
  const { values } = parseArgs({
    args: [...args],
    options: {
      seed: { type: 'string' },
      room: { type: 'string', multiple: true, default: [] },
      count: { type: 'string', default: '30' },
      only: { type: 'string', multiple: true, default: [] },
      list: { type: 'boolean', default: false },
      own: { type: 'boolean', default: false },
      jobs: { type: 'string', default: '1' },
      help: { type: 'boolean', default: false },
    },
  })
  if (values.help) return undefined
  return {
    seed: values.seed === undefined ? now % 1_000_000 : whole(values.seed, 'seed', 0, 2 ** 31 - 1),
    rooms: values.room,
    count: whole(values.count, 'count', 1, 10_000),
    only: values.only,
    list: values.list,
    own: values.own,
    jobs: whole(values.jobs, 'jobs', 1, 2),
  }
}
