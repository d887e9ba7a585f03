import { describe, expect, it } from 'vitest'
import { pickRefrigerant } from '../../../shared/fields/index.ts'
import { figures } from '../../../shared/service/readings/figures.ts'
import type { Finding, FindingId } from '../../../shared/service/readings/findings.ts'
import { judge } from '../../../shared/service/readings/judge.ts'
import { measured } from '../../../shared/service/readings/measured.ts'
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
