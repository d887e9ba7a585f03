import { CalcError } from '../errors.ts'
import type { Kind, Unit } from './kinds.ts'
import { Quantity, requireUnit } from './quantity.ts'

export const UNIT_SYSTEMS = ['us', 'si', 'both'] as const
export type UnitSystem = (typeof UNIT_SYSTEMS)[number]

export interface ShownValue {
  readonly value: number
  readonly unit: string
  /** Expanded uncertainty, coverage factor 2, same unit. */
  readonly plusMinus?: number | undefined
}

export interface ShownQuantity extends ShownValue {
  /** The same in the other unit system, when both are asked for. */
  readonly also?: ShownValue | undefined
}

interface Presentation {
  readonly units: UnitSystem
  /** Full precision instead of rounding to what the uncertainty supports. */
  readonly precise: boolean
}

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

const CHOICES: Readonly<Record<Kind, { readonly us: Chooser; readonly si: Chooser }>> = {
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

/** A quantity as people read it, in the asked unit system. */
export function show(quantity: Quantity, { units, precise }: Presentation): ShownQuantity {
  const { kind, si, shownIn } = quantity
  const choices = CHOICES[kind]
  if (shownIn !== undefined) {
    const unit = requireUnit(kind, shownIn)
    const chosen = [choices.us(si), choices.si(si)].find(([symbol]) => symbol === unit.symbol)
    return render(quantity, unit, chosen?.[1] ?? figuresFor(si, unit), precise)
  }
  const inSystem = (system: 'us' | 'si') => {
    const [symbol, decimals] = choices[system](sizeOf(quantity))
    return render(quantity, requireUnit(kind, symbol), decimals, precise)
  }
  if (units !== 'both') return inSystem(units)
  const shown = inSystem('us')
  const also = inSystem('si')
  return also.unit === shown.unit ? shown : { ...shown, also }
}

/** What the unit is chosen by: 20 micron ±1 psi is a matter of psi. A gauge pressure's sign matters more. */
function sizeOf({ kind, si, plusMinus }: Quantity): number {
  return kind === 'gaugePressure' ? si : Math.max(Math.abs(si), plusMinus ?? 0)
}

/** Five significant figures: a unit that somebody asked for by name gets enough to convert back. */
function figuresFor(si: number, unit: Unit): number {
  const magnitude = Math.abs((si - unit.offset) / unit.factor)
  return magnitude === 0 ? 2 : Math.min(Math.max(4 - Math.floor(Math.log10(magnitude)), 0), 12)
}

function render(quantity: Quantity, unit: Unit, decimals: number, precise: boolean): ShownValue {
  const value = (quantity.si - unit.offset) / unit.factor
  const plusMinus =
    quantity.plusMinus === undefined ? undefined : quantity.plusMinus / Math.abs(unit.factor)
  if (precise)
    return frame(tidy(value), unit, plusMinus === undefined ? undefined : tidy(plusMinus))
  const places = plusMinus === undefined ? decimals : decimalsFor(plusMinus, decimals)
  return frame(
    roundTo(value, places),
    unit,
    plusMinus === undefined ? undefined : roundUp(plusMinus, places),
  )
}

/** A finite SI value can still pass the largest number when it is turned into a small unit. */
const frame = (value: number, unit: Unit, plusMinus: number | undefined): ShownValue =>
  plusMinus === undefined
    ? { value: finite(value), unit: unit.symbol }
    : { value: finite(value), unit: unit.symbol, plusMinus: finite(plusMinus) }

/** Nothing that is shown stands for "no number". @throws {CalcError} `out-of-range` */
function finite(value: number): number {
  if (Number.isFinite(value)) return value
  throw new CalcError('out-of-range', 'A figure of the answer is too large to be a number.', {
    hint: 'Check the input for a value far outside what the trade meets.',
  })
}

/** One digit of the uncertainty, two when it begins with 1 or 2 (GUM 7.2.6 asks for two at most). */
function decimalsFor(plusMinus: number, fallback: number): number {
  if (plusMinus === 0) return fallback
  const exponent = Math.floor(Math.log10(plusMinus))
  const leading = plusMinus / 10 ** exponent
  return Math.min(Math.max(leading < 3 ? 1 - exponent : -exponent, 0), 15)
}

const roundTo = (value: number, decimals: number) => {
  const rounded = Number(value.toFixed(decimals))
  return rounded === 0 ? 0 : rounded
}

/** An uncertainty is never rounded to less than half of itself, nor to nothing. */
const roundUp = (value: number, decimals: number) => {
  const step = 10 ** -decimals
  return roundTo(Math.max(Math.ceil(value / step - 0.05) * step, value === 0 ? 0 : step), decimals)
}

/** Cuts the last digits, which conversion factors leave as noise. */
const tidy = (value: number) => Number(value.toPrecision(14))

/** What becomes of a computed tree when every quantity in it is shown. */
export type Shown<T> = T extends Quantity
  ? ShownQuantity
  : T extends readonly (infer E)[]
    ? readonly Shown<E>[]
    : T extends object
      ? { [P in keyof T]: Shown<T[P]> }
      : T

/** Replaces every {@link Quantity} in plain data by its shown form, and leaves out what is undefined. */
export function showAll<T>(tree: T, presentation: Presentation): Shown<T> {
  return showAny(tree, presentation) as Shown<T>
}

function showAny(tree: unknown, presentation: Presentation): unknown {
  if (tree instanceof Quantity) return show(tree, presentation)
  if (Array.isArray(tree)) return tree.map((item) => showAny(item, presentation))
  if (typeof tree === 'number') return finite(tree)
  if (tree === null || typeof tree !== 'object') return tree
  return Object.fromEntries(
    Object.entries(tree)
      .filter(([, value]) => value !== undefined)
      .map(([key, value]) => [key, showAny(value, presentation)]),
  )
}
