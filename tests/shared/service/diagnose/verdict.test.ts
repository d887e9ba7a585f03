import { describe, expect, it } from 'vitest'
import type { Cause } from '../../../../shared/diagnosis/hypotheses.ts'
import type { Inferred } from '../../../../shared/service/diagnose/posterior/infer.ts'
import {
  type Grounds,
  holding,
  verdictOf,
} from '../../../../shared/service/diagnose/verdict/verdict.ts'

type Shares = Readonly<Partial<Record<Cause, number>>>

/** A posterior by hand: shares of the causes, what reads alike, and what each hypothesis costs. */
function inferred(
  shares: Shares,
  more: {
    readonly alike?: readonly (readonly Cause[])[]
    readonly priors?: Shares
    readonly costs?: Shares
  } = {},
): Inferred {
  const entries = Object.entries(shares) as [Cause, number][]
  const causes = entries
    .map(([cause, probability]) => ({ cause, probability, severity: 0.5 }))
    .sort((a, b) => b.probability - a.probability)
  const grouped = more.alike ?? []
  const classes = [
    ...grouped,
    ...causes.filter(({ cause }) => !grouped.flat().includes(cause)).map(({ cause }) => [cause]),
  ]
    .map((group) => ({
      causes: group,
      probability: group.reduce((sum, cause) => sum + (shares[cause] ?? 0), 0),
    }))
    .sort((a, b) => b.probability - a.probability)
  return {
    all: entries.map(([cause]) => ({
      cause,
      severity: 0.5,
      impact: more.costs?.[cause],
    })) as unknown as Inferred['all'],
    posterior: { causes, weights: Float64Array.from(entries, ([, share]) => share) },
    classes,
    priors: new Map(
      (Object.entries(more.priors ?? {}) as [Cause, number][]).map(([cause, p]) => [cause, p]),
    ),
    misfit: 0,
  }
}

const grounds = (more: Partial<Grounds> = {}): Grounds => ({
  knowledge: 'kind',
  read: 6,
  ofPattern: [],
  ...more,
})
/** "fault air+overcharge 0.90 merged" */
const said = (found: Inferred, more: Partial<Grounds> = {}) => {
  const { id, named, share, merged, soundFits } = verdictOf(found, grounds(more))
  return [
    id,
    named.join('+'),
    share.toFixed(3),
    ...(merged ? ['merged'] : []),
    ...(soundFits ? ['sound-fits'] : []),
  ].join(' ')
}

describe('a cause is named alone', () => {
  const air = (share: number) =>
    inferred({ air: share, overcharge: 1 - share }, { priors: { air: 0.5, overcharge: 0.5 } })

  // Model known: from 0.8; few readings of another: from 0.9; else from 0.85.
  it.each([
    [0.81, { knowledge: 'model' }, 'fault air 0.810'],
    [0.79, { knowledge: 'model' }, 'cannot-tell air+overcharge 1.000'],
    [0.86, {}, 'fault air 0.860'],
    [0.84, {}, 'cannot-tell air+overcharge 1.000'],
    [0.89, { read: 3 }, 'cannot-tell air+overcharge 1.000'],
    [0.91, { read: 3 }, 'fault air 0.910'],
    [0.86, { read: 4 }, 'fault air 0.860'],
    [0.81, { knowledge: 'model', read: 2 }, 'fault air 0.810'],
  ] as const)('%d, %j: %s', (share, more, verdict) => {
    expect(said(air(share), more)).toBe(verdict)
  })

  it('also that nothing is wrong, or that a reading is', () => {
    expect(said(inferred({ none: 0.9, air: 0.1 }))).toBe('no-fault-shown none 0.900')
    expect(said(inferred({ 'reading-or-test-wrong': 0.9, air: 0.1 }))).toBe(
      'reading-or-test-wrong reading-or-test-wrong 0.900',
    )
  })
})

describe('causes that read alike are named together', () => {
  it('the likeliest first, as far as each holds a tenth of the class', () => {
    const found = inferred(
      { air: 0.3, 'condenser-air': 0.6, overcharge: 0.05, none: 0.05 },
      { alike: [['air', 'condenser-air', 'overcharge']] },
    )
    expect(said(found)).toBe('fault condenser-air+air 0.900 merged')
  })

  it('open where a sound machine is among them', () => {
    const found = inferred(
      { none: 0.5, 'evaporator-air': 0.4, air: 0.1 },
      { alike: [['none', 'evaporator-air']] },
    )
    expect(said(found)).toBe('cannot-tell none+evaporator-air 0.900 merged')
  })

  it('no more than three', () => {
    const of = (...alike: readonly Cause[]) =>
      inferred(Object.fromEntries(alike.map((cause) => [cause, 1 / alike.length])), {
        alike: [alike],
      })
    expect(said(of('air', 'overcharge', 'restriction'))).toMatch(/^fault .* merged$/u)
    expect(said(of('air', 'overcharge', 'restriction', 'condenser-air'))).toMatch(/^cannot-tell/u)
  })
})

