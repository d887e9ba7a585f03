import fc from 'fast-check'
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { answerText } from '../../shared/answer/answer-text.ts'
import { operation, operations } from '../../shared/operations.ts'
import { createApp } from '../../worker/app.ts'
import { fill, fillAll, type Json, part } from '../../worker/edge/parts.ts'
import type { Settings } from '../../worker/settings.ts'
import { type BuiltEdge, builtEdge } from '../generate/edge.ts'
import { isWhole, split, unlooked, watched } from '../generate/edge-data.ts'
import { arbitraryInput } from '../support/arbitrary-input.ts'

type Tree = { [name: string]: Json }

/** A tree in two, after a reader looked at it. */
function apart(tree: Tree, look: (tree: Tree) => unknown) {
  const looked = unlooked()
  look(watched(structuredClone(tree), looked))
  return split(tree, looked)
}

const TREE: Tree = {
  sources: { one: { title: 'A title of some length', mark: 'memory' } },
  rows: [{ note: 'Nobody reads this at the start' }, { note: 'Nor is this read then' }],
  told: 'A sentence of some length',
  limit: 5,
}

describe('what a program reads of its data while it starts', () => {
  it('stands in it, and nothing else does', () => {
    expect(apart(TREE, () => 0)).toEqual({ here: {}, rest: TREE })
    expect(apart(TREE, ({ told }) => told)).toEqual({
      here: { sources: {}, rows: [], told: TREE.told, limit: 5 },
      rest: { sources: TREE.sources, rows: TREE.rows },
    })
    expect(apart(TREE, ({ sources }) => sources).rest).toEqual({
      sources: TREE.sources,
      rows: TREE.rows,
      told: TREE.told,
    })
  })

  it('keeps every name of what was looked through, in its order', () => {
    const { here, rest } = apart(TREE, (tree) => Object.keys(tree.sources as Tree))
    expect(here).toEqual({ sources: { one: {} }, rows: [], told: 0, limit: 5 })
    expect(rest).toEqual({ sources: TREE.sources, rows: TREE.rows, told: TREE.told })
    const names = { sources: {}, rows: [], told: 0, limit: 5 }
    expect(apart(TREE, (tree) => Reflect.ownKeys(tree)).here).toEqual(names)
    expect(apart(TREE, (tree) => 'nothing' in tree).here).toEqual(names)
    const list = apart(TREE, (tree) => (tree.rows as Json[]).length)
    expect(list.here).toEqual({ sources: {}, rows: [{}, {}], told: 0, limit: 5 })
  })

  it('is found by any way of reading', () => {
    const ways: readonly ((tree: Tree) => unknown)[] = [
      (tree) => ({ ...tree }),
      (tree) => JSON.stringify(tree),
      (tree) => Object.entries(tree),
      ({ told, ...rest }) => [told, rest],
    ]
    for (const way of ways) expect(apart(TREE, way).here).toMatchObject({ told: TREE.told })
    const whole = apart(TREE, (tree) => JSON.stringify(tree))
    expect(whole).toEqual({ here: TREE, rest: undefined })
  })

  it('is the same object before and after the rest is put into it', () => {
    const { here, rest } = apart(TREE, ({ sources, rows }) => [sources, rows])
    const { sources, rows } = here as { sources: Tree; rows: Json[] }
    fill(here, structuredClone(rest ?? null))
    expect(here).toEqual(TREE)
    expect(sources).toEqual(TREE.sources)
    expect(rows).toEqual(TREE.rows)
  })

  it('makes the whole again with the rest, whatever was read of it', () => {
    fc.assert(
      fc.property(
        fc.dictionary(fc.string({ maxLength: 8 }), fc.jsonValue({ maxDepth: 4 }), { maxKeys: 6 }),
        fc.infiniteStream(fc.nat({ max: 3 })),
        (given, draws) => {
          const tree = JSON.parse(JSON.stringify(given)) as Tree
          const look = (value: Json): unknown => {
            if (typeof value !== 'object' || value === null) return value
            const draw = draws.next().value ?? 0
            if (draw === 0) return 0
            if (draw === 1) return Object.keys(value)
            return Object.entries(value).map(([name, member]) =>
              draw === 2 ? look(member) : (value as Tree)[name],
            )
          }
          expect(isWhole(tree, apart(tree, look))).toBe(true)
        },
      ),
    )
  })

  it('is put together file by file', () => {
    const [first, second] = [part(9001, { a: {} }), part(9002, { b: 0 })]
    fillAll({ 9001: { a: { c: 'later' } }, 9002: { b: 'later too' }, 9003: { d: 1 } })
    expect([first, second]).toEqual([{ a: { c: 'later' } }, { b: 'later too' }])
  })
})

