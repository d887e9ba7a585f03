import { draw } from './draw.ts'
import { reachOf } from './graph.ts'
import { baseline, isOwn, judge } from './judge.ts'
import type { Options } from './options.ts'
import { filesOf, type Project, roomFiles } from './project.ts'
import { describeMutant, describeVerdict } from './report.ts'
import { makeScratch } from './scratch.ts'
import type { Mutant, Verdict } from './types.ts'

type Say = (line: string) => void

/** The rooms asked for that are there; the others are named. */
function roomsOf(project: Project, files: readonly string[], asked: readonly string[], say: Say) {
  const names = asked.length > 0 ? asked : Object.keys(project.rooms)
  return names.filter((room) => {
    const folder = project.rooms[room]
    if (folder === undefined) {
      throw new Error(`No room "${room}"; there are ${Object.keys(project.rooms).join(', ')}`)
    }
    const isThere = roomFiles(files, folder).length > 0
    if (!isThere) say(`${room}: not there yet, skipped`)
    return isThere
  })
}

/** Draws the faults, tries each, and gives what became of them in the order drawn. */
export async function mutate(
  project: Project,
  { seed, rooms, count, only, list, own, jobs }: Options,
  say: Say,
): Promise<readonly Verdict[]> {
  const files = filesOf(project.root)
  const isAsked = ({ file, line }: Mutant) => only.length === 0 || only.includes(`${file}:${line}`)
  const mutants = roomsOf(project, files, rooms, say).flatMap((room) => {
    const drawn = draw(project, files, room, seed, count)
    if (drawn.length < count) say(`${room}: only ${drawn.length} lines can take a fault`)
    return drawn.filter(isAsked)
  })
  if (list) {
    for (const mutant of mutants) say(describeMutant(mutant))
    return []
  }
  const all = reachOf(project, files)
  const reach = (file: string, room: string) =>
    all(file).filter((test) => !own || isOwn(test, room))
  const tests = new Set(mutants.flatMap(({ file, room }) => reach(file, room)))
  const scratches = Array.from({ length: jobs }, () => makeScratch(project.root, files))
  try {
    const [first] = scratches
    if (!first) return []
    const before = await baseline(first, [...tests], seed)
    say(
      `${tests.size - before.broken.length} test files pass unspoilt in ${before.seconds.toFixed(0)} s`,
    )
    for (const test of before.broken) say(`${test}: fails without any fault, not asked`)
    const verdicts = new Map<Mutant, Verdict>()
    const waiting = [...mutants]
    const work = async (scratch: (typeof scratches)[number]): Promise<void> => {
      for (let next = waiting.shift(); next; next = waiting.shift()) {
        const verdict = await judge(scratch, next, reach(next.file, next.room), before)
        verdicts.set(next, verdict)
        say(`${String(verdicts.size).padStart(3)}/${mutants.length} ${describeVerdict(verdict)}`)
      }
    }
    await Promise.all(scratches.map(work))
    return mutants.flatMap((mutant) => verdicts.get(mutant) ?? [])
  } finally {
    for (const scratch of scratches) scratch.remove()
  }
}
