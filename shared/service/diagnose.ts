import type * as z from 'zod'
import priorData from '../../data/service/diagnosis.json' with { type: 'json' }
import type { Told } from '../answer/told.ts'
import { ALL_DANGERS } from '../dangers.ts'
import type { Observation } from '../diagnosis/features.ts'
import { doubtsOf } from '../diagnosis/mistakes.ts'
import { patternsOf } from '../diagnosis/patterns.ts'
import { toThousandths, USUAL_PRIORS } from '../diagnosis/posterior.ts'
import { pickRefrigerant } from '../fields/index.ts'
import { reader, resolvePlace } from '../instrument/index.ts'
import { newNotes } from '../notes.ts'
import { type Computation, type Computed, defineOperation } from '../operation.ts'
import { lawLine } from '../rules/law-line.ts'
import { sourceTable } from '../source-table.ts'
import { diagnosisAssumptions } from './diagnose/assumed.ts'
import { type DiagnoseInput, diagnoseIn } from './diagnose/input/fields.ts'
import { kindsOf, withFacts } from './diagnose/input/kinds.ts'
import { conditionsRead, isTestWeather } from './diagnose/input/weather.ts'
import { baselineOf, restEvidence } from './diagnose/observations/beside.ts'
import { observationsOf, weighedObservation } from './diagnose/observations/observations.ts'
import { takenIn } from './diagnose/observations/taken.ts'
import { unusedInDiagnosis } from './diagnose/observations/unused.ts'
import { candidatesOf, withSpreads } from './diagnose/posterior/candidates.ts'
import {
  causeAtRest,
  causesOf,
  type Evidence,
  ruledOutBy,
  VACUUM,
} from './diagnose/posterior/evidence.ts'
import { doubted, inferInTurn } from './diagnose/posterior/infer.ts'
import { nextSteps } from './diagnose/verdict/next.ts'
import { diagnoseOut, differenceOf, priorsShown } from './diagnose/verdict/result.ts'
import { stepText, TEXTS } from './diagnose/verdict/texts.ts'
import { diagnoseTold, opensIt } from './diagnose/verdict/told.ts'
import { type Verdict, verdictOf } from './diagnose/verdict/verdict.ts'
import { propertySources, propertyWarnings } from './property-sources.ts'
import { figures } from './readings/figures.ts'
import { findings } from './readings/findings.ts'
import { measured } from './readings/measured.ts'
import { restOf } from './readings/rest.ts'
import { signsOf } from './readings/signs.ts'
import { readingsSteps } from './readings/steps.ts'
import { readingsTold } from './readings/told.ts'
import { runningFigures } from './readings/told-figures.ts'
import { runningCautions, WHILE_RUNNING } from './running.ts'

type DiagnoseResult = Computed<z.output<typeof diagnoseOut>>

const sourceOf = sourceTable(TEXTS.sources)
const priorSource = sourceTable(priorData.sources)

/** What nothing could be weighed for: a machine at rest, readings that contradict each other, air that is no test. */
const NOTHING_WEIGHED: Verdict = {
  id: 'reading-or-test-wrong',
  named: ['reading-or-test-wrong'],
  share: 1,
  merged: false,
}

/** A doubt less likely than this is not told. */
const WORTH_TELLING = 0.005

