import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mass } from '../../../shared/quantity/index.ts'
import { refrigerant, saturatedDensity } from '../../../shared/refrigerant/index.ts'
import { fillLimits, liquidFullTemperature } from '../../../shared/service/recovery/cylinder.ts'
import { massAtRest } from '../../../shared/service/recovery/expected-mass.ts'
import { requalification } from '../../../shared/service/recovery/requalification.ts'
import { recovery } from '../../../shared/service/recovery.ts'
import { refusalOf } from '../../support/refusal.ts'

const cylinder = {
  refrigerant: 'R-134a',
  cylinder: 'refillable',
  waterCapacity: '47.7 lb',
  tare: '28.0 lb',
  grossNow: '41.5 lb',
  cylinderHolds: 'R-134a',
  requalified: '2023-04',
  date: '2026-11-25',
  servicePressure: '400 psi',
}

const refusal = (input: Record<string, unknown>) => refusalOf(() => recovery.run(input))

describe('what a cylinder takes', () => {
  it('tells highest contents, room and the scale reading to stop at', () => {
    const { result } = recovery.run({ ...cylinder, units: 'us' })
    expect(result.cylinder?.verdict).toBe('may-be-filled')
    expect(result.cylinder?.maximumContents.value).toBeCloseTo(46.09, 1)
    expect(result.cylinder?.maximumGross?.value).toBeCloseTo(74.09, 1)
    expect(result.cylinder?.stopAt?.value).toBeCloseTo(74.09, 1)
    expect(result.cylinder?.contentsNow?.value).toBeCloseTo(13.5, 6)
    expect(result.cylinder?.room?.value).toBeCloseTo(46.09 - 13.5, 1)
  })

  it('stops earlier by the uncertainty of the scale', () => {
    const { result } = recovery.run({ ...cylinder, grossNow: '41.5 ±0.5 lb', units: 'us' })
    expect(result.cylinder?.stopAt?.value).toBeCloseTo(73.59, 1)
    expect(result.cylinder?.room?.value).toBeCloseTo(32.09, 1)
  })

  it('says cannot-tell when nothing says what the cylinder holds or when it was tested', () => {
    const { result } = recovery.run({
      refrigerant: 'R-134a',
      cylinder: 'refillable',
      waterCapacity: '47.7 lb',
    })
    expect(result.cylinder?.verdict).toBe('cannot-tell')
    expect(result.cylinder?.reasons.length).toBeGreaterThanOrEqual(3)
    expect(result.cylinder?.stopAt).toBeUndefined()
  })

  it('says do-not-fill when the requalification is overdue', () => {
    const { result, warnings } = recovery.run({ ...cylinder, requalified: '2019-10' })
    expect(result.cylinder?.verdict).toBe('do-not-fill')
    expect(result.cylinder?.requalification).toEqual({ status: 'overdue', due: '2024-10' })
    expect(warnings.map((entry) => entry.code)).toContain('requalification-overdue')
    expect(result.practice.find((entry) => entry.id === 'overdue')).toMatchObject({
      mark: 'verified',
      source: 'cfr-173-301-a6',
    })
  })

  it('holds R-12 to 60 % of the gross weight rating, and asks for the rating when it is missing', () => {
    const input = { ...cylinder, refrigerant: 'R-12', cylinderHolds: 'R-12', grossNow: '30 lb' }
    const { result } = recovery.run({ ...input, grossRating: '50 lb', units: 'us' })
    expect(result.cylinder?.limits[0]?.rule).toBe('gross-rating')
    expect(result.cylinder?.maximumContents.value).toBeCloseTo(22, 6)
    const sixty = result.cylinder?.limits.find((entry) => entry.rule === 'sixty-percent-of-gross')
    expect(sixty?.contents.value).toBeCloseTo(30, 6)
    expect(recovery.run(input).warnings.map((entry) => entry.code)).toContain(
      'gross-rating-missing',
    )
  })

  it('stops at a cylinder that may be full within the weights’ uncertainty', () => {
    const { result } = recovery.run({ ...cylinder, grossNow: '74.0 ±0.3 lb' })
    expect(result.cylinder?.verdict).toBe('do-not-fill')
    expect(result.cylinder?.room?.value).toBe(0)
  })

  it('says whether what should come out fits', () => {
    expect(recovery.run({ ...cylinder, labelCharge: '2 lb 6 oz' }).result.fits).toBe('yes')
    expect(recovery.run({ ...cylinder, labelCharge: '40 lb' }).result.fits).toBe('no')
    expect(recovery.run({ ...cylinder, labelCharge: '33 lb' }).result.fits).toBe('cannot-tell')
  })

  it('says that it does not fit only where it surely does not', () => {
    const most = (grossNow: string) =>
      recovery.run({ ...cylinder, grossNow, labelCharge: '40 lb' }).result.fits
    expect(most('41.5 lb')).toBe('no')
    expect(most('41.5 ±9 lb')).toBe('cannot-tell')
  })

  it('warns that a flammable refrigerant needs a cylinder made for it', () => {
    const answer = recovery.run({
      ...cylinder,
      refrigerant: 'R-1234yf',
      cylinderHolds: 'empty',
      grossNow: '28 lb',
    })
    expect(answer.cautions.map((entry) => entry.id)).toContain('flammable')
    expect(answer.result.practice.map((entry) => entry.id)).toContain('flammable-cylinder')
  })
})

