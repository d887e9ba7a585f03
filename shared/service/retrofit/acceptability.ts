import * as z from 'zod'
import data from '../../../data/service/retrofit.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import { sourceTable } from '../../source-table.ts'
import { markOut } from '../../sources.ts'

const sourceOf = sourceTable(data.sources)

const DECISIONS = ['acceptable-with-conditions', 'unacceptable'] as const

export const acceptabilityOut = z.strictObject({
  to: z.string(),
  use: z.enum(['retrofit', 'new']),
  from: z.string().optional(),
  decision: z.enum(DECISIONS),
  text: z.string(),
  jurisdiction: z.literal('us-federal'),
  mark: markOut,
  checked: z.string().optional().describe('Date on which the source was read'),
  source: z.string(),
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
 * @throws {CalcError} `refused`.
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
    throw new CalcError('refused', `No conversion to ${to}. ${reason.text}`, {
      hint: `So says ${sourceOf(reason.source as 'epa-hydrocarbons').title}. Service the system with the refrigerant that it was built for.`,
      path: ['to'],
    })
  }
  throw new CalcError(
    'refused',
    `No decision is known here that lets a vehicle system go from ${from} to ${to}.`,
    {
      hint: 'What is not listed as acceptable for this use may not be used: look it up in 40 CFR 82 Subpart G (US federal) or in the law of your place.',
      path: ['to'],
    },
  )
}
