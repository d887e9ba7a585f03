import * as z from 'zod'
import { THEMES } from './scene/theme.ts'

/** Widths that pictures are laid out for, px; text keeps its size, so a narrow one has fewer ticks. */
export const NARROWEST = 320
export const WIDEST = 1920

/** How a picture is to be drawn, whatever it shows. */
export const drawingIn = {
  theme: z
    .enum(THEMES)
    .default('light')
    .describe(
      'Colours: light, dark, print, or page (classes for the style sheet of a page, no colours)',
    ),
  width: z
    .number()
    .int()
    .min(NARROWEST)
    .max(WIDEST)
    .default(720)
    .describe(
      `Width in pixels, ${NARROWEST} to ${WIDEST}: the picture is laid out for it, so that its text keeps its size`,
    ),
}

export const drawingOptions = z.strictObject(drawingIn)
export type DrawingOptions = z.input<typeof drawingOptions>

/** The same for doors that read text: `fieldsOf` takes it as it takes an operation. */
export const DRAWING = { input: drawingOptions }
