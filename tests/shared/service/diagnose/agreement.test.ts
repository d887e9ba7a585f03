import { describe, expect, it } from 'vitest'
import figures from '../../../../data/service/diagnosis.json' with { type: 'json' }
import { presets } from '../../../../shared/cycle/index.ts'
import { FEATURES, type Feature } from '../../../../shared/diagnosis/features.ts'
import { nominalEffects } from '../../../../shared/diagnosis/kinds.ts'
import type { Pattern } from '../../../../shared/diagnosis/patterns.ts'
import { parseQuantity, SEA_LEVEL_PA } from '../../../../shared/quantity/index.ts'
import { refrigerant, saturationTemperature } from '../../../../shared/refrigerant/index.ts'
import { logEvidence } from '../../../../shared/service/diagnose/posterior/evidence.ts'
import { diagnose } from '../../../../shared/service/diagnose.ts'
import { readings } from '../../../../shared/service/readings.ts'

const STANDS_FOR = figures.evidence.patterns as Readonly<Record<string, readonly string[]>>
/** Of what the model leaves to the machine itself: less than this is contradicted. */
const HELD = 1 / 3
/** Of the same: from here on the model has a cause of its own. */
const OWN = 0.5
/** Sets of one grid that may end without a pattern though the model has a cause: pressures of sound machines. */
const MOST_OPEN = 4

interface Grid {
  readonly refrigerant: string
  readonly ambientF: number
  readonly lows: readonly number[]
  readonly highs: readonly number[]
  readonly superheats: readonly (number | undefined)[]
  readonly subcoolings: readonly (number | undefined)[]
  /** One set in so many, so that all of them take seconds. */
  readonly stride: number
}

const VEHICLES: Grid = {
  refrigerant: 'R-134a',
  ambientF: 92,
  lows: [4, 12, 20, 30, 45, 60, 75],
  highs: [110, 150, 200, 260, 330],
  superheats: [undefined, 1.5, 12, 32, 50],
  subcoolings: [undefined, 2, 14, 35, 60],
  stride: 11,
}
const SPLITS: Grid = {
  refrigerant: 'R-410A',
  ambientF: 90,
  lows: [60, 95, 120, 140, 165],
  highs: [230, 300, 370, 450, 500],
  superheats: [undefined, 2, 12, 32, 55],
  subcoolings: [undefined, 2, 12, 30],
  stride: 7,
}

const RECEIVER = {
  machine: 'off-road',
  meteringDevice: 'expansion-valve',
  liquidStore: 'receiver',
  displacement: 'fixed',
}

/** Every so many sets of a plain grid whose liquid line is not far colder than its air. */
function setsOf({
  refrigerant: name,
  ambientF,
  lows,
  highs,
  superheats,
  subcoolings,
  stride,
}: Grid) {
  const r = refrigerant(name)
  const fahrenheit = (psig: number, line: 'dew' | 'bubble') =>
    saturationTemperature(
      r,
      parseQuantity(`${psig} psig`, ['gaugePressure']).si + SEA_LEVEL_PA,
      line,
    ) *
      1.8 -
    459.67
  const all = lows.flatMap((low) =>
    highs.flatMap((high) =>
      superheats.flatMap((superheat) =>
        subcoolings.map((subcooling) => ({
          refrigerant: name,
          ambient: `${ambientF} °F`,
          suctionPressure: `${low} psig`,
          liquidPressure: `${high} psig`,
          ...(superheat !== undefined && {
            suctionTemperature: `${(fahrenheit(low, 'dew') + superheat).toFixed(1)} °F`,
          }),
          ...(subcooling !== undefined && {
            liquidTemperature: `${(fahrenheit(high, 'bubble') - subcooling).toFixed(1)} °F`,
          }),
          overAir:
            subcooling === undefined ? 0 : fahrenheit(high, 'bubble') - subcooling - ambientF,
        })),
      ),
    ),
  )
  return all
    .filter((_, n) => n % stride === 0)
    .filter(({ overAir }) => overAir > -10)
    .map(({ overAir: _, ...input }) => input)
}

