import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import patternData from '../../../data/service/patterns.json' with { type: 'json' }
import texts from '../../../data/service/readings.json' with { type: 'json' }
import { LONGEST_HEADLINE, MOST_FIGURES, MOST_NEXT } from '../../../shared/answer/told.ts'
import { CalcError } from '../../../shared/errors.ts'
import { atRest } from '../../../shared/physics/at-rest.ts'
import { refrigerant } from '../../../shared/refrigerant/index.ts'
import { readings } from '../../../shared/service/readings.ts'

const run = (input: Record<string, unknown>) => {
  const answer = readings.run({ refrigerant: 'R-134a', units: 'us', ...input })
  const { headline = '', figures = [], next = [] } = answer
  return { ...answer, headline, figures, next }
}

const VALVE = { machine: 'off-road', meteringDevice: 'expansion-valve' }
const REST = { suctionPressure: '78 psig', liquidPressure: '79 psig' }

describe('a dangerous pressure', () => {
  it.each([
    ['520 psig', { liquidPressure: '520 psig', suctionPressure: '50 psig', ambient: '95 °F' }],
    ['560 psig', { liquidPressure: '560 psig', liquidTemperature: '120 °F', ...VALVE }],
    ['on the discharge line', { dischargePressure: '440 psig', suctionPressure: '50 psig' }],
    ['on swapped hoses', { suctionPressure: '440 psig', liquidPressure: '50 psig' }],
    ['absolute', { liquidPressure: '455 psia', suctionPressure: '50 psig' }],
    ['R-1234yf', { refrigerant: 'R-1234yf', liquidPressure: '440 psig' }],
    ['at rest', { suctionPressure: '450 psig', liquidPressure: '450 psig', ambient: '75 °F' }],
  ])('stops the machine before anything else: %s', (_, input) => {
    const { level, headline, figures, next, result, cautions, sources } = run(input)
    expect(level).toBe('stop')
    expect(headline).toMatch(/^STOP the machine/u)
    expect(headline).toContain('435 psig')
    expect(next[0]).toMatch(/^Stop the machine/u)
    expect(figures.map(({ id }) => id).slice(0, 2)).toEqual(['danger', 'cutOut'])
    expect(result.findings[0]).toMatchObject({ id: 'above-cut-out', level: 'stop' })
    expect(result.verdicts.map(({ outcome }) => outcome)).not.toContain('above')
    expect(cautions.map(({ id }) => id)).toContain('stop-the-machine')
    expect(sources.map(({ id }) => id)).toContain('pressure-switch-1994')
  })

  it('is one by the reading itself, whatever its ±', () => {
    for (const plusMinus of [0, 1, 40]) {
      expect(run({ liquidPressure: `436 ±${plusMinus} psig` }).level).toBe('stop')
      expect(run({ liquidPressure: `434 ±${plusMinus} psig` }).level).not.toBe('stop')
    }
  })

  it('is not told of a usual one, nor its caution given', () => {
    const { level, cautions } = run({ ...REST, liquidPressure: '365 psig' })
    expect(level).not.toBe('stop')
    expect(cautions.map(({ id }) => id)).not.toContain('stop-the-machine')
  })

  it('without a known cut-out is bounded by the critical pressure', () => {
    const { level, headline } = run({ refrigerant: 'R-404A', liquidPressure: '560 psig' })
    expect(level).toBe('stop')
    expect(headline).toMatch(/above the critical pressure/u)
    expect(run({ refrigerant: 'R-404A', liquidPressure: '500 psig' }).level).not.toBe('stop')
  })

  it('is none for R-744 above its critical pressure', () => {
    expect(run({ refrigerant: 'R-744', dischargePressure: '95 bar g' }).level).not.toBe('stop')
  })

  it('says on the screen where its limit is remembered or borrowed', () => {
    const basis = (name: string) =>
      run({ refrigerant: name, liquidPressure: '445 psig' }).figures.find(
        ({ id }) => id === 'cutOut',
      )?.basis
    expect(basis('R-22')).toBe('from memory')
    expect(basis('R-1234yf')).toBe('assumed')
    expect(basis('R-134a')).toBeUndefined()
  })
})

