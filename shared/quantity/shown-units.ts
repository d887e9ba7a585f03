import { decadeOf } from './decade.ts'
import type { Kind } from './kinds.ts'
import { requireUnit } from './quantity.ts'
import type { Unit } from './units.ts'

/** Unit and decimals for a figure without a stated uncertainty. */
export interface Choice {
  readonly unit: Unit
  readonly decimals: number
}
type Chooser = (si: number) => Choice

/** One unit and its decimals, looked up once. */
const fixed = (kind: Kind, symbol: string, decimals: number): Choice => ({
  unit: requireUnit(kind, symbol),
  decimals,
})

const always = (kind: Kind, symbol: string, decimals: number): Chooser => {
  const choice = fixed(kind, symbol, decimals)
  return () => choice
}

type Fixed = readonly [symbol: string, decimals: number]

/** The small unit below a size (SI), regardless of the sign, the large one from there on. */
const bySize = (kind: Kind, below: number, small: Fixed, large: Fixed): Chooser => {
  const [lesser, greater] = [fixed(kind, ...small), fixed(kind, ...large)]
  return (si) => (Math.abs(si) < below ? lesser : greater)
}

const significant = (kind: Kind, symbol: string, digits: number): Chooser => {
  const unit = requireUnit(kind, symbol)
  return (si) => {
    const magnitude = Math.abs(si / unit.factor)
    const decimals = magnitude === 0 ? digits : digits - 1 - decadeOf(magnitude)
    return { unit, decimals: Math.min(Math.max(decimals, 0), 15) }
  }
}

const OUNCE = requireUnit('mass', 'oz').factor
const DEEP_VACUUM_PA = 3_000

/** What each kind of quantity is shown in, by unit system and size (SI). */
export const CHOICES: Readonly<Record<Kind, { readonly us: Chooser; readonly si: Chooser }>> = {
  temperature: { us: always('temperature', '°F', 1), si: always('temperature', '°C', 1) },
  temperatureDifference: {
    us: always('temperatureDifference', '°F', 1),
    si: always('temperatureDifference', 'K', 1),
  },
  gaugePressure: { us: gaugeChoice(), si: always('gaugePressure', 'kPa g', 1) },
  absolutePressure: {
    us: bySize('absolutePressure', DEEP_VACUUM_PA, ['micron', 0], ['psia', 1]),
    si: bySize('absolutePressure', DEEP_VACUUM_PA, ['Pa abs', 1], ['kPa abs', 1]),
  },
  barometricPressure: {
    us: always('barometricPressure', 'inHg', 2),
    si: always('barometricPressure', 'kPa', 2),
  },
  pressureDifference: {
    us: bySize('pressureDifference', 500, ['micron', 0], ['psi', 2]),
    si: bySize('pressureDifference', 500, ['Pa', 1], ['kPa', 2]),
  },
  mass: {
    us: bySize('mass', 32 * OUNCE, ['oz', 2], ['lb', 3]),
    si: bySize('mass', 2, ['g', 1], ['kg', 3]),
  },
  volume: {
    us: bySize('volume', 0.004, ['fl oz', 2], ['gal', 2]),
    si: bySize('volume', 0.002, ['mL', 1], ['L', 2]),
  },
  length: {
    us: bySize('length', 0.6, ['in', 3], ['ft', 2]),
    si: bySize('length', 0.5, ['mm', 2], ['m', 2]),
  },
  altitude: { us: always('altitude', 'ft', 0), si: always('altitude', 'm', 0) },
  duration: { us: durationChoice(), si: durationChoice() },
  density: { us: significant('density', 'lb/ft3', 5), si: significant('density', 'kg/m3', 5) },
  massPerLength: {
    us: significant('massPerLength', 'oz/ft', 3),
    si: significant('massPerLength', 'g/m', 3),
  },
  volumeFlow: {
    us: significant('volumeFlow', 'cfm', 3),
    si: significant('volumeFlow', 'L/min', 3),
  },
  massFlow: { us: massFlowChoice('oz/yr', 'oz/min'), si: massFlowChoice('g/yr', 'g/min') },
  leakRate: {
    us: significant('leakRate', 'Pa m3/s', 3),
    si: significant('leakRate', 'Pa m3/s', 3),
  },
  specificEnergy: {
    us: always('specificEnergy', 'Btu/lb', 2),
    si: always('specificEnergy', 'kJ/kg', 2),
  },
  specificEntropy: {
    us: always('specificEntropy', 'Btu/(lb °F)', 4),
    si: always('specificEntropy', 'kJ/(kg K)', 4),
  },
  speed: { us: always('speed', 'ft/s', 2), si: always('speed', 'm/s', 2) },
  power: { us: significant('power', 'Btu/h', 3), si: significant('power', 'kW', 3) },
  fraction: { us: fractionChoice(), si: fractionChoice() },
}

function gaugeChoice(): Chooser {
  const [vacuum, gauge] = [fixed('gaugePressure', 'inHg vac', 2), fixed('gaugePressure', 'psig', 1)]
  return (si) => (si < 0 ? vacuum : gauge)
}

function fractionChoice(): Chooser {
  const [ppm, percent] = [fixed('fraction', 'ppm', 0), fixed('fraction', '%', 1)]
  return (si) => (si !== 0 && Math.abs(si) < 1e-3 ? ppm : percent)
}

function durationChoice(): Chooser {
  const of = (symbol: string, decimals: number) => fixed('duration', symbol, decimals)
  const [s, min, h, d] = [of('s', 0), of('min', 1), of('h', 1), of('d', 1)]
  return (si) => {
    const magnitude = Math.abs(si)
    if (magnitude < 120) return s
    if (magnitude < 7_200) return min
    return magnitude < 172_800 ? h : d
  }
}

function massFlowChoice(slow: string, fast: string): Chooser {
  const [slowly, quickly] = [significant('massFlow', slow, 3), significant('massFlow', fast, 3)]
  return (si) => (Math.abs(si) < 1e-6 ? slowly : quickly)(si)
}