describe('where nothing is named', () => {
  it('the fewest that hold nine tenths', () => {
    const found = inferred(
      { air: 0.5, overcharge: 0.3, restriction: 0.15, 'condenser-air': 0.05 },
      { priors: { air: 0.25, overcharge: 0.25, restriction: 0.25, 'condenser-air': 0.25 } },
    )
    expect(said(found)).toBe('cannot-tell air+overcharge+restriction 0.950')
  })

  it('a sound machine first where it fits a third as well as the best, and only there', () => {
    const of = (none: number) =>
      inferred(
        { air: 0.8 - none, none, overcharge: 0.2 },
        { priors: { air: 0.4, none: 0.4, overcharge: 0.2 } },
      )
    // Of air 0.59 / 0.4, of none 0.21 / 0.4: more than a third of it.
    expect(said(of(0.21))).toBe('cannot-tell none+air+overcharge 1.000 sound-fits')
    expect(said(of(0.15))).toBe('cannot-tell air+overcharge+none 1.000')
  })

  it('no fault, where what costs hardly any cooling holds most of it and a sound machine fits', () => {
    const of = (cost: number, none = 0.4) =>
      inferred(
        { none, air: 0.8 - none, overcharge: 0.12, restriction: 0.08 },
        {
          priors: { none: 0.4, air: 0.4, overcharge: 0.1, restriction: 0.1 },
          costs: { none: 0, air: 0.02, overcharge: cost, restriction: 0.4 },
        },
      )
    expect(said(of(0.099))).toBe('no-fault-shown none 0.920')
    expect(said(of(0.1))).toBe('cannot-tell none+air+overcharge 0.920 sound-fits')
    // It does not fit: then what costs little is a fault all the same.
    expect(said(of(0.02, 0.1))).toMatch(/^cannot-tell air/u)
  })
})

describe('what a published pattern stands for', () => {
  const open = inferred(
    { overcharge: 0.4, air: 0.38, restriction: 0.2, undercharge: 0.02 },
    { priors: { overcharge: 0.25, air: 0.25, restriction: 0.25, undercharge: 0.25 } },
  )

  it('is named as its causes together, where they hold three quarters', () => {
    expect(said(open, { ofPattern: ['overcharge', 'air'] })).toBe(
      'fault overcharge+air 0.780 merged',
    )
    expect(said(open, { ofPattern: ['overcharge', 'restriction'] })).toBe(
      'cannot-tell overcharge+air+restriction 0.980',
    )
  })

  it('is added where the model makes less of it, and the verdict is open then', () => {
    expect(said(open, { ofPattern: ['undercharge'] })).toBe(
      'cannot-tell overcharge+air+restriction+undercharge 1.000',
    )
    const named = inferred({ air: 0.9, overcharge: 0.1 })
    expect(said(named, { ofPattern: ['overcharge'] })).toBe('cannot-tell air+overcharge 1.000')
  })

  it('leaves a cause of it that is named alone as it is, unless few readings name it', () => {
    const named = inferred({ air: 0.92, overcharge: 0.08 })
    expect(said(named, { ofPattern: ['overcharge', 'air'], read: 4 })).toBe('fault air 0.920')
    expect(said(named, { ofPattern: ['overcharge', 'air'], read: 3 })).toBe(
      'fault air+overcharge 1.000 merged',
    )
  })

  it('is named whole where the kind of the machine is open, whatever is likeliest', () => {
    const named = inferred({ air: 0.92, overcharge: 0.08 })
    expect(said(named, { ofPattern: ['overcharge', 'air'], knowledge: 'unknown' })).toBe(
      'fault air+overcharge 1.000 merged',
    )
  })

  it('leaves out what is as good as ruled out, and is not named when it stands for too much', () => {
    const named = inferred({ air: 0.95, overcharge: 0.046, restriction: 0.004 })
    expect(said(named, { ofPattern: ['air', 'restriction'], read: 2 })).toBe('fault air 0.950')
    const wide = inferred({
      air: 0.3,
      overcharge: 0.3,
      restriction: 0.2,
      'condenser-air': 0.1,
      undercharge: 0.1,
    })
    const five = ['air', 'overcharge', 'restriction', 'condenser-air', 'undercharge'] as const
    expect(said(wide, { ofPattern: five })).toMatch(/^cannot-tell/u)
    expect(said(wide, { ofPattern: five.slice(0, 4) })).toBe(
      'fault air+overcharge+restriction+condenser-air 0.900 merged',
    )
  })
})

