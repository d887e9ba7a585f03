import { part } from './drawing.ts'
import type { Node } from './node.ts'
import type { Box } from './path.ts'
import { straight } from './shapes.ts'
import { textAt, widthOfText } from './text.ts'
import type { Paint } from './theme.ts'

/** A place on a scale that something is held against. */
export interface Line {
  readonly at: number
  readonly text: string
}

/** Lines that something is held against, their words in rows above the plot with the line led up to them. */
export function uprightLines(
  paint: Paint,
  lines: readonly Line[],
  box: Box,
  at: (si: number) => number,
  width: number,
  name = 'line',
): readonly Node[] {
  return lines.map((line, index) => {
    const x = at(line.at)
    const y = box.top - 6 - 17 * (lines.length - 1 - index)
    const textWidth = widthOfText(line.text, 'tick')
    const fits = x + 6 + textWidth < width - 4
    const left = x - 6 - textWidth > 4
    const [tx, anchor] = fits
      ? ([x + 6, 'start'] as const)
      : left
        ? ([x - 6, 'end'] as const)
        : ([width - 4, 'end'] as const)
    return part(
      `${name}-${index + 1}`,
      straight(paint, 'limit', [x, y - 9], [x, box.bottom]),
      textAt(paint, { text: line.text, at: [tx, y], anchor, look: 'cool-text', halo: true }),
    )
  })
}
