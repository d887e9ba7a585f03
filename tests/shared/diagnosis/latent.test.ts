import { describe, expect, it } from 'vitest'
import table from '../../../data/diagnosis/effects.json' with { type: 'json' }
import { preset } from '../../../shared/cycle/index.ts'
import type { Effect } from '../../../shared/diagnosis/effects.ts'
import { effectsOf } from '../../../shared/diagnosis/effects.ts'
import { FEATURES, type Feature } from '../../../shared/diagnosis/features.ts'
import { type Finer, finer } from '../../../shared/diagnosis/finer.ts'
import {
  carriedEffects,
  nominalEffects,
  solvedAt,
  solvedEffects,
} from '../../../shared/diagnosis/kinds.ts'
import {
  afterBaseline,
  LATENT_SIZE,
  priorLatent,
  spreadBy,
} from '../../../shared/diagnosis/latent.ts'
import { worthLooking } from '../../../shared/diagnosis/looks.ts'
import {
  NUISANCES,
  OF_THE_MACHINE,
  OF_THE_TEST,
  SPREAD,
} from '../../../shared/diagnosis/nuisance.ts'
import { packed, unpacked } from '../../../shared/diagnosis/packed.ts'
import { suspectsOf } from '../../../shared/diagnosis/suspects.ts'
import { packedOf } from '../../generate/effects.ts'

const N = FEATURES.length
const HIGH = FEATURES.indexOf('highSidePa')
const OUT = FEATURES.indexOf('condenserAirK')

/** How far a reading lies apart at both ends of what an effect stands for: √12 σ of what lies evenly between. */
const endsApart = ({ along }: Finer, i: number) => Math.sqrt(12) * (along?.[i] ?? 0)

/** One nuisance moves one reading by a whole unit of it; all others do nothing. */
function effect(moves: Partial<Record<(typeof NUISANCES)[number], [Feature, number][]>>): Effect {
  return {
    cause: 'none',
    severity: 0,
    impact: 0,
    mean: new Float64Array(N),
    columns: NUISANCES.map((name) => {
      const column = new Float64Array(N)
      for (const [feature, value] of moves[name] ?? []) column[FEATURES.indexOf(feature)] = value
      return column
    }),
  }
}
const NO_TEST = { speed: 0, returnHumidity: 0, returnAirK: 0, ambientK: 0 }

