import { describe, expect, it } from 'vitest'
import { KINDS, type Kind, quantityIn, UNITS } from '../../../shared/quantity/index.ts'

/** What each field of an input takes: its kinds, all of them and no other. */
const TAKES: Readonly<Record<keyof typeof quantityIn, readonly Kind[]>> = {
  temperature: ['temperature'],
  temperatureDifference: ['temperatureDifference'],
  pressure: ['gaugePressure', 'absolutePressure'],
  barometricPressure: ['barometricPressure'],
  pressureDifference: ['pressureDifference'],
  ratedPressure: ['gaugePressure', 'pressureDifference'],
  mass: ['mass'],
  volume: ['volume'],
  length: ['length'],
  altitude: ['altitude'],
  duration: ['duration'],
  density: ['density'],
  massPerLength: ['massPerLength'],
  volumeFlow: ['volumeFlow'],
  massFlow: ['massFlow'],
  leakRate: ['leakRate'],
  fraction: ['fraction'],
  amount: ['mass', 'fraction'],
  faultSize: ['fraction', 'pressureDifference', 'mass'],
}

describe.each(Object.entries(TAKES))('a field of %s', (name, kinds) => {
  const field = quantityIn[name as keyof typeof quantityIn]

  it('takes every unit of its kinds, and knows which kind it was', () => {
    for (const kind of kinds) {
      for (const { symbol, factor } of UNITS[kind]) {
        // Small enough to be a vacuum that can be.
        const value = factor < 0 ? 1e-6 : 300
        const read = field.safeParse({ value, unit: symbol })
        if (read.success) expect(kinds).toContain(read.data.kind)
        else expect(read.error.issues[0]?.message).toMatch(/trade/u)
      }
      expect(field.parse(`1 ${UNITS[kind].at(0)?.symbol}`).kind).toBe(kind)
    }
  })

  it('takes no unit that only other kinds have, and refuses with a code and a hint', () => {
    const own = new Set(kinds.flatMap((kind) => UNITS[kind].map(({ symbol }) => symbol)))
    for (const kind of KINDS) {
      for (const { symbol } of UNITS[kind]) {
        if (own.has(symbol)) continue
        const read = field.safeParse({ value: 1, unit: symbol })
        // A spelling may be shared (°R is a difference too): then it is read as one of its own kinds.
        if (read.success) expect(kinds).toContain(read.data.kind)
        else {
          const [issue] = read.error.issues
          expect(issue).toMatchObject({
            code: 'custom',
            params: { calc: { code: expect.stringMatching(/\w/u), hint: expect.anything() } },
          })
        }
      }
    }
    const [other] = KINDS.filter((kind) => kind !== 'temperature' && !kinds.includes(kind))
    expect(field.safeParse(`1 ${UNITS[other ?? 'mass'].at(-1)?.symbol}`).success).toBe(false)
  })

  it('refuses a bare number and a text without a unit', () => {
    expect(field.safeParse(3).success).toBe(false)
    expect(field.safeParse('3').success).toBe(false)
  })
})
