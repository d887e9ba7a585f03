import { describe, expect, it } from 'vitest'
import { contamination } from '../../../shared/service/contamination.ts'

const ask = (refrigerant: string, pressure: string, more: object = {}) =>
  contamination.run({ refrigerant, pressure, temperature: '75 °F', units: 'us', ...more })
const told = (...asked: Parameters<typeof ask>) =>
  (ask(...asked).figures ?? []).map(({ id, label, text }) => `${id}: ${label} ${text}`)

describe('which other refrigerants are told, of those that would make the reading', () => {
  it('one, beside the air, where it reads too high; every one of them is among the explanations', () => {
    const suspects = ['R-12', 'R-22', 'R-290', 'R-410A']
    // R-134a stands at 79 psig; R-290 alone at 121, R-22 at 132, R-410A at 218.
    expect(told('R-134a', '110 psig', { suspects })).toEqual([
      'pressure: Pressure 110 ±1 psig',
      'temperature: Temperature 75 ±1 °F',
      'saturation: Saturation 79 psig',
      'off: Off by 31.3 ±2 psi',
      'air: Air would be 25.1 ±1.5 %',
      'other1: R-290 4.38 %',
    ])
    const { explanations } = ask('R-134a', '110 psig', { suspects }).result
    expect(explanations.map(({ cause, refrigerant }) => refrigerant ?? cause)).toEqual([
      'air',
      'R-290',
      'R-410A',
      'R-22',
      'reading',
    ])
  })

  it('two where it reads too low, the smallest share first, and no air', () => {
    const suspects = ['R-1234yf', 'R-134a', 'R-12', 'R-22']
    expect(told('R-407C', '100 psig', { suspects })).toEqual([
      'pressure: Pressure 100 ±1 psig',
      'temperature: Temperature 75 ±1 °F',
      'saturation: Saturation 129 psig',
      'off: Off by -28.5 ±2.7 psi',
      'other1: R-134a 73.7 %',
      'other2: R-1234yf 84.6 %',
    ])
  })

  it('as many as there are: one suspect, one figure; none where none fits', () => {
    expect(told('R-407C', '100 psig', { suspects: ['R-134a'] }).slice(4)).toEqual([
      'other1: R-134a 73.7 %',
    ])
    expect(told('R-407C', '100 psig', { suspects: ['R-22'] }).slice(4)).toEqual([])
    expect(told('R-134a', '300 psig').slice(4)).toEqual(['air: Air would be 70.3 ±0.7 %'])
    expect(told('R-134a', '79 psig')).toHaveLength(4)
  })

  it('each with the ends of its share, and estimated where its mixture is', () => {
    const others = (...asked: Parameters<typeof ask>) =>
      (ask(...asked).figures ?? []).filter(({ id }) => id.startsWith('other'))
    const suspects = ['R-152a', 'R-600a']
    expect(others('R-22', '100 psig', { suspects })).toMatchObject([
      { label: 'R-152a', says: expect.stringMatching(/^by mass would read so, 31 % to 43 %$/u) },
      { label: 'R-600a', basis: 'estimated' },
    ])
    expect(others('R-22', '100 psig', { suspects })[0]?.basis).toBeUndefined()
    // R-12 alone stands at about 77 psig at 75 °F.
    expect(others('R-134a', '75.5 psig', { suspects: ['R-12'] })).toMatchObject([
      { label: 'R-12', text: '100 %', says: expect.stringContaining('alone') },
    ])
  })
})

describe('from which line the reading is told off', () => {
  const says = (id: string, ...asked: Parameters<typeof ask>) =>
    ask(...asked).figures?.find((figure) => figure.id === id)?.says

  it('above from the bubble line, below from the dew line of a blend', () => {
    expect(says('off', 'R-407C', '100 psig')).toBe('measured less the dew line')
    expect(says('off', 'R-407C', '200 psig')).toBe('measured less saturation')
    expect(says('off', 'R-134a', '110 psig')).toBe('measured less saturation')
    expect(says('saturation', 'R-134a', '110 psig')).toBe('of R-134a at that temperature')
    expect(says('saturation', 'R-407C', '200 psig')).not.toBe(
      says('saturation', 'R-407C', '100 psig'),
    )
    expect(told('R-407C', '200 psig')[2]).not.toBe(told('R-407C', '100 psig')[2])
  })
})
