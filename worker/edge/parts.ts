/**
 * Data that lies beside the program of the edge: in the program stands what is read while it starts,
 * and the rest is put into the same objects before the first request is answered.
 */

/** A value as JSON has it. */
export type Json = null | boolean | number | string | Json[] | { [name: string]: Json }

/** What stands in the program, by the number of its file. */
const parts = new Map<number, object>()

/** Keeps what stands in the program of one data file, so that the rest can be put into it. */
export function part<T extends object>(file: number, here: T): T {
  parts.set(file, here)
  return here
}

/** Puts the rest of each file, by its number, into what the program has of it. */
export function fillAll(rest: Readonly<Record<number, Json>>): void {
  for (const [file, here] of parts) {
    const more = rest[file]
    if (more !== undefined) fill(here as Json, more)
  }
}

/**
 * Puts into a value what was left out of it: objects and lists that stand there already are filled
 * where they are, since others hold on to them; all else is set.
 */
export function fill(here: Json, rest: Json): void {
  if (!isTree(here) || !isTree(rest)) return
  const into = here as { [name: string]: Json }
  for (const [name, more] of Object.entries(rest)) {
    const there = Object.hasOwn(into, name) ? into[name] : undefined
    if (isTree(there)) fill(there, more)
    else into[name] = more
  }
}

const isTree = (value: Json | undefined): value is Json[] | { [name: string]: Json } =>
  typeof value === 'object' && value !== null
