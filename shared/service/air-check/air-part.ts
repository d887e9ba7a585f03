import * as z from 'zod'
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import {
  fraction,
  mass,
  pressureDifference,
  quantityOut,
  type Uncertain,
  volume,
} from '../../quantity/index.ts'
import { type Refrigerant, saturatedDensity } from '../../refrigerant/index.ts'
import { airFraction, airMass, vapourSpace } from './air.ts'
import type { AirCheckInput } from './fields.ts'

export const airOut = z.strictObject({
  partialPressure: quantityOut,
  ofVapour: quantityOut.describe('Share of air in the vapour, by amount'),
  mass: quantityOut.optional(),
  vapourSpace: quantityOut.optional(),
  isUpperBound: z.boolean().optional().describe('The contents were not given'),
  byMass: quantityOut.optional().describe('Air over refrigerant, by mass'),
})

/** How much air the excess of pressure stands for. */
export function airOf(
  r: Refrigerant,
  input: AirCheckInput,
  p: Uncertain,
  t: Uncertain,
  excess: Uncertain,
  notes: Notes,
) {
  const share = airFraction(r, p, t)
  const base = {
    partialPressure: pressureDifference(Math.max(excess.si, 0), excess.plusMinus),
    ofVapour: fraction(share.si, share.plusMinus),
  }
  const { containerVolume, contents } = input
  if (!containerVolume) {
    if (contents) {
      throw new CalcError(
        'missing-input',
        'The mass of air takes the volume of the container too.',
        {
          hint: 'Give containerVolume, such as 21.6 L: water capacity in kg is about the volume in litres.',
          path: ['containerVolume'],
        },
      )
    }
    return base
  }
  if (contents && contents.si <= saturatedDensity(r, t.si, 'vapour') * containerVolume.si) {
    notes.warnings.push({
      code: 'no-liquid',
      message:
        'At this weight the contents would all be vapour, and the check needs liquid: weigh again, or take the reading for no proof of air.',
    })
  }
  const space = vapourSpace(r, t.si, containerVolume.si, contents?.si)
  const found = airMass(excess, t.si, space)
  const massOfAir = mass(found.si, found.plusMinus)
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
    })
  }
  return {
    ...base,
    mass: massOfAir,
    vapourSpace: volume(space),
    isUpperBound: contents === undefined,
    byMass:
      contents && contents.si > 0
        ? fraction(
            found.si / contents.si,
            found.plusMinus === undefined ? undefined : found.plusMinus / contents.si,
          )
        : undefined,
  }
}