describe('what the pressure at rest stands for', () => {
  it('is among the named, whatever runs', () => {
    const low = inferred({ undercharge: 0.9, air: 0.1 })
    expect(said(low, { atRest: 'air' })).toBe('cannot-tell undercharge+air 1.000')
    expect(said(low, { atRest: 'undercharge' })).toBe('fault undercharge 0.900')
    expect(said(low, { atRest: 'overcharge' })).toBe('cannot-tell undercharge+overcharge 0.900')
  })
})

describe('a fault that costs hardly any cooling', () => {
  const left = (undercharge: number, none: number) =>
    inferred(
      { undercharge, none, 'reading-or-test-wrong': 0.05 },
      { priors: { none: 0.5, undercharge: 0.5 }, costs: { undercharge: 0.01, none: 0 } },
    )

  it('leaves a machine sound where that is likelier, and open where it is itself', () => {
    expect(said(left(0.45, 0.5))).toBe('no-fault-shown none 0.950')
    expect(said(left(0.5, 0.45))).toBe('cannot-tell none+undercharge 0.950 sound-fits')
  })
})

describe('a low charge', () => {
  it('is named alone only where nearly nothing else is likely: below that with the likeliest other fault', () => {
    const low = (share: number, others: Shares) => inferred({ undercharge: share, ...others })
    expect(said(low(0.992, { restriction: 0.008 }))).toBe('fault undercharge 0.992')
    expect(said(low(0.985, { none: 0.01, restriction: 0.003, air: 0.002 }))).toBe(
      'fault undercharge+restriction 0.988 merged',
    )
    expect(said(low(0.985, { 'reading-or-test-wrong': 0.0149, air: 0.0001 }))).toBe(
      'cannot-tell undercharge 0.985',
    )
    // a pattern of the trade that says it as well does not change that, the pressure at rest does
    const ofPattern = ['undercharge'] as const
    expect(said(low(0.96, { restriction: 0.04 }), { ofPattern })).toBe(
      'fault undercharge+restriction 1.000 merged',
    )
    const atRest = 'undercharge'
    expect(said(low(0.9, { restriction: 0.1 }), { atRest })).toBe('fault undercharge 0.900')
    // of a machine of which nothing is known more is asked
    const knowledge = 'unknown'
    expect(said(low(0.995, { restriction: 0.005 }), { knowledge })).toBe(
      'fault undercharge+restriction 1.000 merged',
    )
    expect(said(low(0.9995, { restriction: 0.0005 }), { knowledge })).toBe(
      'fault undercharge 1.000',
    )
    // of no other cause that much is asked
    expect(said(inferred({ restriction: 0.9, undercharge: 0.1 }))).toBe('fault restriction 0.900')
  })
})

describe('what was ruled out', () => {
  it('is named by no pattern', () => {
    const open = inferred({ overcharge: 0.45, 'condenser-air': 0.45, air: 0.1 })
    const ofPattern = ['air', 'overcharge', 'condenser-air'] as const
    expect(said(open, { ofPattern })).toContain('air')
    expect(said(open, { ofPattern, ruledOut: ['air'] })).not.toMatch(/(?<!condenser-)air/u)
  })
})

describe('the fewest that hold a share', () => {
  const list = [0.5, 0.3, 0.2].map((probability) => ({ probability }))
  it.each([
    [0.4, 1],
    [0.5, 1],
    [0.51, 2],
    [0.8, 2],
    [0.81, 3],
    [1, 3],
    [1.1, 3],
  ])('%d: %i of three', (share, count) => {
    expect(holding(list, share)).toHaveLength(count)
  })

  it('rounding does not ask for one more', () => {
    const thirds = [1 / 3, 1 / 3, 1 / 3 - 1e-12].map((probability) => ({ probability }))
    expect(holding([...thirds, { probability: 0 }], 1)).toHaveLength(3)
  })
})
