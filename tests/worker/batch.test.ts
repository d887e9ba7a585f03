import { describe, expect, it, vi } from 'vitest'
import { operation, operations } from '../../shared/operations.ts'
import { createApp } from '../../worker/app.ts'
import { MOST_WORK, weightOf, workOf } from '../../worker/batch/work.ts'
import type { Problem } from '../../worker/problem.ts'
import { BATCH_BODY_LIMIT, BODY_LIMIT } from '../../worker/settings.ts'
import { ask, post, problemOf } from './ask.ts'

interface Entry {
  readonly row: number
  readonly answer?: unknown
  readonly problem?: Problem
}

const LINES = { 'content-type': 'application/x-ndjson' }
const saturation = operation('saturation')
const inputs = ['10 psig', '32', '70 psig'].map((pressure) => ({ refrigerant: 'R-134a', pressure }))
/** By its bytes: workerd takes this type for no text, and warns. */
const textOf = async (response: Response) => new TextDecoder().decode(await response.arrayBuffer())
const parsed = (text: string) =>
  text
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Entry)

async function expectEntries(entries: readonly Entry[]) {
  const alone = await problemOf(await post('saturation', JSON.stringify(inputs[1])))
  expect(entries).toEqual([
    { row: 1, answer: saturation.run(inputs[0]) },
    { row: 2, problem: alone },
    { row: 3, answer: saturation.run(inputs[2]) },
  ])
}

describe('a batch', () => {
  const address = 'saturation/batch'

  it('as a list is answered as a list, each input as it would be alone', async () => {
    const response = await post(address, JSON.stringify(inputs))
    expect(response.status).toBe(200)
    expect(response.headers.get('content-type')).toBe('application/json')
    expect(response.headers.get('cache-control')).toBe('no-store')
    await expectEntries((await response.json()) as Entry[])
  })

  it('as lines is answered a line each', async () => {
    const body = inputs.map((input) => JSON.stringify(input)).join('\n')
    const response = await post(address, `\uFEFF${body}\r\n\n`, LINES)
    expect(response.status).toBe(200)
    expect(response.headers.get('content-type')).toBe('application/x-ndjson; charset=utf-8')
    await expectEntries(parsed(await textOf(response)))
  })

  it('goes on behind a line that cannot be read', async () => {
    const good = JSON.stringify(inputs[0])
    const entries = parsed(await textOf(await post(address, `${good}\n{"a":\n${good}`, LINES)))
    expect(entries.map(({ row, problem }) => [row, problem?.code])).toEqual([
      [1, undefined],
      [2, 'bad-input'],
      [3, undefined],
    ])
  })

  it.each([
    ['[]', { 'content-type': 'application/json' }],
    ['\n \n', LINES],
  ])('that is empty (%j) is missing', async (body, type) => {
    expect(await problemOf(await post(address, body, type))).toEqual(
      expect.objectContaining({ status: 400, code: 'missing-input' }),
    )
  })
})

describe('a batch at the address of one input', () => {
  it('is told where it goes', async () => {
    const list = await problemOf(await post('saturation', JSON.stringify(inputs)))
    expect([list.status, list.hint]).toEqual([400, expect.stringContaining('/v1/saturation/batch')])
    const lines = await problemOf(await post('saturation', '{}\n{}', LINES))
    expect([lines.status, lines.hint]).toEqual([
      415,
      expect.stringContaining('/v1/saturation/batch'),
    ])
  })
})

