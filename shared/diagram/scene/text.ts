import { el, type Node } from './node.ts'
import type { Box, Pixel } from './path.ts'
import type { LookName, Paint } from './theme.ts'

/** Sizes in pixels; none below 11, so that a picture as wide as a telephone can be read on it. */
export const SIZES = { title: 16, label: 13, tick: 12 } as const
export type Size = keyof typeof SIZES

export const FONT = 'system-ui, sans-serif'

/** Widths of letters as a share of the size, of a wide common sans; a guess that errs on the wide side. */
const WIDTHS: readonly (readonly [letters: RegExp, share: number])[] = [
  [/[ilj.,:;'|!]/u, 0.34],
  [/[ ftr()[\]/-]/u, 0.42],
  [/[mwMW%]/u, 0.95],
  [/[A-Z]/u, 0.72],
  [/[0-9]/u, 0.64],
]

/** How much wider bold letters are. */
const BOLD = 1.09

/** About how wide a text comes out, px. */
export function widthOfText(text: string, size: Size, bold = size === 'title'): number {
  let width = 0
  for (const letter of text) {
    width += WIDTHS.find(([letters]) => letters.test(letter))?.[1] ?? 0.62
  }
  return width * SIZES[size] * (bold ? BOLD : 1)
}

/** A text in lines that are no wider than `width`, broken at spaces. */
export function wrapped(text: string, size: Size, width: number): readonly string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    const longer = last === undefined ? word : `${last} ${word}`
    if (last !== undefined && widthOfText(longer, size) <= width) lines[lines.length - 1] = longer
    else lines.push(word)
  }
  return lines
}

export type Anchor = 'start' | 'middle' | 'end'

export interface Written {
  readonly text: string
  readonly at: Pixel
  readonly size?: Size
  readonly look?: LookName
  readonly anchor?: Anchor
  readonly bold?: boolean
  /** Degrees about `at`. */
  readonly turned?: number
  /** A rim of paper, where it lies over lines. */
  readonly halo?: boolean
}

/** A line of text. */
export function textAt(paint: Paint, written: Written): Node {
  const { text, at, size = 'tick', look = 'text', anchor = 'start', bold, turned, halo } = written
  const [x, y] = at
  const attributes = {
    x,
    y,
    'font-family': FONT,
    'font-size': SIZES[size],
    'font-weight': bold ? 600 : undefined,
    'text-anchor': anchor === 'start' ? undefined : anchor,
    transform:
      turned === undefined ? undefined : `rotate(${turned} ${x.toFixed(2)} ${y.toFixed(2)})`,
  }
  const looks: readonly LookName[] = halo ? [look, 'halo'] : [look]
  return el('text', { ...attributes, ...paint(...looks) }, text)
}

/** Where a line of text lies. */
export function boxOfText({
  text,
  at: [x, y],
  size = 'tick',
  anchor = 'start',
  bold = false,
}: Written): Box {
  const width = widthOfText(text, size, bold)
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
  return { left, right: left + width, top: y - SIZES[size] * 0.85, bottom: y + SIZES[size] * 0.25 }
}
