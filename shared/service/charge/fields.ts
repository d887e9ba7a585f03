import * as z from 'zod'
import { quantityIn } from '../../quantity/index.ts'

export const CASES = [
  'couplers-parted',
  'section-opened',
  'system-opened',
  'pressure-lost',
] as const
export const PHASES = ['liquid', 'vapour', 'two-phase'] as const
const MOST_ITEMS = 50
const MOST_PARTINGS = 100

/** A space by its volume, or by a bore (hose size, tube size, inner diameter) and a length. */
const geometryIn = {
  volume: quantityIn.volume
    .optional()
    .describe('Inner volume of the component, from its maker or measured'),
  hoseSize: z
    .string()
    .max(20)
    .optional()
    .describe('Dash number or nominal bore of an air-conditioning hose: #6, #8, #10, #12 or 13/32'),
  tubeSize: z
    .string()
    .max(20)
    .optional()
    .describe('Outside diameter of ACR copper tube in inches: 1/4, 3/8, 1/2 …'),
  tubeTemper: z
    .enum(['drawn', 'annealed'])
    .optional()
    .describe('drawn (hard, straight lengths) or annealed (soft, coils): the walls differ'),
  innerDiameter: quantityIn.length.optional().describe('Measured bore of a hose or tube'),
  length: quantityIn.length.optional().describe('Length of the hose or tube'),
  makerMassPerLength: quantityIn.massPerLength
    .optional()
    .describe('Refrigerant per length that the maker prints for this line; goes before our own'),
}

/** What fills a space. */
const contentsIn = {
  phase: z
    .enum(PHASES)
    .optional()
    .describe('What fills the space; worked out from temperature and pressure when both are given'),
  temperature: quantityIn.temperature
    .optional()
    .describe('Temperature of the refrigerant in the space'),
  pressure: quantityIn.pressure.optional().describe('Pressure in the space, gauge or absolute'),
  quality: quantityIn.fraction
    .optional()
    .describe('Two-phase only: vapour in percent of the mass that is in the space'),
}

const spillIn = {
  spillVolume: quantityIn.volume
    .optional()
    .describe('Refrigerant space lost at each parting of one coupling, from its maker or measured'),
  spillFrom: quantityIn.volume.optional().describe('What-if: smallest spill volume per parting'),
  spillTo: quantityIn.volume.optional().describe('What-if: largest spill volume per parting'),
  partings: z
    .number()
    .int()
    .min(1)
    .max(MOST_PARTINGS)
    .optional()
    .describe('How often the coupling was parted; 1 when not given'),
  airInclusion: quantityIn.volume
    .optional()
    .describe('Air taken in at each rejoining of one coupling, from its maker or measured'),
}

const name = z.string().min(1).max(80).optional().describe('What to call it in the answer')

const coupling = z.strictObject({ name, ...spillIn, ...contentsIn })
const section = z.strictObject({ name, ...geometryIn, ...contentsIn })
const part = z.strictObject({
  name,
  old: z.strictObject(geometryIn).optional().describe('What was there; leave out when nothing was'),
  new: z.strictObject(geometryIn).optional().describe('What is there now; leave out when nothing'),
  ...contentsIn,
})

export type Geometry = z.output<z.ZodObject<typeof geometryIn>>
export type Contents = z.output<z.ZodObject<typeof contentsIn>>
export type Coupling = z.output<typeof coupling>
export type Section = z.output<typeof section>
export type Part = z.output<typeof part>

/** Fields of one coupling, one section or one altered part stand at the top; lists take several. */
export const itemsIn = {
  couplingsOn: z
    .enum(['liquid-line', 'vapour-line', 'both-lines'])
    .optional()
    .describe('Which lines were parted, one coupling each; for anything else list the couplings'),
  ...spillIn,
  whatIf: z
    .boolean()
    .default(false)
    .describe('Answer a range from spillFrom and spillTo, marked as a what-if'),
  ...geometryIn,
  ...contentsIn,
  oldVolume: quantityIn.volume
    .optional()
    .describe('Inner volume of the one part that was replaced'),
  newVolume: quantityIn.volume.optional().describe('Inner volume of the part put in its place'),
  couplings: z.array(coupling).max(MOST_ITEMS).optional().describe('Couplings that were parted'),
  sections: z
    .array(section)
    .max(MOST_ITEMS)
    .optional()
    .describe('Sections that were emptied between closed valves or sealed couplers'),
  parts: z
    .array(part)
    .max(MOST_ITEMS)
    .optional()
    .describe('Parts whose inner volume changed, with what fills them in operation'),
}
