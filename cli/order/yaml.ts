import { type Document, parseDocument } from 'yaml'
import { CalcError } from '../../shared/errors.ts'

/** A YAML text with its comments and places kept. @throws {CalcError} `bad-input` that names the line. */
export function yamlDocument(text: string, name: string): Document {
  const document = parseDocument(text, { uniqueKeys: true, prettyErrors: true })
  const [error] = document.errors
  if (!error) return document
  const [first = 'it makes no sense'] = error.message.split('\n')
  throw new CalcError('bad-input', `The file ${name} is no YAML: ${first.replace(/:$/u, '')}.`, {
    hint: 'Each line is "name: value"; what belongs together is indented by the same number of blanks.',
  })
}
