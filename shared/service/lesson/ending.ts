import { NO_DEVIATIONS, NO_FAULTS, run } from '../../cycle/index.ts'
import { toThousandths } from '../../diagnosis/index.ts'
import { resolvePlace } from '../../instrument/index.ts'
import { barometricPressure, type Quantity } from '../../quantity/index.ts'
import { comparedPerformance, comparedReadings } from '../simulate/compare.ts'
import { presentIn } from '../simulate/faults.ts'
import { SWEEP_NAMES, SWEEPS } from '../simulate/fields.ts'
import { outcomeShown } from '../simulate/outcome.ts'
import { rangeOf, shownSweep, sweepOf } from '../simulate/sweep.ts'
import { viewOf } from '../simulate/view.ts'
import { type LessonCase, soundOf } from './draw.ts'
import { OFFERS, type Offer, shownFeature, totalCost } from './market.ts'
import { type Graded, revealOf } from './reveal.ts'
import { answerSheet } from './sheet.ts'
import { simulationOf } from './simulation.ts'
import type { Named } from './topics.ts'

/** Everything that the end shows. */
export function* endingOf(
  case_: LessonCase,
  bought: readonly Offer[],
  named: Named,
  graded: readonly Graded[],
) {
  const place = resolvePlace({ barometer: barometricPressure(case_.conditions.barometerPa, 0) })
  const { asked, machine, topic, cause } = case_
  const whole = { ...asked, faults: NO_FAULTS }
  const soundOutcome = asked.deviations === NO_DEVIATIONS ? soundOf(case_) : run(whole)
  const reveal = yield* revealOf(case_, bought, named, soundOutcome)
  const [now, sound] = [viewOf(case_.outcome, place), viewOf(soundOutcome, place)]
  const size = presentIn(asked.faults, machine)[0]
  const range = rangeOf(machine, {
    sweep: SWEEP_NAMES.find((name) => SWEEPS[name] === size?.setting) ?? 'charge',
  })
  if (range === undefined) throw new Error('A lesson has a sweep.')
  // a lesson ends in any weather that it draws
  const most = Number.POSITIVE_INFINITY
  const sweep = yield* sweepOf(whole, range, [[NO_FAULTS, soundOutcome]], most)
  const minutes = totalCost(bought).to('min')
  const feature = (offer: Offer, value: number | undefined): Quantity | undefined =>
    value === undefined ? undefined : shownFeature(OFFERS[offer], value, case_)
  return {
    reveal,
    graded,
    size,
    capacity: now.capacity,
    sound: sound.capacity,
    sheet: answerSheet(case_, reveal, graded, size),
    shown: {
      cause,
      setting: size?.setting,
      size: size?.size,
      verdict: reveal.verdict,
      predictions: graded,
      left: reveal.left.map(({ causes, probability }) => ({
        causes,
        probability: toThousandths(probability),
      })),
      leftByAll: reveal.leftByAll.map(({ causes, probability }) => ({
        causes,
        probability: toThousandths(probability),
      })),
      bits: hundredths(reveal.bits),
      bitsPerMinute: minutes > 0 ? hundredths(reveal.bits / minutes) : undefined,
      best: reveal.best,
      others: reveal.others.map(({ cause: other, probability, moves, parting }) => ({
        cause: other as Named,
        probability: toThousandths(probability),
        moves,
        reading: parting?.offer,
        would: parting && feature(parting.offer, parting.would),
        shows: parting && feature(parting.offer, parting.shows),
        apart: parting && hundredths(parting.apart),
      })),
      broken: topic.broken,
      outcome: outcomeShown(now, place),
      readings: comparedReadings(now, sound),
      performance: comparedPerformance(now, sound),
      points: now.running?.points ?? [],
      parts: now.running?.parts ?? [],
      sound: {
        outcome: outcomeShown(sound, place),
        points: sound.running?.points ?? [],
        parts: sound.running?.parts ?? [],
      },
      sweep: shownSweep(sweep, place),
      simulation: simulationOf(case_, size),
    },
  }
}

const hundredths = (value: number) => Math.round(value * 100) / 100
