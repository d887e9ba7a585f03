import { CalcError } from '../../errors.ts'
import type { CASES } from './fields.ts'

export type Case = (typeof CASES)[number]

export interface Decision {
  /** The case that the answer follows; a half that did not seal makes another of the one asked. */
  readonly applied: Case
  readonly kind: 'correction' | 'full-charge'
  readonly why: string
}

const WHOLE: Readonly<Record<'system-opened' | 'pressure-lost', string>> = {
  'system-opened':
    'The system was opened: what is left in it is unknown, so nothing can be added to it as a correction. Recover, evacuate and weigh in the whole charge.',
  'pressure-lost':
    'The system lost pressure: how much escaped is unknown, and air may be in it, so nothing can be added to it as a correction. Find and repair the leak, recover what is left, evacuate and weigh in the whole charge.',
}

/**
 * Which case applies, and whether a correction can be right in it.
 *
 * @throws {CalcError} `refused` when a correction is wanted where only the weighed full charge is right.
 */
export function decideCase(input: {
  readonly case: Case
  readonly want?: 'correction' | 'full-charge' | undefined
  readonly sealed?: boolean | undefined
}): Decision {
  const decision = decide(input)
  if (input.want === 'correction' && decision.kind === 'full-charge') {
    throw new CalcError('refused', `A correction is not right here. ${decision.why}`, {
      path: ['want'],
      hint: 'Leave want out, give labelCharge and what was altered under parts, and weigh in the full charge.',
    })
  }
  if (input.want === 'full-charge' && decision.kind === 'correction') {
    return {
      ...decision,
      kind: 'full-charge',
      why: `${decision.why} The full charge was asked for: recover, evacuate and weigh it in, which is right in every case.`,
    }
  }
  return decision
}

function decide({ case: asked, sealed }: Parameters<typeof decideCase>[0]): Decision {
  if (asked === 'system-opened' || asked === 'pressure-lost') {
    return { applied: asked, kind: 'full-charge', why: WHOLE[asked] }
  }
  if (sealed === false) {
    const applied = asked === 'couplers-parted' ? 'pressure-lost' : 'system-opened'
    return {
      applied,
      kind: 'full-charge',
      why: `${asked === 'couplers-parted' ? 'A coupler half' : 'The shut-off at the ends of the section'} did not seal. ${WHOLE[applied]}`,
    }
  }
  return {
    applied: asked,
    kind: 'correction',
    why:
      asked === 'couplers-parted'
        ? 'Both halves sealed when the couplers were parted: only what spilt between them is gone.'
        : 'The section lay between closed valves or sealed couplers: only what it held in operation is gone, the rest of the charge is still in the machine.',
  }
}
