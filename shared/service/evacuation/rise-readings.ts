import { CalcError } from '../../errors.ts'
import type { GaugeScatter, RisePoint } from './rise-shape.ts'
import type { RiseReading } from './rise-view.ts'

/** Inflow from the air stays constant while the pressure inside is below about half of outside. */
const CHOKED = 0.5
/** Expected scatter as a share of the reading, before the readings say what it is (judgement). */
const SHARE = 0.003

/** @throws {CalcError} `bad-input` for fewer than two readings, or times that do not rise. */
export function checkTimes(points: readonly RisePoint[]): void {
  if (points.length < 2) {
    throw new CalcError('bad-input', 'A rise test needs at least two readings.', {
      path: ['rise'],
      hint: 'Give time and pressure of each reading; five or more show a shape.',
    })
  }
  points.forEach(({ timeS }, index) => {
    const before = points[index - 1]
    if (before && !(timeS > before.timeS)) {
      throw new CalcError('bad-input', `Reading ${index + 1} is not later than the one before.`, {
        path: ['rise', index, 'time'],
        hint: 'Give the readings in order, each with the time since the valve was closed.',
      })
    }
  })
}

/** Readings below half of the barometer, where the inflow is constant; all of them when too few are. */
export function choked({ points, barometerPa }: RiseReading): readonly RisePoint[] {
  const index = points.findIndex(({ pressurePa }) => pressurePa > CHOKED * barometerPa)
  const below = index < 0 ? points : points.slice(0, index)
  return below.length >= 2 ? below : points.slice(0, 2)
}

/** The fits want four points; fewer are repeated, and the verdict then never rests on a shape. */
export function padded(points: readonly RisePoint[]): readonly RisePoint[] {
  const last = points.at(-1)
  if (points.length >= 4 || !last) return points
  const extra = Array.from({ length: 4 - points.length }, () => last)
  return [...points, ...extra]
}

/** Known scatter counts as twenty readings; otherwise a weak expectation from the steps of the readings. */
export function scatterOf(
  points: readonly RisePoint[],
  { scatterPa, proportional }: RiseReading,
): GaugeScatter {
  if (scatterPa !== undefined && scatterPa > 0) return { sigmaOf: () => scatterPa, weight: 20 }
  const pressures = points.map(({ pressurePa }) => pressurePa)
  const steps = pressures
    .slice(1)
    .map((value, index) => Math.abs(value - (pressures[index] ?? value)))
    .filter((step) => step > 1e-9)
  const finest = Math.max(steps.length === 0 ? 0 : Math.min(...steps) / Math.sqrt(12), 0.05)
  const mean = pressures.reduce((sum, value) => sum + value, 0) / Math.max(pressures.length, 1)
  return {
    sigmaOf: (pressurePa) => Math.hypot(finest, SHARE * (proportional ? pressurePa : mean)),
    weight: 2,
  }
}
