import { describe, expect, it } from 'vitest'
import type { ChargeInput } from '../../../shared/service/charge/input/fields.ts'
import { unusedChargeFields } from '../../../shared/service/charge/input/unused.ts'
import type { OilInput } from '../../../shared/service/oil/fields.ts'
import { unusedOilFields } from '../../../shared/service/oil/unused.ts'
import type { ReadingsInput } from '../../../shared/service/readings/fields.ts'
import { unusedReadings } from '../../../shared/service/readings/unused.ts'

/** Something that was given, whatever it is. */
const GIVEN = {}
const given = (...fields: readonly string[]) =>
  Object.fromEntries(fields.map((field) => [field, GIVEN]))
const said = (warnings: readonly { readonly message: string }[]) =>
  warnings.map(({ message }) => message)
const fieldsOf = (warnings: readonly { readonly message: string }[]) =>
  said(warnings).map((message) => message.split(' ')[0])

describe('what a charge made nothing of', () => {
  const full = (input: object) =>
    unusedChargeFields(input as ChargeInput, { kind: 'full-charge', whatIf: false, air: false })
  const correction = (input: object, used: { whatIf?: boolean; air?: boolean } = {}) =>
    unusedChargeFields(input as ChargeInput, {
      ...{ kind: 'correction', whatIf: false, air: false },
      ...used,
    })

  const LOST = 'where the full charge is weighed in, what was lost before does not matter'

  it.each([
    ...['couplings', 'couplingsOn', 'parted', 'coldest', 'suctionDry', 'spillVolume'],
    ...['mouthDiameter', 'firstDepth', 'secondDepth', 'hexSize', 'joinedLength', 'spillFrom'],
    ...['spillTo', 'partings', 'airInclusion', 'whatIf', 'vapourSpace', 'sections', 'volume'],
    ...['hoseSize', 'tubeSize', 'innerDiameter'],
  ])('a full charge of %s: what was lost before does not matter', (field) => {
    expect(said(full(given(field)))).toEqual([`${field} was not used: ${LOST}.`])
    expect(full({ [field]: undefined })).toEqual([])
  })

  it('a full charge of a tolerance, and of a state that no part takes', () => {
    expect(said(full(given('chargeTolerance')))).toEqual([
      'chargeTolerance was not used: a full charge is weighed in and held against nothing.',
    ])
    const state = ['phase', 'temperature', 'pressure', 'quality']
    expect(fieldsOf(full(given(...state)))).toEqual(state)
    for (const part of ['oldVolume', 'newVolume', 'parts']) {
      expect(full(given(...state, part)), part).toEqual([])
    }
    // A space that itself counts for nothing says so for its state too.
    for (const space of ['sections', 'volume', 'hoseSize', 'tubeSize', 'innerDiameter']) {
      expect(fieldsOf(full(given(...state, space))), space).toEqual([space])
    }
  })

  it('nothing of what belongs to a full charge', () => {
    expect(full(given('labelCharge', 'recovered', 'oldVolume', 'newVolume'))).toEqual([])
    expect(full({ suctionDry: false, whatIf: false })).toEqual([])
  })

  it('a correction of what belongs to couplings, where none is named', () => {
    const fields = ['partings', 'suctionDry', 'coldest']
    expect(fieldsOf(correction(given(...fields)))).toEqual(fields)
    for (const named of ['couplings', 'couplingsOn', 'parted']) {
      expect(correction(given(...fields, named)), named).toEqual([])
    }
  })

  it('a correction of a vapour space without air let in, and of a what-if without a range', () => {
    expect(said(correction(given('vapourSpace', 'whatIf')))).toEqual([
      'vapourSpace was not used: no airInclusion is given.',
      'whatIf was not used: no range of spill volumes stands behind the answer.',
    ])
    expect(fieldsOf(correction(given('vapourSpace', 'whatIf'), { air: true }))).toEqual(['whatIf'])
    expect(fieldsOf(correction(given('vapourSpace', 'whatIf'), { whatIf: true }))).toEqual([
      'vapourSpace',
    ])
  })
})

