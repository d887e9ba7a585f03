import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import {
  BASES,
  type Figure,
  LEVELS,
  LONGEST_HEADLINE,
  MOST_FIGURES,
  MOST_NEXT,
  showTold,
  type Told,
  toldOut,
} from '../../../shared/answer/told.ts'
import { operations } from '../../../shared/operations.ts'
import { type Presentation, quantity, show } from '../../../shared/quantity/index.ts'

const both: Presentation = { units: 'both', precise: false }
const pressure = quantity('gaugePressure', 31.37, 'psig', 4)
const step = quantity('pressureDifference', 5, 'psi').si

const count = { id: 'count', label: 'Times', value: 2 }

const told: Told = {
  level: 'check',
  headline: 'It reads {low|bare}, {low|both}.',
  figures: [
    { id: 'low', label: 'Low side', value: pressure, step, says: 'of {gas}, {count} times' },
    { id: 'gas', label: 'Gas', value: 'R-134a', basis: 'from memory' },
    count,
  ],
  next: ['Read {low|spoken} again.', 'Then stop.'],
}

describe('an answer that is told', () => {
  it('has its sentences filled and its figures shown, and nothing that it did not have', () => {
    expect(showTold(told, both)).toEqual({
      level: 'check',
      headline: 'It reads 30 psig, 30 ±4 psig (200 ±28 kPa g).',
      figures: [
        {
          id: 'low',
          label: 'Low side',
          value: show(pressure, both),
          text: '30 ±4 psig',
          says: 'of R-134a, 2 times',
        },
        { id: 'gas', label: 'Gas', value: 'R-134a', text: 'R-134a', basis: 'from memory' },
        { id: 'count', label: 'Times', value: 2, text: '2' },
      ],
      next: ['Read 30 psig (200 kPa g) again.', 'Then stop.'],
      line: false,
    })
    expect(Object.keys(showTold(told, both).figures[2] ?? {})).not.toContain('says')
    expect(showTold({ ...told, line: true }, both).line).toBe(true)
  })

  it('follows the asked system', () => {
    expect(showTold(told, { units: 'si', precise: false }).figures[0]?.text).toBe('200 ±28 kPa g')
    expect(showTold(told, { ...both, lead: 'si' }).headline).toContain('200 kPa g')
  })

  it.each([
    ['its headline', { headline: 'It is {missing}.' }],
    ['a thing to do', { next: ['Look at {missing|both}.'] }],
    ['what a figure says', { figures: [...told.figures, { ...count, says: '{missing}' }] }],
  ])('is a fault of the program when %s names a figure that is not there', (_, change) => {
    expect(() => showTold({ ...told, ...change }, both)).toThrow('"missing"')
  })

  it('leaves a slot of no known form alone, so that it is seen', () => {
    expect(showTold({ ...told, headline: '{low|loud}' }, both).headline).toBe('{low|loud}')
  })
})

describe('the shape of a told answer', () => {
  const schema = z.strictObject(toldOut)
  const figure = (more: Partial<Figure>) =>
    schema.safeParse(
      showTold(
        { ...told, figures: [...told.figures, { id: 'x', label: 'X', value: 1, ...more }] },
        both,
      ),
    ).success

  it('has four levels, the most urgent first', () => {
    expect(LEVELS).toEqual(['stop', 'check', 'fine', 'information'])
    for (const level of LEVELS)
      expect(schema.parse(showTold({ ...told, level }, both)).level).toBe(level)
    expect(toldOut.level.safeParse('danger').success).toBe(false)
  })

  it('takes figures, numbers and words, each with a basis that is known', () => {
    expect([...BASES].sort()).toEqual([
      ...['assumed', 'common practice', 'estimated', 'from memory', 'secondary'],
    ])
    for (const basis of BASES) expect(figure({ basis })).toBe(true)
    for (const value of [1, 'one', pressure]) expect(figure({ value })).toBe(true)
    expect(figure({ basis: 'a guess' as never })).toBe(false)
  })

  it('fits a screen', () => {
    expect([MOST_FIGURES, MOST_NEXT, LONGEST_HEADLINE]).toEqual([6, 3, 160])
  })

  it.each(operations.map((entry) => [entry.name, entry] as const))('is kept by %s', (_, entry) => {
    for (const units of ['both', 'us', 'si']) {
      const { level, headline = '', figures, next, line } = entry.run({ ...entry.example, units })
      expect(schema.safeParse({ level, headline, figures, next, line }).error).toBeUndefined()
      expect(headline.length).toBeLessThanOrEqual(LONGEST_HEADLINE)
      expect(figures?.length).toBeLessThanOrEqual(MOST_FIGURES)
      expect(next?.length).toBeLessThanOrEqual(MOST_NEXT)
      for (const { label } of figures ?? []) expect(label.length, label).toBeLessThanOrEqual(14)
    }
  })
})