describe('figures of a running machine', () => {
  it('show at what temperature each side boils and condenses, as the result has it', () => {
    const { figures, result } = run({
      suctionPressure: '35 psig',
      liquidPressure: '185 psig',
      ...VALVE,
    })
    const shown = (id: string) => figures.find((figure) => figure.id === id)?.value
    expect(shown('evaporating')).toEqual(result.lowSide?.dewTemperature)
    expect(shown('condensing')).toEqual(result.highSide?.condensingTemperature)
    expect(shown('condensing')).toMatchObject({ unit: '°F' })
  })
})

describe('gauges that read alike', () => {
  it.each([
    ['110 psig', 'above', 'check'],
    ['78.5 psig', 'at', 'information'],
    ['40 psig', 'below', 'check'],
  ] as const)('%s at 75 °F is %s saturation', (pressure, state, level) => {
    const answer = run({ suctionPressure: pressure, liquidPressure: pressure, ambient: '75 °F' })
    expect(answer.result.rest?.state).toBe(state)
    expect(answer.level).toBe(level)
    expect(answer.headline).toContain(pressure)
    expect(answer.headline).toContain('75 °F')
  })

  it('are judged as the one judgement at rest judges them', () => {
    const pa = 6_894.757_293_168_361
    const { state, off } = atRest(
      refrigerant('R-134a'),
      { si: 110 * pa + 101_325, plusMinus: Math.hypot(pa, 3_000) },
      { si: (75 + 459.67) / 1.8, plusMinus: 1 / 1.8 },
    )
    const { result } = run({
      suctionPressure: '110 psig',
      liquidPressure: '110 psig',
      ambient: '75 °F',
      units: 'si',
      precise: true,
    })
    expect(result.rest?.state).toBe(state)
    expect(result.rest?.off?.value).toBeCloseTo((off?.si ?? 0) / 1000, 6)
    expect(result.rest?.off?.plusMinus).toBeCloseTo((off?.plusMinus ?? 0) / 1000, 6)
  })

  it('of a blend are held against both of its lines', () => {
    const at = (pressure: string) =>
      run({
        refrigerant: 'R-407C',
        suctionPressure: pressure,
        liquidPressure: pressure,
        ambient: '77 ±0.2 °F',
        barometer: '29.92 ±0.01 inHg',
      }).result.rest
    // R-407C at 77 °F: dew 132, bubble 157 psig.
    expect(at('140 ±0.5 psig')?.state).toBe('between')
    expect(at('120 ±0.5 psig')?.state).toBe('below')
    expect(at('170 ±0.5 psig')?.state).toBe('above')
    expect(at('157 ±0.5 psig')?.state).toBe('cannot-tell')
    const told = (pressure: string) => {
      const { figures, result } = run({
        refrigerant: 'R-407C',
        suctionPressure: pressure,
        liquidPressure: pressure,
        ambient: '77 ±0.2 °F',
      })
      return { shown: figures.find(({ id }) => id === 'saturation')?.value, rest: result.rest }
    }
    // What the pressure is held against is told: the dew line below it, the bubble line above.
    expect(told('120 psig').shown).toEqual(told('120 psig').rest?.dewPressure)
    expect(told('170 psig').shown).toEqual(told('170 psig').rest?.bubblePressure)
    const { bubblePressure, dewPressure } = at('140 ±0.5 psig') ?? {}
    expect(bubblePressure?.value ?? 0).toBeGreaterThan((dewPressure?.value ?? 0) + 15)
  })

  it('get no words of a running machine', () => {
    const { result, figures, steps } = run({
      ...VALVE,
      ...REST,
      suctionTemperature: '75 °F',
      liquidTemperature: '75 °F',
      dischargeTemperature: '75 °F',
      ambient: '75 °F',
    })
    const { superheat, subcooling, condensingOverAmbient, compressionRatio, dischargeSuperheat } =
      result
    expect([
      superheat,
      subcooling,
      condensingOverAmbient,
      compressionRatio,
      dischargeSuperheat,
    ]).toEqual(Array(5).fill(undefined))
    expect(result.highSide?.condensingTemperature).toBeUndefined()
    expect(steps.map(({ what }) => what).join()).not.toMatch(
      /over ambient|Superheat|Compression ratio/u,
    )
    expect(figures.map(({ id }) => id)).toEqual(['rest', 'air', 'saturation', 'off'])
  })

  it('without the air ask for it', () => {
    const { headline, result, next } = run(REST)
    expect(result.rest).toBeUndefined()
    expect(headline).toMatch(/Give the air temperature/u)
    expect(next.join()).toContain('ambient')
  })

  it('where there is no saturation at the air’s temperature say so', () => {
    const { warnings, result } = run({
      refrigerant: 'R-744',
      suctionPressure: '70 bar g',
      liquidPressure: '70 bar g',
      ambient: '40 °C',
    })
    expect(result.rest).toBeUndefined()
    expect(warnings.map(({ code }) => code)).toContain('rest-not-compared')
  })
})

