import { CalcError } from '../../shared/errors.ts'
import { renamedTo } from '../../shared/fields/index.ts'
import { fieldNamed, fieldsOf, kebab } from '../../shared/input/index.ts'
import { nearestNames } from '../../shared/nearest.ts'
import type { Operation } from '../../shared/operation.ts'

const OPTION = /^--(?:no-)?([a-z][a-z0-9-]*)(=.*)?$/u
const MOST_NAMED = 3

/** `label-charge` to `labelCharge`, as the fields are named in JSON. */
const camel = (name: string) =>
  name.replace(/-([a-z0-9])/gu, (_, letter: string) => letter.toUpperCase())

/**
 * Options as the command knows them: a beginning that only one option has stands for it
 * (`--label` for `--label-charge`); an old name is answered with the new one.
 *
 * @param others - Options of every command, without their dashes.
 * @throws {CalcError} `bad-input` for a name that there is not, with the nearest of this command.
 */
export function fullOptions(
  words: readonly string[],
  operation: Operation,
  others: () => readonly string[],
): readonly string[] {
  const fields = fieldsOf(operation)
  const own = fields.map(({ name }) => kebab(name))
  const end = words.indexOf('--')
  return words.map((word, index) => {
    const found = end >= 0 && index > end ? undefined : OPTION.exec(word)
    const typed = found?.[1]
    if (typed === undefined || own.includes(typed)) return word
    const names = [...own, ...others()]
    if (names.includes(typed)) return word
    const renamed = renamedTo(
      camel(typed),
      fields.map(({ name }) => name),
    )
    if (renamed.length > 0) throw unknown(typed, renamed.map(kebab), 'It is now called')
    if (fieldNamed(fields, typed)) return word
    const begun = names.filter((name) => name.startsWith(typed))
    const [only, ...more] = begun
    if (only === undefined || more.length > 0) throw unknown(typed, near(typed, names, begun))
    return word.replace(`--${typed}`, `--${only}`).replace(`--no-${typed}`, `--no-${only}`)
  })
}

/** What begins with it, else what has it inside, else what looks like it. */
function near(typed: string, names: readonly string[], begun: readonly string[]) {
  const inside = names.filter((name) => typed.split('-').every((part) => name.includes(part)))
  const [best] = [begun, inside, nearestNames(typed, names)].filter((list) => list.length > 0)
  return (best ?? []).slice(0, MOST_NAMED)
}

const unknown = (typed: string, names: readonly string[], how = 'Did you mean') =>
  new CalcError('bad-input', `There is no option --${typed}.`, {
    hint:
      names.length > 0
        ? `${how} ${names.map((name) => `--${name}`).join(' or ')}${how.endsWith('mean') ? '?' : '.'}`
        : 'Add --help for what there is.',
  })
