import { isQuantity, isScalar, type Scalar, scalarText } from '../../shared/answer/scalar.ts'
import { labelOf } from '../../shared/answer/words.ts'
import { gridLines, type Row } from './grid.ts'
import { type Page, type Pair, pairLines } from './pairs.ts'
import { hanging, paragraph } from './wrap.ts'

const INDENT = 2
/** Results are shallow; what lies deeper than this is shown as JSON. */
const DEEPEST = 8

/**
 * Any result as lines: scalars as labelled figures, like rows as a table, the rest as headed sections.
 *
 * Scalars of an object come before its sections, so that the figures stand together.
 */
export function treeLines(tree: unknown, indent: number, page: Page, depth = 0): readonly string[] {
  if (depth > DEEPEST) return paragraph(JSON.stringify(tree), indent, page.width)
  if (isScalar(tree)) return paragraph(scalarText(tree, page.precise), indent, page.width)
  if (Array.isArray(tree)) return listLines(tree, indent, page, depth)
  if (typeof tree !== 'object' || tree === null) return []
  const entries = Object.entries(tree)
  const pairs: readonly Pair[] = entries.flatMap(([name, value]) => {
    const scalar = asScalar(value)
    return scalar === undefined ? [] : [{ label: labelOf(name), value: scalar }]
  })
  const sections = entries
    .filter(([, value]) => asScalar(value) === undefined && !isEmpty(value))
    .flatMap(([name, value]) => {
      const lines = treeLines(value, indent + INDENT, page, depth + 1)
      const heading = ' '.repeat(indent) + page.ink.heading(labelOf(name))
      // Lists that are all empty leave nothing under their heading.
      return lines.length === 0 ? [] : ['', heading, ...lines]
    })
  const figures = pairLines(pairs, indent, page)
  return figures.length > 0 || sections[0] !== '' ? [...figures, ...sections] : sections.slice(1)
}

/** A short list of words reads as one value. */
function asScalar(value: unknown) {
  if (isScalar(value)) return value
  const words = Array.isArray(value) && value.length > 0 && value.every(isShort)
  return words ? value.map((item) => scalarText(item, false)).join(', ') : undefined
}

const isShort = (item: unknown): item is string | number =>
  (typeof item === 'string' && item.length <= 24 && !item.includes(',')) || typeof item === 'number'

const isEmpty = (value: unknown) =>
  value === null ||
  value === undefined ||
  (typeof value === 'object' && Object.keys(value).length === 0)

function listLines(list: readonly unknown[], indent: number, page: Page, depth: number) {
  if (list.every(isLabelled)) return pairLines(list, indent, page)
  if (list.every(isStatement)) {
    return list.flatMap((item) => statementLines(item, indent, page))
  }
  const grid = list.every(isRow) ? gridLines(list.map(flattened), indent, page) : undefined
  if (grid) return grid
  const items = list.map((item, index) =>
    isScalar(item)
      ? bullet(scalarText(item, page.precise), indent, page)
      : itemLines(item, index, indent, page, depth),
  )
  const apart = !list.every(isScalar) && items.some((lines) => lines.length > 1)
  return items.flatMap((lines, index) => (apart && index > 0 ? ['', ...lines] : lines))
}

/** What a section of a list is called by, the first that it has; its id then says nothing more. */
const NAMES = ['title', 'name', 'message', 'sentence', 'condition', 'about', 'part', 'id'] as const

function itemLines(item: unknown, index: number, indent: number, page: Page, depth: number) {
  const key = isRow(item) ? NAMES.find((name) => typeof item[name] === 'string') : undefined
  const number = `${' '.repeat(indent)}${page.ink.quiet(`${index + 1}`)}`
  if (!isRow(item) || key === undefined) {
    const [first = '', ...rest] = treeLines(item, indent + INDENT, page, depth + 1)
    return [`${number} ${first.trimStart()}`, ...rest]
  }
  const { [key]: heading, id: _, ...others } = item
  const text = page.ink.heading(scalarText(String(heading), page.precise))
  return [
    ...hanging(number, text, indent + INDENT, page.width),
    ...treeLines(others, indent + INDENT, page, depth + 1),
  ]
}

/** A row with its parts one level down beside it, so that it may stand in a table. */
function flattened(row: Row): Row {
  const cells = Object.entries(row).flatMap(
    ([name, value]): readonly (readonly [string, unknown])[] => {
      if (Array.isArray(value) && value.length > 0 && value.every(isScalar)) {
        return [[name, inOneCell(value, false)]]
      }
      if (!isRow(value)) return isEmpty(value) ? [] : [[name, value]]
      return Object.entries(value).map(([inner, figure]) => [`${name} ${inner}`, figure])
    },
  )
  return Object.fromEntries(cells)
}

/** "23 / 25 / 52 %": figures of one unit say it once. */
function inOneCell(list: readonly Scalar[], precise: boolean): string {
  const units = new Set(list.map((value) => (isQuantity(value) ? value.unit : '')))
  const [unit = ''] = units
  if (units.size > 1 || unit === '') {
    return list.map((value) => scalarText(value, precise)).join(' / ')
  }
  return `${list.map((value) => (isQuantity(value) ? value.value : '')).join(' / ')} ${unit}`
}

const isLabelled = (item: unknown): item is Pair => {
  if (!isRow(item)) return false
  const { label, value, ...rest } = item
  return typeof label === 'string' && isScalar(value) && Object.keys(rest).length === 0
}

type Statement = Row & { readonly text: string }

/** A sentence with what stands behind it: mark, section, date. */
const isStatement = (item: unknown): item is Statement =>
  isRow(item) &&
  typeof item.text === 'string' &&
  item.text.length > 24 &&
  Object.values(item).every((value) => typeof value === 'string' || isEmpty(value))

/** Names of a row that a person does not need beside its sentence. */
const UNSAID: ReadonlySet<string> = new Set(['id', 'text', 'url', 'source', 'code'])

/** Names whose values speak for themselves. */
const PLAIN: ReadonlySet<string> = new Set(['section', 'mark', 'where'])

function statementLines(item: Statement, indent: number, page: Page): readonly string[] {
  const behind = Object.entries(item).filter(
    ([name, value]) =>
      !UNSAID.has(name) && !isEmpty(value) && !(name === 'applies' && value === 'yes'),
  )
  const tags = behind.map(([name, value]) =>
    PLAIN.has(name)
      ? scalarText(String(value), false)
      : `${labelOf(name).toLowerCase()}: ${String(value)}`,
  )
  const tail = tags.length === 0 ? '' : ` ${page.ink.quiet(`(${tags.join('; ')})`)}`
  return bullet(`${item.text}${tail}`, indent, page)
}

const isRow = (item: unknown): item is Row =>
  typeof item === 'object' && item !== null && !Array.isArray(item) && !isScalar(item)

const bullet = (text: string, indent: number, page: Page) =>
  hanging(`${' '.repeat(indent)}-`, text, indent + INDENT, page.width)
