/** Attributes of an element; numbers are written to a hundredth of a pixel. */
export type Attributes = Readonly<Record<string, string | number | undefined>>

/** A piece of a picture, before it is written out. */
export type Node = string | Element

interface Element {
  readonly name: string
  readonly attributes: Attributes
  readonly children: readonly Node[]
}

/** An element of SVG; plain strings among the children are text. */
export const el = (
  name: string,
  attributes: Attributes = {},
  ...children: readonly Node[]
): Element => ({ name, attributes, children })

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
}

/** A space that lines are not broken at; written out it is like any other. */
export const TIGHT = '\u00a0'

/** Letters that XML 1.0 allows, and none that would end an element or an attribute. */
const escaped = (text: string) =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: XML has no way to write them
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/gu, '')
    .replaceAll(TIGHT, ' ')
    .replace(/[&<>"]/gu, (letter) => ESCAPES[letter] ?? letter)

/**
 * To a hundredth of a pixel.
 *
 * @throws {RangeError} for what is no finite number: a fault of the drawing, never of the input.
 */
export function rounded(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError('a picture has a coordinate that is no number')
  const near = Math.round(value * 100) / 100
  return near === 0 ? 0 : near
}

/** The text of an element and all below it. */
export function written(node: Node): string {
  if (typeof node === 'string') return escaped(node)
  const { name, attributes, children } = node
  const listed = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => {
      const text = typeof value === 'number' ? String(rounded(value)) : escaped(String(value))
      return ` ${key}="${text}"`
    })
    .join('')
  return children.length === 0
    ? `<${name}${listed}/>`
    : `<${name}${listed}>${children.map(written).join('')}</${name}>`
}
