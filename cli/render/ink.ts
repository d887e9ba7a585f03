import picocolors from 'picocolors'
import type { CAUTION_LEVELS } from '../../shared/cautions.ts'

type Paint = (text: string) => string
export type Level = (typeof CAUTION_LEVELS)[number]

/** What colours mean here: none carries meaning alone, each stands beside a word. */
export interface Ink {
  readonly title: Paint
  readonly heading: Paint
  readonly figure: Paint
  readonly quiet: Paint
  readonly error: Paint
  readonly level: Readonly<Record<Level, Paint>>
}

export function inkOf(enabled: boolean): Ink {
  const colors = picocolors.createColors(enabled)
  return {
    title: colors.bold,
    heading: colors.underline,
    figure: colors.bold,
    quiet: colors.dim,
    error: (text) => colors.bold(colors.red(text)),
    level: {
      danger: (text) => colors.bold(colors.red(text)),
      warning: (text) => colors.bold(colors.yellow(text)),
      note: colors.cyan,
    },
  }
}