interface Program {
  fetch(request: Request, settings: Settings): Promise<Response> | Response
}

describe('the program of the edge', () => {
  const app = createApp()
  let built: BuiltEdge
  let once: Promise<Program>
  beforeAll(async () => {
    built = await builtEdge()
    once = started()
  }, 60_000)
  afterEach(() => vi.restoreAllMocks())

  let starts = 0
  /** A program that has just started: what it knows is its own. */
  async function started(): Promise<Program> {
    starts += 1
    const text = `${Buffer.from(built.program).toString('utf8')}\n// ${starts}`
    const module = `data:text/javascript;base64,${Buffer.from(text).toString('base64')}`
    return ((await import(/* @vite-ignore */ module)) as { default: Program }).default
  }
  const files = (answer: (address: string) => Response): Settings => ({
    ASSETS: { fetch: async ({ url }) => answer(new URL(url).pathname) },
  })
  const found = files((address) =>
    address === built.data.address
      ? new Response(built.data.text)
      : new Response(null, { status: 404 }),
  )
  const { name, example } = operation('retrofit')
  const asking = (step: string, input: unknown) => ({
    url: `http://shop.test/v1/${step}`,
    init: {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(input),
    },
  })
  const ask = () => {
    const { url, init } = asking(name, example)
    return new Request(url, init)
  }
  const own = () => answerText(operation(name), example)

  it('reads its data once, before the first answer', async () => {
    const program = await started()
    const asked: string[] = []
    const settings = files((address) => {
      asked.push(address)
      return new Response(built.data.text)
    })
    for (let i = 0; i < 3; i += 1) {
      expect(await (await program.fetch(ask(), settings)).text()).toBe(own())
    }
    expect(asked).toEqual([built.data.address])
  })

  it.each(operations)('answers anything that $name is asked as the core does', async (entry) => {
    const program = await once
    const inputs = fc.sample(arbitraryInput(entry), { numRuns: 8, seed: 20261127 })
    for (const input of [entry.example, ...inputs]) {
      const { url, init } = asking(entry.name, input)
      const response = await program.fetch(new Request(url, init), found)
      expect(await response.text()).toBe(await (await app.request(url, init)).text())
    }
  })

  it('answers all that come at once, each by a file that it asked for itself', async () => {
    const program = await started()
    const answers = await Promise.all(
      [1, 2, 3].map(async () => (await program.fetch(ask(), found)).text()),
    )
    expect(answers).toEqual([own(), own(), own()])
  })

  it.each([
    ['is not there', files(() => new Response(null, { status: 404 }))],
    ['is broken', files(() => new Response(built.data.text.slice(0, -100)))],
    [
      'cannot be asked for',
      files(() => {
        throw new Error('no way there')
      }),
    ],
    ['has nobody to give it', {}],
  ] as const)(
    'says that it is not ready where the file %s, and tries again',
    async (_, settings) => {
      const log = vi.spyOn(console, 'error').mockImplementation(() => undefined)
      const program = await started()
      for (const request of [ask(), new Request('http://shop.test/healthz')]) {
        const response = await program.fetch(request, settings)
        expect(response.status).toBe(503)
        expect(response.headers.get('retry-after')).toBe('5')
        expect(response.headers.get('cache-control')).toContain('no-store')
        expect(await response.json()).toMatchObject({
          type: '/problems/not-ready',
          code: 'not-ready',
          detail: 'The service could not read its data; nothing was computed.',
        })
      }
      expect(log).toHaveBeenCalledTimes(2)
      expect(await (await program.fetch(ask(), found)).text()).toBe(own())
    },
  )
})
