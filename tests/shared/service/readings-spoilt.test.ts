import { describe, expect, it } from 'vitest'
import { FROM_DISCHARGE_K, type Pattern } from '../../../shared/diagnosis/patterns.ts'
import { pickRefrigerant } from '../../../shared/fields/index.ts'
import { figures } from '../../../shared/service/readings/figures.ts'
import type { Finding, FindingId } from '../../../shared/service/readings/findings.ts'
import { judge } from '../../../shared/service/readings/judge.ts'
import { measured } from '../../../shared/service/readings/measured.ts'
import { signsOf, withoutCovered } from '../../../shared/service/readings/signs.ts'
import { readings } from '../../../shared/service/readings.ts'

const given = readings.parse({
  ...{ refrigerant: 'R-134a', machine: 'off-road', meteringDevice: 'expansion-valve' },
  ...{ suctionPressure: '30 psig', suctionTemperature: '48 °F', ambient: '80 °F' },
  ...{ liquidPressure: '180 psig', liquidTemperature: '105 °F' },
})
const m = measured(pickRefrigerant(given.refrigerant), given)
const f = figures(m)
/** "subcooling superheat" of those that nothing can be judged of, where this was found. */
const spoilt = (...ids: readonly string[]) =>
  judge(
    m,
    f,
    given,
    ids.map((id) => ({ id: id as FindingId, message: `of ${id}` }) as Finding),
  )
    .verdicts.filter(({ outcome }) => outcome === 'no-valid-test')
    .map(({ figure }) => figure)
    .join(' ')

describe('what leaves nothing to judge', () => {
  it.each([
    ['above-cut-out', 'subcooling superheat'],
    ['no-pressure-difference', 'subcooling superheat'],
    ['suction-above-discharge', 'subcooling superheat'],
    ['above-critical', 'subcooling superheat'],
    ['suction-colder-than-dew', 'superheat'],
    ['liquid-hotter-than-bubble', 'subcooling'],
    ['condensing-below-ambient', 'subcooling'],
    ['liquid-colder-than-ambient', 'subcooling'],
    ['frost', ''],
  ])('%s: %s', (id, figuresSpoilt) => {
    expect(spoilt(id)).toBe(figuresSpoilt)
  })

  it('nothing where nothing was found, and it says what was', () => {
    expect(spoilt()).toBe('')
    const [first] = judge(m, f, given, [
      { id: 'above-cut-out', message: '480 psig, cut-out 400 psig' } as Finding,
    ]).verdicts
    expect(first?.meaning).toContain('480 psig, cut-out 400 psig')
  })
})

describe('the signs that patterns go by', () => {
  const signs = (...found: readonly Partial<Finding>[]) =>
    signsOf(m, f, found as readonly Finding[])

  it('are all that was read, and none where readings contradict each other or stop the work', () => {
    expect(signs()).toMatchObject({ superheat: f.superheat, subcooling: f.subcooling })
    expect(Object.values(signs()).every((sign) => sign !== undefined)).toBe(true)
    expect(signs({ id: 'frost' as FindingId, level: 'check' as Finding['level'] })).toEqual(signs())
    expect(signs({ level: 'stop' })).toEqual({})
    expect(signs({ level: 'impossible' })).toEqual({})
  })

  it('leave the subcooling out where the liquid is colder than the air', () => {
    expect(signs({ id: 'liquid-colder-than-ambient' })).toEqual({
      ...signs(),
      subcooling: undefined,
    })
  })

  it('take the subcooling from a discharge pressure for less, and know it less well', () => {
    const behind = signsOf({ ...m, highFrom: 'discharge-line' }, f, []).subcooling
    const half = FROM_DISCHARGE_K / 2
    expect(behind?.si).toBeCloseTo((f.subcooling?.si ?? Number.NaN) - half, 9)
    expect(behind?.plusMinus).toBeCloseTo((f.subcooling?.plusMinus ?? Number.NaN) + half, 9)
  })

  it('a finding is left out where a pattern says it better', () => {
    const ids = [
      'superheat-very-high',
      'no-subcooling',
      'superheat-very-low',
      'above-cut-out',
    ] as const
    const found = ids.map((id) => ({ id })) as unknown as readonly Finding[]
    const left = (...patterns: readonly string[]) =>
      withoutCovered(found, patterns.map((id) => ({ id })) as unknown as readonly Pattern[])
        .map(({ id }) => id)
        .join(' ')
    expect(left()).toBe(ids.join(' '))
    expect(left('low-charge')).toBe('superheat-very-low above-cut-out')
    expect(left('overfed')).toBe('superheat-very-high above-cut-out')
    expect(left('starved-not-low')).toBe('no-subcooling superheat-very-low above-cut-out')
    expect(left('restriction-in-vacuum')).toBe('no-subcooling superheat-very-low above-cut-out')
    expect(left('evaporator-air')).toBe('superheat-very-high no-subcooling above-cut-out')
    expect(left('condenser')).toBe(ids.join(' '))
  })
})
