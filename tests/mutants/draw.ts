import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { codeSpots, parses, wordsOf } from './code.ts'
import { figureSpots } from './figures.ts'
import { groupBy } from './group.ts'
import { type Project, roomFiles } from './project.ts'
import type { Mutant, Spot } from './types.ts'

/** Even chances in [0, 1), the same for the same seed. */
const chances = (seed: number, count: number): readonly number[] =>
  fc
    .sample(fc.noBias(fc.nat({ max: 2 ** 30 - 1 })), { seed, numRuns: count })
    .map((whole) => whole / 2 ** 30)

/** A seed of its own for each room, so that one more room changes no other's draw. */
const seedOf = (seed: number, room: string): number =>
  [...room].reduce((sum, letter) => (sum * 31 + letter.charCodeAt(0)) | 0, seed)

const pick = <T>(list: readonly T[], chance: number): T | undefined =>
  list[Math.floor(chance * list.length)]

const lineOf = (text: string, offset: number): number => text.slice(0, offset).split('\n').length

/** Every spot of a file by the line it begins on. */
function spotsByLine(text: string, spots: readonly Spot[]): ReadonlyMap<number, readonly Spot[]> {
  return groupBy(
    spots.filter(({ variants }) => variants.length > 0),
    ({ start }) => lineOf(text, start),
  )
}

/** The text of the file with the fault in it. */
export const faulty = (text: string, { start, end, becomes }: Mutant): string =>
  text.slice(0, start) + becomes + text.slice(end)

/** The names that the project's own code knows. */
function namesOf(root: string, files: readonly string[]): ReadonlySet<string> {
  const code = files.filter((file) => /^(?:shared|data)\/.*\.(?:ts|json)$/u.test(file))
  return new Set(code.flatMap((file) => wordsOf(readFileSync(join(root, file), 'utf8'))))
}

/**
 * Draws faults of a room: a line that can take one (each line as likely as another, so that
 * files count by their length), then a spot on it, then a way to spoil it. The same seed
 * draws the same ones, and a larger count only adds to them.
 */
export function draw(
  { root, rooms }: Project,
  files: readonly string[],
  room: string,
  seed: number,
  count: number,
): readonly Mutant[] {
  const properties = namesOf(root, files)
  const lines = roomFiles(files, rooms[room] ?? room).flatMap((file) => {
    const text = readFileSync(join(root, file), 'utf8')
    const spots = file.endsWith('.json')
      ? figureSpots(file, text)
      : codeSpots(file, text, properties)
    return [...spotsByLine(text, spots)].map(([line, here]) => ({ file, text, line, here }))
  })
  const luck = chances(seedOf(seed, room), lines.length * 3)
  const shuffled = lines
    .map((line, index) => ({ ...line, luck: luck.slice(index * 3, index * 3 + 3) }))
    .sort((a, b) => (a.luck[0] ?? 0) - (b.luck[0] ?? 0))
  const drawn: Mutant[] = []
  for (const { file, text, line, here, luck: chance } of shuffled) {
    if (drawn.length === count) break
    const spot = pick(here, chance[1] ?? 0)
    const becomes = pick(spot?.variants ?? [], chance[2] ?? 0)
    if (!spot || becomes === undefined) continue
    const { start, end, operator } = spot
    const mutant = { room, file, line, operator, start, end, was: text.slice(start, end), becomes }
    if (file.endsWith('.json') || parses(file, faulty(text, mutant))) drawn.push(mutant)
  }
  return drawn
}
