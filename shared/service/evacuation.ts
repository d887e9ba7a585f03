import * as z from 'zod'
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { CalcError } from '../errors.ts'
import { isCarbonDioxide, pickRefrigerant } from '../fields/index.ts'
import { reader } from '../instrument/index.ts'
import { newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import { pressureDifference, quantityOut, SEA_LEVEL_PA } from '../quantity/index.ts'
import { lawOfJob } from '../rules/job-law.ts'
import { fillIn } from '../sentence.ts'
import { type EvacuationInput, fields } from './evacuation/fields.ts'
import { pullDownOut, pullDownPart } from './evacuation/pull-down-part.ts'
import { scatterGiven } from './evacuation/rise-input.ts'
import { riseOut, risePart } from './evacuation/rise-part.ts'
import { NEAR_VAPOUR } from './evacuation/rise-view.ts'
import { sentences } from './evacuation/sentences.ts'
import {
  reachedPart,
  shownTarget,
  takeVacuum,
  targetOf,
  targetOut,
} from './evacuation/target-part.ts'
import { tell } from './evacuation/tell.ts'
import { vacuumText } from './evacuation/vacuum-text.ts'
import { waterOut, waterPart } from './evacuation/water-part.ts'
import { placeWhenNeeded } from './place-when-needed.ts'

/** Evacuation: what to pull to and how to hold it, what water needs, how long it takes, what a rise says. */
export const evacuation = defineOperation({
  name: 'evacuation',
  opens: lawOfJob,
  summary:
    'Target and hold of an evacuation, pump-down time, and whether a standing vacuum shows a leak, water or refrigerant',
  description:
    'Give what is known: a temperature (which vacuum does water need?), the vacuum reached (is the target met, does water boil in it?), a pump with volume and hoses (how long at least?), and the readings of a standing vacuum (leaking, wet, refrigerant from the oil, or tight and dry?). A verdict that the readings do not support is not given.',
  fields,
  check(input) {
    const { temperature, vacuum, target, pumpDisplacement, rise } = input
    // Also where no rise is given that it would be used for.
    scatterGiven(input)
    if (temperature || vacuum || target || pumpDisplacement || rise) return
    throw new CalcError('missing-input', 'No temperature, vacuum, pump or rise was given.', {
      path: ['temperature'],
      hint: 'Give a temperature, a vacuum, a target, a pump with volume and hoses, or the readings of a rise.',
    })
  },
  result: z.strictObject({
    target: targetOut,
    gauge: z
      .strictObject({
        barometer: quantityOut.describe('Pressure of the air at the place'),
        perfectVacuum: quantityOut.describe('What a gauge at this place shows at a perfect vacuum'),
        lessThanAtSeaLevel: quantityOut.describe('So much less vacuum than at sea level'),
      })
      .optional()
      .describe('A gauge reads less vacuum at altitude'),
    water: waterOut.optional(),
    pullDown: pullDownOut.optional(),
    rise: riseOut.optional(),
  }),
  cautions: {
    always: ['pressure', 'compressor-in-vacuum', 'maker-first', 'local-rules'],
    mayAlso: ALL_DANGERS,
  },
  example: {
    refrigerant: 'R-134a',
    temperature: '70 °F',
    altitude: '2500 ft',
    volume: '5 L',
    limit: 'rise-500-micron-in-10-min',
    rise: [420, 455, 490, 520, 560, 590, 625, 660, 690, 730, 765].map((micron, minute) => ({
      time: `${2 * minute} min`,
      pressure: `${micron} micron`,
    })),
  },
  compute(input) {
    const notes = newNotes()
    const { place, asked } = placeWhenNeeded(input, notes)
    const r = input.refrigerant === undefined ? undefined : pickRefrigerant(input.refrigerant)
    const system = coldest(input, notes)
    const target = targetOf(input, place, notes)
    const vacuum = takeVacuum(input, notes)
    const water = waterPart(system, vacuum, place, notes)
    const pullDown = pullDownPart(input, target, place, notes)
    const rise = risePart(input, system, target, r, place, notes)
    warnOfCold(water?.vapourPressure?.si, target.holdBelow.si, notes)
    const aim = shownTarget(target, vacuum && reachedPart(vacuum, target, place), rise?.held)
    const nitrogen = rise !== undefined && rise.result.verdict !== 'tight-and-dry'
    notes.cautions.push(
      ...dangersOf({
        refrigerant: r,
        does: ['evacuates', ...(nitrogen ? (['pressurises'] as const) : [])],
      }),
      ...(r && isCarbonDioxide(r) ? [] : (['no-venting'] as const)),
    )
    const at = asked()
    const result = {
      target: aim,
      gauge: at && {
        barometer: at.air,
        perfectVacuum: at.gauge(0),
        lessThanAtSeaLevel: pressureDifference(SEA_LEVEL_PA - at.barometerPa, at.plusMinusPa).in(
          'inHg',
        ),
      },
      water,
      pullDown,
      rise: rise?.result,
    }
    return {
      ...withNotes(result, notes),
      told: tell({ target: aim, assumed: target.assumed, vacuum, water, pullDown, rise }),
    }
  },
})

/** The coldest part, with the ± of its thermometer. */
export const coldest = (input: EvacuationInput, notes: ReturnType<typeof newNotes>) =>
  reader(input, notes)(input.temperature, 'pipe-probe', 'temperature')

/** In the cold a standing vacuum below the limit shows no dryness: water pushes no higher. */
function warnOfCold(
  vapourPa: number | undefined,
  holdPa: number,
  notes: ReturnType<typeof newNotes>,
): void {
  if (vapourPa === undefined || holdPa < NEAR_VAPOUR * vapourPa) return
  notes.warnings.push({
    code: 'target-shows-no-dryness',
    message: fillIn(sentences.warnings['target-shows-no-dryness'], {
      vapour: vacuumText(vapourPa),
      hold: vacuumText(holdPa),
    }),
  })
}
