import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { type Field, fieldsOf, kebab, readText } from '../../../shared/input/index.ts'
import { defineOperation } from '../../../shared/operation.ts'
import { quantityIn } from '../../../shared/quantity/index.ts'
import { refusalOf } from '../../support/refusal.ts'

const sample = defineOperation({
  name: 'sample',
  summary: 'A sample',
  cautions: { always: [], mayAlso: [] },
  fields: {
    refrigerant: z.string().describe('Which'),
    pressure: quantityIn.pressure.optional().describe('How much'),
    rows: z.number().int().default(5).describe('How many'),
    share: z.number().optional().describe('What part'),
    years: z
      .union([z.literal(5), z.literal(10)])
      .optional()
      .describe('Period'),
    job: z.enum(['open', 'recover']).describe('What'),
    whatIf: z.boolean().default(false).describe('Whether'),
    labels: z.array(z.string()).optional().describe('Names'),
    parts: z
      .array(
        z.strictObject({
          kind: z.enum(['hose', 'tube']),
          innerLength: quantityIn.length,
          count: z.number().optional(),
        }),
      )
      .optional()
      .describe('Parts'),
    state: z
      .discriminatedUnion('phase', [
        z.strictObject({ phase: z.literal('liquid'), temperature: quantityIn.temperature }),
        z.strictObject({
          phase: z.literal('two-phase'),
          quality: z.number(),
          at: z.strictObject({ place: z.string() }),
        }),
      ])
      .optional()
      .describe('State'),
  },
  result: z.strictObject({ done: z.boolean() }),
  example: { refrigerant: 'R-134a', job: 'open' },
  compute: () => ({
    result: { done: true },
    steps: [],
    cautions: [],
    sources: [],
    assumptions: [],
    warnings: [],
  }),
})

const field = (name: string): Field => {
  const found = fieldsOf(sample).find((entry) => entry.name === name)
  if (!found) throw new Error(name)
  return found
}
const read = (name: string, text: string) => readText(field(name), text)
const refusal = (name: string, text: string) => refusalOf(() => read(name, text))

describe('fields of an operation', () => {
  it('keep order, description, need and preset', () => {
    expect(fieldsOf(sample).map(({ name }) => name)).toEqual([
      'refrigerant',
      'pressure',
      'rows',
      'share',
      'years',
      'job',
      'whatIf',
      'labels',
      'parts',
      'state',
      'units',
      'precise',
    ])
    expect(field('refrigerant')).toEqual(
      expect.objectContaining({ description: 'Which', required: true }),
    )
    expect(field('rows')).toEqual(
      expect.objectContaining({
        required: false,
        preset: 5,
        shape: { type: 'number', integer: true },
      }),
    )
    expect(field('pressure').shape.type).toBe('quantity')
    expect(field('years').shape).toEqual({ type: 'number', integer: true })
    expect(field('job').shape).toEqual({ type: 'choice', choices: ['open', 'recover'] })
  })

  it('are spelt in kebab case outside JSON', () => {
    expect(kebab('labelCharge')).toBe('label-charge')
  })

  it('of a union are those of all its variants', () => {
    const { shape } = field('state')
    const names =
      shape.type === 'record' ? shape.fields.map(({ name, required }) => [name, required]) : []
    expect(names).toEqual([
      ['phase', true],
      ['temperature', false],
      ['quality', false],
      ['at', false],
    ])
  })
})

describe('text', () => {
  it('stays text for names and quantities, which the operation judges', () => {
    expect(read('pressure', '32 psig')).toBe('32 psig')
    expect(read('job', 'paint')).toBe('paint')
  })

  it('becomes a number where a number is due, and only then', () => {
    expect(read('rows', ' 12 ')).toBe(12)
    expect(read('share', '−0.5e1')).toBe(-5)
    for (const text of ['', '12 ft', 'NaN', 'Infinity', '1e999', '0x10', '１２', '1,5', '--1']) {
      expect(refusal('share', text)).toEqual(
        expect.objectContaining({ code: 'bad-input', path: ['share'] }),
      )
    }
  })

  it('becomes yes or no', () => {
    expect(read('whatIf', 'Yes')).toBe(true)
    expect(read('whatIf', '0')).toBe(false)
    expect(refusal('whatIf', 'constructor').code).toBe('bad-input')
  })

  it('becomes a list by ; or as JSON', () => {
    expect(read('labels', 'a; b')).toEqual(['a', 'b'])
    expect(read('labels', '["a;b"]')).toEqual(['a;b'])
    expect(read('labels', '')).toEqual([])
  })

  it('becomes a record by name=value, commas inside values kept', () => {
    expect(
      read('parts', 'kind=hose,inner-length=6 ft,count=2; kind=tube, innerLength=3 ft'),
    ).toEqual([
      { kind: 'hose', innerLength: '6 ft', count: 2 },
      { kind: 'tube', innerLength: '3 ft' },
    ])
    expect(read('state', 'phase=two-phase,quality=0.3,at.place=condenser, left')).toEqual({
      phase: 'two-phase',
      quality: 0.3,
      at: { place: 'condenser, left' },
    })
    expect(read('state', '{"phase":"liquid"}')).toEqual({ phase: 'liquid' })
  })

  it('that is no record says which name it does not know, and the nearest', () => {
    expect(refusal('parts', 'kind=hose,lenght=6 ft')).toEqual(
      expect.objectContaining({
        path: ['parts', 0, 'lenght'],
        hint: expect.stringContaining('inner-length'),
      }),
    )
    expect(refusal('parts', 'hose').code).toBe('bad-input')
    expect(refusal('parts', '[{').message).toContain('not valid JSON')
    expect(refusal('state', '__proto__=1').code).toBe('bad-input')
  })
})
