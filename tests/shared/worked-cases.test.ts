import { describe, expect, it } from 'vitest'
import eu from '../../data/rules/eu.json' with { type: 'json' }
import us from '../../data/rules/us-federal.json' with { type: 'json' }
import vacuum from '../../data/service/vacuum-limits.json' with { type: 'json' }
import { operation } from '../../shared/operations.ts'
import { refusalOf } from '../support/refusal.ts'

// Visits worked by hand, each where a wrong answer would send somebody the wrong way.

type Input = Readonly<Record<string, unknown>>
const ask = (step: string, input: Input) => operation(step).run({ units: 'us', ...input })
// biome-ignore lint/suspicious/noExplicitAny: results of many steps
const result = (step: string, input: Input): any => ask(step, input).result
const ids = ({ cautions }: { cautions: readonly { id: string }[] }) => cautions.map(({ id }) => id)

describe('a vacuum that stands', () => {
  const minutes = [0, 5, 10, 20, 30, 45, 60, 90]
  const micron = [500, 19_000, 29_000, 37_000, 39_500, 40_400, 40_500, 40_500]

  it('at 5 % of an atmosphere is neither air nor water', () => {
    const rise = micron.map((read, i) => ({
      time: `${minutes[i]} min`,
      pressure: `${read} micron`,
    }))
    const input = { temperature: '77 °F', volume: '5 L', refrigerant: 'R-134a', rise }
    // water boils at 23,800 micron there
    expect(result('evacuation', input).rise.verdict).toBe('levels-off-above-water')
  })

  it('is read against the air of a place that is itself known only so far', () => {
    // 24.5 inHg vac is 82,967 Pa; the air at 4700, 5000 and 5300 ft is 85,270, 84,307 and 83,352 Pa
    const read = (altitude: string) =>
      result('evacuation', {
        temperature: '50 ±0.1 °F',
        vacuum: '24.5 ±0.01 inHg vac',
        altitude,
      }).water.boils
    expect(read('5000 ±300 ft')).toBe('cannot-tell')
  })

  it('is written with three figures, the limit on the safe side', () => {
    // water at 77 °F: 3.17 kPa, 0.460 psi
    const { vapourPressure } = result('evacuation', { temperature: '77 °F' }).water
    expect(vapourPressure.value).toBeCloseTo(0.46, 3)
  })

  it('for 10 to 15 min is how long one maker pumps, not how long it must hold', () => {
    const row = vacuum.rows.find(({ source }) => source === 'articulated-truck-vacuum')
    expect(JSON.stringify(row)).toContain('10 mbar abs')
    expect(row).not.toHaveProperty('within')
  })
})

describe('how well a place is known', () => {
  it('is in a saturation, an air check and a contamination', () => {
    // 500 ft there are 0.22 psi, the weather 3 kPa or 0.44 psi: 0.49 psi together
    const place = { refrigerant: 'R-134a', altitude: '5000 ±500 ft' }
    const one = result('saturation', { ...place, pressure: '32 ±0 psig' })
    expect(one.bubble.absolutePressure.plusMinus).toBeCloseTo(0.49, 1)
    const at = { ...place, pressure: '80 ±0 psig', temperature: '75 ±0 °F' }
    expect(result('air-check', at).off.plusMinus).toBeGreaterThan(0.48)
    expect(result('contamination', at).off.plusMinus).toBeGreaterThan(0.48)
  })

  it('moves no printed gauge: those are of sea level', () => {
    const high = {
      refrigerant: 'R-134a',
      machine: 'off-road',
      ambient: '85 °F',
      altitude: '7000 ft',
    }
    // 30 psig in air of 11.3 psi is what a gauge at sea level shows as 26.6 psig
    const { headline } = ask('cooling-check', {
      ...high,
      dischargePressure: '200 psig',
      suctionPressure: '30 psig',
    })
    expect(headline).not.toMatch(/above every table/u)
  })
})

describe('what is in a cylinder', () => {
  it('reads the same at two shares where two refrigerants have a top between them', () => {
    const { shares } = result('contamination', {
      refrigerant: 'R-134a',
      pressure: '100 psig',
      temperature: '80 °F',
      suspects: ['R-12'],
    })
    const found = shares.map(({ share }: { share: { value: number } }) => share.value)
    expect(found[0]).toBeCloseTo(18, -1)
    expect(found[1]).toBeCloseTo(86, -1)
  })

  it('is not judged finer than its mixture is known', () => {
    const at = { refrigerant: 'R-409A', pressure: '100 psig', temperature: '77 °F' }
    expect(result('air-check', at).verdict).toBe('cannot-tell')
  })

  it('is split into liquid and vapour where its mass and volume are given', () => {
    // R-407C, 8 lb in 21.6 L at 77 °F: 151.6 psig by an exact flash
    const at = { refrigerant: 'R-407C', pressure: '157 psig', temperature: '77 °F' }
    const full = result('air-check', { ...at, volume: '21.6 L', contents: '8 lb' })
    expect(full.verdict).toBe('air-shown')
    expect(full.expected.value).toBeCloseTo(151.6, 1)
    expect(full.off.value).toBeCloseTo(5.4, 1)
  })

  it('is more than it may hold at 131 °F: 5/4 of its service pressure', () => {
    const full = {
      ...operation('recovery').example,
      refrigerant: 'R-410A',
      cylinderHolds: 'R-410A',
    }
    const { message } = refusalOf(() => ask('recovery', { ...full, servicePressure: '350 psi' }))
    expect(message).toMatch(/484\.\d psig.*437\.5 psi/u)
    expect(ask('recovery', { ...full, servicePressure: '400 psi' }).level).not.toBe('stop')
  })
})

