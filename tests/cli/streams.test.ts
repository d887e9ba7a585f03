import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { closeSync, openSync } from 'node:fs'
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { lineBlocks } from '../../cli/input/lines.ts'
import { csvColumns } from '../../cli/render/csv-columns.ts'
import { operation, operations } from '../../shared/operations.ts'
import { session } from './session.ts'

const ROW = { refrigerant: 'R-134a', pressure: '32 psig' }
const answer = operation('saturation').run(ROW)
const parsed = (out: string) =>
  out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Record<string, unknown>)

/** The program with a heap that holds some hundreds of answers, not thousands. */
const start = (...args: readonly string[]): ChildProcess =>
  spawn(process.execPath, ['--max-old-space-size=64', 'cli/main.ts', ...args], {
    env: { ...process.env, NODE_COMPILE_CACHE: '' },
  })

async function ended(child: ChildProcess): Promise<number | null> {
  if (child.exitCode !== null) return child.exitCode
  const [status] = (await once(child, 'exit')) as [number | null]
  return status
}

describe('rows that go on and on', { timeout: 60_000 }, () => {
  it.each([
    ['CSV', ['--csv', '--units', 'si'], 20_001],
    ['JSON lines', [], 20_000],
  ] as const)('are answered in a small memory as %s', async (_, form, expected) => {
    const child = start('saturation', 'R-134a', '-', ...form)
    let lines = 0
    child.stdout?.on('data', (chunk: Buffer) => {
      for (const byte of chunk) if (byte === 10) lines += 1
    })
    child.stdin?.end(`pressure\n${'32 psig\n'.repeat(20_000)}`)
    expect(await ended(child)).toBe(0)
    expect(lines).toBe(expected)
  })

  it('wait for a slow reader instead of piling up', async () => {
    const rows = 4_000
    const child = start('saturation', 'R-134a', '-')
    // Long lines, so that what is not read yet is more than the pipes hold.
    child.stdin?.end(`pressure\n${`32 psig${' '.repeat(200)}\n`.repeat(rows)}`)
    child.stdout?.pause()
    await new Promise((resolve) => setTimeout(resolve, 4_000))
    expect(child.stdin?.writableLength).toBeGreaterThan(0)
    let lines = 0
    child.stdout?.on('data', (chunk: Buffer) => {
      for (const byte of chunk) if (byte === 10) lines += 1
    })
    child.stdout?.resume()
    expect(await ended(child)).toBe(0)
    expect(lines).toBe(rows)
  })

  it.each([
    ['a JSON object a line', `${JSON.stringify(ROW)}\n`, []],
    ['CSV', 'refrigerant,pressure\nR-134a,32 psig\n', ['--csv']],
  ] as const)('give the first answer of %s while the next is not there', async (_, text, form) => {
    const child = start('saturation', '-', ...form)
    child.stdin?.write(text)
    let out = ''
    for await (const chunk of child.stdout ?? []) {
      out += String(chunk)
      if (form.length === 0 || out.split('\n').length > 2) break
    }
    expect(out).toContain('R-134a')
    child.kill()
    await ended(child)
  })
})

describe('a disk that is full', () => {
  it('is told in a sentence', () => {
    const full = openSync('/dev/full', 'w')
    const { status, stderr } = spawnSync(
      process.execPath,
      ['cli/main.ts', 'saturation', 'R-134a', '--pressure', '32 psig'],
      { stdio: ['ignore', full, 'pipe'], encoding: 'utf8' },
    )
    closeSync(full)
    expect([status, stderr]).toEqual([1, 'error: The answer cannot be written (ENOSPC).\n'])
  })
})

describe('lines', () => {
  const lines = async (texts: readonly string[], longest: number) => {
    const found: unknown[] = []
    async function* chunks() {
      yield* texts
    }
    for await (const block of lineBlocks(chunks(), longest)) found.push(...block)
    return found
  }
  const long = { tooLong: true }

  it('end as any system ends them, wherever they are cut', async () => {
    const text = 'a\r\nb\nc\rd\n\ne'
    for (const pieces of [[text], [...text], [text.slice(0, 2), text.slice(2)]]) {
      expect(await lines(pieces, 9)).toEqual(['a', 'b', 'c', 'd', '', 'e'])
    }
  })

  it('that are too long are passed over and told once, and the next are read', async () => {
    const text = `ok\n${'x'.repeat(40)}\nok\n`
    for (const pieces of [[text], [...text], text.match(/.{1,7}|\n/gu) ?? []]) {
      expect(await lines(pieces, 10)).toEqual(['ok', long, 'ok'])
    }
    expect(await lines(['y'.repeat(11)], 10)).toEqual([long])
    expect(await lines(['y'.repeat(10)], 10)).toEqual(['y'.repeat(10)])
  })
})

