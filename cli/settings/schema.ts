import * as z from 'zod'
import {
  gaugesIn,
  lawIn,
  personIn,
  placeIn,
  scaleIn,
  thermometersIn,
} from '../../shared/fields/index.ts'
import { presentationIn } from '../../shared/operation.ts'

const MOST_PEOPLE = 50

const personSchema = z.strictObject({
  name: z.string().min(1).max(80).describe('Who it is'),
  certificates: personIn.certificates,
})

/** What a shop keeps, by the names that the operations use for it. */
export const settingFields = {
  ...placeIn,
  law: lawIn.optional(),
  units: presentationIn.units,
  ...gaugesIn,
  ...thermometersIn,
  ...scaleIn,
}

/** The file: fields as they were typed, so that it reads as it was written, and the people of the shop. */
export const settingsSchema = z.strictObject({
  ...settingFields,
  people: z
    .array(personSchema)
    .max(MOST_PEOPLE)
    .optional()
    .describe('Who works here, and the certificates each holds'),
})

export interface Person {
  readonly name: string
  readonly certificates?: readonly string[] | undefined
}

/** Settings as they stand in the file. */
export interface Settings {
  readonly fields: Readonly<Record<string, unknown>>
  readonly people: readonly Person[]
}

export const NO_SETTINGS: Settings = { fields: {}, people: [] }
