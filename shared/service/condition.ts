import * as z from 'zod'

/** Something that has to hold before a reading means anything, and whether it did. */
export const conditionOut = z
  .strictObject({
    id: z.string(),
    met: z.enum(['yes', 'no', 'cannot-tell', 'not-given']),
    text: z.string(),
    /** Id in `sources`. */
    source: z.string(),
  })
  .meta({ id: 'Condition', description: 'What a reading or a step needs, and whether it was met.' })

export type Condition = z.output<typeof conditionOut>

/** It does not hold, or the instruments cannot say whether it does. */
export const isOpen = ({ met }: Condition): boolean => met === 'no' || met === 'cannot-tell'
