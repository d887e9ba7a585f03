import * as z from 'zod'
import { choiceIn } from './choice.ts'

/** What was done to the system, of the jobs that change what is in it. */
export const OPENING_JOBS = [
  'couplers-parted',
  'section-opened',
  'system-opened',
  'pressure-lost',
] as const
export type OpeningJob = (typeof OPENING_JOBS)[number]

/** What a visit is for: reading only, or one of the jobs that open something. */
export const JOBS = ['diagnose', ...OPENING_JOBS] as const
export type Job = (typeof JOBS)[number]

const SPOKEN = {
  coupling: 'couplers-parted',
  couplings: 'couplers-parted',
  couplers: 'couplers-parted',
  parted: 'couplers-parted',
  section: 'section-opened',
  opened: 'system-opened',
  leaked: 'pressure-lost',
} as const

export const openingJobIn = choiceIn(OPENING_JOBS, SPOKEN).describe(
  'What was done: couplers-parted (both halves seal), section-opened (between closed valves or sealed couplers), system-opened, pressure-lost',
)
export const jobIn = choiceIn(JOBS, { ...SPOKEN, read: 'diagnose', check: 'diagnose' }).describe(
  'What was or will be done: diagnose (read only), couplers-parted, section-opened, system-opened, pressure-lost',
)

/** Day of the work. */
export const dateIn = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/u, 'A date is written YYYY-MM-DD')
  .describe('Day of the work, YYYY-MM-DD')
