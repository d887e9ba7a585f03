/** The file that keeps a shop's settings. */
export interface SettingsFile {
  readonly path: string
  /** undefined where there is none. */
  read(): Promise<string | undefined>
  /** Writes all of it or nothing. */
  write(text: string): Promise<void>
}

/** Questions to a person at a terminal. */
export interface Ask {
  /** @param check - True where an answer will do, else why not. */
  text(message: string, check: (answer: string) => true | string): Promise<string>
  choose(message: string, choices: readonly string[]): Promise<string>
}

/** Where a run reads and writes, so that a test can be a terminal. */
export interface Streams {
  /** Writes to standard output; a promise where the reader is behind, for whoever writes much to wait for. */
  out(text: string): Promise<unknown> | undefined
  err(text: string): void
  /** Standard input, read only when `-` asks for it. */
  readonly stdin: AsyncIterable<Uint8Array | string>
  readFile(path: string): Promise<string>
  readonly settings: SettingsFile
  /** Writes all of a file or nothing. */
  writeFile(path: string, text: string): Promise<void>
  /** Questions to a person; undefined where nobody sits at a terminal. */
  readonly ask?: Ask | undefined
  /** A file piece by piece, however long it is. */
  openFile(path: string): AsyncIterable<Uint8Array | string>
  /** Whether there is a file or a directory of that name. */
  isThere(path: string): boolean
  /** Columns of the terminal. */
  readonly width: number
  readonly color: { readonly out: boolean; readonly err: boolean }
  /** Whether somebody looks at standard error while it is written. */
  readonly isWatched: boolean
}
