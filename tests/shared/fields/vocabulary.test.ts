import { describe, expect, it } from 'vitest'
import { operations } from '../../../shared/operations.ts'
import { everyField } from '../../support/every-field.ts'

const placed = everyField()
const where = ({ operation, path }: (typeof placed)[number]) => `${operation}: ${path.join('.')}`

/** Names that say what another name of the vocabulary says. */
const TWINS: Readonly<Record<string, string>> = {
  chargeMass: 'labelCharge',
  factoryCharge: 'labelCharge',
  nameplateCharge: 'labelCharge',
  outdoor: 'ambient',
  ambientAir: 'ambient',
  wetBulb: 'returnWetBulb',
  jurisdiction: 'law',
  country: 'law',
  region: 'law',
  machineKind: 'machine',
  vehicle: 'machine',
  drive: 'compressorDrive',
  compressorType: 'compressorDrive',
  device: 'meteringDevice',
  valve: 'meteringDevice',
  elevation: 'altitude',
  height: 'altitude',
  barometricPressure: 'barometer',
  atmosphericPressure: 'barometer',
  lowSidePressure: 'suctionPressure',
  highSidePressure: 'dischargePressure',
  restPressure: 'systemPressure',
  internalVolume: 'volume',
  oilCharge: 'oilTotal',
  resolution: 'scaleDivision',
  day: 'date',
  workDate: 'date',
  gas: 'refrigerant',
  fluid: 'refrigerant',
}

/** Fields that mean one thing everywhere, so that their words do not change with the step. */
const ONE_MEANING = [
  ...['altitude', 'barometer', 'lowGauge', 'lowGaugeSpan', 'highGauge', 'highGaugeSpan'],
  ...['thermometer', 'contactError', 'scaleDivision', 'scaleTolerance', 'compressorDrive'],
  ...['factorySealed', 'meteringDevice', 'returnWetBulb', 'chargeTolerance', 'recovered'],
  ...['existingOil', 'newOil', 'oilTotal', 'date', 'units', 'precise'],
  ...['serviceHoseBore', 'serviceHoseLength', 'serviceHoseStarts', 'serviceHoseHolds'],
  ...['serviceHosePressure', 'vacuumHoseBore', 'vacuumHoseLength', 'vacuumHoses'],
]

describe('the vocabulary', () => {
  it('has one name a thing', () => {
    const twins = placed.filter(({ field }) => Object.hasOwn(TWINS, field.name))
    expect(twins.map(where)).toEqual([])
  })

  it.each(ONE_MEANING)('%s is described alike everywhere', (name) => {
    const found = placed.filter(({ field, path }) => field.name === name && path.length === 1)
    expect(found.length).toBeGreaterThan(0)
    expect(new Set(found.map(({ field }) => field.description)).size).toBe(1)
  })

  it('has no two fields of one description in an operation', () => {
    for (const { name } of operations) {
      const own = placed.filter(({ operation, path }) => operation === name && path.length === 1)
      const words = own.map(({ field }) => field.description)
      expect(words.filter((word, index) => words.indexOf(word) !== index)).toEqual([])
    }
  })

  it('is written in plain letters: names in camel case, choices in kebab case', () => {
    const odd = placed.filter(({ field }) => !/^[a-z][A-Za-z]*$/u.test(field.name))
    expect(odd.map(where)).toEqual([])
    const choices = placed.flatMap(({ field }) =>
      field.shape.type === 'choice' ? field.shape.choices : [],
    )
    // A unit keeps its own spelling.
    const strange = choices.filter((word) => !/^[a-z0-9]+(?:[.-][a-z0-9]+)*$/u.test(word))
    expect([...new Set(strange)]).toEqual(['mL'])
  })

  it('describes in a phrase, not in sentences', () => {
    const odd = placed.filter(({ field }) => !/^\S.*[^\s.]$/u.test(field.description))
    expect(odd.map(where)).toEqual([])
  })
})
