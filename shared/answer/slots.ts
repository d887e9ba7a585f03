import { keptBy } from '../kept.ts'

/** A place in a sentence where something is put in: `{name}` or `{name|form}`. */
interface Slot {
  readonly name: string
  readonly form: string | undefined
  /** The slot as it is written. */
  readonly written: string
  /** The words behind it. */
  readonly after: string
}

/** A sentence taken apart. */
interface Template {
  readonly before: string
  readonly slots: readonly Slot[]
  readonly names: readonly string[]
}

const SLOT = /\{(\w+)(?:\|(\w+))?\}/gu

/** Sentences come from data files, but some are made of what somebody typed: those must not pile up. */
const MOST_KEPT = 2_000

/**
 * A sentence with its slots filled; it is taken apart once.
 *
 * @param fill - What stands for a slot; undefined leaves it as it is written, so that it is seen.
 */
export function fillSlots(
  sentence: string,
  fill: (name: string, form: string | undefined) => string | undefined,
): string {
  const { before, slots } = templateOf(sentence)
  let text = before
  for (const { name, form, written, after } of slots) text += (fill(name, form) ?? written) + after
  return text
}

/** Names of what a sentence has slots for. */
export const slotsOf = (sentence: string): readonly string[] => templateOf(sentence).names

const templateOf = keptBy((sentence: string): Template => {
  const found = [...sentence.matchAll(SLOT)]
  return {
    before: sentence.slice(0, found[0]?.index),
    names: found.map(([, name = '']) => name),
    slots: found.map(({ 0: written, 1: name = '', 2: form, index }, place) => ({
      name,
      form,
      written,
      after: sentence.slice(index + written.length, found[place + 1]?.index),
    })),
  }
}, MOST_KEPT)
