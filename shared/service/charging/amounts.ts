import * as z from 'zod'
import data from '../../../data/service/charging.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  fromLimits,
  mass,
  type Quantity,
  quantity,
  quantityOut,
  say,
} from '../../quantity/index.ts'
import { sourceTable } from '../../source-table.ts'

const sourceOf = sourceTable(data.sources)

/** Mass still to go in, kg, with the charge's tolerance. */
export interface Amount {
  readonly toAdd: Quantity<'mass'>
  readonly tolerance: Quantity<'mass'>
}

/**
 * What is still to go in.
 *
 * @throws {CalcError} `refused` when more than charge and tolerance is already in.
 */
export function amountToAdd(
  charge: Quantity<'mass'>,
  alreadyIn: Quantity<'mass'> | undefined,
  given: Quantity<'mass'> | undefined,
  notes: Notes,
): Amount {
  if (!(charge.si > 0)) {
    throw new CalcError('bad-input', 'A charge of nothing is no target.', {
      hint: 'Read it on the label of the machine, such as 2 lb 6 oz.',
      path: ['charge'],
    })
  }
  const tolerance = given ?? defaultTolerance(notes)
  if (given && given.si >= charge.si) {
    throw new CalcError(
      'bad-input',
      `A tolerance of ${say(given)} is no tolerance for a charge of ${say(charge)}.`,
      {
        hint: 'Give how far off the charge may be to either side, such as 1 oz.',
        path: ['tolerance'],
      },
    )
  }
  if (!alreadyIn) {
    notes.assumptions.push({
      field: 'alreadyIn',
      taken: 'an evacuated system',
      because: 'nothing was said to be in it',
    })
  }
  const inside = alreadyIn?.si ?? 0
  const width = joined(charge.plusMinus, alreadyIn?.plusMinus)
  if (inside - charge.si - (width ?? 0) > tolerance.si) {
    throw new CalcError(
      'refused',
      `${say(alreadyIn ?? mass(0))} is already in, more than the charge of ${say(charge)} with its tolerance of ${say(tolerance)}.`,
      { hint: 'Recover, evacuate and weigh in the whole charge.', path: ['alreadyIn'] },
    )
  }
  const toAdd = mass(Math.max(charge.si - inside, 0), width)
  notes.steps.push({
    what: 'Mass to add',
    formula: 'charge − what is already in',
    values: { charge, alreadyIn: mass(inside, alreadyIn?.plusMinus) },
    gives: toAdd,
  })
  if (toAdd.si <= tolerance.si) {
    notes.warnings.push({
      code: 'within-tolerance',
      message: `What is missing is within the tolerance of ${say(tolerance)}: nothing needs adding.`,
    })
  }
  return { toAdd, tolerance }
}

function defaultTolerance(notes: Notes): Quantity<'mass'> {
  const { value, unit, source } = data.tolerance
  const taken = quantity('mass', value, unit)
  notes.assumptions.push({
    field: 'tolerance',
    taken: `±${say(taken)}`,
    because:
      'none was given; a published loader manual allows 1 to 2 oz, of which the smaller was taken',
  })
  notes.sources.push(sourceOf(source as 'tm-5-3805-290'))
  return taken
}

export const scaleOut = z.strictObject({
  stop: quantityOut.optional().describe('Reading at which to close the valve'),
  earliest: quantityOut.optional().describe('Reading from which the charge is within tolerance'),
  latest: quantityOut.optional().describe('Reading beyond which the charge is out of tolerance'),
  change: quantityOut.describe('By how much the reading changes; negative when it falls'),
  verdict: z
    .enum(['fine-enough', 'too-coarse', 'not-given'])
    .describe('Whether the scale resolves the tolerance'),
})

type ScaleResult = Computed<z.output<typeof scaleOut>>

/**
 * Scale readings to start and to stop at.
 *
 * Under the source the reading falls by what leaves it, the hose's hold-up included; under the machine it
 * rises by what goes in.
 *
 * @param holdUpKg - What leaves the source and stays in the hose, kg; negative when the hose gives some back.
 * @throws {CalcError} `bad-input` when less stands on the scale than must leave it.
 */
export function scaleReadings(
  { toAdd, tolerance }: Amount,
  holdUpKg: number,
  scale: 'under-source' | 'under-machine',
  start: Quantity<'mass'> | undefined,
  division: Quantity<'mass'> | undefined,
  notes: Notes,
): ScaleResult {
  const sign = scale === 'under-source' ? -1 : 1
  const changeKg = scale === 'under-source' ? -(toAdd.si + holdUpKg) : toAdd.si
  const verdict = resolves(tolerance, start, division, notes)
  if (!start) return { change: mass(changeKg), verdict }
  const stopKg = start.si + changeKg
  if (stopKg < 0) {
    throw new CalcError(
      'bad-input',
      `The scale shows ${say(start)}, less than the ${say(mass(-changeKg))} that must leave it.`,
      {
        hint: 'Do not zero the scale with the cylinder on it, or use a fuller one.',
        path: ['scaleStart'],
      },
    )
  }
  const stop = mass(stopKg, start.plusMinus)
  notes.steps.push({
    what: 'Scale reading to stop at',
    formula:
      scale === 'under-source'
        ? 'reading at the start − mass to add − hold-up of the hose'
        : 'reading at the start + mass to add',
    values: { start, toAdd, holdUp: mass(holdUpKg) },
    gives: stop,
  })
  return {
    stop,
    earliest: mass(Math.max(stopKg - sign * tolerance.si, 0)),
    latest: mass(Math.max(stopKg + sign * tolerance.si, 0)),
    change: mass(changeKg),
    verdict,
  }
}

function resolves(
  tolerance: Quantity<'mass'>,
  start: Quantity<'mass'> | undefined,
  division: Quantity<'mass'> | undefined,
  notes: Notes,
): ScaleResult['verdict'] {
  if (start?.plusMinus === undefined && !division) return 'not-given'
  // Two readings make the difference; each lies within half a division.
  const reading = Math.hypot(start?.plusMinus ?? 0, division ? fromLimits(division.si / 2) : 0)
  const width = Math.SQRT2 * reading
  if (width <= tolerance.si) return 'fine-enough'
  notes.warnings.push({
    code: 'scale-too-coarse',
    message: `The difference of two readings of this scale is uncertain by ±${say(mass(width))}, more than the tolerance of ${say(tolerance)}: use a finer scale.`,
  })
  return 'too-coarse'
}

const joined = (a: number | undefined, b: number | undefined) =>
  a === undefined && b === undefined ? undefined : Math.hypot(a ?? 0, b ?? 0)
