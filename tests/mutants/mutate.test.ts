import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { faulty } from './draw.ts'
import { reachOf } from './graph.ts'
import { baseline, judge } from './judge.ts'
import { filesOf, type Project } from './project.ts'
import { runTests } from './run-tests.ts'
import { makeScratch } from './scratch.ts'
import type { Mutant } from './types.ts'

const fixture: Project = {
  root: new URL('fixture/', import.meta.url).pathname,
  rooms: { room: 'shared/room', figures: 'data/service' },
  looks: (file) => file === 'tests/room.test.ts',
}
const files = filesOf(fixture.root)
const scratch = makeScratch(fixture.root, files)
afterAll(() => scratch.remove())

/** The fault that puts `becomes` for `was` in a file of the fixture. */
function fault(file: string, was: string, becomes: string): Mutant {
  const start = readFileSync(join(fixture.root, file), 'utf8').indexOf(was)
  if (start < 0) throw new Error(`${file} has no ${was}`)
  const end = start + was.length
  return { room: 'room', file, line: 1, operator: 'test', start, end, was, becomes }
}
const room = 'shared/room/room.ts'
const limits = 'data/service/limits.json'

describe('a fault that is put into a small tree', { timeout: 120_000 }, () => {
  const reach = reachOf(fixture, files)
  const before = baseline(scratch, ['tests/room.test.ts'], 1)

  it.each([
    ['killed', room, 'a + b', 'a - b', 'tests/room.test.ts: the room adds'],
    ['killed', limits, '5,', '6,', 'tests/room.test.ts: the room weighs'],
    // Nothing but a snapshot looks, and snapshots are switched off.
    ['survived', room, 'a * 2', 'a * 3', undefined],
    ['survived', room, 'mass > limits', 'mass >= limits', undefined],
    ['survived', limits, '9 kg', '8 kg', undefined],
  ])('%s in %s: %s becomes %s', async (fate, file, was, becomes, by) => {
    const mutant = fault(file, was, becomes)
    const verdict = await judge(scratch, mutant, reach(file), await before)
    expect(verdict).toEqual(expect.objectContaining({ fate, looked: 1 }))
    expect(verdict.by).toBe(by)
    expect(readFileSync(join(scratch.root, file), 'utf8')).toBe(
      readFileSync(join(fixture.root, file), 'utf8'),
    )
  })

  it('survives where no test imports the file', async () => {
    const mutant = fault(room, 'a + b', 'a - b')
    const verdict = await judge(scratch, mutant, [], await before)
    expect(verdict).toEqual(expect.objectContaining({ fate: 'survived', looked: 0 }))
  })

  it('is late where the tests do not come back', async () => {
    const options = { seed: 1, limitSeconds: 4, bail: true }
    const run = await runTests(scratch.root, ['tests/endless.test.ts'], options)
    expect(run.ended).toBe('late')
  })

  it('is not blamed on tests that fail without it', async () => {
    await scratch.with(fault(room, 'a + b', 'a - b'), async () => {
      const already = await baseline(scratch, ['tests/room.test.ts'], 1)
      expect(already.broken).toEqual(['tests/room.test.ts'])
    })
    const broken = { ...(await before), broken: ['tests/room.test.ts'] }
    const verdict = await judge(scratch, fault(room, 'a + b', 'a - b'), reach(room), broken)
    expect(verdict).toEqual(expect.objectContaining({ fate: 'survived', looked: 0 }))
  })
})

describe('the copy that is spoilt', () => {
  it('is another place than the tree, with the fault in it only while it is tried', async () => {
    const mutant = fault(room, 'a + b', 'a - b')
    const path = join(scratch.root, room)
    const own = readFileSync(join(fixture.root, room), 'utf8')
    await scratch.with(mutant, async () => {
      expect(readFileSync(path, 'utf8')).toBe(faulty(own, mutant))
      expect(readFileSync(join(fixture.root, room), 'utf8')).toBe(own)
    })
    expect(readFileSync(path, 'utf8')).toBe(own)
  })

  it('goes when it is done with', () => {
    const other = makeScratch(fixture.root, files)
    expect(existsSync(other.root)).toBe(true)
    other.remove()
    expect(existsSync(other.root)).toBe(false)
  })
})
