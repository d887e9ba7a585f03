import * as z from 'zod'
import { CalcError, under } from '../../errors.ts'
import { type Place, reader } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  absolutePressure,
  compareWithBand,
  duration,
  type PressureReading,
  propagate,
  type Quantity,
  quantityOut,
  readQuantity,
  say,
  toAbsolute,
  type Uncertain,
} from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import { plausible } from '../plausible.ts'
import type { EvacuationInput } from './fields.ts'
import { judgeLimit, practice, vacuumSource } from './hold-limit.ts'
import type { RisePoint } from './rise-shape.ts'
import { sentences } from './sentences.ts'
import { vacuumGauge } from './vacuum-reading.ts'

const REACHED = ['yes', 'no', 'cannot-tell'] as const
const HELD = ['pass', 'fail', 'not-yet', 'cannot-tell'] as const

export const targetOut = z
  .strictObject({
    target: quantityOut.describe('Absolute pressure to pull down to, or lower'),
    holdFor: quantityOut.describe('Time to watch with the pump valved off'),
    holdBelow: quantityOut.describe('Absolute pressure that must not be passed in that time'),
    reached: z
      .enum(REACHED)
      .optional()
      .describe('Whether the vacuum given has reached the target, with the ± of gauge and place'),
    held: z.enum(HELD).optional().describe('Whether the readings of the rise keep below the limit'),
  })
  .describe('What the evacuation is for: pull down, valve off, watch')

export type TargetResult = Computed<z.output<typeof targetOut>>

/** What the evacuation aims at, before anything is read. */
export interface Target {
  readonly reading: PressureReading
  readonly target: Quantity<'absolutePressure'>
  readonly holdFor: Quantity<'duration'>
  readonly holdBelow: Quantity<'absolutePressure'>
  /** Fields that were not given: common practice stands for them. */
  readonly assumed: readonly string[]
}

const FIELDS = ['target', 'holdFor', 'holdBelow'] as const
const ASSUMED = { target: 'target', holdFor: 'watched for', holdBelow: 'stays below' } as const

/** The target and the hold: the maker's where given, else common practice, said so. */
export function targetOf(input: EvacuationInput, place: () => Place, notes: Notes): Target {
  const assumed = FIELDS.filter((field) => input[field] === undefined)
  const because = `the maker's figure was not given; ${practice.mark}`
  const standing = {
    target: readQuantity(practice.target, ['absolutePressure']),
    holdFor: readQuantity(practice.holdFor, ['duration']),
    holdBelow: readQuantity(practice.holdBelow, ['absolutePressure']),
  }
  if (assumed.length === FIELDS.length) {
    notes.assumptions.push({
      field: 'target',
      taken: fillIn(sentences.assumed.practice, practice),
      because,
    })
  }
  for (const field of assumed.length === FIELDS.length ? [] : assumed) {
    notes.assumptions.push({ field, taken: `${ASSUMED[field]} ${say(standing[field])}`, because })
  }
  if (assumed.length > 0) notes.sources.push(vacuumSource('micron-practice'))
  const reading = input.target ?? standing.target
  const target = inVacuum(reading, place, 'target')
  const holdBelow = inVacuum(input.holdBelow ?? standing.holdBelow, place, 'holdBelow')
  if (holdBelow.si <= target.si) {
    throw new CalcError(
      'bad-input',
      `A target of ${say(target)} leaves no room below the ${say(holdBelow)} that the hold must stay under.`,
      {
        path: [input.holdBelow ? 'holdBelow' : 'target'],
        hint: 'Give the target and, as holdBelow, the pressure that the maker lets it rise to.',
      },
    )
  }
  return {
    reading,
    target,
    holdFor: plausible(input.holdFor ?? standing.holdFor, 30, 3 * 86_400, 'A time to watch', [
      'holdFor',
    ]),
    holdBelow,
    assumed,
  }
}

function inVacuum(reading: PressureReading, place: () => Place, field: string) {
  const isGauge = reading.kind === 'gaugePressure'
  const found = under(field, () => (isGauge ? place().absolute(reading) : toAbsolute(reading, 1)))
  return plausible(found, 1e-3, 0.9e5, 'A vacuum', [field])
}

/** The vacuum that was read, with the ± of its gauge. */
export function takeVacuum(input: EvacuationInput, notes: Notes): PressureReading | undefined {
  const { vacuum } = input
  return vacuum && reader(input, notes)(vacuum, vacuumGauge(vacuum), 'vacuum')
}

/** Whether the vacuum has reached the target; two gauge readings share the barometer. */
export function reachedPart(
  vacuum: PressureReading,
  { reading }: Target,
  place: () => Place,
): (typeof REACHED)[number] {
  const gauge = [vacuum, reading].some(({ kind }) => kind === 'gaugePressure')
  const barometer: Uncertain = gauge ? place().barometer : { si: 0 }
  const above = propagate([vacuum, reading, barometer], (read, wanted, air) => {
    const absolute = (si: number, { kind }: PressureReading) =>
      kind === 'gaugePressure' ? si + air : si
    return absolute(read, vacuum) - absolute(wanted, reading)
  })
  return verdictOf(above)
}

function verdictOf(above: Uncertain): (typeof REACHED)[number] {
  const found = compareWithBand(above, Number.NEGATIVE_INFINITY, 0)
  return found === 'inside' ? 'yes' : found === 'above' ? 'no' : 'cannot-tell'
}

/**
 * Whether a standing vacuum stayed below the limit for the time; a series that passed it has failed,
 * however short.
 *
 * @param levelPlusMinusPa - Expanded uncertainty of the level of the readings, Pa.
 */
export function heldPart(
  { holdFor, holdBelow }: Target,
  points: readonly RisePoint[],
  levelPlusMinusPa: number,
): (typeof HELD)[number] {
  const limit = { staysPa: holdBelow.si, risePa: undefined, withinS: holdFor.si }
  const { verdict } = judgeLimit(limit, points, 0, levelPlusMinusPa)
  return HELD_AS[verdict]
}

const HELD_AS = {
  kept: 'pass',
  broken: 'fail',
  'too-short-to-tell': 'not-yet',
  'cannot-tell': 'cannot-tell',
} as const

/** As the answer shows it. */
export const shownTarget = (
  { target, holdFor, holdBelow }: Target,
  reached: TargetResult['reached'],
  held: TargetResult['held'],
): TargetResult => ({
  target: absolutePressure(target.si, target.plusMinus),
  holdFor: duration(holdFor.si),
  holdBelow: absolutePressure(holdBelow.si, holdBelow.plusMinus),
  reached,
  held,
})
