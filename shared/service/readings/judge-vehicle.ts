import { type Budget, say, surelyAbove, temperatureDifference } from '../../quantity/index.ts'
import { readingSource } from './sources.ts'
import { notJudged, type Verdict } from './verdict.ts'

const SOURCES = [
  readingSource('sae-j3023'),
  readingSource('tm-5-3805-291'),
  readingSource('tm-5-3805-290'),
]

/**
 * An orifice tube with enough charge floods the evaporator outlet: no superheat there.
 *
 * No width is published for "none", so the width is what the instruments can tell.
 */
export function orificeTubeVerdict(measured: Budget): Verdict {
  if (measured.plusMinus === undefined) {
    return {
      ...notJudged(
        'charge',
        'superheat',
        'No verdict: with enough charge the evaporator outlet is flooded, and whether a superheat is none can only be said with the uncertainty of the instruments. Give ± or the instrument classes.',
        'not-judged',
        SOURCES,
      ),
      measured,
    }
  }
  const dry = surelyAbove(measured, 0)
  return {
    about: 'charge',
    figure: 'superheat',
    method: 'flooded-evaporator-outlet',
    measured,
    outcome: dry ? 'above' : 'inside',
    meaning: dry
      ? 'The evaporator outlet is dry: the charge may be low. Read it at the evaporator outlet, before the accumulator; accumulator inlet and outlet should be equally cool. Do not top up by this figure: recover, and weigh in the charge on the label.'
      : `The evaporator outlet is flooded, as far as ±${say(temperatureDifference(measured.plusMinus))} can tell. That fits a full charge and an overcharge alike: the weighed charge decides.`,
    sources: SOURCES,
  }
}
