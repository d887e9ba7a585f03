import { describe, expect, it } from 'vitest'
import { readings } from '../../../shared/service/readings.ts'

const run = (input: Record<string, unknown>) =>
  readings.run({ refrigerant: 'R-134a', units: 'us', ...input })

/** Verdict about the charge. */
const charge = (input: Record<string, unknown>) => {
  const answer = run(input)
  const verdict = answer.result.verdicts.find((entry) => entry.about === 'charge')
  if (!verdict) throw new Error('no verdict about the charge')
  return { ...answer, verdict }
}

/** A barometer and instruments that leave the verdict to the figure. */
const SHARP = { barometer: '29.92 ±0.01 inHg' }
const sharply = (fahrenheit: number) => ({ value: fahrenheit, unit: '°F', plusMinus: 0.1 })

/** R-22, 40 °F dew point (Carrier 38VTA: 68.5 psig), so the superheat is the suction line less 40 °F. */
const orifice = (superheatF: number, air: Record<string, unknown> = {}) => ({
  refrigerant: 'R-22',
  machine: 'stationary',
  meteringDevice: 'fixed-orifice',
  ...SHARP,
  suctionPressure: '68.6 ±0.2 psig',
  suctionTemperature: sharply(40 + superheatF),
  ambient: '95 ±0.1 °F',
  returnWetBulb: '68 ±0.1 °F',
  ...air,
})

describe('fixed orifice, stationary', () => {
  // The printed target at 95 °F and 68 °F wet bulb is 14 °F, ±5 °F.
  it.each([
    [6, 'below'],
    [11, 'inside'],
    [17, 'inside'],
    [22, 'above'],
  ] as const)('a superheat of %d °F against 14 ±5 °F is %s', (superheatF, outcome) => {
    const { verdict, sources } = charge(orifice(superheatF))
    expect(verdict.method).toBe('target-superheat-table')
    expect(verdict.outcome).toBe(outcome)
    expect(verdict.target?.value).toBe(14)
    expect([verdict.low?.value, verdict.high?.value]).toEqual([9, 19])
    expect(sources.map((source) => source.id)).toContain('superheat-table-r22')
  })

  it('no band goes below 5 °F of superheat', () => {
    // 90 °F and 62 °F wet bulb: printed target 5 °F.
    const { verdict } = charge(orifice(3, { ambient: '90 ±0.1 °F', returnWetBulb: '62 ±0.1 °F' }))
    expect(verdict.low?.value).toBe(5)
    expect(verdict.outcome).toBe('below')
  })

  it('where the table shows a dash there is no valid test', () => {
    const { verdict } = charge(orifice(10, { ambient: '100 °F', returnWetBulb: '60 °F' }))
    expect(verdict.outcome).toBe('no-valid-test')
    expect(verdict.target).toBeUndefined()
    expect(verdict.meaning).toContain('dash')
  })

  it('outside the table stands the formula, and says what it is', () => {
    // (3 · 78 − 80 − 80) / 2 = 37 °F.
    const { verdict, warnings, sources } = charge(
      orifice(37, { ambient: '80 °F', returnWetBulb: '78 °F' }),
    )
    expect(verdict.method).toBe('target-superheat-formula')
    expect(verdict.target?.value).toBe(37)
    expect(warnings.map((warning) => warning.code)).toContain('target-by-formula')
    expect(sources.find((source) => source.id === 'superheat-formula')?.mark).toBe(
      'common-practice',
    )
  })

  it('hotter than the table where its hottest row shows a dash there is no valid test either', () => {
    for (const ambient of ['115 °F', '116 °F', '118 °F']) {
      const { verdict } = charge(orifice(10, { ambient, returnWetBulb: '69 °F' }))
      expect(verdict.outcome, ambient).toBe('no-valid-test')
    }
  })

  it('too cold outside for a charge test is said', () => {
    const { warnings } = charge(orifice(20, { ambient: '45 °F', returnWetBulb: '60 °F' }))
    expect(warnings.map((warning) => warning.code)).toContain('too-cold-for-charge-test')
  })

  it("the maker's own target overrides the table", () => {
    const { verdict } = charge(orifice(10, { superheatTarget: '9 °F' }))
    expect(verdict.method).toBe('target-superheat-of-maker')
    expect(verdict.target?.value).toBe(9)
    expect(verdict.outcome).toBe('inside')
  })

  it('without the air there is no verdict, and it says what is missing', () => {
    const { verdict } = charge(orifice(10, { returnWetBulb: undefined }))
    expect(verdict.outcome).toBe('not-judged')
    expect(verdict.meaning).toContain('wet bulb of the return air')
    expect(verdict.meaning).not.toContain('outdoor')
  })

  it('instruments that reach over the edge cannot tell, and the weakest is named', () => {
    const { verdict } = charge(orifice(18, { suctionPressure: '68.6 ±4 psig' }))
    expect(verdict.outcome).toBe('cannot-tell')
    expect(verdict.settle).toContain('low-side pressure')
  })

  it('a doubtful wet bulb widens the target', () => {
    const { verdict } = charge(orifice(18, { returnWetBulb: '68 ±2 °F' }))
    expect(verdict.target?.plusMinus).toBeCloseTo(4, 0)
    expect(verdict.outcome).toBe('cannot-tell')
    expect(verdict.settle).toContain('wet bulb of the return air')
  })
})