describe('what a running machine is told first', () => {
  it.each<[what: string, input: Record<string, unknown>, level: string, said: RegExp]>([
    [
      'nothing against the charge',
      {
        ...VALVE,
        suctionPressure: '32 psig',
        suctionTemperature: '48 °F',
        liquidPressure: '210 psig',
        liquidTemperature: '122 °F',
      },
      'fine',
      /only weighing does/u,
    ],
    [
      'a low subcooling',
      {
        ...VALVE,
        suctionPressure: '32 psig',
        suctionTemperature: '48 °F',
        liquidPressure: '210 psig',
        liquidTemperature: '131 °F',
      },
      'check',
      /Subcooling .* is low.*recover and weigh in/u,
    ],
    [
      'a high subcooling',
      {
        ...VALVE,
        suctionPressure: '32 psig',
        suctionTemperature: '48 °F',
        liquidPressure: '210 psig',
        liquidTemperature: '114 °F',
      },
      'check',
      /Subcooling .* is high/u,
    ],
    [
      'a subcooling at the edge',
      {
        ...VALVE,
        suctionPressure: '32 psig',
        suctionTemperature: '48 °F',
        liquidPressure: '210 psig',
        liquidTemperature: '119 °F',
      },
      'check',
      /^Cannot tell the charge/u,
    ],
    [
      'a contradiction',
      { ...VALVE, suctionPressure: '32 psig', suctionTemperature: '25 °F' },
      'check',
      /These readings cannot be/u,
    ],
    [
      'a flooded outlet',
      {
        machine: 'bus',
        meteringDevice: 'orifice-tube',
        suctionPressure: '35 psig',
        suctionTemperature: '41 °F',
      },
      'fine',
      /flooded \(superheat 1 °F\)/u,
    ],
    [
      'a target on a split unit',
      {
        refrigerant: 'R-410A',
        machine: 'stationary',
        meteringDevice: 'expansion-valve',
        suctionPressure: '118 psig',
        suctionTemperature: '52 °F',
        liquidPressure: '360 psig',
        liquidTemperature: '98.5 °F',
        subcoolingTarget: '10 °F',
      },
      'fine',
      /fits its target/u,
    ],
    [
      'no machine named',
      { suctionPressure: '35 psig', suctionTemperature: '52 °F' },
      'information',
      /give machine/u,
    ],
    [
      'a discharge line too hot',
      {
        ...VALVE,
        suctionPressure: '35 psig',
        dischargeTemperature: '245 °F',
        liquidPressure: '200 psig',
      },
      'check',
      /^Check: discharge line so hot/u,
    ],
  ])('%s', (_, input, level, said) => {
    const answer = run(input)
    expect(answer.headline).toMatch(said)
    expect(answer.level).toBe(level)
  })

  it('judges a bus, a cold box and a car as it judges a loader, and a building otherwise', () => {
    const method = (machine: string) =>
      run({ ...VALVE, machine, liquidPressure: '171 psig', liquidTemperature: '110 °F' }).result
        .verdicts[0]?.method
    for (const machine of ['road-vehicle', 'bus', 'off-road', 'refrigerated-cargo']) {
      expect(method(machine)).toBe('vehicle-subcooling-band')
    }
    expect(method('stationary')).toBe('none')
  })

  it('takes the words of the trade', () => {
    const { result } = run({
      machine: 'truck',
      meteringDevice: 'txv',
      liquidPressure: '171 psig',
      liquidTemperature: '110 °F',
    })
    expect(result.verdicts[0]?.method).toBe('vehicle-subcooling-band')
  })

  it('tells a vehicle never to be topped up by a figure', () => {
    const vehicle = [
      ...Object.values(texts.meanings['subcooling-vehicle']),
      ...Object.values(texts.meanings['superheat-tube']),
      ...Object.values(texts.headlines.charge),
      ...Object.values(texts.next).flat(),
    ].filter((text) => typeof text === 'string')
    for (const text of vehicle)
      expect(text).not.toMatch(/(?<!not |nothing )(?:add some|top up by)/u)
  })
})

