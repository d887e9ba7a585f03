import * as z from 'zod'
import { CERTIFICATE_IDS } from '../rules/certificate-names.ts'

/** Who does the work, as far as the law asks. */
export const personIn = {
  certificates: z
    .array(z.enum(CERTIFICATE_IDS))
    .max(CERTIFICATE_IDS.length)
    .optional()
    .describe('Certificates that the worker holds; an empty list says none'),
  forPay: z
    .boolean()
    .optional()
    .describe('Whether the work is paid in any way; barter counts as pay'),
  ownMachine: z.boolean().optional().describe("Whether the machine is the worker's own"),
}
