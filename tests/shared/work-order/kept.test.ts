import { describe, expect, it } from 'vitest'
import { QUESTIONS } from '../../../shared/work-order/begin.ts'
import { EXAMPLES, run, without } from './examples.ts'

const QUESTION_IDS = [
  'name',
  'kind',
  'refrigerant',
  'labelCharge',
  'existingOil',
  'compressorDrive',
  'meteringDevice',
  'job',
  'cabOff',
  'law',
]

const checklist = (order: Readonly<Record<string, unknown>>) => run(order).result.checklist

describe('what an order asks and keeps', () => {
  it('begins with what decides the rest', () => {
    expect(QUESTIONS.map(({ id }) => id)).toEqual(QUESTION_IDS)
    expect(QUESTIONS.flatMap(({ id, needed }) => (needed ? [id] : []))).toEqual([
      'name',
      'kind',
      'refrigerant',
      'job',
    ])
  })

  it('lists what must be written down wherever a system was opened and evacuated', () => {
    const what = checklist(EXAMPLES.groomer).map((item) => item.what)
    for (const line of [
      'Oil: kind',
      'Oil put in',
      'Leak test and what was found',
      'Vacuum reached',
    ]) {
      expect(what).toContain(line)
    }
    expect(new Set(what).size).toBe(what.length)
  })

  it('leaves blank what was not recorded, and only that', () => {
    const before = checklist(EXAMPLES.groomer)
    const after = checklist(without(EXAMPLES.groomer, 'record'))
    const filled = (items: typeof before) => items.filter((item) => item.filled).length
    expect(after.map(({ what }) => what)).toEqual(before.map(({ what }) => what))
    expect(filled(after)).toBeLessThan(filled(before))
    for (const { filled: isFilled, value } of [...before, ...after]) {
      expect(isFilled).toBe(value !== undefined)
    }
  })
})
