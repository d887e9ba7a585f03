import { CalcError } from '../errors.ts'
import {
  COMPRESSOR_DRIVES,
  compressorDriveIn,
  JOBS,
  jobIn,
  LAWS,
  lawIn,
  MACHINES,
  METERING_DEVICES,
  machineIn,
  meteringDeviceIn,
  pickRefrigerant,
} from '../fields/index.ts'
import { parseQuantity } from '../quantity/index.ts'

/** What is known of an order when it is begun, as typed. */
export interface Answers {
  readonly name?: string
  readonly kind?: string
  readonly refrigerant?: string
  readonly labelCharge?: string
  readonly existingOil?: string
  readonly compressorDrive?: string
  readonly meteringDevice?: string
  readonly job?: string
  readonly cabOff?: string
  readonly law?: string
}

/** What is asked to start an order; ten questions at most. */
export interface Question {
  readonly id: keyof Answers
  readonly message: string
  readonly choices?: readonly string[]
  /** @throws {CalcError} for an answer that does not fit; an empty one leaves it open. */
  readonly check?: (text: string) => unknown
  readonly needed?: boolean
}

const choice = (schema: { parse(value: unknown): unknown }, choices: readonly string[]) => ({
  choices,
  check: (text: string) => {
    try {
      return schema.parse(text)
    } catch {
      throw new CalcError('bad-input', `"${text}" is none of: ${choices.join(', ')}.`)
    }
  },
})

export const QUESTIONS: readonly Question[] = [
  { id: 'name', message: 'What is the machine called in the yard?', needed: true },
  { id: 'kind', message: 'What kind of machine?', ...choice(machineIn, MACHINES), needed: true },
  {
    id: 'refrigerant',
    message: 'Refrigerant on the label',
    check: (text) => pickRefrigerant(text),
    needed: true,
  },
  {
    id: 'labelCharge',
    message: 'Full charge on the label, such as 2 lb 6 oz (empty: not known)',
    check: (text) => parseQuantity(text, ['mass']),
  },
  { id: 'existingOil', message: 'Oil in it, such as PAG 46 (empty: not known)' },
  {
    id: 'compressorDrive',
    message: 'What turns the compressor?',
    ...choice(compressorDriveIn, COMPRESSOR_DRIVES),
  },
  {
    id: 'meteringDevice',
    message: 'What feeds the evaporator?',
    ...choice(meteringDeviceIn, METERING_DEVICES),
  },
  { id: 'job', message: 'What is done?', ...choice(jobIn, JOBS), needed: true },
  { id: 'cabOff', message: 'Does the cab come off or tilt?', choices: ['no', 'yes'] },
  { id: 'law', message: 'Whose law binds the work?', ...choice(lawIn, LAWS) },
]

/** True where an answer will do, else why not. */
export function verdictOf({ check, needed }: Question, text: string): true | string {
  if (text.trim() === '') return needed ? 'Needed to go on.' : true
  try {
    check?.(text)
    return true
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    return `${error.message} ${error.hint}`.trim()
  }
}

/** Choices by their plain names, whatever word was said for them. @throws {CalcError} */
export function plainNames(answers: Answers): Answers {
  const plain: Record<string, string> = { ...answers }
  for (const { id, check, choices } of QUESTIONS) {
    const text = answers[id]
    const read = text === undefined ? undefined : check?.(text)
    if (choices && typeof read === 'string') plain[id] = read
  }
  return plain
}

/** The order that these answers begin, as a file of it has it: what was not said is left out. */
export function orderOf(answers: Answers): Readonly<Record<string, unknown>> {
  const { name, kind, compressorDrive, meteringDevice, refrigerant, labelCharge } = answers
  const { existingOil, law, job, cabOff } = answers
  return said({
    version: 2,
    machine: said({
      name: name || 'Machine',
      kind: kind || 'off-road',
      compressorDrive,
      meteringDevice,
    }),
    refrigerant: refrigerant || 'R-134a',
    labelCharge,
    existingOil,
    place: law ? { law } : undefined,
    job: job || 'couplers-parted',
    cabOff: cabOff === 'yes' ? true : undefined,
  })
}

const said = (entries: Readonly<Record<string, unknown>>) =>
  Object.fromEntries(
    Object.entries(entries).filter(([, value]) => value !== undefined && value !== ''),
  )
