import * as z from 'zod'
import data from '../../../data/service/retrofit.json' with { type: 'json' }
import { under } from '../../errors.ts'
import { type Place, type PlaceGiven, resolvePlace } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import {
  budget,
  pressureDifference,
  propagate,
  type Quantity,
  quantity,
  quantityOut,
  say,
  temperature,
  type Uncertain,
} from '../../quantity/index.ts'
import {
  propertyUncertainty,
  type Refrigerant,
  saturationPressure,
} from '../../refrigerant/index.ts'
import { propertySources, propertyWarnings } from '../property-sources.ts'
import { statementOut } from '../statement.ts'

export const highSideOut = z.strictObject({
  condensingTemperature: quantityOut.describe('At which both are compared'),
  before: quantityOut.describe('High side with the old refrigerant'),
  after: quantityOut.describe('High side with the new one'),
  rise: quantityOut.describe('At the same condensing temperature: computed'),
  published: z.array(statementOut).describe('What makers measured'),
})

/** Where, and at which condensing temperature. */
interface Input extends PlaceGiven {
  readonly condensingTemperature?: Quantity<'temperature'> | undefined
}

export const CONDENSING_K = quantity('temperature', data.condensing.value, data.condensing.unit).si

/** Both refrigerants at one condensing temperature; the place only turns them into gauge pressures. */
export function highSide(old: Refrigerant, fresh: Refrigerant, input: Input, notes: Notes) {
  const given = input.condensingTemperature
  const place = resolvePlace(input)
  notes.assumptions.push(...place.assumptions)
  notes.warnings.push(...place.warnings)
  notes.sources.push(...place.sources)
  const at = given ?? temperature(CONDENSING_K)
  if (!given) {
    notes.assumptions.push({
      field: 'condensingTemperature',
      taken: say(at),
      because: 'none was given; about 40 °F above a 90 °F day',
    })
  }
  const [before, after] = [old, fresh].map((r) => condensing(r, at)) as [Pressure, Pressure]
  notes.sources.push(...propertySources(old), ...propertySources(fresh))
  notes.warnings.push(...propertyWarnings(old), ...propertyWarnings(fresh))
  const rise = budget(
    [
      { name: 'condensing temperature', si: at.si, plusMinus: at.plusMinus },
      { name: 'data of the old refrigerant', si: 0, plusMinus: before.dataPa },
      { name: 'data of the new refrigerant', si: 0, plusMinus: after.dataPa },
    ],
    (...[kelvin = 0, oldPa = 0, newPa = 0]) =>
      saturationPressure(fresh, kelvin, 'bubble') -
      saturationPressure(old, kelvin, 'bubble') +
      newPa -
      oldPa,
  )
  const shown = pressureDifference(rise.si, rise.plusMinus)
  notes.steps.push({
    what: 'Rise of the high side at the same condensing temperature',
    formula: 'saturation pressure of the new refrigerant − that of the old',
    values: { condensingTemperature: at },
    gives: shown,
  })
  return {
    condensingTemperature: at,
    before: gaugeOf(before, place),
    after: gaugeOf(after, place),
    rise: shown,
  }
}

/** Bubble pressure, Pa, with its ±, and that part of it that the data brings. */
interface Pressure extends Uncertain {
  readonly dataPa: number
}

function condensing(r: Refrigerant, at: Quantity<'temperature'>): Pressure {
  return under('condensingTemperature', () => {
    const { si, plusMinus } = propagate([at], (kelvin) => saturationPressure(r, kelvin, 'bubble'))
    const dataPa = si * propertyUncertainty(r, at.si, 'bubble').pressure
    return { si, plusMinus: Math.hypot(plusMinus ?? 0, dataPa), dataPa }
  })
}

const gaugeOf = ({ si, plusMinus }: Pressure, place: Place) => place.gauge(si, plusMinus)
