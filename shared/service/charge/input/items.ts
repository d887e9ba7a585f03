import * as z from 'zod'
import { choiceIn, volumeIn } from '../../../fields/index.ts'
import { quantityIn } from '../../../quantity/index.ts'

export const PHASES = ['liquid', 'vapour', 'two-phase'] as const
/** Line that a coupling sits in, by what it carries in operation. */
export const LINES = ['liquid', 'suction'] as const
const MOST_PARTINGS = 100
const LONGEST_WORD = 20

/** A space by its volume, or by a bore (hose size, tube size, inner diameter) and a length. */
export const geometryIn = {
  volume: volumeIn.optional(),
  hoseSize: z
    .string()
    .max(LONGEST_WORD)
    .optional()
    .describe('Dash number or nominal bore of an air-conditioning hose: #6, #8, #10, #12 or 13/32'),
  tubeSize: z
    .string()
    .max(LONGEST_WORD)
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
    .describe('Refrigerant per length that the maker prints for this line; overrides our own'),
}

/** What fills a space. */
export const contentsIn = {
  phase: choiceIn(PHASES, { vapor: 'vapour', gas: 'vapour' })
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

/** What one coupling can have spilt: the maker's figure, a caliper, or its outside, best first. */
export const spillIn = {
  spillVolume: quantityIn.volume
    .optional()
    .describe('Refrigerant space lost at each parting of one coupling, from its maker'),
  mouthDiameter: quantityIn.length
    .optional()
    .describe('Caliper on a parted half: widest diameter of the mouth inside the seal'),
  firstDepth: quantityIn.length
    .optional()
    .describe('Caliper on one half: from its rim to the deepest floor inside the seal, valve shut'),
  secondDepth: quantityIn.length.optional().describe('The same on the other half'),
  hexSize: quantityIn.length
    .optional()
    .describe('Largest hex of the joined coupling, across flats: a true bound, but a loose one'),
  joinedLength: quantityIn.length.optional().describe('Whole length of the joined coupling'),
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
    .describe('Air let in at each rejoining of one coupling, from its maker or measured'),
}

const name = z.string().min(1).max(80).optional().describe('What to call it in the answer')

export const couplingItem = z.strictObject({
  name,
  line: choiceIn(LINES, { vapour: 'suction', vapor: 'suction', low: 'suction', high: 'liquid' })
    .optional()
    .describe('Line that it sits in: liquid or suction'),
  ...spillIn,
  ...contentsIn,
})
export const sectionItem = z.strictObject({ name, ...geometryIn, ...contentsIn })
export const partItem = z.strictObject({
  name,
  old: z.strictObject(geometryIn).optional().describe('What was there; leave out when nothing was'),
  new: z.strictObject(geometryIn).optional().describe('What is there now; leave out when nothing'),
  ...contentsIn,
})

export type Geometry = z.output<z.ZodObject<typeof geometryIn>>
export type Contents = z.output<z.ZodObject<typeof contentsIn>>
export type Coupling = z.output<typeof couplingItem>
export type Section = z.output<typeof sectionItem>
export type Part = z.output<typeof partItem>
