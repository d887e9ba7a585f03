import { describe, expect, it } from 'vitest'
import type { Pattern } from '../../../../shared/diagnosis/patterns.ts'
import type { AtRest } from '../../../../shared/physics/at-rest.ts'
import {
  type Evidence,
  logEvidence,
} from '../../../../shared/service/diagnose/posterior/evidence.ts'

const NOTHING: Evidence = { patterns: [], rest: undefined, ruledOut: [] }
const shown = (id: string) => [{ id } as Pattern]
const resting = (state: AtRest['state']) => ({ state }) as AtRest
const times = (evidence: Partial<Evidence>, cause: string, severity = 0.5) =>
  Math.exp(logEvidence({ ...NOTHING, ...evidence }, { cause: cause as 'air', severity }))

describe('what speaks beside the model', () => {
  it('is nothing where nothing was seen', () => {
    for (const cause of ['none', 'air', 'undercharge', 'reading-or-test-wrong']) {
      expect(times({}, cause)).toBe(1)
    }
  })

  it('a published pattern makes what it does not stand for five times less likely', () => {
    const evidence = { patterns: shown('condenser-and-subcooling') }
    for (const cause of ['condenser-air', 'overcharge', 'air']) {
      expect(times(evidence, cause)).toBe(1)
    }
    for (const cause of ['none', 'undercharge', 'compressor-leak']) {
      expect(times(evidence, cause)).toBeCloseTo(0.2, 12)
    }
    // a mistake can look like any of them
    expect(times(evidence, 'reading-or-test-wrong')).toBe(1)
  })

  it('a low side in vacuum makes it fifty times less likely', () => {
    for (const id of ['restriction-in-vacuum', 'starved-in-vacuum']) {
      expect(times({ patterns: shown(id) }, 'restriction')).toBe(1)
      expect(times({ patterns: shown(id) }, 'overcharge')).toBeCloseTo(0.02, 12)
    }
    // but a charge that is there is no low one
    expect(times({ patterns: shown('starved-in-vacuum') }, 'undercharge')).toBe(1)
    expect(times({ patterns: shown('restriction-in-vacuum') }, 'undercharge')).toBeCloseTo(0.02, 12)
  })

  it('the pressure at rest speaks for air, against it, or for a machine that is empty', () => {
    expect(times({ rest: resting('above') }, 'air')).toBe(1)
    expect(times({ rest: resting('above') }, 'overcharge')).toBeCloseTo(0.05, 12)
    expect(times({ rest: resting('at') }, 'air')).toBeCloseTo(0.05, 12)
    // so little air shows on no gauge at rest
    expect(times({ rest: resting('at') }, 'air', 0.1)).toBe(1)
    expect(times({ rest: resting('at') }, 'overcharge')).toBe(1)
    expect(times({ rest: resting('below') }, 'undercharge', 1)).toBe(1)
    expect(times({ rest: resting('below') }, 'undercharge', 0.4)).toBeCloseTo(0.05, 12)
    expect(times({ rest: resting('cannot-tell') }, 'air')).toBe(1)
  })

  it('what was looked for and not found is twenty times less likely', () => {
    expect(times({ ruledOut: ['condenser-air'] }, 'condenser-air')).toBeCloseTo(0.05, 12)
    expect(times({ ruledOut: ['condenser-air'] }, 'air')).toBe(1)
  })
})
