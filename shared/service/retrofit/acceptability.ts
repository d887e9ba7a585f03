import * as z from 'zod'
import data from '../../../data/service/retrofit.json' with { type: 'json' }
import type { CautionId } from '../../cautions.ts'
import { type CalcError, refusal } from '../../errors.ts'
import { fillIn } from '../../sentence.ts'
import { sourceTable } from '../../source-table.ts'
import { markOut } from '../../sources.ts'

const sourceOf = sourceTable(data.sources)

const DECISIONS = ['acceptable-with-conditions', 'unacceptable'] as const

export const acceptabilityOut = z.strictObject({
  to: z.string().describe('Refrigerant that it is about'),
  use: z.enum(['retrofit', 'new']).describe('For a converted system or one built for it'),
  from: z.string().optional().describe('Refrigerant that it replaces, where it says one'),
  decision: z.enum(DECISIONS).describe('What was decided'),
  text: z.string().describe('In words'),
  jurisdiction: z.literal('us-federal').describe('Whose decision'),
  mark: markOut,
  checked: z.string().optional().describe('Date on which the source was read'),
  source: z.string().describe('Id in sources'),
})

type Acceptability = z.output<typeof acceptabilityOut>

interface Row {
  readonly to: string
  readonly use: string
  readonly from?: string
  readonly decision: string
  readonly text: string
  readonly source: string
}

const shown = (row: Row): Acceptability => {
  const { mark, checked } = sourceOf(row.source as 'snap-app-b')
  return {
    ...row,
    use: row.use as Acceptability['use'],
    decision: row.decision as Acceptability['decision'],
    jurisdiction: 'us-federal',
    mark,
    checked,
  }
}

/** Every decision that is known, for vehicle air conditioning, US federal. */
export const allDecisions = (): readonly Acceptability[] => data.acceptability.map(shown)

/** What a conversion is judged by. */
export interface Conversion {
  readonly from: string
  readonly to: string
  /** The new refrigerant burns (ASHRAE 34 class 2L, 2 or 3). */
  readonly flammable: boolean
}

/**
 * The decision that allows a conversion of a vehicle system.
 *
 * What is not listed as acceptable is refused, with the reason: a flammable one, one for new systems
 * only, or one that nobody listed.
 *
 * @throws {CalcError} `refused`, level stop.
 */
export function allowedConversion({ from, to, flammable }: Conversion): Acceptability {
  const row = data.acceptability.find(
    (entry) =>
      entry.to === to &&
      entry.use === 'retrofit' &&
      (entry.from === undefined || entry.from === from),
  )
  if (row && row.decision !== 'unacceptable') return shown(row)
  const reason = row ?? (flammable ? data.flammable : undefined)
  if (reason) {
    throw notAllowed(
      fillIn(data.refusals['not-allowed'], { new: to, reason: reason.text }),
      fillIn(data.refusals['not-allowed-hint'], {
        source: sourceOf(reason.source as 'epa-hydrocarbons').title,
      }),
      flammable,
    )
  }
  throw notAllowed(
    fillIn(data.refusals.unknown, { old: from, new: to }),
    data.refusals['unknown-hint'],
    flammable,
  )
}

function notAllowed(message: string, hint: string, flammable: boolean): CalcError {
  const cautions: readonly CautionId[] = flammable ? ['no-flammable-retrofit'] : ['local-rules']
  return refusal(message, { hint, path: ['newRefrigerant'], cautions })
}
