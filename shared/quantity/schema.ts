import * as z from 'zod'
import { CalcError } from '../errors.ts'
import { KIND_NAMES, type Kind } from './kinds.ts'
import { parseQuantity, resolveUnit } from './parse.ts'
import { physical } from './physical.ts'
import type { ShownQuantity } from './present.ts'
import { Quantity } from './quantity.ts'
import { type Accepted, missingUnit, wouldDo } from './unit-refusal.ts'

/** A figure in one unit, as it is given and as it is shown. */
const pair = {
  value: z.number(),
  unit: z.string(),
  plusMinus: z.number().nonnegative().optional(),
}
const valueAndUnit = z.strictObject(pair)

/** Reads a quantity from text or from `{ value, unit, plusMinus }`. @throws {CalcError} as {@link parseQuantity}. */
export function readQuantity<K extends Kind>(raw: unknown, accepted: Accepted<K>): Quantity<K> {
  if (typeof raw === 'string') return parseQuantity(raw, accepted)
  if (typeof raw === 'number') throw missingUnit(String(raw), accepted)
  const parsed = valueAndUnit.safeParse(raw)
  if (!parsed.success) {
    throw new CalcError(
      raw === undefined ? 'missing-input' : 'bad-quantity',
      raw === undefined
        ? `This needs ${accepted.map((kind) => KIND_NAMES[kind].name).join(' or ')}, and nothing was given.`
        : 'A quantity is a text with its unit, or an object with value and unit.',
      { hint: wouldDo(accepted) },
    )
  }
  const { value, unit, plusMinus } = parsed.data
  if (unit.trim() === '') throw missingUnit(String(value), accepted)
  // As the parser does, so that both spellings get the same answers to a wrong unit.
  const text = `${value} ${unit}`
  const found = resolveUnit(unit, text, accepted)
  const width = plusMinus === undefined ? undefined : Math.abs(plusMinus * found.unit.factor)
  const si = value * found.unit.factor + found.unit.offset
  return physical(new Quantity(found.kind, si, width, undefined, found.unit.symbol), text)
}

/** Puts a {@link CalcError} on the zod issue list without losing its code and hint. */
export function addCalcIssue(
  context: {
    addIssue(issue: {
      code: 'custom'
      message: string
      params: object
      path?: (string | number)[]
    }): void
  },
  error: CalcError,
): void {
  context.addIssue({
    code: 'custom',
    message: error.message,
    params: { calc: { code: error.code, hint: error.hint } },
    path: [...error.path],
  })
}

const schemaOf = <K extends Kind>(id: string, description: string, accepted: Accepted<K>) =>
  z
    .unknown()
    .meta({
      id,
      description: `${description}: text with its unit, or an object with value and unit. A bare number is refused.`,
      anyOf: [
        { type: 'string', minLength: 1, maxLength: 80 },
        {
          type: 'object',
          properties: {
            value: { type: 'number' },
            unit: { type: 'string' },
            plusMinus: { type: 'number', minimum: 0 },
          },
          required: ['value', 'unit'],
          additionalProperties: false,
        },
      ],
      examples: accepted.flatMap((kind) => KIND_NAMES[kind].examples),
    })
    .transform(taking(accepted))

function taking<K extends Kind>(accepted: Accepted<K>) {
  const take = (raw: unknown, context: Parameters<typeof addCalcIssue>[0]): Quantity<K> => {
    try {
      return readQuantity(raw, accepted)
    } catch (error) {
      if (!(error instanceof CalcError)) throw error
      addCalcIssue(context, error)
      return z.NEVER
    }
  }
  takenBy.set(take, accepted)
  return take
}

/** Which kinds each transformation of the schemas below takes, for whoever reads without the schemas. */
export const takenBy = new WeakMap<object, Accepted<Kind>>()

/** Input schemas, one a kind. `pressure` takes gauge and absolute readings alike. */
export const quantityIn = {
  temperature: schemaOf('Temperature', 'A temperature', ['temperature']),
  temperatureDifference: schemaOf('TemperatureDifference', 'A difference of two temperatures', [
    'temperatureDifference',
  ]),
  pressure: schemaOf('Pressure', 'A pressure, gauge or absolute', [
    'gaugePressure',
    'absolutePressure',
  ]),
  barometricPressure: schemaOf(
    'BarometricPressure',
    'Pressure of the air at the place, not reduced to sea level',
    ['barometricPressure'],
  ),
  pressureDifference: schemaOf('PressureDifference', 'A difference of two pressures', [
    'pressureDifference',
  ]),
  ratedPressure: schemaOf('RatedPressure', 'A pressure stamped on a vessel, which means gauge', [
    'gaugePressure',
    'pressureDifference',
  ]),
  mass: schemaOf('Mass', 'A mass', ['mass']),
  volume: schemaOf('Volume', 'A volume', ['volume']),
  length: schemaOf('Length', 'A length', ['length']),
  altitude: schemaOf('Altitude', 'A height above sea level, negative below it', ['altitude']),
  duration: schemaOf('Duration', 'A time span', ['duration']),
  density: schemaOf('Density', 'A density', ['density']),
  massPerLength: schemaOf('MassPerLength', 'A mass per length', ['massPerLength']),
  volumeFlow: schemaOf('VolumeFlow', 'A volume flow', ['volumeFlow']),
  massFlow: schemaOf('MassFlow', 'A mass flow', ['massFlow']),
  leakRate: schemaOf('LeakRate', 'A leak rate', ['leakRate']),
  fraction: schemaOf('Fraction', 'A percentage', ['fraction']),
  /** A mass, or a share of a mass that is known. */
  amount: schemaOf('Amount', 'A mass, or a percentage of the whole', ['mass', 'fraction']),
  /** How far a fault goes, in its own unit. */
  faultSize: schemaOf('FaultSize', 'A percentage, a pressure difference or a mass', [
    'fraction',
    'pressureDifference',
    'mass',
  ]),
}

/** Output schema of any quantity. */
export const quantityOut: z.ZodType<ShownQuantity> = z
  .strictObject({ ...pair, also: valueAndUnit.optional() })
  .meta({
    id: 'Quantity',
    description:
      'A figure with its unit; plusMinus is its expanded uncertainty (coverage factor 2); also holds the other unit system.',
  })
