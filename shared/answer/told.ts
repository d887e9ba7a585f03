import * as z from 'zod'
import {
  type Presentation,
  type Quantity,
  quantityOut,
  type ShownQuantity,
  showAll,
} from '../quantity/index.ts'
import { figureText, isForm } from './figure-text.ts'
import { fillSlots } from './slots.ts'

/** How urgent an answer is: `stop` is printed first, whatever was asked. */
export const LEVELS = ['stop', 'check', 'fine', 'information'] as const
export type Level = (typeof LEVELS)[number]

/** What a figure rests on, where that is less than a published or computed value. */
export const BASES = [
  'from memory',
  'estimated',
  'secondary',
  'common practice',
  'assumed',
] as const
export type Basis = (typeof BASES)[number]

/** A figure of the screen. */
export interface Figure {
  /** Name that sentences use for it: `{superheat}`. */
  readonly id: string
  /** What it is, in a word or two. */
  readonly label: string
  readonly value: Quantity | number | string
  /** What it means; may name figures in braces, and the quantities of `beside`. */
  readonly says?: string | undefined
  /** Quantities that its meaning names and that are no figures of their own, with their steps. */
  readonly beside?: Readonly<Record<string, Pick<Figure, 'value' | 'step'>>> | undefined
  readonly basis?: Basis | undefined
  /** Smallest step of the gauge or scale that must show it, SI. */
  readonly step?: number | undefined
  /** Which way rounding is safe: a limit not to be passed down, one to be reached up. */
  readonly safe?: 'up' | 'down' | undefined
}

/** A figure, or nothing where its value is not known. */
export const entry = (
  id: string,
  label: string,
  value: Quantity | undefined,
  more: Partial<Figure>,
): readonly Figure[] => (value === undefined ? [] : [{ id, label, value, ...more }])

/**
 * The answer in a mechanic's words, before units are chosen.
 *
 * Sentences hold no numbers of their own: `{id}` stands for a figure, `{id|both}` for it in both unit
 * systems, `{id|bare}` without its ±, `{id|spoken}` in both systems without its ±.
 */
export interface Told {
  readonly level: Level
  /** One sentence: the number, and what it means. */
  readonly headline: string
  /** At most six, in the order that matters. */
  readonly figures: readonly Figure[]
  /** At most three things to do, the first one first. */
  readonly next: readonly string[]
  /** One thing was asked and the headline says it all: no figures or steps stand under it. */
  readonly line?: boolean | undefined
}

export const MOST_FIGURES = 6
export const MOST_NEXT = 3
export const LONGEST_HEADLINE = 160

export const toldOut = {
  level: z
    .enum(LEVELS)
    .describe('How urgent: stop (danger or forbidden), check, fine, information'),
  headline: z.string().describe('The answer in one sentence'),
  figures: z
    .array(
      z.strictObject({
        id: z.string().describe('Name of the figure'),
        label: z.string().describe('What it is, in a word or two'),
        value: z.union([quantityOut, z.number(), z.string()]).describe('The figure'),
        text: z.string().describe('The figure as the screen shows it'),
        says: z.string().optional().describe('What it means'),
        basis: z
          .enum(BASES)
          .optional()
          .describe('What it rests on, where that is less than published or computed'),
      }),
    )
    .describe('The figures that matter, at most six'),
  next: z.array(z.string()).describe('What to do next, the first thing first'),
  line: z.boolean().describe('Whether the headline says it all'),
}

export interface ShownFigure {
  readonly id: string
  readonly label: string
  readonly value: ShownQuantity | number | string
  readonly text: string
  readonly says?: string
  readonly basis?: Basis
}

export interface ShownTold {
  readonly level: Level
  readonly headline: string
  readonly figures: readonly ShownFigure[]
  readonly next: readonly string[]
  readonly line: boolean
}

/** The told answer in the chosen units, its sentences filled from its figures. */
export const showTold = (told: Told, presentation: Presentation): ShownTold =>
  showAll(fillTold(told, presentation), presentation) as ShownTold

/** A told answer with its sentences filled, its figures still quantities. */
export type FilledTold = Omit<ShownTold, 'figures'> & {
  readonly figures: readonly (Pick<ShownFigure, 'id' | 'label' | 'text'> &
    Pick<Figure, 'value' | 'says' | 'basis'>)[]
}

export function fillTold(told: Told, presentation: Presentation): FilledTold {
  const { level, headline, figures, next, line } = told
  const fill = filler(figures, presentation)
  return {
    level,
    headline: fill(headline, NONE),
    figures: figures.map((figure) => {
      const { id, label, value, says, basis, beside } = figure
      const text = figureText(figure, presentation)
      return { id, label, value, text, says: says && fill(says, beside ?? NONE), basis }
    }),
    next: next.map((sentence) => fill(sentence, NONE)),
    line: line ?? false,
  }
}

const NONE: NonNullable<Figure['beside']> = {}

/** Fills a sentence from the figures of an answer, and from those beside it. */
function filler(figures: readonly Figure[], presentation: Presentation) {
  return (sentence: string, beside: NonNullable<Figure['beside']>): string =>
    fillSlots(sentence, (id, form) => {
      if (form !== undefined && !isForm(form)) return undefined
      // At most six: looking through them is faster than an index of them.
      const figure = beside[id] ?? figures.find((entry) => entry.id === id)
      if (!figure) throw new Error(`A sentence names the figure "${id}", which the answer lacks.`)
      return figureText(figure, presentation, form)
    })
}
