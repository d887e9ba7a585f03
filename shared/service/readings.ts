import type * as z from 'zod'
import { ALL_DANGERS, dangersOf } from '../dangers.ts'
import { pickRefrigerant } from '../fields/index.ts'
import { CONTACT_SOURCE } from '../instrument/index.ts'
import { type Assumption, type Computation, type Computed, defineOperation } from '../operation.ts'
import { say, temperatureDifference } from '../quantity/index.ts'
import { glide } from '../refrigerant/index.ts'
import type { Source } from '../sources.ts'
import { propertySources, propertyWarnings } from './property-sources.ts'
import { type ReadingsInput, readingsIn } from './readings/fields.ts'
import { type Figures, figures } from './readings/figures.ts'
import { findings } from './readings/findings.ts'
import { judge } from './readings/judge.ts'
import { type Measured, measured } from './readings/measured.ts'
import { readingsOut, readingsResult } from './readings/result.ts'
import { readingSource } from './readings/sources.ts'
import { readingsSteps } from './readings/steps.ts'
import { unusedReadings } from './readings/unused.ts'

type ReadingsResult = Computed<z.output<typeof readingsOut>>

/**
 * What a set of readings says: superheat, subcooling and the rest with their uncertainties, findings,
 * and a verdict where one is defined.
 *
 * @throws {CalcError} for a reading that no gauge can show, a pressure outside the refrigerant's range,
 *   or an instrument class that does not cover its reading; `path` names the field.
 */
function assessReadings(input: ReadingsInput): Computation<ReadingsResult> {
  const m = measured(pickRefrigerant(input.refrigerant), input)
  const f = figures(m)
  const found = findings(m, f, input)
  const { verdicts, assumptions, warnings } = judge(m, f, input, found)
  return {
    result: readingsResult(m, f, verdicts, found, statementsFor(m, f, input)),
    steps: readingsSteps(m, f),
    cautions: [
      'pressure',
      'rotating-parts',
      'weigh-the-charge',
      'maker-first',
      'local-rules',
      ...dangersOf({ refrigerant: m.refrigerant }),
    ],
    sources: [
      ...verdicts.flatMap((verdict) => verdict.sources),
      ...found.flatMap((finding) => finding.sources),
      ...statementSources(input),
      ...m.sources,
      ...contactSource(input),
      ...propertySources(m.refrigerant),
      ...m.place.sources,
    ],
    assumptions: [...m.place.assumptions, ...assumptions, ...exactness(m)],
    warnings: [
      ...propertyWarnings(m.refrigerant),
      ...m.place.warnings,
      ...warnings,
      ...unusedReadings(input),
      ...contactWarning(input),
    ],
  }
}

const WEIGHT =
  'On a vehicle system the weighed charge decides: pressures and temperatures follow heat load, humidity, fan and engine speed. Recover, and weigh in the charge on the label.'
const VALVE =
  'A normal superheat on an expansion valve does not prove the charge: the valve holds it until the charge is below about 80 %.'

function statementsFor(m: Measured, f: Figures, input: ReadingsInput): readonly string[] {
  const { id, kind } = m.refrigerant.info
  const list = [WEIGHT]
  if (input.meteringDevice === 'expansion-valve' || input.meteringDevice === 'electronic-valve') {
    list.push(VALVE)
  }
  const side = f.high?.state === 'saturation' ? f.high : f.low
  if (kind !== 'pure' && side?.state === 'saturation') {
    const width = say(temperatureDifference(glide(m.refrigerant, side.absolute.si)))
    list.push(
      `${id} is a blend: superheat counts from its dew line and subcooling from its bubble line, which lie ${width} apart here.`,
    )
  }
  return list
}

function statementSources(input: ReadingsInput): readonly Source[] {
  const valve =
    input.meteringDevice === 'expansion-valve' || input.meteringDevice === 'electronic-valve'
  return [readingSource('tm-5-3805-290'), ...(valve ? [readingSource('rp-1173')] : [])]
}

const exactness = (m: Measured): readonly Assumption[] =>
  m.uncertain
    ? []
    : [
        {
          field: 'lowGauge',
          taken: 'readings without error',
          because: 'neither an uncertainty (±) nor an instrument class was given',
        },
      ]

const unspokenContact = (input: ReadingsInput) =>
  input.thermometer !== undefined &&
  input.contactError === undefined &&
  [input.suctionTemperature, input.liquidTemperature].some(
    (reading) => reading && reading.plusMinus === undefined,
  )

const contactSource = (input: ReadingsInput): readonly Source[] =>
  unspokenContact(input) ? [CONTACT_SOURCE] : []

const contactWarning = (input: ReadingsInput) =>
  unspokenContact(input)
    ? [
        {
          code: 'contact-not-counted',
          message:
            'The class of a sensor says nothing of its contact with the pipe, and a clamp or strapped probe that is not insulated reads several degrees off towards the air. Give contactError, or insulate the probe.',
        },
      ]
    : []

/** Superheat, subcooling and what they say, from a set of readings at a running machine. */
export const readings = defineOperation({
  name: 'readings',
  summary: 'Superheat, subcooling and what they say, from gauge and pipe readings',
  description:
    'Give what was read: any of suction pressure and temperature, liquid or discharge pressure, liquid-line and discharge temperature, ambient. Each may carry its own ± or take it from an instrument class. A verdict is given where a target is defined for the equipment and metering device; readings that contradict each other get a finding instead.',
  fields: readingsIn,
  result: readingsOut,
  cautions: {
    always: ['pressure', 'rotating-parts', 'weigh-the-charge', 'maker-first', 'local-rules'],
    mayAlso: ALL_DANGERS,
  },
  example: {
    refrigerant: 'R-134a',
    equipment: 'vehicle',
    meteringDevice: 'expansion-valve',
    suctionPressure: '32 ±1 psig',
    suctionTemperature: '48 ±2 °F',
    liquidPressure: '185 ±4 psig',
    liquidTemperature: '115 ±2 °F',
    ambient: '90 °F',
    altitude: '1200 ft',
  },
  compute: assessReadings,
})
