import type * as z from 'zod'
import { showTold } from '../answer/told.ts'
import { type Computation, type Computed, type DefinedOperation, parseInput } from '../operation.ts'
import { atOnce, type InPieces } from '../pieces.ts'
import { type DrawingOptions, drawingOptions } from './options.ts'
import { type Drawing, type Frame, svgOf } from './scene/drawing.ts'
import { paintIn } from './scene/theme.ts'

/** A picture of an operation's answer: from the operation's own input to the text of an SVG. */
export interface Diagram {
  /**
   * @param input - What the operation takes, `units` included.
   * @throws {CalcError} whatever the operation refuses, and where there is nothing to draw.
   */
  draw(input: unknown, options?: DrawingOptions): string
  /** The same in pieces, where the operation takes long. */
  drawInPieces(input: unknown, options?: DrawingOptions): InPieces<string>
}

type Fields = Record<string, z.ZodType>

/**
 * Makes a picture of an operation.
 *
 * The operation computes first, so that a picture is refused where an answer would be.
 *
 * @param view - From the parsed input and what was computed, in SI; `told` is the headline of the answer.
 */
export function defineDiagram<F extends Fields, R extends z.ZodType>(
  operation: DefinedOperation<F, R>,
  view: (
    input: z.output<z.ZodObject<F>>,
    computed: Computation<Computed<z.output<R>>>,
    told: string | undefined,
    frame: Frame,
  ) => Drawing,
): Diagram {
  const diagram: Diagram = {
    draw: (...asked) => atOnce(diagram.drawInPieces(...asked)),
    *drawInPieces(raw, options = {}) {
      const { theme, width } = parseInput(drawingOptions, options)
      const { own, presentation } = operation.read(raw)
      const computed = yield* operation.inPieces(own)
      const { units, lead = 'us' } = presentation
      const frame: Frame = {
        width,
        system: units === 'both' ? lead : units,
        paint: paintIn(theme),
      }
      const told = computed.told && showTold(computed.told, presentation).headline
      return svgOf(view(own, computed, told, frame), frame)
    },
  }
  return diagram
}
