import { describe, expect, it } from 'vitest'
import crane from '../../data/examples/harbour-crane.json' with { type: 'json' }
import forwarder from '../../data/examples/log-forwarder.json' with { type: 'json' }
import { workOrder } from '../../shared/work-order/work-order.ts'
import { session } from './session.ts'

const files = { 'order.json': JSON.stringify(crane) }
const FIRST_SCREEN = 24

describe('a work order in the terminal', () => {
  it('tells on its first screen what came out and what is still to be read', async () => {
    const { out } = await session(['work-order', 'order.json'], { files })
    const screen = out.split('\n').slice(0, FIRST_SCREEN).join('\n')
    const { result, cautions } = workOrder.run(crane)
    const dangers = cautions.filter(({ level }) => level === 'danger').length
    expect(screen).toContain(`DANGER: ${dangers} below`)
    for (const { title, missing } of result.steps) {
      expect(screen).toContain(title)
      if (missing.length > 0) expect(screen).toContain(`${missing.length} still to be read`)
    }
    expect(screen).toMatch(/Set on the scale 4\.373 ±0\.016 lb/u)
    expect(screen).toMatch(/Oil to pour in 2\.68 fl oz/u)
  })

  it('tells a refusal there in red and by a word', async () => {
    const order = { ...crane, existingOil: 'PAG 46', oil: { ...crane.oil, oil: 'PAG 46' } }
    const { out } = await session(['work-order', 'order.json'], {
      files: { 'order.json': JSON.stringify(order) },
    })
    const failed = workOrder.run(order).result.steps.filter(({ problems }) => problems.length > 0)
    expect(failed.length).toBeGreaterThan(0)
    expect(out.split('\n').slice(0, FIRST_SCREEN).join('\n')).toContain('REFUSED: ')
  })

  it('tells the verdict of readings in one sentence', async () => {
    const { out } = await session(['work-order', 'order.json'], {
      files: { 'order.json': JSON.stringify(forwarder) },
    })
    const screen = out.split('\n').slice(0, FIRST_SCREEN).join('\n').replace(/\s+/gu, ' ')
    expect(screen).toContain('the evaporator is starved: 49.1 °F (27.3 K). 2 still to be read')
  })

  it('tells sources by title, with their marks, and in full when asked for', async () => {
    const short = await session(['work-order', 'order.json'], { files })
    const full = await session(['work-order', 'order.json', '--sources'], { files })
    expect(short.out).not.toContain('://')
    expect(short.out).toMatch(/\(memory\)$/mu)
    expect(full.out).toContain('https://')
    expect(full.out).toContain('from memory, not checked')
    const lastNumber = (text: string) => [...text.matchAll(/^ {2}\[(\d+)\]/gmu)].at(-1)?.[1]
    expect(lastNumber(short.out)).toBe(lastNumber(full.out))
  })
})