/** R-134a at 171 psig is 120 °F (US vehicle table), so the subcooling is 120 °F less the liquid line. */
const liquid = (subcoolingF: number, more: Record<string, unknown> = {}) => ({
  machine: 'off-road',
  meteringDevice: 'expansion-valve',
  ...SHARP,
  suctionPressure: '35 ±0.2 psig',
  suctionTemperature: sharply(52),
  liquidPressure: '171.1 ±0.5 psig',
  liquidTemperature: sharply(120 - subcoolingF),
  ...more,
})

describe('expansion valve, vehicle', () => {
  // SAE J3023 as described: 4 to 8 K, 7.2 to 14.4 °F.
  it.each([
    [4, 'below'],
    [11, 'inside'],
    [20, 'above'],
  ] as const)('a subcooling of %d °F is %s', (subcoolingF, outcome) => {
    const { verdict, sources } = charge(liquid(subcoolingF))
    expect(verdict.method).toBe('vehicle-subcooling-band')
    expect(verdict.outcome).toBe(outcome)
    expect([verdict.low?.value, verdict.high?.value]).toEqual([7.2, 14.4])
    expect(sources.find((source) => source.id === 'sae-j3023')?.mark).toBe('secondary')
    expect(verdict.meaning).toMatch(/weigh/u)
  })

  it('a low subcooling never says to top up', () => {
    expect(charge(liquid(2)).verdict.meaning).toContain('Do not top up')
  })

  it('counted from the discharge pressure only "below" stands', () => {
    const fromDischarge = (subcoolingF: number) =>
      charge(
        liquid(subcoolingF, { liquidPressure: undefined, dischargePressure: '171.1 ±0.5 psig' }),
      )
    expect(fromDischarge(4).verdict.outcome).toBe('below')
    expect(fromDischarge(11).verdict.outcome).toBe('cannot-tell')
    expect(fromDischarge(20).verdict.outcome).toBe('cannot-tell')
    expect(fromDischarge(20).verdict.settle).toContain('liquid line')
  })

  it('the band is not stretched to another refrigerant', () => {
    const { verdict } = charge(liquid(10, { refrigerant: 'R-1234yf' }))
    expect(verdict.outcome).toBe('not-judged')
    expect(verdict.meaning).toContain('R-134a only')
  })

  it("the maker's range overrides the band", () => {
    const { verdict } = charge(liquid(4, { subcoolingLow: '3 °F', subcoolingHigh: '6 °F' }))
    expect(verdict.method).toBe('range-of-maker')
    expect(verdict.outcome).toBe('inside')
  })

  it('the superheat is judged as the valve, not as the charge', () => {
    const { result } = run(liquid(11))
    const valve = result.verdicts.find((entry) => entry.about === 'metering-device')
    expect(valve?.method).toBe('metering-superheat-range')
    expect(valve?.outcome).toBe('inside')
    expect(valve?.meaning).toContain('does not prove the charge')
    // RA3.2: 4 to 25 °F where the maker's range is unknown.
    expect([valve?.low?.value, valve?.high?.value]).toEqual([4, 25])
    expect(valve?.meaning).toContain('published for stationary equipment')
  })
})