/** Shares of causes by the model alone, a mistake of the test left out: what patterns added is divided out. */
function byModelAlone({ causes, patterns }: ReturnType<typeof diagnose.run>['result']) {
  const shown = patterns.map((id) => ({ id }) as Pattern)
  const plain = causes
    .filter(({ cause }) => cause !== 'reading-or-test-wrong')
    .map(({ cause, share, severity = 0 }) => {
      const log = logEvidence(
        { patterns: shown, rest: undefined, ruledOut: [] },
        { cause, severity },
      )
      return [cause, share / Math.exp(log)] as const
    })
  const total = plain.reduce((sum, [, share]) => sum + share, 0)
  return new Map(plain.map(([cause, share]) => [cause as string, share / total]))
}

describe.each<[what: string, known: Readonly<Record<string, string>>, grid: Grid]>([
  ['a valve with receiver', RECEIVER, VEHICLES],
  ['a valve', { machine: 'off-road', meteringDevice: 'expansion-valve' }, VEHICLES],
  ['an orifice tube', { machine: 'off-road', meteringDevice: 'orifice-tube' }, VEHICLES],
  ['anything', {}, VEHICLES],
  ['a split with a valve', { machine: 'stationary', meteringDevice: 'expansion-valve' }, SPLITS],
  ['a split with an orifice', { machine: 'stationary', meteringDevice: 'fixed-orifice' }, SPLITS],
])('table of patterns and model, asked of %s', (_, known, grid) => {
  const answers = setsOf(grid).flatMap((input) => {
    const { liquidStore: __, displacement: ___, ...simple } = known
    const table = readings.run({ ...input, ...simple })
    const { result } = diagnose.run({ ...input, ...known })
    return result.causes.length === 0 ? [] : [{ input, table, shares: byModelAlone(result) }]
  })

  it('no pattern is told that the model by itself contradicts', () => {
    const against = answers.flatMap(({ input, table, shares }) => {
      const [pattern] = table.result.patterns
      if (!pattern) return []
      const stands = STANDS_FOR[pattern.id] ?? []
      const held = stands.reduce((sum, cause) => sum + (shares.get(cause) ?? 0), 0)
      return held < HELD && Math.max(...shares.values()) > OWN ? [[pattern.id, input]] : []
    })
    expect(answers.length).toBeGreaterThan(40)
    expect(against).toEqual([])
  })

  it('hardly a set is left without a cause that the model has one for', () => {
    const silent = answers.filter(({ table, shares }) => {
      const fault = [...shares].some(([cause, share]) => cause !== 'none' && share > OWN)
      return table.result.patterns.length === 0 && fault && (shares.get('none') ?? 0) < 0.1
    })
    expect(silent.length, JSON.stringify(silent.map(({ input }) => input))).toBeLessThanOrEqual(
      MOST_OPEN,
    )
  })
})

describe.each(presets().filter(({ machine }) => machine.refrigerant !== 'R-1234yf'))(
  'the table of patterns on $machine.id',
  ({ architecture, machine, nominal }) => {
    const bar = (pa: number) => `${(pa / 1e5).toFixed(3)} bar a`
    const celsius = (kelvin: number) => `${(kelvin - 273.15).toFixed(2)} °C`
    const shown = nominalEffects(machine.id).map(({ cause, severity, mean }) => {
      const at = (feature: Feature) => mean[FEATURES.indexOf(feature)] as number
      const { result } = diagnose.run({
        refrigerant: machine.refrigerant,
        architecture,
        suctionPressure: bar(at('lowSidePa')),
        [machine.ports.high === 'discharge' ? 'dischargePressure' : 'liquidPressure']: bar(
          at('highSidePa'),
        ),
        suctionTemperature: celsius(at('suctionLineK')),
        liquidTemperature: celsius(at('liquidLineK')),
        ambient: celsius(nominal.ambientK),
      })
      return { cause, severity, patterns: result.patterns }
    })

    it('stands against no fault, and calls no sound machine faulty', () => {
      const against = shown.flatMap(({ cause, severity, patterns }) =>
        patterns
          .filter((id) => !(STANDS_FOR[id] ?? []).includes(cause))
          .map((id) => `${id} where it is ${cause} ${severity}`),
      )
      expect(against).toEqual([])
    })

    it('shows a machine that is nearly empty', () => {
      const empty = shown.filter(({ cause }) => cause === 'undercharge').at(-1)
      expect(empty?.patterns.length).toBeGreaterThan(0)
    })
  },
)