describe('a bad row', () => {
  const good = JSON.stringify(ROW)
  const rows = async (stdin: string, ...args: readonly string[]) =>
    parsed((await session(['saturation', '-', ...args], { stdin })).out)
  const refused = (row: number, message: string) =>
    expect.objectContaining({
      row,
      error: expect.objectContaining({ message: expect.stringContaining(message) }),
    })

  it('that is endless does not end the run', async () => {
    const stdin = `${good}\n{"refrigerant":"${'x'.repeat(1_100_000)}"}\n${good}\n`
    expect(await rows(stdin)).toEqual([answer, refused(2, 'longer than'), answer])
  })

  it('that comes first does not make one text of all', async () => {
    expect(await rows(`{"refrigerant":\n${good}\n${good}`)).toEqual([
      refused(1, 'not valid JSON'),
      answer,
      answer,
    ])
  })

  it('with a quotation mark that is never closed spoils no other', async () => {
    const body = 'R-134a,32 psig\n"R-134a,32 psig\nR-134a,32 psig\n"R-134a","32 psig"\n'
    const stdin = `refrigerant,pressure\n${body}${'R-134a,32 psig\n'.repeat(60)}`
    const found = await rows(stdin)
    expect(found).toHaveLength(64)
    expect(found[1]).toEqual(refused(2, 'not closed as it should be'))
    expect(found.filter((entry) => 'error' in entry)).toHaveLength(1)
    expect(await rows('refrigerant,pressure\nR-134a,"32 psig\nR-134a,32 psig')).toEqual([
      refused(1, 'not closed as it should be'),
      answer,
    ])
  })

  it('has its cells whole where they are quoted, line ends and all', async () => {
    const found = await rows('refrigerant,pressure\n"R-134a","32\npsig"\n R-134a , "32 psig"\n')
    expect(found).toEqual([answer, answer])
  })

  it('at which the program fails is told, and the others are answered', async () => {
    const broken = operation('saturation')
    const run = broken.run
    let calls = 0
    Object.assign(broken, {
      run: (input: unknown) => {
        calls += 1
        if (calls === 2) throw new TypeError('something inside')
        return run(input)
      },
    })
    try {
      const { status, out } = await session(['saturation', '-'], {
        stdin: `${good}\n${good}\n${good}`,
      })
      expect(status).toBe(1)
      expect(parsed(out)).toEqual([answer, refused(2, 'something inside'), answer])
    } finally {
      Object.assign(broken, { run })
    }
  })
})

