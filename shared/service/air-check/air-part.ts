import * as z from 'zod'
import type { Notes } from '../../notes.ts'
import type { AtRest } from '../../physics/at-rest.ts'
import {
  fraction,
  mass,
  pressureDifference,
  type Quantity,
  quantityOut,
  type Uncertain,
  volume,
  widthOf,
} from '../../quantity/index.ts'
import { airMass, airShare } from './air.ts'

export const airOut = z.strictObject({
  partialPressure: quantityOut,
  ofVapour: quantityOut.describe('Share of air in the vapour, by amount'),
  mass: quantityOut.optional(),
  vapourSpace: quantityOut.optional(),
  isUpperBound: z.boolean().optional().describe('The contents were not given'),
  byMass: quantityOut.optional().describe('Air over refrigerant, by mass'),
})

interface Container {
  readonly volume?: Quantity<'volume'> | undefined
  readonly contents?: Quantity<'mass'> | undefined
}

/**
 * How much air the excess of pressure stands for.
 *
 * Without the contents the whole volume counts as vapour space, which makes the mass an upper bound.
 */
export function airOf(
  found: AtRest,
  { volume: inner, contents }: Container,
  pressure: Uncertain,
  temperatureK: number,
  excess: Uncertain,
  notes: Notes,
) {
  const share = airShare(excess, pressure)
  const base = {
    partialPressure: pressureDifference(Math.max(excess.si, 0), excess.plusMinus),
    ofVapour: fraction(share.si, share.plusMinus).in('%'),
  }
  if (!inner) return base
  const space = inner.si * (1 - (found.liquidShare ?? 0))
  const air = airMass(excess, temperatureK, space)
  const massOfAir = mass(air.si, air.plusMinus)
  notes.steps.push({
    what: 'Mass of air',
    formula: 'partial pressure of air × vapour space × molar mass of air ÷ (R × temperature)',
    values: { partialPressure: base.partialPressure, vapourSpace: volume(space) },
    gives: massOfAir,
  })
  if (!contents) {
    notes.assumptions.push({
      field: 'contents',
      taken: 'the whole container as vapour space',
      because: 'the contents were not given, so the mass of air is an upper bound',
      short: 'contents unknown: all of it vapour space',
    })
  }
  return {
    ...base,
    mass: massOfAir,
    vapourSpace: volume(space),
    isUpperBound: contents === undefined,
    ...(contents
      ? { byMass: fraction(air.si / contents.si, widthOf(air) / contents.si).in('%') }
      : {}),
  }
}
