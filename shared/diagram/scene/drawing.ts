import { el, type Node, written } from './node.ts'
import type { Box } from './path.ts'
import { SIZES, textAt, widthOfText, wrapped } from './text.ts'
import type { Paint } from './theme.ts'

/** What every picture is drawn by. */
export interface Frame {
  /** Pixels; the height follows from what is in the picture. */
  readonly width: number
  /** Unit system of axes and figures. */
  readonly system: 'us' | 'si'
  readonly paint: Paint
}

/** A picture, ready to be written out. */
export interface Drawing {
  readonly title: string
  /** The same in words, for who does not see it. */
  readonly says: string
  readonly height: number
  readonly body: readonly Node[]
}

/** A description of several sentences, each closed once; what is not there is left out. */
export const sentences = (...parts: readonly (string | undefined)[]): string =>
  parts
    .flatMap((text) =>
      text === undefined || text === '' ? [] : `${text.replace(/[.\s]+$/u, '')}.`,
    )
    .join(' ')

/** The text of a picture as a file of its own, or to stand in a page. */
export function svgOf({ title, says, height, body }: Drawing, { width, paint }: Frame): string {
  const all = { x: 0, y: 0, width, height }
  return written(
    el(
      'svg',
      {
        xmlns: 'http://www.w3.org/2000/svg',
        viewBox: `0 0 ${width} ${Math.ceil(height)}`,
        width,
        height: Math.ceil(height),
        role: 'img',
      },
      el('title', {}, title),
      el('desc', {}, says),
      el('rect', { ...all, height: Math.ceil(height), ...paint('paper') }),
      ...body,
    ),
  )
}

/** Space around everything, px. */
export const EDGE = 12

/** Something under another: what it is made of, and where it ends. */
export interface Block {
  readonly nodes: readonly Node[]
  readonly bottom: number
}

/** The title over a picture, and a line under it. */
export function heading({ width, paint }: Frame, title: string, under?: string): Block {
  const room = width - 2 * EDGE
  const nodes: Node[] = []
  let y = EDGE
  const add = (text: string, size: 'title' | 'label', look: 'text' | 'soft-text') => {
    for (const line of wrapped(text, size, room)) {
      y += SIZES[size] * 1.25
      nodes.push(textAt(paint, { text: line, at: [EDGE, y], size, look, bold: size === 'title' }))
    }
  }
  add(title, 'title', 'text')
  if (under !== undefined) add(under, 'label', 'soft-text')
  return { nodes, bottom: y + 8 }
}

/** An entry under a picture: what it looks like, and what that is. */
export interface KeyEntry {
  readonly text: string
  /** Drawn in a box of 26 by 16 px whose middle is given. */
  readonly sample: (x: number, y: number) => readonly Node[]
}

const SAMPLE = 26
const ROW = 20

/** The key: entries beside each other as far as they fit, each wrapped where it is too long alone. */
export function keyOf({ width, paint }: Frame, entries: readonly KeyEntry[], top: number): Block {
  const nodes: Node[] = []
  const room = width - 2 * EDGE
  let [x, y] = [EDGE, top + ROW]
  for (const { text, sample } of entries) {
    const lines = wrapped(text, 'label', room - SAMPLE - 8)
    const widest = Math.max(...lines.map((line) => widthOfText(line, 'label')))
    const taken = SAMPLE + 8 + widest + 18
    if (x > EDGE && (x + taken - 18 > width - EDGE || lines.length > 1)) [x, y] = [EDGE, y + ROW]
    nodes.push(...sample(x + SAMPLE / 2, y - 4.5))
    for (const [index, line] of lines.entries()) {
      if (index > 0) y += ROW - 3
      nodes.push(textAt(paint, { text: line, at: [x + SAMPLE + 8, y], size: 'label' }))
    }
    if (lines.length > 1) [x, y] = [EDGE, y + ROW]
    else x += taken
  }
  return { nodes, bottom: (x === EDGE ? y - ROW : y) + EDGE }
}

/** A group with a name that a page or a test can find it by. */
export const part = (name: string, ...children: readonly Node[]): Node =>
  el('g', { 'data-part': name }, ...children)

export const widthOf = (box: Box) => box.right - box.left
export const heightOf = (box: Box) => box.bottom - box.top
