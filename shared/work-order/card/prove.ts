import { runsOf } from '../head.ts'
import { asking, type Build, isSettled, outcomeLines } from './built.ts'
import { type TaskId, task, written } from './lines.ts'

const READ: Readonly<Record<ReturnType<typeof runsOf>, TaskId>> = {
  engine: 'read-engine',
  electric: 'read-electric',
  cargo: 'read-unit',
  building: 'read-unit',
}

/** What the machine shows while it runs. */
export const measure: Build = (input, outcomes) => {
  const { readings, cooling } = input
  const high = readings?.liquidPressure ?? readings?.dischargePressure ?? cooling?.liquidPressure
  const values = {
    low: written(readings?.suctionPressure ?? cooling?.suctionPressure, 'gaugePressure'),
    high: written(high ?? cooling?.dischargePressure, 'gaugePressure'),
    suction: written(readings?.suctionTemperature, 'temperature'),
    liquid: written(readings?.liquidTemperature, 'temperature'),
    vent: written(cooling?.ventTemperature, 'temperature'),
  }
  return asking(
    'measure',
    [
      ...outcomeLines(outcomes.readings),
      ...outcomeLines(outcomes.cooling),
      task(READ[runsOf(input)], values),
    ],
    values,
    isSettled(outcomes.readings) && isSettled(outcomes.cooling),
  )
}

/** Tight, and cooling: the same readings after the work. */
export const prove: Build = (input, outcomes) => {
  const read = measure(input, outcomes)
  const joints = task(input.job === 'couplers-parted' ? 'couplings-checked' : 'joints')
  return { ...read, lines: [joints, ...read.lines, task('caps-back')] }
}
