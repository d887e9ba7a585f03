import { describe, expect, it } from 'vitest'
import { operation } from '../../shared/operations.ts'
import type { InPieces } from '../../shared/pieces.ts'
import { createApp } from '../../worker/app.ts'
import { inTurns, PIECES_A_TURN, pause } from '../../worker/turns.ts'
import { problemOf } from './ask.ts'

describe('work in turns', () => {
  function* pieces(count: number, done: string[]): InPieces<string> {
    for (let piece = 1; piece <= count; piece += 1) {
      done.push(String(piece))
      yield
    }
    return 'all of it'
  }

  it('lets others have theirs after a few pieces, and gives what it gives at once', async () => {
    const done: string[] = []
    const others = async () => {
      done.push('others')
    }
    expect(await inTurns(pieces(40, done), others)).toBe('all of it')
    const runs = done.join(' ').split('others')
    // A slow machine gives them more.
    expect(runs.length - 1).toBeGreaterThanOrEqual(40 / PIECES_A_TURN)
    for (const run of runs) expect(run.trim().split(' ').length).toBeLessThanOrEqual(PIECES_A_TURN)
  })

  it('goes on only when they have had it', async () => {
    const done: string[] = []
    let go = () => {}
    const others = () =>
      new Promise<void>((resolve) => {
        go = resolve
      })
    const work = inTurns(pieces(PIECES_A_TURN + 1, done), others)
    await pause()
    const before = done.length
    expect(before).toBeLessThanOrEqual(PIECES_A_TURN)
    await pause()
    expect(done).toHaveLength(before)
    while (done.length <= PIECES_A_TURN) {
      go()
      await pause()
    }
    go()
    expect(await work).toBe('all of it')
  })

  it('hands on what is thrown in a piece', async () => {
    function* failing(): InPieces<string> {
      yield
      throw new Error('no state')
    }
    await expect(inTurns(failing())).rejects.toThrow('no state')
  })
})

describe('a request that takes long', () => {
  const POINTS = 60
  const SWEEP = { modelMachine: 'loader', sweep: 'charge', sweepPoints: POINTS }
  const END = {
    seed: 7,
    topic: 'high-head',
    predictions: { lowSide: 'up', highSide: 'up', superheat: 'up', subcooling: 'up', vent: 'up' },
    bought: ['low-side', 'high-side'],
    named: 'condenser-air',
  }
  /** Of the plainest kind, which others of that kind are answered straight by. */
  const request = async (address: string, body: string) =>
    createApp().request(`http://shop.test${address}`, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        'content-length': String(new TextEncoder().encode(body).length),
      },
      body,
    })
  /** Turns that something else gets until it is answered. */
  async function turnsOf(address: string, input: unknown) {
    let turns = 0
    let isAnswered = false
    const counted = (async () => {
      while (!isAnswered) {
        await pause()
        turns += 1
      }
    })()
    const response = await request(address, JSON.stringify(input))
    const text = await response.text()
    isAnswered = true
    await counted
    return { turns, status: response.status, text }
  }

  it.each([
    ['a sweep, between its rows', '/v1/simulate', SWEEP, POINTS / PIECES_A_TURN],
    ['the end of a lesson', '/v1/lesson', END, 100 / PIECES_A_TURN],
    ['a batch, within an item', '/v1/simulate/batch', [SWEEP], POINTS / PIECES_A_TURN],
    ['a picture', '/v1/diagram/fault-sweep', SWEEP, POINTS / PIECES_A_TURN],
  ])('lets others have their turn: %s', async (_, address, input, least) => {
    const { turns, status } = await turnsOf(address, input)
    expect(status).toBe(200)
    expect(turns).toBeGreaterThanOrEqual(Math.floor(least))
  })

  it('is answered as it is by one call, and refused so', async () => {
    const simulate = operation('simulate')
    const { text } = await turnsOf('/v1/simulate', SWEEP)
    expect(text).toBe(JSON.stringify(simulate.run(SWEEP)))
    const refused = await request('/v1/simulate', JSON.stringify({ ...SWEEP, sweep: 'stroke' }))
    expect(await problemOf(refused)).toMatchObject({ status: 422, code: 'refused' })
  })

  it('is overtaken by a short one that came later', async () => {
    const order: string[] = []
    const long = request('/v1/simulate', JSON.stringify(SWEEP)).then(() => order.push('sweep'))
    await pause()
    await createApp().request('http://shop.test/healthz')
    order.push('health')
    await long
    expect(order).toEqual(['health', 'sweep'])
  })
})
