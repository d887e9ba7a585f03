import { describe, expect, it } from 'vitest'
import data from '../../../data/service/cut-outs.json' with { type: 'json' }
import { cutOutOf, reachesCutOut } from '../../../shared/diagnosis/cut-out.ts'
import { parseQuantity } from '../../../shared/quantity/index.ts'
import { refrigerant } from '../../../shared/refrigerant/index.ts'

const psig = (name: string) => cutOutOf(refrigerant(name))?.pressure.to('psig')

describe('the pressure at which makers stop the compressor', () => {
  it('is the lowest of those that are known', () => {
    // 27 bar and 30 bar of one maker's switch of 1994, below the 430, 450 and 464 psi of others.
    expect(psig('R-12')).toBeCloseTo(391.6, 1)
    expect(psig('R-134a')).toBeCloseTo(435.1, 1)
    expect(psig('R-410A')).toBe(650)
  })

  it('says where it is remembered, or that of another refrigerant', () => {
    expect(cutOutOf(refrigerant('R-134a'))?.basis).toBe('published')
    expect(cutOutOf(refrigerant('R-22'))?.basis).toBe('from memory')
    expect(cutOutOf(refrigerant('R-1234yf'))?.basis).toBe('assumed')
    expect(psig('R-1234yf')).toBe(psig('R-134a'))
    expect(psig('R-407C')).toBe(psig('R-22'))
  })

  it('is not made up where none is known', () => {
    for (const name of ['R-744', 'R-290', 'R-404A']) {
      expect(cutOutOf(refrigerant(name))).toBeUndefined()
    }
  })

  it('lies below the critical pressure of each refrigerant', () => {
    for (const id of [...data.rows.map((row) => row.refrigerant), ...Object.keys(data.standsFor)]) {
      const r = refrigerant(id)
      expect((cutOutOf(r)?.pressure.si ?? Infinity) + 101_325).toBeLessThan(r.criticalPressurePa)
    }
  })

  it('is reached by the reading itself, at it and above it', () => {
    const cutOut = cutOutOf(refrigerant('R-410A'))
    if (!cutOut) throw new Error('no cut-out')
    const at = (text: string) => reachesCutOut(parseQuantity(text, ['gaugePressure']).si, cutOut)
    expect(at('650 psig')).toBe(true)
    expect(at('649.9 psig')).toBe(false)
  })
})