describe('what an amount of oil made nothing of', () => {
  const unused = (input: object) => fieldsOf(unusedOilFields(input as OilInput))
  const all = given(
    ...['compressorDrained', 'compressorRule', 'compressorHolds', 'accumulatorDrained'],
    ...['recoveredOil', 'longHoseLength'],
  )

  it.each<readonly [object, readonly string[]]>([
    [
      { replaced: ['condenser'] },
      [
        ...['compressorDrained', 'compressorRule', 'compressorHolds', 'accumulatorDrained'],
        'longHoseLength',
      ],
    ],
    [{ replaced: ['compressor'] }, ['accumulatorDrained', 'longHoseLength']],
    [{ parts: [{ part: 'compressor' }] }, ['accumulatorDrained', 'longHoseLength']],
    [{ replaced: ['compressor', 'accumulator'] }, ['longHoseLength']],
    [
      { replaced: ['compressor', 'accumulator'], flushed: true },
      [
        ...['compressorDrained', 'compressorRule', 'accumulatorDrained', 'recoveredOil'],
        'longHoseLength',
      ],
    ],
    [
      { flushed: true },
      [
        ...['compressorDrained', 'compressorRule', 'accumulatorDrained', 'recoveredOil'],
        'longHoseLength',
      ],
    ],
    [
      { replaced: ['accumulator'], longHose: 'extra-by-hose-length' },
      ['compressorDrained', 'compressorRule'],
    ],
    [
      { replaced: ['accumulator'], longHose: 'total-by-charge-five-cylinder' },
      ['compressorDrained', 'compressorRule', 'longHoseLength'],
    ],
  ])('%j: %j', (input, fields) => {
    expect(unused({ ...all, ...input })).toEqual(fields)
    expect(unused(input)).toEqual([])
  })

  it('says why', () => {
    const why = (input: object) => said(unusedOilFields({ ...all, ...input } as OilInput))
    expect(why({ replaced: ['condenser'] })[0]).toBe(
      'compressorDrained was not used: no compressor is on the list of replaced parts.',
    )
    expect(why({ replaced: ['condenser'] })[3]).toBe(
      'accumulatorDrained was not used: no accumulator is on the list of replaced parts.',
    )
    for (const message of why({ flushed: true }).slice(0, 4)) {
      expect(message).toMatch(/after a flush the full quantity goes in/u)
    }
  })

  it('names a part that stands in both lists, once', () => {
    const twice = (replaced: readonly string[], ...parts: readonly string[]) =>
      unusedOilFields({ replaced, parts: parts.map((part) => ({ part })) } as OilInput).map(
        ({ code, message }) => `${code}: ${message}`,
      )
    expect(twice(['condenser', 'drier'], 'hose')).toEqual([])
    expect(twice(['condenser', 'condenser'], 'condenser')).toHaveLength(1)
    expect(twice(['condenser', 'drier'], 'drier', 'condenser')[0]).toContain(
      'condenser and the drier',
    )
    expect(twice(['condenser'], 'condenser')[0]).toMatch(/^listed-twice: /u)
  })
})

describe('what readings made nothing of', () => {
  const unused = (input: object) => fieldsOf(unusedReadings(input as ReadingsInput))
  const valve = { meteringDevice: 'expansion-valve' }
  const orifice = { meteringDevice: 'fixed-orifice', machine: 'stationary' }
  const tube = { meteringDevice: 'orifice-tube', machine: 'road-vehicle' }
  const low = given('suctionPressure')

  it.each<readonly [object, readonly string[]]>([
    [given('suctionTemperature'), ['suctionTemperature']],
    [{ ...given('suctionTemperature'), ...low }, []],
    [given('liquidTemperature'), ['liquidTemperature']],
    [given('liquidTemperature', 'liquidPressure'), []],
    [given('liquidTemperature', 'dischargePressure'), []],
    [given('dischargeTemperature'), ['dischargeTemperature']],
    [given('dischargeTemperature', 'dischargePressure'), []],
    [given('returnWetBulb'), ['returnWetBulb']],
    [{ ...given('returnWetBulb'), ...orifice }, []],
    [{ ...given('returnWetBulb'), ...tube }, ['returnWetBulb']],
    [{ ...given('returnWetBulb'), ...orifice, ...valve }, ['returnWetBulb']],
    [{ ...given('superheatTarget'), ...valve }, ['superheatTarget']],
    [{ ...given('superheatTarget'), ...orifice }, []],
    [{ ...given('superheatTarget'), ...tube }, ['superheatTarget']],
    [given('superheatTarget'), []],
    [{ ...given('superheatLow'), ...tube }, ['superheatLow']],
    [{ ...given('superheatLow'), ...orifice }, []],
    [{ ...given('superheatLow', 'superheatTarget'), ...orifice }, ['superheatTarget']],
    [{ ...given('subcoolingTarget'), ...valve }, []],
    [{ ...given('subcoolingTarget', 'subcoolingLow'), ...valve }, ['subcoolingTarget']],
    [
      { ...given('subcoolingTarget', 'subcoolingLow'), ...orifice },
      ['subcoolingTarget', 'subcoolingLow'],
    ],
    [given('lowGauge'), ['lowGauge']],
    [{ ...given('lowGauge'), ...low }, []],
    [{ ...given('lowGaugeSpan'), ...low }, ['lowGaugeSpan']],
    [{ ...given('lowGaugeSpan', 'lowGauge'), ...low }, []],
    [given('lowGaugeSpan', 'lowGauge'), ['lowGauge', 'lowGaugeSpan']],
    [given('highGauge'), ['highGauge']],
    [given('highGauge', 'liquidPressure'), []],
    [given('highGaugeSpan', 'dischargePressure'), ['highGaugeSpan']],
    [given('highGaugeSpan', 'highGauge', 'dischargePressure'), []],
    [given('highGaugeSpan', 'highGauge'), ['highGauge', 'highGaugeSpan']],
  ])('%j: %j', (input, fields) => {
    expect(unused(input)).toEqual(fields)
  })
})