describe('how far this machine lies from the model', () => {
  it('spreads readings by what is not known of it', () => {
    const one = effect({ blower: [['condenserAirK', 30]], ambientK: [['condenserAirK', 0.5]] })
    const prior = priorLatent('model', one.mean)
    const { covariance, shift } = spreadBy(prior, one, { ...NO_TEST, ambientK: 2 })
    // a tenth of the blower, of which a known machine leaves three tenths: 30 · 0.03; and 0.5 · 2
    expect(covariance[OUT * N + OUT]).toBeCloseTo(0.9 ** 2 + 1, 12)
    expect([...shift]).toEqual(Array(N).fill(0))
    const kind = spreadBy(priorLatent('kind', one.mean), one, NO_TEST)
    // all of it, and what the model itself may be off: 2 K
    expect(kind.covariance[OUT * N + OUT]).toBeCloseTo(3 ** 2 + 2 ** 2, 12)
  })

  it('is known better after a baseline, by Bayes for one reading', () => {
    const one = effect({ blower: [['condenserAirK', 30]] })
    const prior = priorLatent('kind', one.mean)
    const sigma = 1
    const { latent } = afterBaseline(
      prior,
      one,
      [{ feature: 'condenserAirK', value: 4, sigma }],
      NO_TEST,
    )
    // prior variance 9 + 4 = 13 against 1: a shift of 4 · 13 / 14, and 13 / 14 of variance left
    const { shift, covariance } = spreadBy(latent, one, NO_TEST)
    expect(shift[OUT]).toBeCloseTo((4 * 13) / 14, 10)
    expect(covariance[OUT * N + OUT]).toBeCloseTo(13 / 14, 10)
    // the blower takes its part of it, the model's own error the rest
    expect(latent.mean[OF_THE_MACHINE.indexOf('blower')]).toBeCloseTo((0.1 * 3 * 4) / 14, 10)
  })

  it('carries over to what was not read then, as far as one thing moves both', () => {
    const one = effect({
      blower: [
        ['ventK', 30],
        ['lowSidePa', 50_000],
      ],
    })
    const { latent } = afterBaseline(
      priorLatent('kind', one.mean),
      one,
      [{ feature: 'ventK', value: 5, sigma: 0.1 }],
      NO_TEST,
    )
    const { shift } = spreadBy(latent, one, NO_TEST)
    expect(shift[FEATURES.indexOf('lowSidePa')]).toBeGreaterThan(1000)
    expect(shift[HIGH]).toBe(0)
  })

  it('counts how far the coils bring the refrigerant to their air: pressure and pipe move together', () => {
    const one = effect({})
    const mean = Float64Array.from(FEATURES, (feature) => (feature === 'highSidePa' ? 1.5e6 : 300))
    const sound = { ...one, mean }
    const { latent } = afterBaseline(
      priorLatent('kind', mean),
      sound,
      [{ feature: 'highSidePa', value: 1.7e6, sigma: 1 }],
      NO_TEST,
    )
    const { shift } = spreadBy(latent, sound, NO_TEST)
    expect(shift[HIGH]).toBeCloseTo(2e5, -1)
    // 0.024 of the pressure a kelvin, 4.5 K of spread, beside 3 % of the pressure's own
    const byCoil = (0.024 * 1.5e6 * 4.5) ** 2
    const part = byCoil / (byCoil + (0.03 * 1.5e6) ** 2)
    const warmer = (part * 2e5) / (0.024 * 1.5e6)
    expect(shift[FEATURES.indexOf('liquidLineK')]).toBeCloseTo(warmer, 3)
    expect(shift[FEATURES.indexOf('suctionLineK')]).toBeCloseTo(0, 9)
  })

  it('keeps the spread of a test of its own in each test', () => {
    const one = effect({ ambientK: [['highSidePa', 40_000]] })
    const scale = new Float64Array(N)
    const test = { ...NO_TEST, ambientK: 1 }
    const { latent } = afterBaseline(
      priorLatent('kind', scale),
      one,
      [{ feature: 'highSidePa', value: 40_000, sigma: 1 }],
      test,
    )
    // no share of a pressure of nothing: all of it was the air of that day, and nothing is learnt
    expect(latent.mean.every((value) => Math.abs(value) < 1e-9)).toBe(true)
    expect(latent.mean).toHaveLength(LATENT_SIZE)
    const { covariance } = spreadBy(latent, one, test)
    expect(covariance[HIGH * N + HIGH]).toBeCloseTo(40_000 ** 2, -2)
  })
})

describe('suspects of several kinds', () => {
  it('are likelier where the kind fits the readings of the sound machine', () => {
    const kind = (vent: number) => {
      const sound = effect({})
      sound.mean[FEATURES.indexOf('ventK')] = vent
      const [fine] = finer([sound], 1)
      if (fine === undefined) throw new Error('none')
      return (value: number) =>
        suspectsOf(
          {
            share: 0.5,
            effects: [fine],
            knowledge: 'model',
            baseline: {
              sound,
              observations: [{ feature: 'ventK', value, sigma: 2 }],
              sizes: NO_TEST,
            },
          },
          NO_TEST,
          undefined,
        )
    }
    const [fits, other] = [kind(283)(283), kind(287)(283)]
    const of = (list: typeof fits) => list.find(({ cause }) => cause === 'none')?.logPrior ?? 0
    // two standard deviations away: e² less likely
    expect(of(fits) - of(other)).toBeCloseTo(2, 6)
    // half for the kind, half each for a sound machine and a mistake
    const gaussian = -Math.log(2)
    expect(of(fits)).toBeCloseTo(Math.log(0.25) + gaussian, 6)
  })

  it('share the priors of the causes that this kind can have', () => {
    const { machine, nominal } = preset('van-valve-134a')
    const solved = effectsOf(machine, nominal, () => [0.3])
    const all = suspectsOf({ share: 1, effects: finer(solved, 2), knowledge: 'kind' }, NO_TEST, {
      none: 3,
      overcharge: 1,
      'reading-or-test-wrong': 1,
      'stroke-stuck-low': 100,
    })
    const total = (cause: string) =>
      all.reduce((sum, one) => sum + (one.cause === cause ? Math.exp(one.logPrior) : 0), 0)
    expect(total('none')).toBeCloseTo(0.6, 10)
    expect(total('overcharge')).toBeCloseTo(0.2, 10)
    expect(total('air')).toBe(0)
  })
})