describe('a blend whose mixing is estimated', () => {
  const inside = (name: string) =>
    run({
      refrigerant: name,
      machine: 'off-road',
      meteringDevice: 'expansion-valve',
      barometer: '29.92 ±0.01 inHg',
      liquidPressure: '180 ±0.5 psig',
      liquidTemperature: { value: 109.5, unit: '°F', plusMinus: 0.2 },
      subcoolingLow: '2 °F',
      subcoolingHigh: '6 °F',
    })

  it('is not called inside a band that its own data reaches over', () => {
    const { result, figures, next } = inside('R-409A')
    const [verdict] = result.verdicts
    expect(verdict?.measured?.value).toBeGreaterThan(3)
    expect(verdict?.measured?.value).toBeLessThan(5)
    // 1.6 K of the remembered boiling points.
    expect(verdict?.measured?.plusMinus).toBeGreaterThan(2.8)
    expect(verdict?.outcome).toBe('cannot-tell')
    expect(verdict?.settle).toMatch(/data of R-409A itself.*no instrument betters that/u)
    expect(figures.find(({ id }) => id === 'subcooling')?.basis).toBe('estimated')
    expect(next.join()).toContain("maker's own pressure-temperature chart")
  })

  it('while one with published parameters may be', () => {
    const { result, figures } = run({
      refrigerant: 'R-407C',
      machine: 'off-road',
      meteringDevice: 'expansion-valve',
      barometer: '29.92 ±0.01 inHg',
      liquidPressure: '260 ±0.5 psig',
      liquidTemperature: '106 ±0.2 °F',
      subcoolingLow: '2 °F',
      subcoolingHigh: '6 °F',
    })
    expect(result.verdicts[0]?.outcome).toBe('inside')
    expect(figures.find(({ id }) => id === 'subcooling')?.basis).toBeUndefined()
  })
})

describe('sentences of the data', () => {
  const all = [
    ...Object.values(texts.headlines).flatMap((entry) =>
      typeof entry === 'string' ? [entry] : Object.values(entry),
    ),
    ...Object.values(texts.next).flatMap((entry) =>
      typeof entry === 'string'
        ? [entry]
        : Array.isArray(entry)
          ? entry
          : Object.values(entry).flat(),
    ),
    ...patternData.patterns.flatMap(({ headline, next }) => [headline, ...next]),
  ]

  it('hold no number of their own: those come from figures', () => {
    expect(all.length).toBeGreaterThan(60)
    for (const text of all) expect(text.replace(/\{[^}]*\}/gu, '')).not.toMatch(/\d/u)
  })
})