function diagnoseMachine(input: DiagnoseInput): Computation<DiagnoseResult> {
  const r = pickRefrigerant(input.refrigerant)
  const kinds = kindsOf(input, r)
  // Patterns and findings go by machine and device, which a kind of the model says as well.
  const known = withFacts(input, kinds)
  const m = measured(r, input)
  const f = figures(m)
  const found = findings(m, f, known)
  const signs = signsOf(m, f, found)
  const patterns = patternsOf(signs, known)
  const notes = newNotes()
  const place = resolvePlace(input)
  const test = takenIn(input, input, place, notes)
  const recovered = reader(input, notes)(input.recovered, 'scale', 'recovered')
  const broken = found.some(({ level }) => level === 'impossible')
  const testable = isTestWeather(test.weather)
  const observations: readonly Observation[] = broken
    ? []
    : [
        ...observationsOf(test.running, place, r, kinds.modelRefrigerant),
        ...weighedObservation(recovered, input.labelCharge),
      ]
  const baseline = baselineOf(input, kinds, r, place, notes)
  const atRest = restEvidence(input, r, place, notes)
  const priors = input.priors === 'equal' ? undefined : USUAL_PRIORS
  const evidence: Evidence = {
    patterns: kinds.knowledge === 'model' ? [] : patterns,
    rest: atRest,
    ruledOut: input.ruledOut ?? [],
  }
  const inferred =
    broken || !testable
      ? undefined
      : inferInTurn(
          {
            candidates: (how) =>
              candidatesOf(kinds, test.weather, test.running.highFrom, baseline, how),
            spread:
              kinds.knowledge === 'model'
                ? (candidates, severities) =>
                    withSpreads(candidates, kinds, test.weather, severities)
                : undefined,
          },
          kinds.presets.length > 1,
          observations,
          {
            sizes: test.weather.sizes,
            doubts: doubtsOf(
              observations.map(({ feature }) => feature),
              conditionsRead(test.weather),
            ),
            priors,
            evidence,
          },
        )
  const verdict = inferred
    ? verdictOf(inferred, {
        knowledge: kinds.knowledge,
        read: observations.length,
        ofPattern: causesOf(evidence.patterns),
        atRest: causeAtRest(atRest),
        ruledOut: ruledOutBy(evidence),
      })
    : NOTHING_WEIGHED
  const looked = atRest ? (['rest-pressure'] as const) : []
  const steps = inferred ? nextSteps(inferred, observations, undefined, looked) : []
  const doubts = (inferred ? doubted(inferred) : []).filter(([, share]) => share >= WORTH_TELLING)
  const rest = restOf(m, f, found)
  const stop = found.some(({ level }) => level === 'stop')
  // What is dangerous or cannot be comes before any cause, in the words of the readings.
  const weighs = inferred && !broken && !stop && !rest
  const readingsSay = readingsTold({ m, f, input: known, found, patterns, rest, verdicts: [] })
  const nothingSays: Told = {
    ...readingsSay,
    level: 'check',
    headline: TEXTS.headlines[testable ? 'not-running' : 'weather'],
    next: [TEXTS.nothingMore],
  }
  const unweighed = broken || stop || rest ? readingsSay : nothingSays
  const told = weighs
    ? diagnoseTold({
        verdict,
        causes: inferred.posterior.causes,
        steps,
        doubts: doubts.map(([doubt]) => doubt),
        inVacuum: patterns.some(({ id }) => VACUUM.includes(id)),
        figures: runningFigures(m, f, []),
      })
    : unweighed
  const opens = opensIt({ verdict, steps })
  return {
    result: {
      refrigerant: r.info.id,
      verdict: verdict.id,
      named: verdict.named,
      share: toThousandths(verdict.share),
      causes: (inferred?.posterior.causes ?? []).map(({ cause, probability, severity }) => ({
        cause,
        share: toThousandths(probability),
        ...(severity > 0 && { severity: Number(severity.toFixed(2)) }),
      })),
      classes: (inferred?.classes ?? []).map(({ causes, probability }) => ({
        causes,
        share: toThousandths(probability),
      })),
      doubted: doubts.map(([doubt, share]) => ({ what: doubt, share: toThousandths(share) })),
      nextSteps: steps.map(({ id, minutes, gain }) => ({
        id,
        what: stepText({ id }),
        minutes,
        gain: Number(gain.toFixed(3)),
      })),
      machine: {
        known: kinds.knowledge,
        kinds: kinds.presets.map(({ preset }) => preset.architecture),
      },
      priors: priorsShown(priors, inferred),
      observed: observations.map(({ feature }) => feature),
      superheat: differenceOf(rest ? undefined : f.superheat),
      subcooling: differenceOf(rest ? undefined : f.subcooling),
      condensingOverAmbient: differenceOf(rest ? undefined : f.condensingOverAmbient),
      patterns: patterns.map(({ id }) => id),
      findings: found.map(({ id, level, message, causes, settle }) => ({
        id,
        level,
        message,
        causes,
        settle,
      })),
    },
    told,
    ...(opens && {
      law: lawLine(input.law, {
        refrigerant: r,
        machine: input.machine,
        labelCharge: input.labelCharge,
        action: 'recover',
      }),
    }),
    steps: readingsSteps(m, f, rest !== undefined),
    cautions: [
      ...(stop ? (['stop-the-machine'] as const) : []),
      ...(opens ? (['no-venting'] as const) : []),
      ...runningCautions(r, input),
    ],
    sources: [
      sourceOf('machine-model-card'),
      ...(Object.keys(priorData.sources) as (keyof typeof priorData.sources)[]).map(priorSource),
      ...patterns.flatMap((pattern) => pattern.sources),
      ...found.flatMap((finding) => finding.sources),
      ...notes.sources,
      ...propertySources(r),
      ...place.sources,
    ],
    assumptions: [
      ...(weighs ? diagnosisAssumptions(input, r, kinds, test.weather) : []),
      ...notes.assumptions,
      ...place.assumptions,
    ],
    warnings: [
      ...propertyWarnings(r),
      ...place.warnings,
      ...notes.warnings,
      ...unusedInDiagnosis(input),
    ],
  }
}

/** The likeliest cause from a set of readings, the causes that they cannot part, and what to read next. */
export const diagnose = defineOperation({
  name: 'diagnose',
  summary: 'What is wrong with a machine by its readings, how likely, and what to read next',
  description:
    'Give whatever was read while it runs: two gauges and the air are enough to start. Every fault of the machine model is weighed at every severity against the readings and their ±. Causes that these readings cannot part are named together; “no fault shown” and “reading or test wrong” are among the answers; the next reading is the one that tells most for its minutes. Readings of the machine from when it was sound (baseline) tell more than any other. It never says to add refrigerant by pressure.',
  fields: diagnoseIn,
  result: diagnoseOut,
  cautions: {
    always: WHILE_RUNNING,
    mayAlso: [...ALL_DANGERS, 'stop-the-machine'],
  },
  example: {
    refrigerant: 'R-134a',
    machine: 'off-road',
    meteringDevice: 'expansion-valve',
    liquidStore: 'receiver',
    displacement: 'fixed',
    suctionPressure: '45 psig',
    suctionTemperature: '60 °F',
    dischargePressure: '330 psig',
    liquidTemperature: '125 °F',
    ambient: '90 °F',
    returnAir: '82 °F',
    relativeHumidity: '50 %',
    compressorRpm: 1500,
  },
  compute: diagnoseMachine,
})