describe('refusals', () => {
  it.each([
    ['a disposable cylinder', { cylinder: 'disposable' }, 'refused', 'cylinder'],
    ['another refrigerant in it', { cylinderHolds: 'R-12' }, 'refused', 'cylinderHolds'],
    ['unknown contents', { cylinderHolds: 'unknown' }, 'refused', 'cylinderHolds'],
    ['an overfull cylinder', { grossNow: '80 lb' }, 'refused', 'grossNow'],
    ['a gross below the tare', { grossNow: '20 lb' }, 'bad-input', 'grossNow'],
    ['a gross without a tare', { tare: undefined }, 'missing-input', 'tare'],
    ['a kind of cylinder that was not said', { cylinder: undefined }, 'missing-input', 'cylinder'],
    [
      'a water capacity that was not said',
      { waterCapacity: undefined },
      'missing-input',
      'waterCapacity',
    ],
    ['a water capacity of nothing', { waterCapacity: '0 lb' }, 'bad-input', 'waterCapacity'],
    ['a rating below the tare', { grossRating: '20 lb' }, 'bad-input', 'grossRating'],
    ['a stamp without a day', { date: undefined }, 'missing-input', 'date'],
    ['a stamp in the future', { requalified: '2027-01' }, 'bad-input', 'requalified'],
    ['a stamp that is no date', { requalified: '04/23' }, 'bad-input', 'requalified'],
    ['a refrigerant nobody knows', { refrigerant: 'R-999' }, 'unknown-refrigerant', undefined],
    [
      'R-744 in a recovery cylinder',
      { refrigerant: 'R-744', cylinderHolds: 'empty' },
      'refused',
      'waterCapacity',
    ],
    ['a label charge of nothing', { labelCharge: '0 kg' }, 'bad-input', 'labelCharge'],
    ['a pressure alone', { systemPressure: '60 psig' }, 'missing-input', 'systemTemperature'],
  ])('%s', (_, change, code, path) => {
    const error = refusal({ ...cylinder, ...change })
    expect(error.code).toBe(code)
    if (path !== undefined) expect(error.path[0]).toBe(path)
    expect(error.hint).not.toBe('')
  })
})

describe('what should come out', () => {
  it('takes the label, of which a J2788 machine takes at least 95 %', () => {
    const { result } = recovery.run({ refrigerant: 'R-134a', labelCharge: '1000 g', units: 'si' })
    expect(result.expected).toMatchObject({
      basis: 'label-charge',
      least: { value: 950, unit: 'g' },
      most: { value: 1000, unit: 'g' },
    })
  })

  it('weighs vapour by density when the pressure is below saturation', () => {
    const { result } = recovery.run({
      refrigerant: 'R-134a',
      systemPressure: '20 psig',
      systemTemperature: '77 °F',
      volume: '5 L',
      units: 'si',
    })
    expect(result.expected?.basis).toBe('vapour-only')
    // R-134a vapour at 77 °F and 20 psig: 10.361 kg/m³ (CoolProp 8.0.0), so 51.8 g in 5 L.
    const { least, most } = result.expected ?? {}
    expect(((least?.value ?? 0) + (most?.value ?? 0)) / 2 / 51.8).toBeCloseTo(1, 2)
    expect(most?.value).toBeLessThan(1.1 * 51.8)
  })

  it('does not tell the mass from a pressure at saturation', () => {
    const { result, warnings } = recovery.run({
      refrigerant: 'R-134a',
      systemPressure: '81.8 psig',
      systemTemperature: '77 °F',
      volume: '5 L',
      units: 'si',
    })
    expect(result.expected?.basis).toBe('liquid-present')
    expect((result.expected?.most.value ?? 0) / 6.03).toBeCloseTo(1, 1)
    expect(warnings.map((entry) => entry.code)).toContain('pressure-does-not-tell-mass')
  })

  it('warns when the resting pressure shows less than the label', () => {
    const { result, warnings } = recovery.run({
      refrigerant: 'R-134a',
      labelCharge: '1 kg',
      systemPressure: '20 psig',
      systemTemperature: '77 °F',
      volume: '5 L',
    })
    expect(result.expected?.basis).toBe('vapour-only')
    expect(warnings.map((entry) => entry.code)).toContain('less-than-label-in-system')
  })

  it.each([
    ['980 g ±10 g', 'as-labelled'],
    ['700 g', 'less-than-label'],
    ['1100 g', 'more-than-label'],
    ['940 g', 'cannot-tell'],
    ['1010 g', 'cannot-tell'],
  ])('compares %s with a label of 1000 g: %s', (recovered, verdict) => {
    const { result } = recovery.run({ refrigerant: 'R-134a', labelCharge: '1000 g', recovered })
    expect(result.expected?.recovered?.verdict).toBe(verdict)
  })
})

