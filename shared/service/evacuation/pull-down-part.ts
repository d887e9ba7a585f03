import * as z from 'zod'
import { CalcError, under } from '../../errors.ts'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import { FLOW_SOURCES, WATER_VAPOUR } from '../../physics/hose-flow.ts'
import { waterVapourPressure } from '../../physics/water.ts'
import {
  absolutePressure,
  duration,
  fraction,
  type Quantity,
  quantityOut,
  say,
  toAbsolute,
  volumeFlow,
} from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import { plausible } from '../plausible.ts'
import type { EvacuationInput } from './fields.ts'
import {
  dryingTime,
  hoseRulesBelow,
  type PumpLine,
  pullDownTime,
  pumpAloneTime,
  throughputAt,
} from './pull-down.ts'
import { lineOf, volumeOf } from './pull-down-input.ts'
import { sentences } from './sentences.ts'
import type { Target } from './target-part.ts'
import { vacuumText } from './vacuum-text.ts'

export const pullDownOut = z
  .strictObject({
    time: quantityOut.describe('Least time from start to target: dry system, no gas from the oil'),
    target: quantityOut.describe('Absolute pressure aimed at'),
    pumpAlone: quantityOut.describe('The same with the pump straight on the system'),
    speedAtTarget: quantityOut.describe('What the hoses leave of the pump at the target'),
    shareOfPump: quantityOut.describe('That speed as a share of the displacement'),
    hosesRuleBelow: quantityOut
      .optional()
      .describe('Below this pressure the hoses, not the pump, set the time'),
    holdsDownTo: quantityOut
      .optional()
      .describe('While liquid water is left the pressure stalls here, whatever the estimate says'),
    dryingTime: quantityOut
      .optional()
      .describe('Least time to carry off the given water as vapour through these hoses'),
  })
  .describe('Pump-down estimate')

export type PullDownResult = Computed<z.output<typeof pullDownOut>>

/** How long the pump needs through these hoses; undefined without a pump. */
export function pullDownPart(
  input: EvacuationInput,
  target: Target,
  place: () => Place,
  notes: Notes,
): PullDownResult | undefined {
  if (!input.pumpDisplacement) return undefined
  const line = lineOf(input, input.pumpDisplacement, place, notes)
  const volume = volumeOf(input)
  const start = input.startPressure
  const startPa = start
    ? under('startPressure', () => toAbsolute(start, place().barometerPa)).si
    : place().barometerPa
  const targetPa = target.target.si
  if (!(targetPa > line.ultimatePa && startPa > targetPa)) {
    throw new CalcError(
      'out-of-range',
      `From ${say(absolutePressure(startPa))} a pump that ends at ${vacuumText(line.ultimatePa)} does not come to ${vacuumText(targetPa)}.`,
      {
        path: ['target'],
        hint: 'The target lies between the start and the ultimate pressure of the pump.',
      },
    )
  }
  const time = duration(pullDownTime(line, volume.si, startPa, targetPa))
  const speed = throughputAt(line, targetPa) / targetPa
  const crossing = line.hoses.length === 0 ? undefined : hoseRulesBelow(line, startPa)
  const stallPa = input.temperature
    ? under('temperature', () => waterVapourPressure(line.temperatureK))
    : undefined
  notes.sources.push(...FLOW_SOURCES)
  notes.steps.push({
    what: 'Pump-down time',
    formula:
      'sum over the pressure of volume × drop ÷ flow; the flow is what pump and hoses take in series, laminar plus molecular in each hose, turbulent friction where that is more',
    values: {
      volume,
      displacement: input.pumpDisplacement,
      start: absolutePressure(startPa),
      target: absolutePressure(targetPa),
      hoses: line.hoses.length,
    },
    gives: time,
  })
  notes.warnings.push({
    code: 'pump-down-is-a-least-time',
    message: stallPa
      ? fillIn(sentences.warnings['least-time-with-water'], { stall: vacuumText(stallPa) })
      : sentences.warnings['least-time'],
  })
  return {
    time,
    target: absolutePressure(targetPa),
    pumpAlone: duration(pumpAloneTime(line, volume.si, startPa, targetPa)),
    speedAtTarget: volumeFlow(speed),
    shareOfPump: fraction(speed / line.displacement),
    ...(crossing === undefined ? {} : { hosesRuleBelow: absolutePressure(crossing) }),
    ...(stallPa === undefined ? {} : { holdsDownTo: absolutePressure(stallPa) }),
    ...dryingPart(input, line, stallPa, notes),
  }
}

function dryingPart(
  { waterMass, temperature }: EvacuationInput,
  line: PumpLine,
  stallPa: number | undefined,
  notes: Notes,
): { dryingTime?: Quantity<'duration'> } {
  if (!waterMass) return {}
  if (!temperature || stallPa === undefined) {
    throw new CalcError('missing-input', 'To dry out a mass of water takes the temperature.', {
      path: ['temperature'],
      hint: 'Give the temperature of the coldest part of the system.',
    })
  }
  if (stallPa <= line.ultimatePa) {
    throw new CalcError(
      'refused',
      'This pump does not come below the vapour pressure of water here.',
      {
        path: ['pumpUltimate'],
        hint: 'Warm the system, or use a better pump.',
      },
    )
  }
  plausible(waterMass, 0, 10, 'A mass of water', ['waterMass'])
  const time = duration(dryingTime(line, waterMass.si, stallPa, WATER_VAPOUR))
  notes.steps.push({
    what: 'Least drying time',
    formula:
      'water as vapour (mass × gas constant × temperature ÷ molar mass) ÷ flow of water vapour at its own vapour pressure; heat for boiling taken as there',
    values: { water: waterMass, temperature, vapourPressure: absolutePressure(stallPa) },
    gives: time,
  })
  return { dryingTime: time }
}
