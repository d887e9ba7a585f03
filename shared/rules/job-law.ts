import type { Law } from '../fields/place.ts'
import { pickRefrigerant } from '../fields/refrigerant.ts'
import type { JobGiven } from './facts.ts'
import { lawLine } from './law-line.ts'

/** The line of the law for a job, from what its input says of machine and refrigerant. */
export function lawOfJob(own: object): string | undefined {
  const { law, refrigerant, ...job } = own as Omit<JobGiven, 'refrigerant'> & {
    readonly law?: Law
    readonly refrigerant?: string
  }
  if (refrigerant === undefined) return law === undefined ? lawLine(undefined) : undefined
  return lawLine(law, { ...job, refrigerant: pickRefrigerant(refrigerant) })
}
