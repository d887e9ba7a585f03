/** What a field of an operation's input takes, as far as a door must know to read it from text. */
export type Shape =
  | { readonly type: 'text' }
  | { readonly type: 'quantity'; readonly examples: readonly string[] }
  | { readonly type: 'number'; readonly integer: boolean }
  | { readonly type: 'flag' }
  | { readonly type: 'choice'; readonly choices: readonly string[] }
  | { readonly type: 'list'; readonly item: Shape }
  | { readonly type: 'record'; readonly fields: readonly Field[] }
  /** More than one of these: read as JSON where it is JSON, as text otherwise. */
  | { readonly type: 'any'; readonly examples: readonly string[] }

/** One field of an operation's input. */
export interface Field {
  /** Name in JSON: camelCase. */
  readonly name: string
  readonly description: string
  readonly required: boolean
  /** Taken when the field is not given; undefined when nothing is. */
  readonly preset: unknown
  readonly shape: Shape
}

/** `labelCharge` to `label-charge`: how a field is spelt outside JSON. */
export const kebab = (name: string): string =>
  name.replace(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`)

/** The field that `typed` names, in camelCase or kebab-case, case and `_` for `-` forgiven. */
export function fieldNamed(fields: readonly Field[], typed: string): Field | undefined {
  const wanted = squeeze(typed)
  return fields.find((field) => squeeze(field.name) === wanted)
}

const squeeze = (name: string) => name.replace(/[-_\s]/gu, '').toLowerCase()
