import { CalcError } from '../errors.ts'
import { findUnit, KIND_NAMES, type Kind } from './kinds.ts'
import { wouldDo } from './unit-refusal.ts'

/**
 * A number that knows what it is, in SI, with its expanded uncertainty where it has one.
 *
 * `plusMinus` is the half-width of a 95 % interval (coverage factor 2, GUM JCGM 100:2008, 6.2), in
 * the same SI unit. `shownIn` asks for one unit of display, whatever unit system is chosen; `sizedAs`
 * for the unit that a figure of that size (SI) would be shown in.
 */
export class Quantity<K extends Kind = Kind> {
  readonly kind: K
  readonly si: number
  readonly plusMinus: number | undefined
  readonly shownIn: string | undefined
  /** Symbol of the unit that a person wrote it in. */
  readonly written: string | undefined
  readonly sizedAs: number | undefined
  #presentation: unknown
  #make: unknown
  #shown: unknown

  constructor(
    kind: K,
    si: number,
    plusMinus?: number,
    shownIn?: string,
    written?: string,
    sizedAs?: number,
  ) {
    if (!Number.isFinite(si) || !Number.isFinite(plusMinus ?? 0)) {
      throw new CalcError(
        'out-of-range',
        `The figure for ${KIND_NAMES[kind].name} is not finite.`,
        {
          hint: 'Check the readings that lead to it for a value far outside what the trade meets.',
        },
      )
    }
    this.kind = kind
    this.si = si
    this.plusMinus = plusMinus
    this.shownIn = shownIn
    this.written = written
    this.sizedAs = sizedAs
  }

  /** The same quantity, to be shown in `unit`. */
  in(unit: string | undefined): Quantity<K> {
    if (unit === this.shownIn) return this
    return new Quantity(this.kind, this.si, this.plusMinus, unit, this.written, this.sizedAs)
  }

  /** The same quantity with the expanded uncertainty `plusMinus` (SI). */
  within(plusMinus: number | undefined): Quantity<K> {
    return new Quantity(this.kind, this.si, plusMinus, this.shownIn, this.written, this.sizedAs)
  }

  /** The same quantity in the units that one of the size `si` (SI) is shown in: 0 psi beside 50 psi. */
  sized(si: number): Quantity<K> {
    return new Quantity(this.kind, this.si, this.plusMinus, this.shownIn, this.written, si)
  }

  /** What `make` gives of this quantity, made once: an answer shows the same figure in several places. */
  once<P extends object, T>(presentation: P, make: (quantity: this, presentation: P) => T): T {
    if (this.#presentation !== presentation || this.#make !== make) {
      this.#shown = make(this, presentation)
      this.#presentation = presentation
      this.#make = make
    }
    return this.#shown as T
  }

  /** Value in `unit`; @throws {CalcError} `wrong-kind` when that is no unit of this kind. */
  to(unit: string): number {
    const found = requireUnit(this.kind, unit)
    return (this.si - found.offset) / found.factor
  }
}

/** @throws {CalcError} `wrong-kind` when `text` is no unit of `kind`. */
export function requireUnit(kind: Kind, text: string) {
  const found = findUnit(kind, text)
  if (!found) {
    throw new CalcError('wrong-kind', `"${text}" is not a unit of ${KIND_NAMES[kind].name}.`, {
      hint: wouldDo([kind]),
    })
  }
  return found
}

/** `quantity('mass', 2, 'lb')`: a quantity from a number in a unit. */
export function quantity<K extends Kind>(kind: K, value: number, unit: string, plusMinus?: number) {
  const { factor, offset } = requireUnit(kind, unit)
  const halfWidth = plusMinus === undefined ? undefined : Math.abs(plusMinus * factor)
  return new Quantity<K>(kind, value * factor + offset, halfWidth)
}

const maker =
  <K extends Kind>(kind: K) =>
  (si: number, plusMinus?: number) =>
    new Quantity<K>(kind, si, plusMinus)

/** Temperature, K. */
export const temperature = maker('temperature')
/** Difference of two temperatures, K. */
export const temperatureDifference = maker('temperatureDifference')
/** Pressure above the barometer, Pa (negative in vacuum). */
export const gaugePressure = maker('gaugePressure')
/** Pressure above a perfect vacuum, Pa. */
export const absolutePressure = maker('absolutePressure')
/** Difference of two pressures, Pa. */
export const pressureDifference = maker('pressureDifference')
/** Mass, kg. */
export const mass = maker('mass')
/** Volume, m³. */
export const volume = maker('volume')
/** Length, m. */
export const length = maker('length')
/** Time, s. */
export const duration = maker('duration')
/** Density, kg/m³. */
export const density = maker('density')
/** Height above sea level, m; negative below it. */
export const altitude = maker('altitude')
/** Mass per length, kg/m. */
export const massPerLength = maker('massPerLength')
/** Volume flow, m³/s. */
export const volumeFlow = maker('volumeFlow')
/** Mass flow, kg/s. */
export const massFlow = maker('massFlow')
/** Leak rate, Pa·m³/s. */
export const leakRate = maker('leakRate')
/** Energy per mass, J/kg. */
export const specificEnergy = maker('specificEnergy')
/** Entropy per mass, J/(kg·K). */
export const specificEntropy = maker('specificEntropy')
/** Speed, m/s. */
export const speed = maker('speed')
/** Power, W. */
export const power = maker('power')
/** Fraction of one (0.25 is 25 %). */
export const fraction = maker('fraction')
/** Pressure of the surrounding air, Pa absolute. */
export const barometricPressure = maker('barometricPressure')
