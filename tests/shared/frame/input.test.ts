import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import { operation } from '../../../shared/operations.ts'
import { workOrder } from '../../../shared/work-order/work-order.ts'
import { madeOperation, PLAIN } from '../../support/made-operation.ts'
import { refusalOf } from '../../support/refusal.ts'

describe('rules between fields', () => {
  const check = ({ given, pressure }: { given?: unknown; pressure?: unknown }) => {
    if (given && pressure) throw new CalcError('bad-input', 'One of them.', { path: ['given'] })
  }
  const both = { given: '1 kg', pressure: '1 psig' }

  it('hold wherever the computation is run, before it', () => {
    let computed = 0
    const entry = madeOperation(
      () => {
        computed += 1
        return {}
      },
      { check },
    )
    expect(refusalOf(() => entry.run(both)).message).toBe('One of them.')
    expect(refusalOf(() => entry.compute(entry.parse(both))).message).toBe('One of them.')
    expect(computed).toBe(0)
    entry.run({ given: '1 kg' })
    entry.compute(entry.parse({ pressure: '1 psig' }))
    expect(computed).toBe(2)
  })
})

describe('an input', () => {
  it('is parsed without the choices of how to show the answer', () => {
    const parsed = madeOperation().parse({ given: '1 kg', units: 'us', precise: true })
    expect(Object.keys(parsed)).toEqual(['given'])
    expect(parsed.given?.si).toBe(1)
  })

  it('of an unknown field is refused with the nearest', () => {
    expect(refusalOf(() => madeOperation().run({ givn: '1 kg' }))).toMatchObject({
      code: 'bad-input',
      hint: 'Did you mean given?',
    })
    expect(refusalOf(() => madeOperation().run({ law: 'eu' })).message).toContain('law')
  })

  it('of an old name is answered with the new one', () => {
    const error = refusalOf(() => madeOperation().run({ from: 'R-134a' }))
    expect(error.message).toBe('"from" is now called "refrigerant".')
  })
})

describe('an input of an earlier version', () => {
  const warnings = [{ code: 'other', message: 'Something else.' }]
  const older = (raw: unknown) => {
    const { weight, ...rest } = raw as { weight?: string }
    return weight === undefined
      ? { raw, changes: [] }
      : { raw: { ...rest, given: weight }, changes: ['weight is now given', 'nothing else'] }
  }
  const entry = madeOperation(
    ({ given }) => ({ result: { mass: given ?? PLAIN.result.mass }, warnings }),
    {
      older,
    },
  )

  it('is read by its new names, and what was changed is told first', () => {
    const answer = entry.run({ weight: '3 kg', units: 'si' })
    expect(answer.result.mass).toMatchObject({ value: 3, unit: 'kg' })
    expect(answer.warnings).toEqual([
      {
        code: 'older-version',
        message: 'Read as of an earlier version: weight is now given; nothing else.',
      },
      ...warnings,
    ])
    expect(entry.parse({ weight: '3 kg' }).given?.si).toBe(3)
  })

  it('of this version is left alone', () => {
    expect(entry.run({ given: '3 kg' }).warnings).toEqual(warnings)
    expect(refusalOf(() => madeOperation().run({ weight: '3 kg' })).code).toBe('bad-input')
  })

  it('is a work order without a version, never one with it', () => {
    const { version, ...rest } = workOrder.example as Readonly<Record<string, unknown>>
    const { oilTotal, ...before } = { oilTotal: '8 fl oz', ...rest }
    const answer = workOrder.run({ ...before, systemTotal: oilTotal })
    expect(answer.warnings[0]).toMatchObject({ code: 'older-version' })
    expect(answer.warnings[0]?.message).toContain('systemTotal is now oilTotal')
    const named = () => workOrder.run({ ...before, version: version ?? 2, systemTotal: oilTotal })
    expect(refusalOf(named).message).toContain('"systemTotal" is now called "oilTotal"')
    const { example, run } = operation('work-order')
    expect(run(example).warnings.map(({ code }) => code)).not.toContain('older-version')
  })
})
