import { isScalar, scalarText } from './scalar.ts'
import { labelOf } from './words.ts'

/** Verdicts lie no deeper than this in a result. */
const DEEPEST = 3

/**
 * What a result comes to: its conclusion where it has one, else what its sections conclude in their
 * order, by their sentence or as "Section: verdict". Scalars of the result itself stand at its head anyway and are left out.
 */
export function verdictsOf(result: unknown): readonly string[] {
  const whole = isSection(result) ? result.conclusion : undefined
  return typeof whole === 'string' ? [whole] : verdictsIn(result, 0)
}

function verdictsIn(result: unknown, depth: number): readonly string[] {
  if (depth > DEEPEST || !isSection(result)) return []
  return Object.entries(result).flatMap(([name, part]) => {
    const told = isSection(part) ? conclusion(labelOf(name), part) : undefined
    return told === undefined ? verdictsIn(part, depth + 1) : [told]
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
