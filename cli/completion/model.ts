export interface CompletableOption {
  /** `--pressure` */
  readonly flag: string
  /** `-p`, where it has one. */
  readonly letter?: string | undefined
  readonly help: string
  /** Values to offer; none where any text may follow. */
  readonly values: readonly string[]
  readonly takes: 'nothing' | 'value' | 'file'
}

/** A command with everything that a shell may offer behind it. */
export interface Completable {
  readonly name: string
  readonly help: string
  /** Words that may stand without an option. */
  readonly words: readonly string[]
  readonly options: readonly CompletableOption[]
}

/** A text in single quotes, as bash and zsh read it; a help text without line breaks. */
export const shellQuoted = (text: string): string => `'${text.replaceAll("'", `'\\''`)}'`

export const firstSentence = (text: string): string =>
  (text.split(/(?<=[.;:])\s/u)[0] ?? '').replace(/[\s\n]+/gu, ' ').replace(/[.;:]$/u, '')
