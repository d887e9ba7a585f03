import { CONTACT_SOURCE } from '../../instrument/index.ts'
import type { Warning } from '../../operation.ts'
import { say, temperatureDifference } from '../../quantity/index.ts'
import { glide } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import type { Source } from '../../sources.ts'
import { isStationary } from '../running.ts'
import type { ReadingsInput } from './fields.ts'
import type { Figures } from './figures.ts'
import type { Measured } from './measured.ts'
import { readingSource } from './sources.ts'
import { TEXTS } from './texts.ts'

/** What holds for every set of readings of this machine and refrigerant. */
export function statementsFor(m: Measured, f: Figures, input: ReadingsInput): readonly string[] {
  const { id, kind } = m.refrigerant.info
  const side = f.high?.state === 'saturation' ? f.high : f.low
  const blend = kind !== 'pure' && side?.state === 'saturation'
  return [
    TEXTS.statements[isStationary(input) ? 'weight-stationary' : 'weight-vehicle'],
    ...(hasValve(input) ? [TEXTS.statements.valve] : []),
    ...(blend
      ? [
          fillIn(TEXTS.statements.blend, {
            refrigerant: id,
            glide: say(temperatureDifference(glide(m.refrigerant, side.absolute.si))),
          }),
        ]
      : []),
  ]
}

/** Sources behind these statements. */
export const statementSources = (input: ReadingsInput): readonly Source[] => [
  ...(isStationary(input) ? [readingSource('trade-practice')] : [readingSource('tm-5-3805-290')]),
  ...(hasValve(input) ? [readingSource('rp-1173')] : []),
]

const hasValve = ({ meteringDevice }: ReadingsInput) =>
  meteringDevice === 'expansion-valve' || meteringDevice === 'electronic-valve'

/** A sensor class was given, and nothing of the probe's contact with the pipe. */
const unspokenContact = (input: ReadingsInput) =>
  input.thermometer !== undefined &&
  input.contactError === undefined &&
  [input.suctionTemperature, input.liquidTemperature, input.dischargeTemperature].some(
    (reading) => reading && reading.plusMinus === undefined,
  )

export const contactSources = (input: ReadingsInput): readonly Source[] =>
  unspokenContact(input) ? [CONTACT_SOURCE] : []

export const contactWarnings = (input: ReadingsInput): readonly Warning[] =>
  unspokenContact(input) ? [{ code: 'contact-not-counted', message: TEXTS.statements.contact }] : []