describe('severities of a fault', () => {
  it('count by their width, and by two fifths of it where they cost less than a tenth', () => {
    const sound = effect({})
    const fault = (severity: number, impact: number): Effect => ({
      ...sound,
      cause: 'overcharge',
      severity,
      impact,
    })
    const fine = finer([sound, fault(0.2, 0.02), fault(0.6, 0.3)], 1)
    const all = suspectsOf({ share: 1, effects: fine, knowledge: 'model' }, NO_TEST, undefined)
    const [little, much] = all.filter(({ cause }) => cause === 'overcharge')
    // 0 to 0.2 costs 0.01 in its middle, 0.2 to 0.6 costs 0.16
    expect(Math.exp((little?.logPrior ?? 0) - (much?.logPrior ?? 0))).toBeCloseTo(
      (0.4 * 0.2) / 0.4,
      9,
    )
    expect(Math.exp(little?.logPrior ?? 0) + Math.exp(much?.logPrior ?? 0)).toBeCloseTo(1 / 3, 9)
  })
})

describe('effects between those that were solved', () => {
  const { machine, nominal } = preset('van-valve-134a')
  const solved = effectsOf(machine, nominal, solvedAt)

  it('lie in the middle of their part of a span, on curves from the sound machine on', () => {
    const fine = finer(solved, 2)
    const [first, second] = fine.filter(({ cause }) => cause === 'overcharge')
    const sound = solved[0]
    const at = solved.find(({ cause }) => cause === 'overcharge')
    if (!first || !second || !sound || !at) throw new Error('none')
    expect(first.severity).toBeCloseTo(0.0375, 12)
    expect(second.severity).toBeCloseTo(0.1125, 12)
    expect([first.width, second.width]).toEqual([0.075, 0.075])
    for (let i = 0; i < N; i += 1) {
      const [from, to] = [sound.mean[i] as number, at.mean[i] as number]
      for (const { mean } of [first, second]) {
        expect(mean[i]).toBeGreaterThanOrEqual(Math.min(from, to) - 1e-6)
        expect(mean[i]).toBeLessThanOrEqual(Math.max(from, to) + 1e-6)
      }
      // the parts together are the whole span
      expect(endsApart(first, i) + endsApart(second, i)).toBeCloseTo(to - from, 6)
      // no surer than the bend between them allows
      const bend = (first.mean[i] as number) - (from + (to - from) / 4)
      expect(first.carried[i]).toBeGreaterThanOrEqual((0.3 * bend) ** 2)
    }
  })

  it('stand together for all severities that were solved, a part stuck from where it usually stands on', () => {
    const fine = finer(solved, 2)
    for (const cause of ['overcharge', 'undercharge', 'valve-stuck-open', 'valve-stuck-closed']) {
      const own = fine.filter((each) => each.cause === cause)
      const last = Math.max(
        ...solved.filter((each) => each.cause === cause).map(({ severity }) => severity),
      )
      expect(own.reduce((sum, { width }) => sum + width, 0)).toBeCloseTo(last, 12)
    }
    const hot = { ...nominal, ambientK: nominal.ambientK - 10, returnAirK: nominal.returnAirK + 7 }
    const [sound, ...others] = effectsOf(machine, hot, solvedAt, () => solved[0]?.columns)
    const stuck = finer([sound as Effect, ...others], 2).filter(({ cause }) =>
      cause.startsWith('valve-stuck'),
    )
    const near = (cause: string) => stuck.find((each) => each.cause === cause)?.mean as Float64Array
    const suction = FEATURES.indexOf('suctionLineK')
    const [open, closed] = [near('valve-stuck-open'), near('valve-stuck-closed')]
    // a valve that stands still starves a coil that asks for more: either way from the same state
    expect(open[suction]).toBeGreaterThan((sound?.mean[suction] as number) + 2)
    expect(Math.abs((open[suction] as number) - (closed[suction] as number))).toBeLessThan(4)
  })

  it('are solved on where no state near by leads further, as far as the machine runs', () => {
    const cooler = preset('cooler-valve-134a')
    const cool = { ...cooler.nominal, ambientK: 296.59, returnAirK: 305.27, returnHumidity: 0.464 }
    const columns = nominalEffects('cooler-valve-134a')[0]?.columns
    const found = effectsOf(cooler.machine, cool, solvedAt, () => columns, undefined, [
      'undercharge',
    ])
    expect(found.map(({ severity }) => severity)).toEqual([0, 0.15, 0.3, 0.5, 0.6, 0.7, 0.8])
  })

  it('come nearer to what the model gives there than straight lines do', () => {
    const fine = finer(solved, 2).filter(({ cause }) => cause === 'valve-stuck-closed')
    const exact = effectsOf(machine, nominal, () => fine.map(({ severity }) => severity))
    const low = FEATURES.indexOf('lowSidePa')
    let [curve, line] = [0, 0]
    fine.forEach((each, k) => {
      const { severity, mean } = each
      const next = fine[k + 1]
      const shown = exact.find(
        (one) => one.cause === 'valve-stuck-closed' && Math.abs(one.severity - severity) < 1e-9,
      )
      if (k % 2 === 1 || !next || !shown) return
      const before = (mean[low] as number) - endsApart(each, low)
      curve += Math.abs((mean[low] as number) - (shown.mean[low] as number))
      line += Math.abs((before + (next.mean[low] as number)) / 2 - (shown.mean[low] as number))
    })
    expect(line).toBeGreaterThan(0)
    expect(curve).toBeLessThan(0.7 * line)
  })

  it('are stored in steps far below what an instrument shows', () => {
    const back = unpacked(packed(solved))
    expect(back.map(({ cause }) => cause)).toEqual(solved.map(({ cause }) => cause))
    const steps = [200, 500, 0.05, 0.05, 0.05, 0.05, 0.1, 0.05, 0.05, 0.001]
    back.forEach(({ mean, columns, impact, severity }, k) => {
      const from = solved[k] as Effect
      expect(severity).toBeCloseTo(from.severity, 10)
      expect(impact).toBeCloseTo(from.impact, 2)
      for (let i = 0; i < N; i += 1) {
        const step = steps[i] as number
        expect(Math.abs((mean[i] as number) - (from.mean[i] as number))).toBeLessThan(1.01 * step)
        columns.forEach((column, nuisance) => {
          const size = SPREAD[NUISANCES[nuisance] as (typeof NUISANCES)[number]]
          const off = (column[i] as number) - (from.columns[nuisance]?.[i] as number)
          expect(Math.abs(off * size)).toBeLessThan(0.51 * step)
        })
      }
    })
  })

  it.each(['van-valve-134a', 'cooler-orifice-134a'])(
    'of %s in the file are what the model gives (else: npm run effects)',
    (id) => {
      const stored = (table as Readonly<Record<string, unknown>>)[id]
      expect(stored).toEqual(JSON.parse(JSON.stringify(packedOf(id))))
    },
  )

  it('carried over to the weather that they were solved in stay as they are, elsewhere are less sure', () => {
    const one = preset('van-valve-134a')
    const here = carriedEffects(one, nominal)
    const warm = carriedEffects(one, { ...nominal, ambientK: nominal.ambientK + 8 })
    const stored = nominalEffects('van-valve-134a')
    expect(here[0]?.mean).toEqual(stored[0]?.mean)
    const exact = effectsOf(machine, { ...nominal, ambientK: nominal.ambientK + 8 }, () => [])[0]
    for (const feature of ['highSidePa', 'liquidLineK'] as const) {
      const i = FEATURES.indexOf(feature)
      const moved = (warm[0]?.mean[i] as number) - (here[0]?.mean[i] as number)
      const really = (exact?.mean[i] as number) - (here[0]?.mean[i] as number)
      expect(moved / really).toBeGreaterThan(0.85)
      expect(moved / really).toBeLessThan(1.15)
      expect(warm[0]?.carried[i]).toBeCloseTo((0.3 * moved) ** 2, 4)
      expect(here[0]?.carried[i]).toBe(0)
    }
  })

  it('where only some causes are solved, the others move with the sound machine', () => {
    const one = preset('van-valve-134a')
    const cool = { ...nominal, ambientK: nominal.ambientK - 6 }
    const all = solvedEffects(one, cool)
    const some = solvedEffects(one, cool, ['overcharge'])
    const of = (list: typeof all, cause: string) =>
      list.find((each) => each.cause === cause && Math.abs(each.severity - 0.45) < 1e-9)?.mean[
        HIGH
      ] as number
    expect(some).toHaveLength(all.length)
    expect(of(some, 'overcharge')).toBe(of(all, 'overcharge'))
    expect(of(some, 'condenser-air')).not.toBe(of(all, 'condenser-air'))
    expect(Math.abs(of(some, 'condenser-air') - of(all, 'condenser-air'))).toBeLessThan(60_000)
    // their own change stays what it was where they were solved
    const carried = carriedEffects(one, cool)
    const change = (list: typeof all) => of(list, 'condenser-air') - (list[0]?.mean[HIGH] as number)
    expect(change(some)).toBeCloseTo(change(carried), 6)
    expect(some[0]?.mean[HIGH]).not.toBe(carried[0]?.mean[HIGH])
  })
})