describe('what can hurt', () => {
  it('stops the machine beyond where makers’ switches cut out', () => {
    const hot = { refrigerant: 'R-134a', machine: 'off-road', ambient: '95 °F' }
    for (const answer of [
      ask('cooling-check', { ...hot, dischargePressure: '520 psig' }),
      ask('readings', { ...hot, suctionPressure: '40 psig', liquidPressure: '560 psig' }),
    ]) {
      expect(answer.level).toBe('stop')
      expect(answer.headline).toMatch(/^STOP the machine/u)
      expect(ids(answer)).toContain('stop-the-machine')
    }
  })

  it('lets no liquid R-744 into a vacuum', () => {
    const liquid = { refrigerant: 'R-744', engine: 'off', side: 'high', phase: 'liquid' }
    expect(refusalOf(() => ask('charging', liquid)).message).toMatch(/dry ice/u)
  })

  it('puts on no pressure without the rating of the weakest part', () => {
    const planned = { refrigerant: 'R-134a', testPressure: '1000 psig' }
    const { code, path } = refusalOf(() => ask('leak-test', planned))
    expect([code, ...path]).toEqual(['refused', 'lowSideRating'])
    const margin = ask('leak-test', {
      ...planned,
      testPressure: '200 psig',
      lowSideRating: '200 psig',
    })
    expect(margin.figures?.find(({ id }) => id === 'margin')?.text).toBe('0 psi')
  })

  it('belongs to machine and job before anything is read', () => {
    const cab = { refrigerant: 'R-134a', law: 'us', machine: 'off-road', action: 'open' }
    expect(ids(ask('rules', { ...cab, compressorDrive: 'electric' }))).toContain('high-voltage')
    expect(ids(ask('rules', { ...cab, compressorDrive: 'open' }))).not.toContain('high-voltage')
  })
})

describe('what the law says', () => {
  const on = (law: string, input: Input) => result('rules', { law, action: 'charge', ...input })
  const of = ({ statements }: { statements: readonly { id: string }[] }) =>
    statements.map(({ id }) => id)

  it('in the EU: attestation for hydrocarbons and R-744 too; off-road by what it works at', () => {
    for (const refrigerant of ['R-290', 'R-744']) {
      expect(on('eu', { refrigerant, machine: 'road-vehicle' }).certificate.needed).toBe('required')
    }
    const crane = {
      refrigerant: 'R-134a',
      machine: 'off-road',
      certificates: ['eu-training-attestation'],
    }
    expect(on('eu', { ...crane, sector: 'construction' }).certificate.needed).toBe('required')
    expect(on('eu', { ...crane, sector: 'other' }).certificate).toMatchObject({ needed: 'look-up' })
    expect(eu.statements['scope-alternatives'].text).toMatch(/natural refrigerants included/u)
  })

  it('in Australia: pure HFO is to be looked up, PFC needs the licence', () => {
    expect(
      on('australia', { refrigerant: 'R-1234yf', machine: 'road-vehicle' }).certificate.needed,
    ).toBe('look-up')
    // R-413A holds R-218
    expect(
      on('australia', { refrigerant: 'R-413A', machine: 'road-vehicle' }).certificate.needed,
    ).toBe('required')
  })

  it('in the US: shop records for paid vehicle service alone, by their own sections', () => {
    const cab = {
      refrigerant: 'R-134a',
      machine: 'off-road',
      compressorDrive: 'open',
      labelCharge: '3 lb',
    }
    for (const forPay of [true, false]) {
      expect(of(on('us', { ...cab, forPay }).records)).not.toContain('records-shop')
    }
    expect(of(on('us', { ...cab, machine: 'road-vehicle', forPay: true }).records)).toContain(
      'records-shop',
    )
    expect(us.statements['records-proof'].section).toMatch(/82\.42\(b\)\(2\)/u)
    expect(us.statements['records-sent-to'].section).toMatch(/82\.42\(b\)\(1\)/u)
  })

  it('in the US: both leak rules, a final rule for R-1234yf, the 2015 number for R-744', () => {
    expect(us.statements['cab-below-limits'].text).toMatch(/50 lb.*15 lb/su)
    expect(us.statements['equipment-r1234yf'].source).toBe('fr-86-15587')
    expect(us.statements['venting-co2'].section).toBe('40 CFR 82.154(a)(1)(i)(D)')
    for (const id of ['off-road-608', 'vehicle-drive', 'not-mvac-608'] as const) {
      expect(us.statements[id].mark).toBe('inferred')
    }
  })

  it('in words of our own where the statute is short', () => {
    for (const id of ['venting-prohibited', 'small-appliance'] as const) {
      expect(us.statements[id].text).not.toMatch(
        /knowingly vent|otherwise knowingly|fully manufactured, charged, and hermetically sealed/iu,
      )
    }
  })

  it('in the UK and Canada: by the date of what was read', () => {
    const uk = on('uk', { refrigerant: 'R-134a', machine: 'road-vehicle', action: 'buy' })
    expect(JSON.stringify(uk)).toMatch(/30 September 2015/u)
    const ontario = on('canada', { refrigerant: 'R-134a', machine: 'road-vehicle' })
    const leak = ontario.leakRepair.statements.find(
      ({ id }: { id: string }) => id === 'ontario-leak',
    )
    expect(leak).toMatchObject({
      section: 'O. Reg. 463/10',
      url: expect.stringMatching(/^https:/u),
    })
    expect(leak.text).not.toMatch(/5 years/u)
  })
})

describe('recovery', () => {
  it('may have the engine run up to 15 min first', () => {
    const { next = [] } = ask('recovery', operation('recovery').example)
    expect(next.join()).toMatch(/[Ee]ngine warm or running first/u)
  })
})