describe('readings that do not fit', () => {
  const resting = {
    refrigerant: 'R-134a',
    systemPressure: '100 psig',
    systemTemperature: '75 °F',
    volume: '3.5 L',
  }
  const codes = (input: Record<string, unknown>) =>
    recovery.run(input).warnings.map(({ code }) => code)

  it('does not call a pressure far above saturation that of saturation', () => {
    expect(codes(resting)).toContain('above-saturation')
    expect(codes(resting)).not.toContain('pressure-does-not-tell-mass')
    expect(codes({ ...resting, systemPressure: '79 psig' })).toEqual([
      'pressure-does-not-tell-mass',
    ])
    // three psi over: the same in every step, not from a tenth above
    expect(codes({ ...resting, systemPressure: '83 psig' })).toContain('above-saturation')
  })

  it('refuses a system without volume', () => {
    expect(refusal({ ...resting, volume: '0 L' }).path).toEqual(['volume'])
  })

  it('refuses a cylinder that is called empty and weighs more than its tare', () => {
    const error = refusal({ ...cylinder, cylinderHolds: 'empty' })
    expect(error).toMatchObject({ code: 'bad-input', path: ['cylinderHolds'] })
    expect(error.message).toContain('13.5 lb')
    const nearly = recovery.run({ ...cylinder, cylinderHolds: 'empty', grossNow: '28.2 lb' })
    expect(nearly.result.cylinder?.verdict).toBe('may-be-filled')
  })

  it('refuses to mix before anything else of the cylinder was read', () => {
    const error = refusal({ refrigerant: 'R-134a', cylinderHolds: 'R-12' })
    expect(error).toMatchObject({ code: 'refused', path: ['cylinderHolds'] })
    expect(refusal({ refrigerant: 'R-134a', requalified: '2023-04' }).path).toEqual([
      'waterCapacity',
    ])
  })

  it('owns up that the 95 % are those of R-134a in vehicles', () => {
    const assumed = (name: string) =>
      recovery.run({ refrigerant: name, labelCharge: '4 lb' }).assumptions.map(({ field }) => field)
    expect(assumed('R-22')).toContain('labelCharge')
    expect(assumed('R-134a')).not.toContain('labelCharge')
  })
})

