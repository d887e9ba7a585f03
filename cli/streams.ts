/** The file that keeps a shop's settings. */
export interface SettingsFile {
  readonly path: string
  /** undefined where there is none. */
  read(): Promise<string | undefined>
  /** Writes all of it or nothing. */
  write(text: string): Promise<void>
}

/** Where a run reads and writes, so that a test can be a terminal. */
export interface Streams {
  out(text: string): void
  err(text: string): void
  /** Standard input, read only when `-` asks for it. */
  readonly stdin: AsyncIterable<Uint8Array | string>
  readFile(path: string): Promise<string>
  readonly settings: SettingsFile
  /** Columns of the terminal. */
  readonly width: number
  readonly color: { readonly out: boolean; readonly err: boolean }
}
