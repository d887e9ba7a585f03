import { CalcError } from '../../shared/errors.ts'
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
} from '../../shared/fields/index.ts'
import { parseQuantity } from '../../shared/quantity/index.ts'
import type { Ask, Streams } from '../streams.ts'
import { type Answers, templateOf } from './template.ts'

/** What is asked to start an order; ten questions at most. */
interface Question {
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

const QUESTIONS: readonly Question[] = [
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

/** Answers that options may give beforehand, by their names. */
export const ANSWER_IDS = QUESTIONS.map(({ id }) => id)

/**
 * Writes the file of a new order; it never writes over one that there is.
 *
 * On a terminal it asks what options have not said; without one it writes a template, with blanks
 * where nothing was said.
 */
export async function newOrder(file: string, given: Answers, streams: Streams): Promise<void> {
  if (streams.isThere(file)) {
    throw new CalcError('refused', `There is a file ${file} already.`, {
      hint: 'Give another name; --set name=value --save writes into the one that there is.',
    })
  }
  if (!/\.(?:ya?ml|json)$/iu.test(file)) {
    throw new CalcError('bad-input', `"${file}" is no name for an order.`, {
      hint: 'Let it end in .yaml, such as loader-7.yaml.',
    })
  }
  const answers = plainNames(streams.ask ? await asked(given, streams.ask) : given)
  await streams.writeFile(file, await templateOf(answers, /\.json$/iu.test(file) ? 'json' : 'yaml'))
}

/** Choices by their plain names, whatever word was said for them. @throws {CalcError} */
function plainNames(answers: Answers): Answers {
  const plain: Record<string, string> = { ...answers }
  for (const { id, check, choices } of QUESTIONS) {
    const text = answers[id]
    const read = text === undefined ? undefined : check?.(text)
    if (choices && typeof read === 'string') plain[id] = read
  }
  return plain
}

async function asked(given: Answers, ask: Ask): Promise<Answers> {
  const answers: Record<string, string> = { ...given }
  for (const { id, message, choices, check, needed } of QUESTIONS) {
    if (answers[id]) continue
    const answer = choices
      ? await ask.choose(message, needed ? choices : [...choices, NOT_KNOWN])
      : await ask.text(message, (text) => verdictOf(text, check, needed))
    if (answer !== '' && answer !== NOT_KNOWN) answers[id] = answer
  }
  return answers
}

const NOT_KNOWN = 'not known yet'

/** True where an answer will do, else why not. */
function verdictOf(
  text: string,
  check: Question['check'],
  needed: boolean | undefined,
): true | string {
  if (text.trim() === '') return needed ? 'Needed to go on.' : true
  try {
    check?.(text)
    return true
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    return `${error.message} ${error.hint}`.trim()
  }
}