describe('how far to evacuate, US federal', () => {
  const level = (input: Record<string, unknown>) =>
    recovery.run({ refrigerant: 'R-134a', units: 'us', ...input }).result.evacuation

  it('gives Table 1 for stationary machines, at any altitude the same absolute pressure', () => {
    const sea = level({ machine: 'stationary' })
    expect(sea).toMatchObject({ regime: 'table-1', pressureClass: 'medium-pressure' })
    expect(sea?.level?.value).toBeCloseTo(19.9, 2)
    expect(sea?.gaugeReading).toMatchObject({ unit: 'inHg vac', value: 10 })
    const high = level({ machine: 'stationary', altitude: '5000 ft' })
    expect(high?.level?.value).toBeCloseTo(19.9, 2)
    expect(high?.gaugeReading?.value).toBeCloseTo(10 - 5, 1)
  })

  it('never lets a system be opened above the pressure of the air, however thin that is', () => {
    const split = { machine: 'stationary', refrigerant: 'R-407C', labelCharge: '6 lb' }
    expect(level(split)?.gaugeReading).toMatchObject({ value: 0, unit: 'psig' })
    expect(level({ ...split, altitude: '7000 ft' })?.gaugeReading).toMatchObject({
      value: 0,
      unit: 'psig',
    })
  })

  it('says by which edition the 20 lb of a cab system hold, and gives the stricter level', () => {
    const { result, warnings } = recovery.run({
      refrigerant: 'R-134a',
      machine: 'off-road',
      compressorDrive: 'open',
      labelCharge: '25 lb',
    })
    // 40 CFR 82.156, Table 1: a medium-pressure appliance below 200 lb, 10 inHg of vacuum.
    expect(result.evacuation).toMatchObject({
      regime: 'table-1',
      gaugeReading: { value: 10, unit: 'inHg vac' },
    })
    expect(result.evacuation?.rules.map(({ id }) => id)).toContain('off-road-20-lb')
    expect(warnings.map(({ code }) => code)).toContain('regime-of-2015')
  })

  it('asks no level for carbon dioxide, which may be let out, and does not call that venting', () => {
    const { result, cautions } = recovery.run({ refrigerant: 'R-744', machine: 'road-vehicle' })
    expect(result.evacuation?.rules.map(({ id }) => id)).toEqual(['carbon-dioxide'])
    expect(cautions.map(({ id }) => id)).not.toContain('no-venting')
    expect(cautions.map(({ id }) => id)).toContain('asphyxiation')
  })

  it.each([
    ['R-744', false],
    ['R-134a', false],
    ['R-1234yf', true],
    ['R-290', true],
  ])('asks a cylinder for what burns of %s: %s', (refrigerant, asks) => {
    const ids = recovery.run({ refrigerant }).result.practice.map(({ id }) => id as string)
    expect(ids.includes('flammable-cylinder')).toBe(asks)
    expect(ids.includes('guideline-k-nonflammable')).toBe(asks)
  })

  it.each([['a drive without a machine', { compressorDrive: 'open' }, 'missing-input']])(
    'refuses %s',
    (_, input, code) => {
      const error = refusal({ refrigerant: 'R-134a', ...input })
      expect(error).toMatchObject({ code, path: ['machine'] })
    },
  )

  it.each([
    [{ machine: 'road-vehicle' }, 'vehicle'],
    [{ machine: 'bus' }, 'vehicle'],
    [{ machine: 'bus', refrigerant: 'R-22' }, 'table-1'],
    [{ machine: 'off-road', compressorDrive: 'open' }, 'vehicle-like'],
    [{ machine: 'off-road', compressorDrive: 'open', labelCharge: '25 lb' }, 'table-1'],
    [{ machine: 'off-road', compressorDrive: 'open', refrigerant: 'R-22' }, 'table-1'],
    [{ machine: 'off-road', compressorDrive: 'electric' }, 'table-1'],
    [
      {
        machine: 'off-road',
        compressorDrive: 'electric',
        factorySealed: true,
        labelCharge: '4 lb',
      },
      'small-appliance',
    ],
    [{ machine: 'stationary', factorySealed: true, labelCharge: '5 lb' }, 'small-appliance'],
    [{ machine: 'stationary', factorySealed: true, labelCharge: '5.1 lb' }, 'table-1'],
    [{ machine: 'stationary', factorySealed: true }, 'small-appliance'],
    [{ machine: 'stationary', labelCharge: '4 lb' }, 'table-1'],
    [{ machine: 'refrigerated-cargo' }, 'table-1'],
  ])('%j falls under %s', (input, regime) => {
    expect(level(input)?.regime).toBe(regime)
  })

  it('tells all but the level for an off-road machine without its drive, and what the level hangs on', () => {
    const answer = recovery.run({
      refrigerant: 'R-134a',
      machine: 'off-road',
      labelCharge: '1000 g',
      units: 'si',
    })
    expect(answer.result.evacuation).toBeUndefined()
    expect(answer.result.expected?.most).toMatchObject({ value: 1000, unit: 'g' })
    expect(answer.warnings.find(({ code }) => code === 'drive-not-given')?.message).toContain(
      'compressorDrive',
    )
    expect(level({ machine: 'off-road', labelCharge: '25 lb' })?.regime).toBe('table-1')
  })

  it('rests the rules of vehicles on text that was read, and names its edition', () => {
    const answer = recovery.run({ refrigerant: 'R-134a', machine: 'road-vehicle' })
    const rules = answer.result.evacuation?.rules ?? []
    expect(rules.map(({ id }) => id)).toEqual([
      'vehicle-equipment',
      'vacuum-five-minutes',
      'j2788-share',
      'disposal-102-mm',
    ])
    expect(rules.every(({ mark }) => mark === 'verified')).toBe(true)
    const disposal = answer.sources.find(({ id }) => id === 'mvac-102-mm')
    expect(disposal?.title).toContain('2015 edition')
  })
})

