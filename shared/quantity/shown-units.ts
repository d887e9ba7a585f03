import type { Kind } from './kinds.ts'
import { requireUnit } from './quantity.ts'

/** Unit and decimals for a figure without a stated uncertainty. */
type Choice = readonly [unit: string, decimals: number]
type Chooser = (si: number) => Choice
const always =
  (unit: string, decimals: number): Chooser =>
  () => [unit, decimals]

const significant = (kind: Kind, unit: string, digits: number): Chooser => {
  const { factor } = requireUnit(kind, unit)
  return (si) => {
    const magnitude = Math.abs(si / factor)
    const decimals = magnitude === 0 ? digits : digits - 1 - Math.floor(Math.log10(magnitude))
    return [unit, Math.min(Math.max(decimals, 0), 15)]
  }
}

const OUNCE = requireUnit('mass', 'oz').factor
const DEEP_VACUUM_PA = 3_000

/** What each kind of quantity is shown in, by unit system and size (SI). */
export const CHOICES: Readonly<Record<Kind, { readonly us: Chooser; readonly si: Chooser }>> = {
  temperature: { us: always('°F', 1), si: always('°C', 1) },
  temperatureDifference: { us: always('°F', 1), si: always('K', 1) },
  gaugePressure: {
    us: (si) => (si < 0 ? ['inHg vac', 2] : ['psig', 1]),
    si: always('kPa g', 1),
  },
  absolutePressure: {
    us: (si) => (si < DEEP_VACUUM_PA ? ['micron', 0] : ['psia', 1]),
    si: (si) => (si < DEEP_VACUUM_PA ? ['Pa abs', 1] : ['kPa abs', 1]),
  },
  barometricPressure: { us: always('inHg', 2), si: always('kPa', 2) },
  pressureDifference: {
    us: (si) => (Math.abs(si) < 500 ? ['micron', 0] : ['psi', 2]),
    si: (si) => (Math.abs(si) < 500 ? ['Pa', 1] : ['kPa', 2]),
  },
  mass: {
    us: (si) => (Math.abs(si) < 32 * OUNCE ? ['oz', 2] : ['lb', 3]),
    si: (si) => (Math.abs(si) < 2 ? ['g', 1] : ['kg', 3]),
  },
  volume: {
    us: (si) => (Math.abs(si) < 0.004 ? ['fl oz', 2] : ['gal', 2]),
    si: (si) => (Math.abs(si) < 0.002 ? ['mL', 1] : ['L', 2]),
  },
  length: {
    us: (si) => (Math.abs(si) < 0.6 ? ['in', 3] : ['ft', 2]),
    si: (si) => (Math.abs(si) < 0.5 ? ['mm', 2] : ['m', 2]),
  },
  altitude: { us: always('ft', 0), si: always('m', 0) },
  duration: { us: durationChoice, si: durationChoice },
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
  specificEnergy: { us: always('Btu/lb', 2), si: always('kJ/kg', 2) },
  specificEntropy: { us: always('Btu/(lb °F)', 4), si: always('kJ/(kg K)', 4) },
  speed: { us: always('ft/s', 2), si: always('m/s', 2) },
  power: { us: significant('power', 'Btu/h', 3), si: significant('power', 'kW', 3) },
  fraction: {
    us: (si) => (si !== 0 && Math.abs(si) < 1e-3 ? ['ppm', 0] : ['%', 1]),
    si: (si) => (si !== 0 && Math.abs(si) < 1e-3 ? ['ppm', 0] : ['%', 1]),
  },
}

function durationChoice(si: number): Choice {
  const magnitude = Math.abs(si)
  if (magnitude < 120) return ['s', 0]
  if (magnitude < 7_200) return ['min', 1]
  return magnitude < 172_800 ? ['h', 1] : ['d', 1]
}

function massFlowChoice(slow: string, fast: string): Chooser {
  return (si) => {
    const unit = Math.abs(si) < 1e-6 ? slow : fast
    return significant('massFlow', unit, 3)(si)
  }
}
