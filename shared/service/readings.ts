import type * as z from 'zod'
import { ALL_DANGERS } from '../dangers.ts'
import { patternsOf } from '../diagnosis/patterns.ts'
import { pickRefrigerant } from '../fields/index.ts'
import { type Computation, type Computed, defineOperation } from '../operation.ts'
import { propertySources, propertyWarnings } from './property-sources.ts'
import { type ReadingsInput, readingsIn } from './readings/fields.ts'
import { figures } from './readings/figures.ts'
import { findings } from './readings/findings.ts'
import { judge } from './readings/judge.ts'
import { measured } from './readings/measured.ts'
import { restOf } from './readings/rest.ts'
import { readingsOut, readingsResult } from './readings/result.ts'
import { signsOf, withoutCovered } from './readings/signs.ts'
import {
  contactSources,
  contactWarnings,
  statementSources,
  statementsFor,
} from './readings/statements.ts'
import { readingsSteps } from './readings/steps.ts'
import { readingsTold } from './readings/told.ts'
import { unusedReadings } from './readings/unused.ts'
import { runningCautions, WHILE_RUNNING } from './running.ts'

type ReadingsResult = Computed<z.output<typeof readingsOut>>

/**
 * What a set of readings says: superheat, subcooling and the rest with their uncertainties, causes that
 * they fit, findings, and a verdict where one is defined.
 *
 * @throws {CalcError} for a reading that no gauge can show, a pressure outside the refrigerant's range,
 *   or an instrument class that does not cover its reading; `path` names the field.
 */
function assessReadings(input: ReadingsInput): Computation<ReadingsResult> {
  const m = measured(pickRefrigerant(input.refrigerant), input)
  const f = figures(m)
  const raw = findings(m, f, input)
  const rest = restOf(m, f, raw)
  const patterns = patternsOf(signsOf(m, f, raw), input)
  const found = withoutCovered(raw, patterns)
  const { verdicts, assumptions, warnings } = judge(m, f, input, found)
  const stop = found.some(({ level }) => level === 'stop')
  return {
    result: readingsResult(m, f, {
      verdicts,
      patterns,
      findings: found,
      rest,
      statements: statementsFor(m, f, input),
    }),
    told: readingsTold({ m, f, input, found, patterns, rest, verdicts }),
    steps: readingsSteps(m, f, rest !== undefined),
    cautions: [
      ...(stop ? (['stop-the-machine'] as const) : []),
      ...runningCautions(m.refrigerant, input),
    ],
    sources: [
      ...verdicts.flatMap((verdict) => verdict.sources),
      ...patterns.flatMap((pattern) => pattern.sources),
      ...found.flatMap((finding) => finding.sources),
      ...statementSources(input),
      ...m.notes.sources,
      ...contactSources(input),
      ...propertySources(m.refrigerant),
      ...m.place.sources,
    ],
    assumptions: [...m.notes.assumptions, ...m.place.assumptions, ...assumptions],
    warnings: [
      ...propertyWarnings(m.refrigerant),
      ...m.place.warnings,
      ...warnings,
      ...(rest?.warnings ?? []),
      ...unusedReadings(input),
      ...contactWarnings(input),
    ],
  }
}

/** Superheat, subcooling and what they say, from a set of readings at a running machine. */
export const readings = defineOperation({
  name: 'readings',
  summary: 'Superheat, subcooling and what they say, from gauge and pipe readings',
  description:
    'Give what was read: any of suction pressure and temperature, liquid or discharge pressure, liquid-line and discharge temperature, ambient. Each may carry its own ±, take it from an instrument class, or take the default of its instrument. A verdict is given where a target is defined for the machine and metering device; readings that contradict each other get a finding instead, gauges that read alike are compared with saturation at the air temperature, and a dangerous pressure comes first.',
  fields: readingsIn,
  result: readingsOut,
  cautions: {
    always: WHILE_RUNNING,
    mayAlso: [...ALL_DANGERS, 'stop-the-machine'],
  },
  example: {
    refrigerant: 'R-134a',
    machine: 'off-road',
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
