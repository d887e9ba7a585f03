import { CalcError } from '../../../errors.ts'
import type { AskedCharge } from './fields.ts'

/** Couplings, sections and parts of one visit, far above what any machine has. */
export const MOST_ITEMS = 50

/** Each list may be as long as this, and all of them together too: each item is solved with its ±. @throws {CalcError} `bad-input` */
export function checkItems({ couplings, parted, sections, parts }: AskedCharge): void {
  const lists = { couplings, parted, sections, parts }
  let count = 0
  for (const [field, list] of Object.entries(lists)) {
    count += list?.length ?? 0
    if (count <= MOST_ITEMS) continue
    throw new CalcError(
      'bad-input',
      `At most ${MOST_ITEMS} couplings, sections and parts are computed at once.`,
      { path: [field], hint: 'Give those that are alike as one, or ask in parts and add up.' },
    )
  }
}
