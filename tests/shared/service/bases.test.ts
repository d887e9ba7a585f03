import { describe, expect, it } from 'vitest'
import { operation } from '../../../shared/operations.ts'

/** Figures that rest on less than a published or computed value, "id=basis". */
const bases = (name: string, input: object) =>
  (operation(name).run({ units: 'us', ...input }).figures ?? [])
    .flatMap(({ id, basis }) => (basis === undefined ? [] : [`${id}=${basis}`]))
    .join(' ')

/** Every step that tells a figure of saturation, and those that then rest on the mixture. */
const STEPS: readonly (readonly [string, object, readonly string[]])[] = [
  [
    'readings',
    {
      ...{ suctionPressure: '30 psig', suctionTemperature: '60 °F', liquidPressure: '180 psig' },
      ...{ liquidTemperature: '90 °F', ambient: '80 °F' },
    },
    ['superheat', 'subcooling', 'evaporating', 'condensing', 'overAmbient'],
  ],
  ['readings', { suctionPressure: '30 psig' }, ['evaporating']],
  [
    'readings',
    { liquidPressure: '180 psig', liquidTemperature: '90 °F' },
    ['subcooling', 'condensing'],
  ],
  [
    'diagnose',
    {
      ...{ suctionPressure: '30 psig', suctionTemperature: '60 °F', liquidPressure: '180 psig' },
      ...{ liquidTemperature: '90 °F', ambient: '80 °F' },
    },
    ['superheat', 'subcooling', 'evaporating', 'condensing', 'overAmbient'],
  ],
  ['saturation', { pressure: '60 psig' }, ['bubble', 'dew']],
  ['air-check', { pressure: '120 psig', temperature: '75 °F' }, ['saturation']],
  ['contamination', { pressure: '120 psig', temperature: '75 °F', suspects: [] }, ['saturation']],
  [
    'fractionation',
    { lost: '20 %', temperature: '70 °F', escapes: 'vapour' },
    ['shift', 'pressureNow'],
  ],
]

describe('a figure of a blend whose mixing is estimated is told as estimated', () => {
  it.each(STEPS)('%s %j', (name, input, ids) => {
    expect(bases(name, { refrigerant: 'R-401A', ...input })).toBe(
      ids.map((id) => `${id}=estimated`).join(' '),
    )
    expect(bases(name, { refrigerant: 'R-407C', ...input })).toBe('')
  })

  it('another refrigerant of a reading, by the mixture with it', () => {
    const reading = { refrigerant: 'R-22', pressure: '100 psig', temperature: '75 °F' }
    expect(bases('contamination', { ...reading, suspects: ['R-600a'] })).toBe('other1=estimated')
    expect(bases('contamination', { ...reading, suspects: ['R-152a'] })).toBe('')
  })
})

describe('a tolerance of the charge', () => {
  const section = {
    ...{ job: 'section-opened', sealed: true, volume: '200 mL', phase: 'liquid' },
    temperature: '90 °F',
  }
  // Published for cab systems of about 2 to 4 lb; in proportion for others by common practice.
  it.each([
    ['3 lb', undefined, ''],
    ['10 lb', undefined, 'tolerance=common practice'],
    ['1 lb', undefined, 'tolerance=common practice'],
    ['10 lb', '1 oz', ''],
  ])('of %s, given %s: "%s"', (labelCharge, chargeTolerance, expected) => {
    const asked = {
      refrigerant: 'R-134a',
      labelCharge,
      ...(chargeTolerance && { chargeTolerance }),
    }
    expect(bases('charging', asked)).toBe(expected)
    expect(bases('charge', { ...asked, ...section })).toBe(expected)
  })
})

describe('a cut-out', () => {
  it('is published of some refrigerants, and assumed to be like theirs of others', () => {
    const running = { suctionPressure: '30 psig', dischargePressure: '480 psig', ambient: '80 °F' }
    expect(bases('readings', { refrigerant: 'R-134a', ...running })).toBe('')
    expect(bases('readings', { refrigerant: 'R-1234yf', ...running })).toBe('cutOut=assumed')
  })
})

describe('the highest pressure of a leak test', () => {
  const highest = (testPressure: string) =>
    (
      operation('leak-test').run({
        ...{ testPressure, lowSideRating: '250 psig', altitude: '5000 ft', units: 'us' },
        precise: true,
      }).result as { test?: { highest?: { value: number; plusMinus?: number } } }
    ).test?.highest

  it('by a gauge has its own ±, by an absolute reading that of the air with it', () => {
    expect(highest('150 ±1 psig')).toMatchObject({ value: 150, plusMinus: 1 })
    // 5000 ft: 12.228 psi, known to about 3 kPa (0.435 psi) for the weather.
    expect(highest('165 ±1 psia')?.value).toBeCloseTo(165 - 12.228, 3)
    expect(highest('165 ±1 psia')?.plusMinus).toBeCloseTo(Math.hypot(1, 0.435), 2)
  })
})