describe('columns of CSV', () => {
  it('are those of the schema, whatever the rows are', async () => {
    const head = async (stdin: string) =>
      (await session(['saturation', '-', '--csv'], { stdin })).out.split('\n')[0]
    const all = await head('refrigerant,pressure\nR-134a,32 psig\n')
    expect(await head('refrigerant,pressure\nR-134a,32\n')).toBe(all)
    expect(await head('refrigerant,pressure\n')).toBe(all)
    expect(all).toContain('dew.temperature.also.value')
  })

  it.each(operations.map((entry) => [entry.name, entry] as const))(
    'hold every figure of the result of %s',
    (_, entry) => {
      const { result } = entry.run(entry.example)
      const { names, fill } = csvColumns(entry, true)
      expect(new Set(names).size).toBe(names.length)
      const cells: (string | number | boolean)[] = []
      fill(result, cells, 0)
      const told = cells.flatMap((cell) =>
        typeof cell === 'string' && /^[[{]/u.test(cell) ? leaves(JSON.parse(cell)) : [cell],
      )
      expect(told.map(String).sort()).toEqual(leaves(result).map(String).sort())
    },
  )

  it('leave out the other unit system where one is asked for', () => {
    const { names } = csvColumns(operation('saturation'), false)
    expect(names.filter((name) => name.includes('also'))).toEqual([])
    expect(names).toContain('dew.temperature.value')
  })
})

function leaves(tree: unknown): readonly unknown[] {
  if (Array.isArray(tree)) return tree.flatMap(leaves)
  if (typeof tree === 'object' && tree !== null) return Object.values(tree).flatMap(leaves)
  return tree === undefined ? [] : [tree]
}

describe('progress', () => {
  const stdin = 'pressure\n32 psig\n32\n'
  const asked = ['saturation', 'R-134a', '-', '--progress']

  it('is told on a terminal, and nowhere else', async () => {
    const { out, err } = await session(asked, { stdin, watched: true })
    expect(err).toMatch(/\r2 rows, \d+ a second, 1 refused *\n$/u)
    expect(parsed(out)).toHaveLength(2)
    expect((await session(asked, { stdin })).err).toBe('')
  })
})

describe('input that is none', () => {
  it('because it is a directory says so, however it is named', async () => {
    const directories = ['orders', 'R-22']
    for (const argv of [
      ['work-order', 'orders'],
      ['saturation', 'R-134a', '--input', 'orders'],
      ['charge', '--parts', '@orders'],
    ]) {
      const { status, err } = await session(argv, { directories })
      expect([status, err]).toEqual([2, expect.stringContaining('it is a directory')])
    }
    // A refrigerant stays one.
    expect(
      (await session(['saturation', 'R-22', '--pressure', '32 psig'], { directories })).status,
    ).toBe(0)
  })

  it('because standard input breaks off says so', async () => {
    async function* broken() {
      yield 'pressure\n'
      throw Object.assign(new Error('gone'), { code: 'EIO' })
    }
    const { status, err } = await session(['saturation', 'R-134a', '-'], { stdin: broken() })
    expect([status, err]).toEqual([
      2,
      expect.stringContaining('Standard input cannot be read (EIO)'),
    ])
  })

  it('because a name stands twice says which', async () => {
    const { status, err } = await session(['saturation', '-'], {
      stdin: '{"refrigerant":"R-134a","pressure":"32 psig", "pressure" : "33 psig"}',
    })
    expect([status, err]).toEqual([2, expect.stringContaining('pressure is given twice')])
  })
})

describe('letters that act instead of being seen', () => {
  const ACTING = 'R\u001B[2J\u0007\u202E\u009B31m'
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  const acts = /[\u0000-\u0009\u000B-\u001F\u007F-\u009F\u202A-\u202E\u2066-\u2069]/u

  it('reach no terminal by an error', async () => {
    for (const argv of [
      ['saturation', ACTING, '--pressure', '32 psig'],
      ['saturation', 'R-134a', `--${ACTING}`],
      ['saturation', ACTING, '--pressure', '32 psig', '--json'],
      ['saturation', `${ACTING}.json`],
      [ACTING],
    ]) {
      const { err } = await session(argv)
      expect(err).not.toBe('')
      expect(err.replaceAll('\n', '')).not.toMatch(acts)
    }
  })

  it('reach none by the settings, a new order or a file that is not there', async () => {
    const settings = {}
    const written = {}
    for (const argv of [
      ['settings', '--person', `${ACTING}: us-609`],
      ['settings'],
      ['settings', '--json'],
      ['settings', '--set', `${ACTING}=1`],
      ['refrigerants', ACTING],
      ['help', ACTING],
      ['completion', ACTING],
      ['work-order', '--new', `${ACTING}.yaml`, '--machine', `name=${ACTING},kind=off-road`],
      ['work-order', `${ACTING}.yaml`],
      ['work-order', '--set', `${ACTING}=1`],
      ['readings', `32psig/${ACTING}`, '--low-gauge', ACTING],
    ]) {
      const { out, err } = await session(argv, { settings, written })
      expect(out + err).not.toBe('')
      expect((out + err).replaceAll('\n', '')).not.toMatch(acts)
    }
    expect(Object.values(written).join('').replaceAll('\n', '')).not.toMatch(acts)
  })

  it('are no formula in a cell, whatever an order is called', async () => {
    const { example } = operation('work-order')
    for (const name of ['=1+1', '+1+1', '-1+1', '@SUM(1)', '\t=1', '＝1+1']) {
      const order = { ...example, machine: { ...(example.machine as object), name } }
      const { out } = await session(['work-order', '-', '--csv'], { stdin: JSON.stringify(order) })
      const cells = parse(out, { relax_column_count: true }).flat() as string[]
      expect(cells.some((cell) => cell.includes(name.trim()))).toBe(true)
      expect(
        cells.filter((cell) => /^[=+\-@\t＝]/u.test(cell) && Number.isNaN(Number(cell))),
      ).toEqual([])
    }
  })

  it('reach none by an answer, in whatever form', async () => {
    const { example } = operation('work-order')
    const order = { ...example, machine: { ...(example.machine as object), name: ACTING } }
    const stdin = JSON.stringify(order)
    for (const form of [
      [],
      ['--json'],
      ['--markdown'],
      ['--csv'],
      ['--full'],
      ['--customer'],
      ['--steps'],
    ]) {
      const { status, out, err } = await session(['work-order', '-', ...form], { stdin })
      expect(status).toBe(0)
      expect((out + err).replaceAll('\n', '')).not.toMatch(acts)
    }
    const rows = await session(['saturation', '-'], {
      stdin: `${JSON.stringify({ ...ROW, refrigerant: ACTING })}\n`.repeat(2),
    })
    expect(rows.out.replaceAll('\n', '')).not.toMatch(acts)
    // JSON has a way to write them, so nothing is lost.
    const [first] = parsed(rows.out) as { error: { message: string } }[]
    expect(first?.error.message).toContain('\u001B')
  })
})
