import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import crane from '../../data/examples/harbour-crane.json' with { type: 'json' }
import { MADE_BY } from '../../shared/about.ts'
import { isOnScreen } from '../../shared/cautions.ts'
import { workOrder } from '../../shared/work-order/work-order.ts'
import { session } from './session.ts'

const LONGEST_CARD = 70
const folder = 'data/examples'
const examples = readdirSync(folder).map(
  (name) => [name, readFileSync(`${folder}/${name}`, 'utf8')] as const,
)
const card = async (text: string, ...more: string[]) =>
  (await session(['work-order', 'order.json', ...more], { files: { 'order.json': text } })).out

describe.each(examples)('the card of %s', (_, text) => {
  it('is no longer than a sheet of paper takes, nor wider than the terminal', async () => {
    for (const units of ['us', 'si']) {
      const out = await card(text, '-u', units)
      const lines = out.trimEnd().split('\n')
      expect(lines.length).toBeLessThanOrEqual(LONGEST_CARD)
      expect(lines.filter((line) => [...line].length > 80)).toEqual([])
    }
  })

  it('breaks no line inside a box, however narrow', async () => {
    const { out } = await session(['work-order', 'order.json'], {
      files: { 'order.json': text },
      width: 40,
    })
    expect(out).not.toMatch(/\[$|^ *\]/mu)
    expect(out).toMatch(/\[ \] \S/u)
    expect(out.split('\n').filter((line) => [...line].length > 40)).toEqual([])
  })

  it('has every step with its number, every danger, and nothing of the appendix', async () => {
    const out = (await card(text)).replace(/\s+/gu, ' ')
    const { result } = workOrder.run(JSON.parse(text))
    for (const [index, { title }] of result.card.steps.entries()) {
      expect(out).toContain(`${index + 1} ${title}`)
    }
    expect(result.card.dangers.length).toBeGreaterThan(0)
    for (const danger of result.card.dangers) expect(out).toContain(danger)
    expect(out).not.toContain('://')
    expect(out).not.toMatch(/undefined|\[object|\{\w+\}/u)
  })

  it('has a copy for the customer without dangers, boxes and rules', async () => {
    const { result, cautions } = workOrder.run(JSON.parse(text))
    const out = await card(text, '--customer')
    const flat = out.replace(/\s+/gu, ' ')
    expect(flat).toContain(result.card.machine.split(' · ')[0])
    expect(out).not.toMatch(/\[[ x]\]|____|STOP|--full/u)
    for (const { short } of cautions.filter(isOnScreen)) expect(flat).not.toContain(short)
    expect(out.split('\n').filter((line) => [...line].length > 80)).toEqual([])
  })

  it('says nothing twice', async () => {
    const { result } = workOrder.run(JSON.parse(text))
    const lines = result.card.steps.flatMap((step) => step.lines.map((line) => line.text))
    const blank = (line: string) => !line.includes('____')
    expect(lines.filter((line, at) => blank(line) && lines.indexOf(line) !== at)).toEqual([])
  })
})

describe('a work order in the terminal', () => {
  it('tells a stop first, by a word and in red', async () => {
    const order = { ...crane, existingOil: 'PAG 46' }
    const stops = workOrder.run(order).result.card.stops
    expect(stops.length).toBeGreaterThan(0)
    const out = await card(JSON.stringify(order))
    expect(out).toMatch(/^STOP: /u)
    const painted = await session(['work-order', 'order.json'], {
      files: { 'order.json': JSON.stringify(order) },
      color: true,
    })
    expect(painted.out.split('\n')[0]).toContain('\u001B[31m')
  })

  it('lays what options say over the file field by field', async () => {
    const order = {
      ...crane,
      readings: { suctionPressure: '30 psig', suctionTemperature: '45 °F' },
    }
    const json = JSON.parse(
      await card(JSON.stringify(order), '--readings', '{"liquidPressure":"200 psig"}', '--json'),
    )
    const whole = { ...order, readings: { ...order.readings, liquidPressure: '200 psig' } }
    expect(json).toEqual({ ...workOrder.run(whole), madeBy: MADE_BY })
  })

  it('tells sources by title, with their marks, and in full when asked for', async () => {
    const text = JSON.stringify(crane)
    const short = await card(text, '--full')
    const full = await card(text, '--full', '--sources')
    expect(short).not.toContain('://')
    expect(short).toMatch(/\(memory\)$/mu)
    expect(full).toContain('https://')
    expect(full).toContain('from memory, not checked')
    const lastNumber = (sheet: string) => [...sheet.matchAll(/^ {2}\[(\d+)\]/gmu)].at(-1)?.[1]
    expect(lastNumber(short)).toBe(lastNumber(full))
  })
})