describe('a batch, whatever is in it,', () => {
  it('of one input that is no list is sent back', async () => {
    const { status, hint } = await problemOf(await post('oil/batch', '{}'))
    expect([status, hint]).toEqual([400, expect.stringContaining('/v1/oil')])
  })

  it('is counted before anything is computed', async () => {
    const run = vi.fn(saturation.unshown)
    const app = createApp({ operations: [{ ...saturation, unshown: run }] })
    const send = (count: number) =>
      app.request('/v1/saturation/batch', {
        method: 'POST',
        headers: LINES,
        body: '{}\n'.repeat(count),
      })
    const refused = await send(MOST_WORK + 1)
    expect(await problemOf(refused)).toEqual(
      expect.objectContaining({ status: 413, code: 'too-much-work' }),
    )
    expect(run).not.toHaveBeenCalled()
    const taken = await send(MOST_WORK)
    expect(parsed(await textOf(taken))).toHaveLength(MOST_WORK)
    expect(run).toHaveBeenCalledTimes(MOST_WORK)
  })

  it('counts what takes longer as more', () => {
    expect(workOf('saturation', inputs[0])).toBe(1)
    expect(workOf('contamination', {})).toBe(weightOf('contamination'))
    expect(weightOf('contamination')).toBeGreaterThan(100)
    expect(weightOf('diagnose')).toBeGreaterThan(100)
    expect(workOf('saturation', { list: Array(1_000).fill({ a: 1, b: 2 }) })).toBe(31)
    // Three rows of a sweep take as long as an input of its own; a number of rows that is none counts as the most.
    const one = weightOf('simulate')
    expect(workOf('simulate', {})).toBe(one)
    expect(workOf('simulate', { sweep: 'charge', sweepPoints: 20 })).toBe(8 * one)
    expect(workOf('simulate', { sweep: 'charge' })).toBe(21 * one)
    expect(workOf('lesson', { named: 'air' })).toBeGreaterThan(50 * workOf('lesson', { seed: 1 }))
    expect(workOf('simulate', { sweep: 'charge', sweepPoints: -1e9 })).toBe(one)
    expect(workOf('simulate', { sweep: 'charge', sweepPoints: 1e9 })).toBe(71 * one)
  })

  it('takes a longer body than one input', async () => {
    const filler = JSON.stringify([{ refrigerant: 'x'.repeat(BODY_LIMIT) }])
    const { status, hint } = await problemOf(await post('saturation', filler))
    expect([status, hint]).toEqual([413, expect.stringContaining('/v1/saturation/batch')])
    expect((await post('saturation/batch', filler)).status).toBe(200)
    const longer = JSON.stringify([{ refrigerant: 'x'.repeat(BATCH_BODY_LIMIT) }])
    expect((await post('saturation/batch', longer)).status).toBe(413)
  })

  it('stops working when nobody reads on', async () => {
    const run = vi.fn(saturation.unshown)
    const app = createApp({ operations: [{ ...saturation, unshown: run }] })
    const response = await app.request('/v1/saturation/batch', {
      method: 'POST',
      headers: LINES,
      body: `${JSON.stringify(inputs[0])}\n`.repeat(1_000),
    })
    const reader = response.body?.getReader()
    await reader?.read()
    await reader?.cancel()
    await new Promise((resolve) => setTimeout(resolve, 50))
    expect(run.mock.calls.length).toBeLessThan(100)
  })

  it('lets other requests through while it is worked on', async () => {
    const order: string[] = []
    const heavy = `${JSON.stringify(operation('contamination').example)}\n`.repeat(6)
    const batch = post('contamination/batch', heavy, LINES).then(textOf)
    void batch.then(() => order.push('batch'))
    await new Promise((resolve) => setTimeout(resolve))
    for (let count = 0; count < 2; count += 1) {
      await ask('/healthz')
      order.push('health')
    }
    expect(parsed(await batch)).toHaveLength(6)
    expect(order).toEqual(['health', 'health', 'batch'])
  })

  it('has every operation in it', async () => {
    for (const { name, example, run } of operations) {
      const response = await post(`${name}/batch`, JSON.stringify([example, {}]))
      const [first, second] = (await response.json()) as Entry[]
      expect(first).toEqual({ row: 1, answer: run(example) })
      expect(second?.problem?.status).toBeGreaterThanOrEqual(400)
    }
  })

  it('is what who asks too often is told of', async () => {
    const limiter = { limit: async () => ({ success: false }) }
    const refused = await createApp().request('/v1/operations', {}, { RATE_LIMITER: limiter })
    expect((await problemOf(refused)).hint).toContain('/batch')
  })
})
