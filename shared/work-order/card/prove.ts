import { runsOf } from '../head.ts'
import type { Outcomes } from '../run.ts'
import { asking, type Build, isSettled, outcomeLines } from './built.ts'
import { says, type TaskId, task, written } from './lines.ts'
import type { Line } from './schema.ts'

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
    [...causeLines(outcomes), ...outcomeLines(outcomes.cooling), task(READ[runsOf(input)], values)],
    values,
    isSettled(outcomes.readings) && isSettled(outcomes.cooling),
  )
}

/** The diagnosis where there is one, else what the readings show; and what to do first. */
function causeLines({ readings, diagnosis }: Outcomes): readonly Line[] {
  const weighed = diagnosis.state === 'done' || diagnosis.state === 'failed'
  const shown = weighed ? diagnosis : readings
  const told = shown.state === 'done' ? shown.computation.told : undefined
  const asks =
    told?.level === 'check' &&
    (weighed || (readings.state === 'done' && readings.computation.result.patterns.length > 0))
  const [first, second] = asks ? told.next : []
  return [
    ...(readings.state === 'done' && readings.computation.told?.level === 'stop'
      ? outcomeLines(readings)
      : outcomeLines(shown)),
    ...(first === undefined
      ? []
      : second === undefined
        ? [says('do-first', { first: lowered(first) })]
        : [says('do-both', { first: lowered(first), second: lowered(second) })]),
  ]
}

const lowered = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)

/** Tight, and cooling: the same readings after the work. */
export const prove: Build = (input, outcomes) => {
  const read = measure(input, outcomes)
  const joints = task(input.job === 'couplers-parted' ? 'couplings-checked' : 'joints')
  return { ...read, lines: [joints, ...read.lines, task('caps-back')] }
}
