import { describe, expect, it } from 'vitest'
import { Blank, headlineOf, Sentence, sentence } from '../../../shared/answer/sentence.ts'
import { type Kind, type Presentation, quantity, showAll } from '../../../shared/quantity/index.ts'

const both: Presentation = { units: 'both', precise: false }
const charge = quantity('mass', 2.5, 'lb', 0.1)

describe('a sentence of an answer', () => {
  it('has its values in the asked units and form', () => {
    const made = sentence('Add {add}, {add|both}, {add|bare}, {add|spoken}.', { add: charge })
    expect(made.shown(both)).toBe(
      'Add 2 lb 8 oz ±1.6 oz, 2 lb 8 oz ±1.6 oz (1134 ±46 g), 2 lb 8 oz, 2 lb 8 oz (1134 g).',
    )
    expect(made.shown({ units: 'si', precise: false })).toBe(
      'Add 1134 ±46 g, 1134 ±46 g, 1134 g, 1134 g.',
    )
  })

  it('takes a figure with its step and safe side, a word and a number', () => {
    const step = quantity('mass', 1, 'oz').si
    const made = sentence('{limit} of {gas} in {count} cans', {
      limit: { value: quantity('mass', 2.97, 'lb'), step, safe: 'down' },
      gas: 'R-134a',
      count: 3,
    })
    expect(made.shown(both)).toBe('2 lb 15 oz of R-134a in 3 cans')
  })

  it('has a bare line where there is no value, and keeps what is no slot', () => {
    const made = sentence('{a}, {b} and {not a slot}', { b: undefined })
    expect(made.shown(both)).toBe('____, ____ and {not a slot}')
    expect(sentence('Nothing to fill').shown(both)).toBe('Nothing to fill')
  })

  it('is shown where it stands in an answer', () => {
    const tree = { says: [sentence('{x|bare}', { x: charge })] }
    expect(showAll(tree, both)).toEqual({ says: ['2 lb 8 oz'] })
  })
})

describe('a blank to fill', () => {
  const written = (kind: Kind | undefined, how: Presentation) =>
    sentence('{x}', { x: new Blank(kind) }).shown(how)

  it.each([
    ['gaugePressure', 'psig', 'kPa g'],
    ['absolutePressure', 'micron', 'Pa abs'],
    ['temperature', '°F', '°C'],
    ['mass', 'lb oz', 'g'],
    ['volume', 'fl oz', 'mL'],
    ['length', 'mm', 'mm'],
    ['duration', 'min', 'min'],
    ['fraction', '%', '%'],
  ] as const)('%s has its unit behind it', (kind, us, si) => {
    expect(written(kind, both)).toBe(`____ ${us}`)
    expect(written(kind, { ...both, lead: 'us' })).toBe(`____ ${us}`)
    expect(written(kind, { ...both, lead: 'si' })).toBe(`____ ${si}`)
    expect(written(kind, { units: 'us', lead: 'si', precise: false })).toBe(`____ ${us}`)
    expect(written(kind, { units: 'si', lead: 'us', precise: false })).toBe(`____ ${si}`)
  })

  it('has none where nobody knows what is filled in', () => {
    expect(written(undefined, both)).toBe('____')
    expect(written('power', both)).toBe('____')
  })
})

describe('the headline of an answer that another one quotes', () => {
  it('brings its figures along, with their steps', () => {
    const step = quantity('mass', 1, 'oz').si
    const told = {
      level: 'fine' as const,
      headline: 'Add {add|bare} of {gas}.',
      figures: [
        { id: 'gas', label: 'Gas', value: 'R-134a' },
        { id: 'add', label: 'Add', value: quantity('mass', 2.97, 'lb'), step },
      ],
      next: [],
    }
    const quoted = headlineOf(told)
    expect(quoted).toBeInstanceOf(Sentence)
    expect(quoted.shown(both)).toBe('Add 3 lb of R-134a.')
  })
})
