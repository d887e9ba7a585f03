import { ticks as roundTicks } from 'd3-array'

/** A value to its place on the screen, and back. */
export interface Scale {
  readonly kind: 'linear' | 'log'
  readonly from: number
  readonly to: number
  /** Pixels. */
  readonly start: number
  readonly end: number
  (value: number): number
  invert(pixel: number): number
  /** Round values inside, about `count` of them. */
  ticks(count: number): readonly number[]
}

/** Equal steps of the value are equal lengths. */
export function linear(from: number, to: number, start: number, end: number): Scale {
  return scale('linear', { from, to, start, end, ahead: (v) => v, back: (v) => v }, (count) =>
    roundTicks(from, to, count),
  )
}

/** Equal ratios of the value are equal lengths; both ends above zero. */
export function log(from: number, to: number, start: number, end: number): Scale {
  return scale('log', { from, to, start, end, ahead: Math.log, back: Math.exp }, (count) =>
    logTicks(Math.min(from, to), Math.max(from, to), count),
  )
}

interface Ends {
  readonly from: number
  readonly to: number
  readonly start: number
  readonly end: number
  readonly ahead: (value: number) => number
  readonly back: (value: number) => number
}

function scale(
  kind: Scale['kind'],
  { from, to, start, end, ahead, back }: Ends,
  ticks: Scale['ticks'],
): Scale {
  const [low, high] = [ahead(from), ahead(to)]
  const place = (value: number) => start + ((ahead(value) - low) / (high - low)) * (end - start)
  const invert = (pixel: number) => back(low + ((pixel - start) / (end - start)) * (high - low))
  return Object.assign(place, { kind, from, to, start, end, invert, ticks })
}

/** Sets of digits of a decade, the fullest first. */
const DIGITS = [[1, 1.5, 2, 3, 4, 5, 6, 8], [1, 2, 3, 5, 7], [1, 2, 5], [1, 3], [1]] as const

function logTicks(from: number, to: number, count: number): readonly number[] {
  const decades = Array.from(
    { length: Math.ceil(Math.log10(to)) - Math.floor(Math.log10(from)) + 1 },
    (_, index) => Math.floor(Math.log10(from)) + index,
  )
  const sets = DIGITS.map((digits) =>
    decades
      .flatMap((decade) => digits.map((digit) => Number((digit * 10 ** decade).toPrecision(2))))
      .filter((tick) => tick >= from * 0.9999 && tick <= to * 1.0001),
  )
  return sets.find((set) => set.length <= count) ?? (sets[sets.length - 1] as readonly number[])
}
