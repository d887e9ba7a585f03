import { describe, expect, it } from 'vitest'
import { type Act, ALL_DANGERS, dangersOf, isFluorinated } from '../../shared/dangers.ts'
import { refrigerant, refrigerants } from '../../shared/refrigerant/index.ts'
import { refrigerantFacts } from '../../shared/rules/facts.ts'

const of = (name: string, ...does: Act[]) => dangersOf({ refrigerant: refrigerant(name), does })

describe('dangers of a job', () => {
  it.each([
    ['handles', ['pressure', 'cold-burns', 'asphyxiation']],
    ['opens', ['goggles-even-empty', 'trapped-liquid', 'no-venting', 'decomposition']],
    ['parts-couplings', ['whipping-line', 'trapped-liquid', 'first-aid-eyes', 'no-venting']],
    ['recovers', ['full-cylinder', 'no-disposable-refill', 'do-not-mix', 'no-venting']],
    ['pressurises', ['no-oxygen', 'no-air', 'nitrogen-regulator', 'whipping-line']],
    ['evacuates', ['compressor-in-vacuum']],
    ['charges', ['no-high-side-running', 'warm-water-only', 'no-liquid-to-suction']],
    ['runs', ['rotating-parts']],
    ['lifts-cab', ['lifted-cab', 'machine-secured', 'bystanders', 'working-alone']],
  ] as const)('%s: R-134a', (act, expected) => {
    expect(of('R-134a', act)).toEqual(expect.arrayContaining([...expected]))
  })

  it('names high voltage and the oil before an electric compressor’s system is opened', () => {
    const electric = (...does: Act[]) => dangersOf({ compressorDrive: 'electric', does })
    expect(electric('opens')).toEqual(
      expect.arrayContaining(['high-voltage', 'electric-compressor-oil']),
    )
    expect(electric('recovers')).toContain('high-voltage')
    expect(electric('runs')).not.toContain('high-voltage')
    expect(dangersOf({ compressorDrive: 'open', does: ['opens'] })).not.toContain('high-voltage')
  })

  it('gives R-744 its own, and neither hydrogen fluoride nor the duty to recover', () => {
    const all = of('R-744', 'opens', 'parts-couplings', 'charges', 'pressurises', 'recovers')
    expect(all).toEqual(
      expect.arrayContaining([
        'carbon-dioxide',
        'carbon-dioxide-release',
        'carbon-dioxide-couplings',
        'carbon-dioxide-test-pressure',
        'dry-ice',
      ]),
    )
    for (const other of [
      'decomposition',
      'first-aid-hydrogen-fluoride',
      'no-venting',
      'flammable',
    ]) {
      expect(all).not.toContain(other)
    }
  })

  it('warns of fire by safety class, and of what belongs to hydrocarbons alone', () => {
    expect(of('R-1234yf', 'charges')).toEqual(
      expect.arrayContaining(['flammable', 'pressure', 'cold-burns']),
    )
    expect(of('R-1234yf', 'charges')).not.toContain('no-flammable-retrofit')
    expect(of('R-1234yf', 'evacuates')).toContain('pump-exhaust-outdoors')
    expect(of('R-290', 'recovers')).toContain('hydrocarbons-rated-machine')
    expect(of('R-290', 'charges')).toContain('no-flammable-retrofit')
    expect(of('R-290', 'opens')).not.toContain('decomposition')
    expect(of('R-134a', 'evacuates')).not.toContain('pump-exhaust-outdoors')
    for (const { id, safetyClass } of refrigerants()) {
      expect(of(id).includes('flammable'), id).toBe(!safetyClass.value.endsWith('1'))
    }
  })

  it('knows which refrigerants hold fluorine', () => {
    const without = refrigerants().filter(({ id }) => !isFluorinated(refrigerant(id)))
    const ids = without.map(({ id }) => id)
    expect(ids).toEqual(expect.arrayContaining(['R-290', 'R-600a', 'R-744']))
    const families = refrigerants().filter((info) => {
      const { families } = refrigerantFacts(info)
      return families.every((family) =>
        ['hydrocarbon', 'carbon-dioxide', 'flammable'].includes(family),
      )
    })
    expect(ids).toEqual(families.map(({ id }) => id))
  })

  it('gives each once, and none that it does not list', () => {
    const acts = ['handles', 'parts-couplings', 'opens', 'recovers', 'pressurises'] as const
    const more = ['evacuates', 'charges', 'runs', 'lifts-cab'] as const
    for (const { id } of refrigerants()) {
      const all = dangersOf({
        refrigerant: refrigerant(id),
        compressorDrive: 'electric',
        does: [...acts, ...more],
      })
      expect(new Set(all).size).toBe(all.length)
      expect(ALL_DANGERS).toEqual(expect.arrayContaining([...all]))
    }
  })
})
