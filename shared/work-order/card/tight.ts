import { asking, type Build, isSettled, outcomeLines } from './built.ts'
import { task, written } from './lines.ts'

/** Whether it holds pressure. */
export const leakTest: Build = ({ leakTest: test }, { leakTest: outcome }) => {
  const values = {
    start: written(test?.startPressure, 'gaugePressure'),
    startAir: written(test?.startTemperature, 'temperature'),
    elapsed: written(test?.elapsed, 'duration'),
    end: written(test?.endPressure, 'gaugePressure'),
    endAir: written(test?.endTemperature, 'temperature'),
  }
  const standing = outcome.state === 'done' ? outcome.computation.result.standing : undefined
  return asking(
    'leak-test',
    [...outcomeLines(outcome), task('standing', values)],
    values,
    standing?.verdict === 'no-leak-shown' && isSettled(outcome),
    { verdict: standing?.verdict.replaceAll('-', ' ') },
  )
}

/** How deep the vacuum went, and whether it stood. */
export const evacuate: Build = ({ evacuation }, { evacuation: outcome }) => {
  const last = evacuation?.rise?.at(-1)
  const reached = { vacuum: written(evacuation?.vacuum, 'absolutePressure') }
  const held = {
    elapsed: written(last?.time, 'duration'),
    later: written(last?.pressure, 'absolutePressure'),
  }
  const rise = outcome.state === 'done' ? outcome.computation.result.rise : undefined
  return asking(
    'evacuate',
    [...outcomeLines(outcome), task('vacuum', reached), task('held', held)],
    { ...reached, ...held },
    rise?.verdict === 'tight-and-dry' && isSettled(outcome),
    { verdict: rise?.verdict.replaceAll('-', ' ') },
  )
}