describe('valve, stationary', () => {
  const stationary = (subcoolingF: number, more: Record<string, unknown> = {}) =>
    liquid(subcoolingF, { machine: 'stationary', ...more })

  // RA3.2 and Carrier 38HDF: ±3 °F of the target.
  it.each([
    [6, 'below'],
    [8, 'inside'],
    [12, 'inside'],
    [14, 'above'],
  ] as const)('a subcooling of %d °F against a target of 10 °F is %s', (subcoolingF, outcome) => {
    const { verdict, sources } = charge(stationary(subcoolingF, { subcoolingTarget: '10 °F' }))
    expect(verdict.method).toBe('target-subcooling-of-maker')
    expect(verdict.outcome).toBe(outcome)
    expect(sources.map((source) => source.id)).toContain('ra3.2-2008')
  })

  it('has no target of its own', () => {
    const { verdict } = charge(stationary(10))
    expect(verdict.outcome).toBe('not-judged')
    expect(verdict.meaning).toContain('plate')
  })
})

describe('orifice tube, vehicle', () => {
  const tube = (suctionTemperature: string, suctionPressure = '34.9 ±1 psig') => ({
    machine: 'off-road',
    meteringDevice: 'orifice-tube',
    suctionPressure,
    suctionTemperature,
  })

  it('a flooded outlet fits a full charge, and an overcharge too', () => {
    const { verdict, result } = charge(tube('40.5 ±1 °F'))
    expect(verdict.method).toBe('flooded-evaporator-outlet')
    expect(verdict.outcome).toBe('inside')
    expect(verdict.meaning).toContain('overcharge alike')
    expect(result.findings).toEqual([])
  })

  it('a dry outlet may be a low charge', () => {
    const { verdict } = charge(tube('55 ±1 °F'))
    expect(verdict.outcome).toBe('above')
    expect(verdict.meaning).toContain('accumulator')
  })

  it('is flooded below 4 °F of superheat, dry above it, and open where the ± reaches over that', () => {
    // RA3.2: no metering device may go below 4 °F. The shop's own gauge and probe bring ±2.4 °F.
    expect(charge(tube('40.5 °F', '34.9 psig')).verdict.outcome).toBe('inside')
    expect(charge(tube('43 °F', '34.9 psig')).verdict.outcome).toBe('cannot-tell')
    expect(charge(tube('48 °F', '34.9 psig')).verdict.outcome).toBe('above')
    expect(charge(tube('43 ±0.2 °F', '34.9 ±0.1 psig')).verdict.outcome).toBe('inside')
    expect(charge(tube('45 ±0.2 °F', '34.9 ±0.1 psig')).verdict.outcome).toBe('above')
  })
})

