import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { figureText } from '../../../shared/answer/figure-text.ts'
import { type Kind, type Quantity, quantity } from '../../../shared/quantity/index.ts'

type More = { readonly step?: number; readonly safe?: 'up' | 'down' }

const text =
  (units: 'us' | 'si') =>
  (value: Quantity, more: More = {}) =>
    figureText({ value, ...more }, { units, precise: false })
const us = text('us')
const si = text('si')
const psig = (value: number, plusMinus?: number) =>
  quantity('gaugePressure', value, 'psig', plusMinus)
const vacuum = (value: number) => quantity('gaugePressure', value, 'inHg vac')
const width = (kind: Kind, value: number, unit: string) => quantity(kind, value, unit).si
const psi = (value: number) => width('pressureDifference', value, 'psi')

describe('a figure that a gauge must show', () => {
  it('is rounded to its step', () => {
    expect(us(psig(31.37))).toBe('31.4 psig')
    expect(us(psig(31.37), { step: psi(1) })).toBe('31 psig')
    expect(us(psig(31.37), { step: psi(2) })).toBe('32 psig')
    expect(us(psig(31.37), { step: psi(5) })).toBe('30 psig')
    expect(us(psig(31.37), { step: psi(0.2) })).toBe('31.4 psig')
  })

  it('is rounded to the next step of 1, 2 or 5 in the other system, never a finer one', () => {
    expect(si(psig(31.37), { step: psi(1) })).toBe('220 kPa g') // 6.9 kPa: steps of 10
    expect(si(psig(31.37), { step: psi(0.5) })).toBe('215 kPa g') // 3.4 kPa: steps of 5
    expect(si(psig(31.37), { step: psi(0.2) })).toBe('216 kPa g') // 1.4 kPa: steps of 2
    expect(us(psig(31.37), { step: psi(3) })).toBe('30 psig')
    expect(us(psig(33), { step: psi(6) })).toBe('30 psig')
  })

  it('shows no ± finer than half a step, and any other', () => {
    expect(us(psig(31.37, 0.4), { step: psi(1) })).toBe('31 psig')
    expect(us(psig(31.37, 0.5), { step: psi(1) })).toBe('31 ±0.5 psig')
    expect(us(psig(31.37, 4), { step: psi(1) })).toBe('31 ±4 psig')
    expect(us(psig(31.37, 0.04), { safe: 'up' })).toBe('31.4 ±0.04 psig')
  })

  it('is never farther from the truth than half a step', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 500, noNaN: true }),
        fc.constantFrom(0.1, 0.2, 0.5, 1, 2, 5, 10),
        (value, step) => {
          const shown = Number.parseFloat(us(psig(value), { step: psi(step) }))
          expect(Math.abs(shown - value)).toBeLessThanOrEqual(step / 2 + 1e-6)
          expect(Math.abs(shown / step - Math.round(shown / step))).toBeLessThan(1e-6)
        },
      ),
    )
  })
})

describe('a limit', () => {
  it('is rounded to its safe side, in the third figure where no gauge is named', () => {
    expect(us(psig(31.37), { safe: 'up' })).toBe('31.4 psig')
    expect(us(psig(31.37), { safe: 'down' })).toBe('31.3 psig')
    expect(us(psig(31.31), { safe: 'up' })).toBe('31.4 psig')
    expect(us(psig(313.2), { safe: 'up' })).toBe('314 psig')
    expect(us(psig(313.8), { safe: 'down' })).toBe('313 psig')
    expect(us(psig(31.37), { safe: 'down', step: psi(5) })).toBe('30 psig')
    expect(us(psig(31.37), { safe: 'up', step: psi(5) })).toBe('35 psig')
    expect(us(psig(0), { safe: 'up' })).toBe('0 psig')
  })

  it('stays where it is when the step shows it', () => {
    for (const safe of ['up', 'down'] as const) {
      expect(us(psig(35), { safe, step: psi(5) })).toBe('35 psig')
      expect(us(psig(35), { safe })).toBe('35 psig')
    }
  })

  it('is deeper in inches of vacuum where its safe side is the lower pressure', () => {
    expect(us(vacuum(20.04), { safe: 'down' })).toBe('20.1 inHg vac')
    expect(us(vacuum(20.06), { safe: 'up' })).toBe('20 inHg vac')
    const step = width('gaugePressure', 0, 'inHg vac') - width('gaugePressure', 1, 'inHg vac')
    expect(us(vacuum(20.4), { safe: 'down', step })).toBe('21 inHg vac')
    expect(us(vacuum(20.6), { safe: 'up', step })).toBe('20 inHg vac')
    expect(us(vacuum(20.6), { step })).toBe('21 inHg vac')
    // The same limits in the other system, where the sign does it: -67.86 kPa g.
    expect(si(vacuum(20.04), { safe: 'down' })).toBe('-67.9 kPa g')
    expect(si(vacuum(20.04), { safe: 'up' })).toBe('-67.8 kPa g')
  })

  it('of any temperature is never passed by its rounding', () => {
    fc.assert(
      fc.property(fc.double({ min: 230, max: 400, noNaN: true }), (kelvins) => {
        const limit = quantity('temperature', kelvins, 'K')
        for (const [written, unit] of [
          [us, '°F'],
          [si, '°C'],
        ] as const) {
          const number = (safe: 'up' | 'down') => Number.parseFloat(written(limit, { safe }))
          expect(number('up')).toBeGreaterThanOrEqual(limit.to(unit) - 1e-6)
          expect(number('down')).toBeLessThanOrEqual(limit.to(unit) + 1e-6)
          expect(number('up') - number('down')).toBeLessThanOrEqual(1 + 1e-6)
        }
      }),
    )
  })
})

describe('full precision', () => {
  it('rounds to no step and to no side', () => {
    const precise = { units: 'us', precise: true } as const
    const value = psig(31.375, 0.125)
    for (const more of [{}, { step: psi(5) }, { safe: 'up' }] as const) {
      expect(figureText({ value, ...more }, precise)).toBe('31.375 ±0.125 psig')
    }
  })
})
