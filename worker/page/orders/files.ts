import { CalcError } from '../../../shared/errors.ts'
import { type Draft, draftOf, inputOf, isDraft } from '../../../shared/form/index.ts'
import { fieldsOf, parseJson } from '../../../shared/input/index.ts'
import { VERSION } from '../../../shared/work-order/input.ts'
import { modernised } from '../../../shared/work-order/older.ts'
import { workOrder } from '../../../shared/work-order/work-order.ts'

/** The file of an order as the command line reads it. @throws {CalcError} for a text that is no number where one is needed. */
export const orderFile = (draft: Draft): Readonly<Record<string, unknown>> => {
  const { version: _, ...input } = inputOf(fieldsOf(workOrder), draft).input
  return { version: VERSION, ...input }
}

export const fileText = (content: unknown): string => `${JSON.stringify(content, null, 2)}\n`

/** A name for the file of an order: letters and digits of the machine's name. */
export function fileName(draft: Draft): string {
  const machine = isDraft(draft.machine) ? draft.machine.name : undefined
  const name = String(draft.order || machine || 'order')
  const plain = name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/gu, '')
  return `${plain.slice(0, 60) || 'order'}.json`
}

/**
 * The orders of a file, JSON or YAML, one or a list of them; those of an earlier version by the names of
 * this one. All of them or none.
 *
 * @throws {CalcError} that says what in it is not understood.
 */
export async function ordersIn(name: string, text: string): Promise<readonly Draft[]> {
  const content = /\.ya?ml$/iu.test(name) ? await yamlIn(name, text) : parseJson(text)
  return (Array.isArray(content) ? content : [content]).map((raw: unknown) => {
    workOrder.parse(raw)
    const draft = draftOf(modernised(raw).raw)
    if (isDraft(draft)) return draft
    throw new CalcError('bad-input', `There is no order in ${name}.`)
  })
}

async function yamlIn(name: string, text: string): Promise<unknown> {
  const { parse } = await import('yaml')
  try {
    return parse(text)
  } catch (error) {
    const [first = 'it makes no sense'] = String(
      error instanceof Error ? error.message : error,
    ).split('\n')
    throw new CalcError('bad-input', `The file ${name} is no YAML: ${first.replace(/:$/u, '')}.`)
  }
}

/** Hands a text to the device as a file. */
export function download(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}
