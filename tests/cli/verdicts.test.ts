import { describe, expect, it } from 'vitest'
import { exampleArgv } from '../../cli/example.ts'
import { verdictsOf } from '../../cli/render/verdicts.ts'
import { rules } from '../../shared/rules/rules.ts'
import { evacuation } from '../../shared/service/evacuation.ts'
import { session } from './session.ts'

describe('verdicts of a result', () => {
  it('are the sentence of a section, or its verdict with the reason, the outer before the inner', () => {
    const result = {
      verdict: 'told-at-the-head',
      rise: { verdict: 'leaking', because: 'It rises on.', limit: { verdict: 'kept' } },
      bands: { high: { verdict: 'in-every-table', sentence: 'High side: normal.' } },
      water: { form: 'liquid' },
      tables: [{ verdict: 'not-looked-at' }],
    }
    expect(verdictsOf(result)).toEqual(['Rise: leaking. It rises on.', 'High side: normal.'])
    expect(verdictsOf({ ...result, conclusion: 'Nothing to add.' })).toEqual(['Nothing to add.'])
  })

  it('stand above a long answer with what to look at, and not above a short one', async () => {
    const { out } = await session([...exampleArgv(evacuation), '--full'])
    const [look, short, figures] = ['\nLook', 'In short', '\n  Gauge'].map((text) =>
      out.indexOf(text),
    )
    expect(look).toBeGreaterThan(0)
    expect(short).toBeGreaterThan(look ?? 0)
    expect(figures).toBeGreaterThan(short ?? 0)
    expect(out.match(/^In short$/gmu)).toHaveLength(1)
    const saturation = await session(['saturation', 'R-134a', '--pressure', '32 psig'])
    expect(saturation.out).not.toContain('In short')
  })
})

describe('a tree of figures', () => {
  it('has no heading with nothing under it, and says of no rule that it applies', async () => {
    const { out } = await session(exampleArgv(rules))
    expect(out).not.toMatch(/^ +Retrofit$/mu)
    expect(out).not.toContain('applies: yes')
    expect(out).toMatch(/ 1 Section 609.*\n +2 Section 608/u)
  })
})
