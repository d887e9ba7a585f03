import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import packageData from '../package.json' with { type: 'json' }
import { RENAMED } from '../shared/fields/renamed.ts'
import { fieldsOf } from '../shared/input/index.ts'
import { operations } from '../shared/operations.ts'
import { session } from './cli/session.ts'
import { shellWords } from './support/shell-words.ts'

const readme = readFileSync('README.md', 'utf8')
const developers = readFileSync('DEVELOPERS.md', 'utf8')

/** Lines of the code blocks that a shell runs, comments left out. */
const shellLines = (text: string) =>
  [...text.matchAll(/^```sh\n(.*?)^```$/gmsu)].flatMap(([, block = '']) =>
    block
      .replace(/\\\n\s*/gu, ' ')
      .split('\n')
      .map((line) => line.replace(/(?:^| )#.*$/u, '').trim())
      .filter((line) => line !== ''),
  )

const CALL = 'npm run --silent cli -- '
const calls = shellLines(readme).filter((line) => line.startsWith(CALL))

/** Files that the examples name. */
const files = Object.fromEntries(
  [...new Set(readme.match(/data\/examples\/[\w-]+\.json/gu))].map((name) => [
    name,
    readFileSync(name, 'utf8'),
  ]),
)

describe('README', () => {
  it.each(calls)('%s', async (line) => {
    const { status, out, err } = await session(shellWords(line.slice(CALL.length)), { files })
    expect({ status, err }).toEqual({ status: 0, err: '' })
    expect(out).toMatch(/\d/u)
  })

  it('shows the terminal in more than a handful of lines, and every npm script that it names is there', () => {
    expect(calls.length).toBeGreaterThan(8)
    const named = [...(readme + developers).matchAll(/npm (?:run (?:--silent )?)([a-z:]+)/gu)]
    for (const [, name = ''] of named) expect(packageData.scripts).toHaveProperty(name)
  })

  it('names every step in its table', () => {
    const table = readme.slice(readme.indexOf('| Step | Answers |'))
    const missing = operations.filter(({ name }) => !table.includes(`\`${name}\``))
    expect(
      missing.map(({ name }) => name),
      'each operation needs its row in the table of README.md',
    ).toEqual([])
  })

  it('starts with two commands that are there', () => {
    expect(readme).toContain('npm ci && npm run --silent example')
    const [file] = /data\/examples\/[\w-]+\.json/u.exec(packageData.scripts.example) ?? []
    expect(readme).toContain(file)
    expect(existsSync(file ?? '')).toBe(true)
  })
})

describe('DEVELOPERS', () => {
  it('maps rooms that are there', () => {
    const map = developers.slice(
      developers.indexOf('| Room |'),
      developers.indexOf('tests/borders'),
    )
    const rooms = [...map.matchAll(/^\| (.*?) \|/gmu)].flatMap(([, cell = '']) =>
      [...cell.matchAll(/`([^`]+)`/gu)].map(([, room = '']) => room),
    )
    expect(rooms.length).toBeGreaterThan(20)
    const beside = (room: string) =>
      ['', 'shared/', 'cli/'].some((front) => existsSync(front + room))
    expect(rooms.filter((room) => !beside(room))).toEqual([])
  })

  it('lists the names that changed as they are answered', () => {
    const rows = Object.entries(RENAMED).map(
      ([before, now]) => `| \`${before}\` | ${now.map((name) => `\`${name}\``).join(', ')} |`,
    )
    const section = developers.slice(developers.indexOf('## Names that changed'))
    const table = section.slice(0, section.indexOf('\n## ', 1)).split('\n')
    expect(table.filter((line) => /^\| `/u.test(line))).toEqual(rows)
  })
})

describe('names', () => {
  it('that changed are now those of fields of some step', () => {
    const all = new Set(operations.flatMap((entry) => fieldsOf(entry).map(({ name }) => name)))
    const gone = Object.values(RENAMED)
      .flat()
      .filter((name) => !all.has(name))
    // Fields inside a list or an order.
    expect(gone.filter((name) => !['volume', 'longHoseLength'].includes(name))).toEqual([])
  })
})
