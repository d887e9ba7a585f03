import { CalcError } from '../../errors.ts'
import { GAS_CONSTANT } from '../../gas-constants.ts'
import type { Hose } from '../../physics/hose.ts'
import { AIR, type Gas, inletPressure } from '../../physics/hose-flow.ts'

/** A pump and the hoses between it and the system, pump end first. */
export interface PumpLine {
  /** m³/s at the pump's inlet. */
  readonly displacement: number
  /** Lowest pressure that the pump reaches by itself, Pa. */
  readonly ultimatePa: number
  readonly hoses: readonly Hose[]
  readonly temperatureK: number
}

const STEPS = 256
const MOST_HALVINGS = 200

/** Throughput that the pump takes, Pa·m³/s, and the system pressure that drives it, for a pressure at the pump. */
function atPump(line: PumpLine, gas: Gas, abovePa: number) {
  const throughput = line.displacement * abovePa
  const systemPa = line.hoses.reduce(
    (outletPa, hose) => inletPressure(hose, gas, line.temperatureK, throughput, outletPa),
    line.ultimatePa + abovePa,
  )
  return { throughput, systemPa }
}

/**
 * Throughput at a system pressure, Pa·m³/s.
 *
 * The pressure at the pump is found by halving: the system pressure rises with it.
 *
 * @throws {CalcError} `out-of-range` at or below the pump's ultimate pressure.
 */
export function throughputAt(line: PumpLine, systemPa: number, gas: Gas = AIR): number {
  if (!(systemPa > line.ultimatePa)) {
    throw new CalcError(
      'out-of-range',
      `The pump ends at ${line.ultimatePa.toFixed(1)} Pa and cannot hold the system at ${systemPa.toFixed(1)} Pa.`,
      { hint: 'Ask for a target above the ultimate pressure of the pump, or use a better pump.' },
    )
  }
  // logarithms of the pressure above the pump's end: the span is many decades
  let low = Math.log((systemPa - line.ultimatePa) * 1e-12)
  let high = Math.log(systemPa - line.ultimatePa)
  for (let turn = 0; turn < MOST_HALVINGS; turn += 1) {
    const middle = (low + high) / 2
    if (high - low < 1e-12) return atPump(line, gas, Math.exp(middle)).throughput
    if (atPump(line, gas, Math.exp(middle)).systemPa < systemPa) low = middle
    else high = middle
  }
  throw new CalcError('no-convergence', 'The flow through the hoses was not found.', {
    hint: 'Check bore and length of the hoses.',
  })
}

/**
 * Time to pump a volume of air from one pressure down to another, s.
 *
 * t = ∫ V dp / (throughput at p), by Simpson's rule over the logarithm of the pressure above the pump's
 * ultimate. Gas only: no water, nothing that comes out of oil or walls, no leak.
 */
export function pullDownTime(
  line: PumpLine,
  volumeM3: number,
  startPa: number,
  targetPa: number,
): number {
  const from = Math.log(targetPa - line.ultimatePa)
  const to = Math.log(startPa - line.ultimatePa)
  const width = (to - from) / STEPS
  let sum = 0
  for (let index = 0; index <= STEPS; index += 1) {
    const abovePa = Math.exp(from + index * width)
    const weight = index === 0 || index === STEPS ? 1 : index % 2 === 1 ? 4 : 2
    sum += (weight * abovePa) / throughputAt(line, line.ultimatePa + abovePa)
  }
  return (volumeM3 * sum * width) / 3
}

/** The same with the pump straight on the system, s: V/S · ln(p1/p2) above the ultimate. */
export const pumpAloneTime = (
  { displacement, ultimatePa }: PumpLine,
  volumeM3: number,
  startPa: number,
  targetPa: number,
) => (volumeM3 / displacement) * Math.log((startPa - ultimatePa) / (targetPa - ultimatePa))

/**
 * System pressure below which the hoses take away more than half of the pump's speed, Pa;
 * undefined where they never do within `highestPa`, or always.
 */
export function hoseRulesBelow(line: PumpLine, highestPa: number): number | undefined {
  const halved = (systemPa: number) =>
    throughputAt(line, systemPa) < (line.displacement * (systemPa - line.ultimatePa)) / 2
  let low = Math.log(Math.max(line.ultimatePa * 1.0001, 1e-3))
  let high = Math.log(highestPa)
  if (!halved(Math.exp(low))) return undefined
  if (halved(highestPa)) return highestPa
  for (let turn = 0; turn < 60; turn += 1) {
    const middle = (low + high) / 2
    if (halved(Math.exp(middle))) low = middle
    else high = middle
  }
  return Math.exp((low + high) / 2)
}

/**
 * Least time in which the line carries off a mass of water as vapour at its own vapour pressure, s.
 * Heat for the evaporation is taken as there: it seldom is, so real drying takes longer.
 */
export function dryingTime(line: PumpLine, waterKg: number, vapourPa: number, vapour: Gas): number {
  const amount = (waterKg / vapour.molarMass) * GAS_CONSTANT * line.temperatureK
  return amount / throughputAt(line, vapourPa, vapour)
}