describe('whatever is read', () => {
  const psig = (min: number, max: number) =>
    fc.option(
      fc.record({
        value: fc.double({ min, max, noNaN: true }),
        unit: fc.constant('psig'),
        plusMinus: fc.option(fc.constantFrom(0, 0.5, 3), { nil: undefined }),
      }),
      { nil: undefined },
    )
  const fahrenheit = fc.option(
    fc.record({ value: fc.double({ min: -20, max: 260, noNaN: true }), unit: fc.constant('°F') }),
    { nil: undefined },
  )
  const without = <T extends object>(record: T) => JSON.parse(JSON.stringify(record)) as T

  it('is told in one short sentence with a figure or a verdict, six figures and three things to do', () => {
    let told = 0
    fc.assert(
      fc.property(
        fc.record({
          refrigerant: fc.constantFrom(
            'R-134a',
            'R-1234yf',
            'R-407C',
            'R-409A',
            'R-410A',
            'R-744',
            'R-22',
          ),
          machine: fc.constantFrom('off-road', 'stationary', 'refrigerated-cargo', undefined),
          meteringDevice: fc.constantFrom(
            'expansion-valve',
            'fixed-orifice',
            'orifice-tube',
            undefined,
          ),
          suctionPressure: psig(-10, 500),
          suctionTemperature: fahrenheit,
          liquidPressure: psig(40, 700),
          liquidTemperature: fahrenheit,
          dischargePressure: psig(40, 1500),
          dischargeTemperature: fahrenheit,
          ambient: fc.constantFrom(undefined, '75 °F', '95 °F'),
          returnWetBulb: fc.constantFrom(undefined, '67 °F'),
          subcoolingTarget: fc.constantFrom(undefined, '10 °F'),
          units: fc.constantFrom('us', 'si', 'both'),
        }),
        (input) => {
          let answer: ReturnType<typeof readings.run>
          try {
            answer = readings.run(without(input))
          } catch (error) {
            if (!(error instanceof CalcError)) throw error
            return
          }
          told += 1
          const { headline = '', figures = [], next = [], level, result, cautions } = answer
          expect(headline.length, headline).toBeLessThanOrEqual(LONGEST_HEADLINE)
          expect(headline).toMatch(/[.]$/u)
          expect(headline).not.toMatch(/\{|\}|undefined|NaN/u)
          expect(figures.length).toBeLessThanOrEqual(MOST_FIGURES)
          expect(figures.length).toBeGreaterThan(0)
          expect(next.length).toBeLessThanOrEqual(MOST_NEXT)
          expect(next.length).toBeGreaterThan(0)
          for (const { label } of figures) expect(label.length).toBeLessThanOrEqual(14)
          const stops = result.findings.some((finding) => finding.level === 'stop')
          expect(level === 'stop').toBe(stops)
          expect(cautions.some(({ id }) => id === 'stop-the-machine')).toBe(stops)
          // Every number of the headline is that of a figure.
          const numbers = headline.replace(/R-\d+\w*/gu, '').match(/\d+(?:\.\d+)?/gu) ?? []
          const shown = figures.map(({ text }) => text).join(' ')
          for (const number of numbers) expect(shown, headline).toContain(number)
        },
      ),
      { numRuns: 600 },
    )
    expect(told).toBeGreaterThan(300)
  })
})

describe('a high superheat', () => {
  const starved = {
    ...VALVE,
    suctionPressure: '30 psig',
    suctionTemperature: '84 °F',
    ambient: '85 °F',
  }

  it('does not ask for the liquid line that was read', () => {
    const near = { liquidPressure: '150 psig', liquidTemperature: '106 °F' }
    expect(run({ ...starved, ...near }).headline).toMatch(
      /low charge or a restriction; subcooling 5\.5 °F does not part them/u,
    )
    expect(run(starved).headline).toMatch(/Read the liquid line/u)
    const colder = run({ ...starved, liquidPressure: '150 psig', liquidTemperature: '75 °F' })
    expect(colder.headline).toMatch(/does not part them/u)
    expect(colder.result.findings.map(({ id }) => id)).toContain('liquid-colder-than-ambient')
  })
})

describe('what a verdict lacks', () => {
  it.each([
    [{}, 'give machine and metering device'],
    [{ machine: 'off-road' }, 'give the metering device'],
    [{ meteringDevice: 'expansion-valve' }, 'give the machine'],
  ])('is only what was not given: %o', (known, words) => {
    const { headline } = run({
      ...known,
      suctionPressure: '32 psig',
      dischargePressure: '180 psig',
    })
    expect(headline).toMatch(new RegExp(`no verdict: ${words}\\.$`, 'u'))
  })
})

describe('R-744 in a running machine', () => {
  it('is not judged by the ratio and the condensers of other refrigerants', () => {
    const { result, headline } = run({
      refrigerant: 'R-744',
      machine: 'bus',
      meteringDevice: 'expansion-valve',
      suctionPressure: '500 psig',
      suctionTemperature: '40 °F',
      dischargePressure: '1000 psig',
      ambient: '75 °F',
    })
    expect(result.patterns).toEqual([])
    expect(headline).not.toMatch(/pumps|ratio/u)
  })
})
