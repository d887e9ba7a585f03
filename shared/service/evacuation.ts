import * as z from 'zod'
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { CalcError } from '../errors.ts'
import { pickRefrigerant, placeIn, refrigerantIn } from '../fields/index.ts'
import { resolvePlace } from '../instrument/index.ts'
import { newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import { FLOW_SOURCES } from '../physics/hose-flow.ts'
import { WATER_SOURCES } from '../physics/water.ts'
import {
  barometricPressure,
  pressureDifference,
  quantityIn,
  quantityOut,
  SEA_LEVEL_PA,
  toGauge,
} from '../quantity/index.ts'
import { HOLD_LIMITS, vacuumSource } from './evacuation/hold-limit.ts'
import { pullDownOut, pullDownPart } from './evacuation/pull-down-part.ts'
import { riseOut, risePart, risePointIn } from './evacuation/rise-part.ts'
import { waterOut, waterPart } from './evacuation/water-part.ts'

const hoseIn = z.strictObject({
  length: quantityIn.length.describe('Length of the hose'),
  bore: quantityIn.length.describe('Inside diameter of the hose'),
})

/** Evacuation: the vacuum that water needs, how long it takes, and what a standing vacuum says. */
export const evacuation = defineOperation({
  name: 'evacuation',
  summary:
    'Vacuum that water needs, pump-down time, and whether a standing vacuum shows a leak or water',
  description:
    'Give what is known: a temperature (which vacuum does water need?), a vacuum (at what temperature does water boil in it?), a pump with volume and hoses (how long at least?), and the readings of a standing vacuum (leaking, wet, or tight and dry?). A verdict that the readings do not support is not given.',
  fields: {
    temperature: quantityIn.temperature
      .optional()
      .describe('Temperature of the coldest part of the system'),
    vacuum: quantityIn.pressure
      .optional()
      .describe('Vacuum reached, such as 29.2 inHg vac or 500 micron'),
    ...placeIn,
    volume: quantityIn.volume.optional().describe('Internal volume of system and hoses'),
    pumpDisplacement: quantityIn.volumeFlow
      .optional()
      .describe('Displacement of the vacuum pump, such as 6 cfm'),
    pumpUltimate: quantityIn.pressure
      .optional()
      .describe('Lowest pressure that the pump reaches by itself, such as 25 micron'),
    startPressure: quantityIn.pressure
      .optional()
      .describe('Pressure at which the pump starts; without it the barometer'),
    target: quantityIn.pressure
      .optional()
      .describe('Pressure to pump down to; without it 500 micron'),
    hoseLength: quantityIn.length.optional().describe('Length of the one hose to the pump'),
    hoseBore: quantityIn.length.optional().describe('Inside diameter of that hose'),
    hoses: z
      .array(hoseIn)
      .max(20)
      .optional()
      .describe('Several hoses one after the other, pump end first, instead of the one'),
    waterMass: quantityIn.mass
      .optional()
      .describe('Water to be carried off, for the least drying time'),
    rise: z
      .array(risePointIn)
      .max(2_000)
      .optional()
      .describe('Readings with the pump valved off: time and pressure, in order'),
    riseScatter: quantityIn.pressureDifference
      .optional()
      .describe('Scatter of the gauge from one reading to the next (±), where it is known'),
    negligibleRise: quantityIn.pressureDifference
      .optional()
      .describe('Steady rise in 10 min that does not matter; without it 100 micron'),
    dryBelow: quantityIn.pressure
      .optional()
      .describe('A rise that levels off below this counts as dry; without it 1000 micron'),
    limit: z.enum(HOLD_LIMITS).optional().describe('A published rule for holding the vacuum'),
    refrigerant: refrigerantIn.optional(),
  },
  check({ temperature, vacuum, pumpDisplacement, rise }) {
    if (temperature || vacuum || pumpDisplacement || rise) return
    throw new CalcError('missing-input', 'There is nothing to work on.', {
      path: ['temperature'],
      hint: 'Give a temperature, a vacuum, a pump with volume and hoses, or the readings of a rise.',
    })
  },
  result: z.strictObject({
    gauge: z
      .strictObject({
        barometer: quantityOut,
        perfectVacuum: quantityOut.describe('What a gauge at this place shows at a perfect vacuum'),
        lessThanAtSeaLevel: quantityOut.describe('So much less vacuum than at sea level'),
      })
      .describe('A gauge reads less vacuum at altitude'),
    water: waterOut.optional(),
    pullDown: pullDownOut.optional(),
    rise: riseOut.optional(),
  }),
  cautions: {
    always: ['pressure', 'compressor-in-vacuum', 'no-venting', 'maker-first', 'local-rules'],
    mayAlso: ALL_DANGERS,
  },
  example: {
    temperature: '70 °F',
    altitude: '2500 ft',
    volume: '5 L',
    refrigerant: 'R-134a',
    limit: 'rise-500-micron-in-10-min',
    rise: [420, 455, 490, 520, 560, 590, 625, 660, 690, 730, 765].map((micron, minute) => ({
      time: `${2 * minute} min`,
      pressure: `${micron} micron`,
    })),
  },
  compute(input) {
    const notes = newNotes()
    const place = resolvePlace(input)
    const { barometerPa } = place
    const r = input.refrigerant === undefined ? undefined : pickRefrigerant(input.refrigerant)
    notes.assumptions.push(...place.assumptions)
    notes.warnings.push(...place.warnings)
    notes.sources.push(...place.sources)
    notes.cautions.push(
      'pressure',
      'compressor-in-vacuum',
      'no-venting',
      'maker-first',
      'local-rules',
      ...(r ? dangersOf({ refrigerant: r }) : []),
    )
    return withNotes(
      {
        gauge: {
          barometer: barometricPressure(barometerPa, place.plusMinusPa),
          perfectVacuum: toGauge(0, barometerPa, place.plusMinusPa),
          lessThanAtSeaLevel: pressureDifference(SEA_LEVEL_PA - barometerPa).in('inHg'),
        },
        water: waterPart(input, barometerPa, notes),
        pullDown: pullDownPart(input, barometerPa, notes),
        rise: risePart(input, r, barometerPa, notes),
      },
      notes,
    )
  },
})
