import * as z from 'zod'
import {
  type Case,
  FAULT_KINDS,
  faultsOf,
  NO_DEVIATIONS,
  NO_FAULTS,
  type Outcome,
} from '../cycle/index.ts'
import { pickRefrigerant } from '../fields/index.ts'
import { resolvePlace } from '../instrument/index.ts'
import { type Notes, newNotes, withNotes } from '../notes.ts'
import { defineOperation } from '../operation.ts'
import { plausible } from './plausible.ts'
import { propertySources } from './property-sources.ts'
import { comparedPerformance, comparedReadings } from './simulate/compare.ts'
import { faultsIn, presentIn } from './simulate/faults.ts'
import { type SimulateInput, simulateFields } from './simulate/fields.ts'
import { machineFor } from './simulate/machines.ts'
import { conditionsShown, machineShown, outcomeShown } from './simulate/outcome.ts'
import {
  conditionsOut,
  machineOut,
  outcomeOut,
  partsOut,
  performanceOut,
  pointsOut,
  presentOut,
  readingsOut,
  sweepOut,
} from './simulate/result.ts'
import { modelSources, severitySource } from './simulate/sources.ts'
import { explain } from './simulate/steps.ts'
import { outcomeOf, rangeOf, shownSweep, sweepOf } from './simulate/sweep.ts'
import { TEXTS, withoutBand } from './simulate/texts.ts'
import { simulateTold } from './simulate/told.ts'
import { viewOf } from './simulate/view.ts'
import { weatherFor } from './simulate/weather.ts'

/** An invented machine in some weather with some faults: what it does and shows, beside the sound one. */
export const simulate = defineOperation({
  name: 'simulate',
  summary: 'An invented machine with faults put in: what every gauge shows, beside the sound one',
  description:
    'For learning and for comparing causes: a steady model of an invented machine, in any weather, with any of eleven faults, alone or together. Tells how it ends up (steady, cycling, stopped by a cut-out, icing up, pumped dry), what gauges and thermometers show, cooling and power, where the refrigerant is, and the corners of the cycle; a sweep leads one fault over a range. Its pressures are no target for a real machine, and no pressure says what to add.',
  fields: simulateFields,
  result: z.strictObject({
    machine: machineOut,
    conditions: conditionsOut,
    faults: z.array(presentOut),
    choices: z.array(z.enum(FAULT_KINDS)).describe('Faults that this machine can have'),
    outcome: outcomeOut,
    readings: readingsOut.describe('What gauges and thermometers show'),
    performance: performanceOut.describe('What no gauge shows; all but capacity while it runs'),
    points: pointsOut,
    parts: partsOut.describe('Refrigerant by part of the machine'),
    sound: z
      .strictObject({ outcome: outcomeOut, points: pointsOut, parts: partsOut })
      .optional()
      .describe('The same machine without its faults, in the same weather'),
    sweep: sweepOut.optional(),
  }),
  cautions: { always: ['weigh-the-charge', 'maker-first'], mayAlso: [] },
  example: {
    modelMachine: 'loader',
    ambient: '95 °F',
    returnAir: '82 °F',
    relativeHumidity: '50 %',
    compressorRpm: 1500,
    chargeNow: '45 %',
  },
  *inPieces(input) {
    const notes = newNotes()
    const place = resolvePlace(input)
    notes.assumptions.push(...place.assumptions)
    const { name, machine, architecture, nominal } = machineFor(
      input.modelMachine,
      input.refrigerant,
    )
    const asked: Case = {
      machine,
      conditions: weatherFor(input, nominal, place, notes),
      faults: faultsIn(input, machine, notes),
      deviations: deviationsIn(input),
    }
    const present = presentIn(asked.faults, machine)
    const range = rangeOf(machine, input)
    const own = yield* outcomeOf(asked)
    const whole = yield* outcomeOf({ ...asked, faults: NO_FAULTS }, [[asked.faults, own]])
    const now = viewOf(own, place)
    const sound = present.length === 0 ? undefined : viewOf(whole, place)
    const known = [
      [asked.faults, own],
      [NO_FAULTS, whole],
    ] as const
    const sweep = range && (yield* sweepOf(asked, range, known))
    notes.steps.push(...explain(now))
    notes.sources.push(
      ...modelSources(),
      ...(input.fault || input.faults?.length ? [severitySource()] : []),
      ...propertySources(pickRefrigerant(machine.refrigerant)),
      ...place.sources,
    )
    warn(now.outcome, notes)
    return {
      ...withNotes(
        {
          machine: machineShown(input.modelMachine, name, architecture, machine),
          conditions: conditionsShown(asked.conditions),
          faults: present,
          choices: faultsOf(machine),
          outcome: outcomeShown(now, place),
          readings: comparedReadings(now, sound),
          performance: comparedPerformance(now, sound),
          points: now.running?.points ?? [],
          parts: now.running?.parts ?? [],
          sound: sound && {
            outcome: outcomeShown(sound, place),
            points: sound.running?.points ?? [],
            parts: sound.running?.parts ?? [],
          },
          sweep: sweep && shownSweep(sweep, place),
        },
        notes,
      ),
      told: simulateTold({
        name,
        highFitting: machine.ports.high,
        device: machine.device.kind,
        present,
        now,
        sound,
        sweep,
        place,
      }),
    }
  },
})

/** How far one machine of a kind may differ from another. */
const DEVIATES = [0.5, 1.5] as const

function deviationsIn({ deviations = {} }: SimulateInput): Case['deviations'] {
  const given = Object.entries(deviations).flatMap(([name, value]) => {
    if (value === undefined) return []
    const path = ['deviations', name]
    // The model calls it by what it is, the form by what differs.
    const key = name === 'deviceSize' ? 'device' : name
    return [[key, plausible(withoutBand(value, path.join('.')), ...DEVIATES, 'A share', path).si]]
  })
  return { ...NO_DEVIATIONS, ...Object.fromEntries(given) }
}

function warn(outcome: Outcome, { warnings }: Notes): void {
  const say = (code: keyof typeof TEXTS.warnings) =>
    warnings.push({ code, message: TEXTS.warnings[code] })
  say('invented-machine')
  if (outcome.kind === 'cycling') say('shown-before-opening')
  if (outcome.kind.endsWith('trip') && 'state' in outcome && outcome.state) say('shown-on-the-way')
}
