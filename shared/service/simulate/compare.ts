import {
  massFlow,
  power,
  pressureDifference,
  type Quantity,
  temperatureDifference,
} from '../../quantity/index.ts'
import { PERFORMANCE, READINGS, type View } from './view.ts'

/** What lies between two figures of one kind: a pressure difference between gauge pressures. */
export function differenceOf(now: Quantity, sound: Quantity): Quantity {
  const gap = now.si - sound.si
  switch (now.kind) {
    case 'gaugePressure':
      return pressureDifference(gap)
    case 'power':
      return power(gap)
    case 'massFlow':
      return massFlow(gap)
    default:
      return temperatureDifference(gap)
  }
}

/** A figure now, and beside it when sound where that is asked for. */
function pair(now: Quantity | undefined, sound: Quantity | undefined) {
  return {
    now,
    sound,
    difference: now === undefined || sound === undefined ? undefined : differenceOf(now, sound),
  }
}

type Set = 'readings' | 'performance'
type Running = NonNullable<View['running']>

/**
 * Every figure of a set now and when sound; without `sound` alone.
 *
 * @param names - The figures, in order.
 */
function compared<S extends Set, Name extends keyof Running[S] & string>(
  set: S,
  names: readonly Name[],
  now: View,
  sound: View | undefined,
) {
  const of = (view: View | undefined, name: Name) =>
    view?.running?.[set][name] as Quantity | undefined
  return names.map((name) => ({ name, ...pair(of(now, name), of(sound, name)) }))
}

/** What gauges and thermometers show, now and when sound. */
export const comparedReadings = (now: View, sound: View | undefined) =>
  compared('readings', READINGS, now, sound).map(({ name: reading, ...rest }) => ({
    reading,
    ...rest,
  }))

/** What no gauge shows, now and when sound. */
export const comparedPerformance = (now: View, sound: View | undefined) =>
  compared('performance', PERFORMANCE, now, sound).map(({ name: figure, ...rest }) => ({
    figure,
    ...rest,
  }))