describe('what a look is worth', () => {
  const even = ['condenser-air', 'undercharge'].map((cause) => ({
    cause: cause as 'undercharge',
    probability: 0.5,
    severity: 0.5,
  }))
  it('is what it is expected to tell, for its minutes; nothing where it finds none of what is likely', () => {
    const looks = worthLooking(even)
    const washed = looks.find(({ id }) => id === 'wash-condenser')
    // two even causes told apart but for a tenth either way: 1 bit less the entropy of 0.1
    const missed = -(0.1 * Math.log2(0.1) + 0.9 * Math.log2(0.9))
    expect(washed?.gain).toBeCloseTo(1 - missed, 10)
    expect(washed?.perMinute).toBeCloseTo((1 - missed) / 15, 10)
    expect(looks.find(({ id }) => id === 'filter-and-blower')?.gain).toBeCloseTo(0, 10)
    expect(looks[0]?.id).toBe('wash-condenser')
  })
})

describe('columns taken in part', () => {
  const { machine, nominal } = preset('van-valve-134a')
  const hot = { ...nominal, ambientK: nominal.ambientK + 6, returnAirK: nominal.returnAirK + 3 }
  const table = nominalEffects(machine.id)
  const columnsIn = (effects: readonly Effect[], cause: Effect['cause']) =>
    effects.find((effect) => effect.cause === cause)?.columns ?? []
  const ofTheMachine = (cause: Effect['cause']) => columnsIn(table, cause)
  const once = () => [0.4]
  const own = effectsOf(machine, hot, once)
  const part = effectsOf(machine, hot, once, { ofTheMachine })

  it.each(['none', 'undercharge', 'condenser-air'] as const)(
    'of %s are of this weather for what the test leaves open, of the nominal one for the machine',
    (cause) => {
      NUISANCES.forEach((name, k) => {
        const isOfTheTest = (OF_THE_TEST as readonly string[]).includes(name)
        const from = isOfTheTest ? columnsIn(own, cause)[k] : ofTheMachine(cause)[k]
        const [found, other] = [columnsIn(part, cause)[k], columnsIn(own, cause)[k]]
        expect(found).toHaveLength(N)
        found?.forEach((value, i) => {
          const given = (from as Float64Array)[i] as number
          expect(Math.abs(value - given)).toBeLessThanOrEqual(1e-4 * Math.abs(given) + 1e-6)
        })
        // which the weather does change
        if (!isOfTheTest) expect([...(found ?? [])]).not.toEqual([...(other ?? [])])
      })
    },
  )
})
