import { isScalar, scalarText } from './scalar.ts'
import { labelOf } from './words.ts'

/** Verdicts lie no deeper than this in a result. */
const DEEPEST = 3

/**
 * What the sections of a result conclude, in the order of the result: their sentence where they have
 * one, else "Section: verdict". Scalars of the result itself stand at its head anyway and are left out.
 */
export function verdictsOf(result: unknown, depth = 0): readonly string[] {
  if (depth > DEEPEST || !isSection(result)) return []
  return Object.entries(result).flatMap(([name, part]) => {
    const told = isSection(part) ? conclusion(labelOf(name), part) : undefined
    return told === undefined ? verdictsOf(part, depth + 1) : [told]
  })
}

function conclusion(label: string, section: Readonly<Record<string, unknown>>): string | undefined {
  const sentence = section.sentence ?? section.says
  if (typeof sentence === 'string') return sentence
  if (typeof section.verdict !== 'string') return undefined
  const because = typeof section.because === 'string' ? `. ${section.because}` : ''
  return `${label}: ${scalarText(section.verdict, false)}${because}`
}

const isSection = (part: unknown): part is Readonly<Record<string, unknown>> =>
  typeof part === 'object' && part !== null && !Array.isArray(part) && !isScalar(part)