describe('no verdict', () => {
  it('without machine or metering device', () => {
    const { verdict } = charge({ suctionPressure: '35 psig', suctionTemperature: '52 °F' })
    expect(verdict.outcome).toBe('not-judged')
    expect(verdict.meaning).toContain('road-vehicle, bus, off-road, stationary')
  })

  it('on readings that contradict each other', () => {
    const { verdict } = charge(liquid(-20))
    expect(verdict.outcome).toBe('no-valid-test')
    expect(verdict.meaning).toContain('hotter than the bubble point')
  })

  it('on a supercritical high side', () => {
    const { verdict, result } = charge({
      refrigerant: 'CO2',
      machine: 'off-road',
      meteringDevice: 'electronic-valve',
      suctionPressure: '500 psig',
      suctionTemperature: '45 °F',
      liquidPressure: '1400 psig',
      liquidTemperature: '100 °F',
    })
    expect(verdict.outcome).toBe('no-valid-test')
    expect(verdict.meaning).toContain('critical pressure')
    // The low side stands on its own. R-744 at 490.8 psig is 32 °F.
    expect(result.superheat?.value).toBeGreaterThan(8)
    expect(result.superheat?.value).toBeLessThan(14)
    expect(result.subcooling).toBeUndefined()
  })
})

describe('subcooling in the light of the superheat', () => {
  const valve = (suctionTemperature: string, liquidTemperature: string, more = {}) =>
    readings.run({
      refrigerant: 'R-134a',
      machine: 'off-road',
      meteringDevice: 'expansion-valve',
      // R-134a boils at 40 °F under 35.0 psig and condenses at 130.4 °F under 200 psig.
      suctionPressure: '35 ±1 psig',
      liquidPressure: '200 ±4 psig',
      ambient: '90 °F',
      suctionTemperature,
      liquidTemperature,
      ...more,
    }).result.verdicts[0]

  it('both high is a restriction: nothing is taken out', () => {
    const verdict = valve('85 ±2 °F', '105 ±2 °F')
    expect(verdict?.outcome).toBe('above')
    expect(verdict?.meaning).toContain('restriction in the liquid line')
    expect(verdict?.meaning).toContain('not an overcharge')
    expect(verdict?.meaning).not.toContain('weigh in')
  })

  it('high alone may be an overcharge, air or a restriction', () => {
    const verdict = valve('52 ±2 °F', '105 ±2 °F')
    expect(verdict?.outcome).toBe('above')
    expect(verdict?.meaning).toMatch(/overcharge, air in the system.*restriction/u)
  })

  it('both low is a valve that overfeeds: nothing is added', () => {
    const verdict = valve('41 ±1 °F', '127 ±1 °F')
    expect(verdict?.outcome).toBe('below')
    expect(verdict?.meaning).toContain('Add no refrigerant')
  })

  it('is no measure of the charge where the liquid is colder than the air', () => {
    const verdict = valve('52 ±2 °F', '80 ±2 °F', { ambient: '95 °F' })
    expect(verdict?.outcome).toBe('no-valid-test')
    expect(verdict?.meaning).toContain('colder than the air')
  })
})

describe('fields that count for nothing', () => {
  const unused = (input: Record<string, unknown>) =>
    readings
      .run({ refrigerant: 'R-134a', ...input })
      .warnings.filter(({ code }) => code === 'reading-not-used')
      .map(({ message }) => message.split(' ')[0])

  it('are named', () => {
    expect(
      unused({
        liquidPressure: '180 psig',
        lowGauge: 'within-3.5-psi',
        highGaugeSpan: '500 psi',
      }),
    ).toEqual(['lowGauge', 'highGaugeSpan'])
    expect(
      unused({
        machine: 'off-road',
        meteringDevice: 'orifice-tube',
        suctionPressure: '30 ±1 psig',
        suctionTemperature: '45 ±1 °F',
        superheatTarget: '8 °F',
      }),
    ).toEqual(['superheatTarget'])
    expect(
      unused({
        machine: 'off-road',
        meteringDevice: 'expansion-valve',
        liquidPressure: '180 psig',
        liquidTemperature: '110 °F',
        subcoolingTarget: '10 °F',
        subcoolingLow: '8 °F',
        subcoolingHigh: '12 °F',
      }),
    ).toEqual(['subcoolingTarget'])
  })
})