describe('laws', () => {
  const names = fc.constantFrom(
    'R-12',
    'R-22',
    'R-134a',
    'R-1234yf',
    'R-152a',
    'R-32',
    'R-290',
    'R-600a',
    'R-410A',
    'R-404A',
    'R-407C',
    'R-454B',
  )
  const capacity = fc.double({ min: 1, max: 500, noNaN: true })

  it('the fill never goes above the limit: at 131 °F there is vapour space left', () => {
    fc.assert(
      fc.property(names, capacity, (name, waterCapacityKg) => {
        const r = refrigerant(name)
        const highest = fillLimits(r, { waterCapacityKg })[0]?.massKg ?? Number.NaN
        const volume = waterCapacityKg / 999.016
        expect(highest / volume).toBeLessThanOrEqual(saturatedDensity(r, 328.15, 'liquid'))
      }),
    )
  })

  it('at the liquid-full temperature the liquid has exactly the volume of the cylinder', () => {
    fc.assert(
      fc.property(
        names,
        capacity,
        fc.double({ min: 0.6, max: 1, noNaN: true }),
        (name, wc, share) => {
          const r = refrigerant(name)
          const massKg = share * saturatedDensity(r, 298.15, 'liquid') * (wc / 999.016)
          const kelvin = liquidFullTemperature(r, massKg, wc)
          if (kelvin === undefined) return
          expect(massKg / (wc / 999.016) / saturatedDensity(r, kelvin, 'liquid')).toBeCloseTo(1, 9)
        },
      ),
    )
  })

  it('mass balances: contents + room + uncertainty = highest contents', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (tareKg, heldKg, width) => {
          const { result } = recovery.compute({
            refrigerant: 'R-134a',
            cylinder: 'refillable',
            waterCapacity: mass(21.6),
            tare: mass(tareKg),
            grossNow: mass(tareKg + heldKg, width),
            cylinderHolds: 'R-134a',
            requalificationYears: 5,
            recoveredBy: 'scale',
          })
          const found = result.cylinder
          expect((found?.contentsNow?.si ?? 0) + (found?.room?.si ?? 0) + width).toBeCloseTo(
            found?.maximumContents.si ?? 0,
            9,
          )
          expect(found?.stopAt?.si).toBeCloseTo(
            tareKg + (found?.maximumContents.si ?? 0) - width,
            9,
          )
        },
      ),
    )
  })

  it('the vapour estimate holds the mass that is there', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 280, max: 320, noNaN: true }),
        fc.double({ min: 110_000, max: 330_000, noNaN: true }),
        (temperatureK, pressurePa) => {
          const found = massAtRest(
            refrigerant('R-134a'),
            { si: temperatureK, plusMinus: 1 },
            { si: pressurePa, plusMinus: 5_000 },
            { si: 0.01 },
          )
          expect(found.leastKg).toBeLessThan(found.mostKg)
          expect(found.leastKg).toBeGreaterThan(0)
          // Ideal gas is an upper bound of the volume per mass below saturation, by a few percent.
          const ideal = (pressurePa * 0.102032 * 0.01) / (8.314462 * temperatureK)
          expect(found.mostKg).toBeGreaterThan(ideal)
        },
      ),
    )
  })

  it('a cylinder goes overdue once, and stays so', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2000, max: 2030 }),
        fc.integer({ min: 1, max: 12 }),
        (year, month) => {
          const stamped = `${year}-${String(month).padStart(2, '0')}`
          const at = (later: number) => {
            const total = 12 * year + month - 1 + later
            const text = `${Math.floor(total / 12)}-${String((total % 12) + 1).padStart(2, '0')}`
            return requalification(stamped, text, 5).status
          }
          expect([at(0), at(59), at(60), at(61), at(200)]).toEqual([
            'in-date',
            'in-date',
            'due-this-month',
            'overdue',
            'overdue',
          ])
        },
      ),
    )
  })
})

it('names every period of requalification that there is', () => {
  const error = refusal({ ...cylinder, requalificationYears: 7 })
  expect(error.hint).toContain('5, 10, 12')
})
