import { describe, expect, it } from 'vitest'
import { operation } from '../../../shared/operations.ts'
import { refrigerant, refrigerants } from '../../../shared/refrigerant/index.ts'
import { propertyWarnings } from '../../../shared/service/property-sources.ts'
import { substanceData } from '../../../shared/substance/library.ts'
import { mixingRule } from '../../../shared/substance/mixing-rules.ts'

/** R-401A is R-22, R-152a and R-124; no paper covers and R-152a/R-124 in our data. */
const BLEND = 'R-401A'

/** Every step that reads a refrigerant's properties, with the least that it takes. */
const steps: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  saturation: { pressure: '60 psig' },
  table: { from: '0 °C', to: '10 °C', step: '5 °C' },
  readings: { suctionPressure: '20 psig', suctionTemperature: '30 °F' },
  charge: {
    job: 'section-opened',
    sealed: true,
    labelCharge: '3 lb',
    hoseSize: '#8',
    length: '9 ft',
    phase: 'liquid',
    temperature: '90 °F',
  },
  'air-check': { pressure: '90 psig', temperature: '75 °F' },
  'cooling-check': { ambient: '80 °F', dischargePressure: '150 psig' },
  contamination: { pressure: '90 psig', temperature: '75 °F' },
  charging: { labelCharge: '3 lb' },
  recovery: {
    volume: '4 L',
    systemPressure: '80 psig',
    systemTemperature: '70 °F',
  },
  fractionation: { lost: '20 %', temperature: '70 °F', escapes: 'vapour' },
}

const warned = (name: string, refrigerantName: string) =>
  operation(name)
    .run({ ...steps[name], refrigerant: refrigerantName })
    .warnings.filter(({ code }) => code === 'estimated-mixing')

describe('a blend whose mixing parameters are partly estimated', () => {
  it.each(Object.keys(steps))('is said to be so by %s, once, with its pairs', (name) => {
    const [warning, ...others] = warned(name, BLEND)
    expect(others).toEqual([])
    expect(warning).toEqual(propertyWarnings(refrigerant(BLEND))[0])
  })

  it.each(Object.keys(steps).filter((name) => name !== 'contamination'))(
    'is not said of a blend with published parameters by %s',
    (name) => {
      expect(warned(name, 'R-407C')).toEqual([])
    },
  )

  it.each<[name: string, marked: readonly string[]]>([
    ['saturation', ['bubble', 'dew']],
    ['readings', ['superheat', 'evaporating']],
    ['cooling-check', ['condensing']],
    ['recovery', ['least', 'most']],
  ])(
    'has it beside each figure of %s that rests on it, and beside none of a published one',
    (name, marked) => {
      const estimatedIn = (refrigerantName: string) =>
        (operation(name).run({ ...steps[name], refrigerant: refrigerantName }).figures ?? [])
          .filter(({ basis }) => basis === 'estimated')
          .map(({ id }) => id)
      expect(estimatedIn(BLEND)).toEqual(marked)
      expect(estimatedIn('R-407C')).toEqual([])
    },
  )

  it('names every pair that no paper covers and no other, how far off, and what goes first', () => {
    for (const { id, composition } of refrigerants()) {
      const estimated = composition.flatMap(({ substance: a }, i) =>
        composition
          .slice(i + 1)
          .filter(
            ({ substance: b }) =>
              mixingRule(substanceData(a), substanceData(b)).basis === 'estimated',
          )
          .map(({ substance: b }) => `${a}/${b}`),
      )
      const [warning] = propertyWarnings(refrigerant(id))
      if (estimated.length === 0) {
        expect(warning).toBeUndefined()
        continue
      }
      expect(warning?.message).toContain(`for ${estimated.join(', ')}.`)
      expect(warning?.message).toContain('1 to 4 K')
      expect(warning?.message).toMatch(/maker's own pressure-temperature figures go first/u)
    }
  })

  it('is said of the blends that differ most from published boiling points', () => {
    for (const id of ['R-401A', 'R-402A', 'R-408A', 'R-409A', 'R-414B']) {
      expect(propertyWarnings(refrigerant(id)).map(({ code }) => code)).toEqual([
        'estimated-mixing',
      ])
    }
  })

  it('is said once on a work order, with the steps that rest on it', () => {
    const { warnings } = operation('work-order').run({
      machine: { name: 'Quarry loader 7', kind: 'off-road', compressorDrive: 'open' },
      refrigerant: BLEND,
      labelCharge: '3 lb',
      job: 'system-opened',
      readings: { suctionPressure: '20 psig', suctionTemperature: '30 °F' },
      recovery: steps.recovery,
    })
    const told = warnings.filter(({ code }) => code === 'estimated-mixing')
    expect(told).toHaveLength(1)
    expect(told[0]?.message).toMatch(
      /^Readings, Recovery\b[^:]*: Its properties are partly estimated/u,
    )
  })
})
