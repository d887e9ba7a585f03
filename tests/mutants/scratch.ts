import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { faulty } from './draw.ts'
import type { Mutant } from './types.ts'

const modules = new URL('../../node_modules', import.meta.url).pathname

/** A copy of the tree to spoil: the tree itself is never touched. */
export interface Scratch {
  readonly root: string
  /** Puts the fault in, does the work, takes the fault out again. */
  readonly with: <T>(mutant: Mutant, work: () => Promise<T>) => Promise<T>
  readonly remove: () => void
}

export function makeScratch(root: string, files: readonly string[]): Scratch {
  const copy = mkdtempSync(join(tmpdir(), 'mutants-'))
  for (const file of files) {
    mkdirSync(dirname(join(copy, file)), { recursive: true })
    cpSync(join(root, file), join(copy, file))
  }
  symlinkSync(modules, join(copy, 'node_modules'))
  const remove = () => rmSync(copy, { recursive: true, force: true })
  // Also when the run is broken off.
  process.once('exit', remove)
  return {
    root: copy,
    with: async (mutant, work) => {
      const path = join(copy, mutant.file)
      const text = readFileSync(path, 'utf8')
      writeFileSync(path, faulty(text, mutant))
      try {
        return await work()
      } finally {
        writeFileSync(path, text)
      }
    },
    remove: () => {
      process.off('exit', remove)
      remove()
    },
  }
}
