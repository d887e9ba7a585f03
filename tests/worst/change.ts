import type { JsonSchema } from '../../shared/input/index.ts'
import { refrigerants } from '../../shared/refrigerant/index.ts'

export type Random = () => number
type Tree = Record<string, unknown>
interface Limits extends JsonSchema {
  readonly maxItems?: number
}

/** A list that an input has: where it is, and how long its schema lets it grow. */
interface Found {
  readonly list: unknown[]
  readonly most: number
}

const NAMES = refrigerants().map(({ id }) => id)
const BANDS = ['±0.1', '±0.5', '±2', '±5']
const MOST_WITHOUT_LIMIT = 200

const pick = <T>(list: readonly T[], random: Random): T | undefined =>
  list[Math.floor(random() * list.length)]

/** A changed copy of an input: fields of another, longer lists, other figures, other refrigerants. */
export function changed(input: Tree, other: Tree, schema: JsonSchema, random: Random): Tree {
  const copy = structuredClone(input)
  const turns = 1 + Math.floor(random() * 3)
  for (let turn = 0; turn < turns; turn += 1) {
    const how = pick([take, take, take, drop, grow, grow, vary, vary, rename], random)
    how?.(copy, structuredClone(other), schema, random)
  }
  return copy
}

type Change = (input: Tree, other: Tree, schema: JsonSchema, random: Random) => void

const take: Change = (input, other, _, random) => {
  const name = pick(Object.keys(other), random)
  if (name !== undefined) input[name] = other[name]
}

const drop: Change = (input, _, __, random) => {
  const name = pick(Object.keys(input), random)
  if (name !== undefined) delete input[name]
}

/** Each new item is one that is there, varied: equal ones may cost nothing. */
const grow: Change = (input, _, schema, random) => {
  const found = pick(listsIn(input, schema, schema.$defs ?? {}), random)
  if (!found || found.list.length === 0) return
  const length = random() < 0.5 ? found.most : Math.min(found.most, found.list.length * 2)
  while (found.list.length < length) {
    const item = { item: structuredClone(pick(found.list, random)) }
    vary(item, {}, schema, random)
    found.list.push(item.item)
  }
}

const vary: Change = (input, _, __, random) => {
  const leaf = pick(leavesOf(input), random)
  if (!leaf) return
  const [holder, name] = leaf
  const value = holder[name]
  if (typeof value === 'number') {
    const varied = value * 2 ** (random() * 2 - 1)
    holder[name] = Number.isInteger(value) ? Math.round(varied) : varied
  }
  if (typeof value === 'boolean') holder[name] = !value
  if (typeof value === 'string') holder[name] = variedText(value, random)
}

function variedText(text: string, random: Random): string {
  const read = /^([+-]?\d*\.?\d+)\s*(?:±\S+)?\s*([a-z°³].*)$/iu.exec(text)
  if (!read) return text
  const value = Number((Number(read[1]) * 2 ** (random() - 0.5)).toPrecision(4))
  return `${value} ${random() < 0.6 ? pick(BANDS, random) : ''} ${read[2]}`
}

const rename: Change = (input, _, __, random) => {
  const named = leavesOf(input).filter(([, name]) => /refrigerant|holds/iu.test(String(name)))
  const [holder, name] = pick(named, random) ?? []
  if (holder && name !== undefined) holder[name] = pick(NAMES, random)
}

function leavesOf(tree: Tree): readonly (readonly [Tree, string])[] {
  return Object.entries(tree).flatMap(([name, value]) =>
    typeof value === 'object' && value !== null ? leavesOf(value as Tree) : [[tree, name] as const],
  )
}

/** Lists of an input, each with the limit that its schema gives. */
function listsIn(
  value: unknown,
  schema: Limits | undefined,
  known: Readonly<Record<string, JsonSchema>>,
): readonly Found[] {
  if (schema === undefined || typeof value !== 'object' || value === null) return []
  if (schema.$ref !== undefined) {
    return listsIn(value, known[schema.$ref.replace('#/$defs/', '')], known)
  }
  const variants = [...(schema.anyOf ?? []), ...(schema.oneOf ?? []), ...(schema.allOf ?? [])]
  const inVariants = variants.flatMap((variant) => listsIn(value, variant, known))
  if (Array.isArray(value)) {
    if (schema.type !== 'array') return inVariants
    const most = schema.maxItems ?? MOST_WITHOUT_LIMIT
    return [{ list: value, most }, ...value.flatMap((item) => listsIn(item, schema.items, known))]
  }
  const inFields = Object.entries(value).flatMap(([name, field]) =>
    listsIn(field, schema.properties?.[name], known),
  )
  return [...inVariants, ...inFields]
}
