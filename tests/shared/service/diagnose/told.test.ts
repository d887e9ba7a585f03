import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Figure } from '../../../../shared/answer/told.ts'
import type { Cause } from '../../../../shared/diagnosis/hypotheses.ts'
import { DOUBTS, type Doubt } from '../../../../shared/diagnosis/mistakes.ts'
import type { Ranked } from '../../../../shared/diagnosis/posterior.ts'
import {
  capital,
  inTenths,
  listed,
  nameOf,
  TEXTS,
} from '../../../../shared/service/diagnose/verdict/texts.ts'
import {
  diagnoseTold,
  type Known,
  opensIt,
} from '../../../../shared/service/diagnose/verdict/told.ts'
import type { Verdict } from '../../../../shared/service/diagnose/verdict/verdict.ts'

const step = (id: string) => ({ id, minutes: 1, gain: 1, perMinute: 1 })
const ranked = (shares: Readonly<Record<string, number>>, severity = 0.4): readonly Ranked[] =>
  Object.entries(shares).map(([cause, probability]) => ({
    cause: cause as Cause,
    probability,
    severity: cause === 'none' || cause === 'reading-or-test-wrong' ? 0 : severity,
  }))
const told = (verdict: Partial<Verdict>, more: Partial<Known> = {}) =>
  diagnoseTold({
    verdict: { id: 'fault', named: ['air'], share: 0.84, merged: false, ...verdict },
    causes: [],
    steps: [step('ventK'), step('feel-line'), step('bulb')],
    doubts: [],
    inVacuum: false,
    figures: [],
    ...more,
  })

const VENT = 'Read the vent, and the air going in'
const FEEL = 'Feel for a cold spot along the liquid line'
const AIR = 'At rest compare pressure and air (air-check)'
const LEAK = 'Find the leak first, then recover and weigh in'
const ADD_NOTHING = 'Add nothing by pressure: leak first, then recover and weigh in'

/** [what was found, verdict, level, headline, next] */
type Row = readonly [string, Partial<Verdict>, string, string, readonly string[]]

describe('what a verdict is told as', () => {
  it.each<Row>([
    [
      'one fault',
      { named: ['air'], share: 0.84 },
      'check',
      'Air in the system is likely ({first}): at rest compare pressure and air (air-check).',
      [AIR, VENT, FEEL],
    ],
    [
      'one fault, nine tenths and more',
      { named: ['condenser-air'], share: 0.9 },
      'check',
      'Condenser air flow is very likely ({first}): wash the condenser, check its fan, read again.',
      ['Wash the condenser, check its fan, read again', VENT, FEEL],
    ],
    [
      'one fault, a little less than nine tenths',
      { named: ['condenser-air'], share: 0.899 },
      'check',
      'Condenser air flow is likely ({first}): wash the condenser, check its fan, read again.',
      ['Wash the condenser, check its fan, read again', VENT, FEEL],
    ],
    [
      'a low charge alone: its leak, and nothing else is said of adding',
      { named: ['undercharge'], share: 0.95 },
      'check',
      'Low charge is very likely ({first}): find the leak first, then recover and weigh in.',
      [LEAK, VENT, FEEL],
    ],
    [
      'causes that read alike: the reading that parts them comes first',
      { named: ['condenser-air', 'air'], share: 0.93, merged: true },
      'check',
      'Condenser air flow or air in the system: these readings do not part them ({first} together). Read the vent, and the air going in.',
      [VENT, FEEL, 'Wash the condenser, check its fan, read again'],
    ],
    [
      'a low charge among others: never by pressure, and not as if it were it',
      { named: ['undercharge', 'restriction'], share: 0.9, merged: true },
      'check',
      'Low charge or restriction: these readings do not part them ({first} together). Read the vent, and the air going in.',
      [VENT, FEEL, ADD_NOTHING],
    ],
    [
      'a class with a sound machine in it',
      { id: 'cannot-tell', named: ['none', 'evaporator-air'], share: 0.9, merged: true },
      'check',
      'No fault or evaporator air flow read alike here ({first} together). Read the vent, and the air going in.',
      [VENT, FEEL, 'Read vent, humidity and the air at the condenser'],
    ],
    [
      'nothing that can be told apart',
      { id: 'cannot-tell', named: ['overcharge', 'air'], share: 0.92 },
      'check',
      'Cannot tell yet: overcharge or air in the system ({first} together). Read the vent, and the air going in.',
      [VENT, FEEL, 'Recover, weigh in the label charge'],
    ],
    [
      'the same with a wrong reading before it: the machine is named first',
      { id: 'cannot-tell', named: ['reading-or-test-wrong', 'air'], share: 0.92 },
      'check',
      'Cannot tell yet: air in the system or a wrong reading or test condition ({first} together). Read the vent, and the air going in.',
      [VENT, FEEL, 'Check hoses, probes, speed and air, read again'],
    ],
    [
      'a sound machine that fits as well as the others',
      {
        id: 'cannot-tell',
        named: ['none', 'air', 'overcharge'],
        share: 0.91,
        soundFits: true,
      },
      'check',
      'No one fault shown: none, air in the system or overcharge fit alike. Read the vent, and the air going in.',
      [VENT, FEEL, 'Read vent, humidity and the air at the condenser'],
    ],
    [
      'no fault',
      { id: 'no-fault-shown', named: ['none'], share: 0.88 },
      'information',
      'No fault shown ({first}), or none that costs cooling. If it cools badly: read vent, humidity and the air at the condenser.',
      ['Read vent, humidity and the air at the condenser', VENT, FEEL],
    ],
    [
      'a wrong reading',
      { id: 'reading-or-test-wrong', named: ['reading-or-test-wrong'], share: 0.86 },
      'check',
      'Readings fit no one fault ({first} a wrong reading or test). Check hoses, probes, speed and air, read again.',
      ['Check hoses, probes, speed and air, read again', VENT, FEEL],
    ],
  ])('%s', (_, verdict, level, headline, next) => {
    const { figures, ...said } = told(verdict)
    expect(said).toEqual({ level, headline, next })
    expect(figures[0]).toMatchObject({ id: 'first', label: 'Likely' })
  })

  it('where nothing is left to read, what the causes ask for, else to read again', () => {
    const alike = { id: 'cannot-tell', named: ['air', 'overcharge'], share: 0.9 } as const
    expect(told(alike, { steps: [] }).next).toEqual([AIR, 'Recover, weigh in the label charge'])
    const low = told({ id: 'cannot-tell', named: ['undercharge', 'undercharge'] }, { steps: [] })
    expect(low.next).toEqual([ADD_NOTHING])
    expect(low.headline).toContain(ADD_NOTHING)
    expect(told({ named: [] }, { steps: [] }).headline).toContain(TEXTS.nothingMore)
  })

  it('says nothing twice: a cause and a look that ask for the same are one', () => {
    const { next } = told(
      { named: ['condenser-air'], share: 0.9 },
      { steps: [step('wash-condenser'), step('ventK')] },
    )
    expect(next).toEqual(['Wash the condenser, check its fan, read again', VENT])
  })

  it('in vacuum: stop it, before anything else', () => {
    const { next, headline } = told({ named: ['restriction'] }, { inVacuum: true })
    expect(next[0]).toBe('Stop it before it draws in air')
    expect(headline).toContain(': stop it before it draws in air.')
    const among = told({ named: ['undercharge', 'restriction'], merged: true }, { inVacuum: true })
    expect(among.next).toEqual(['Stop it before it draws in air', VENT, ADD_NOTHING])
  })

  it.each(DOUBTS)('a reading that is doubted is checked first: %s', (doubt) => {
    const wrong = { id: 'reading-or-test-wrong', named: ['reading-or-test-wrong'] } as const
    const { next, headline } = told(wrong, { doubts: [doubt, 'anything'] })
    expect(next[0]).toBe(capital(TEXTS.doubts[doubt]))
    expect(headline).toContain(next[0])
    // Nothing is doubted where a cause is named.
    expect(told({ named: ['air'] }, { doubts: [doubt] }).next[0]).toBe(AIR)
  })
})

describe('what is told beside the headline', () => {
  const causes = ranked({ air: 0.6, overcharge: 0.26, none: 0.1, restriction: 0.04 })

  it('the likeliest with how bad it is, and the next likeliest', () => {
    const shown = (severity: number) =>
      told({ named: ['air'], share: 0.6 }, { causes: ranked({ air: 0.6 }, severity) }).figures
    expect(shown(0.24)).toEqual([
      { id: 'first', label: 'Likely', value: '6 of 10', says: 'air in the system, slight' },
    ])
    expect(shown(0.25)[0]?.says).toBe('air in the system, clear')
    expect(shown(0.59)[0]?.says).toBe('air in the system, clear')
    expect(shown(0.6)[0]?.says).toBe('air in the system, severe')
    expect(shown(0)[0]?.says).toBe('air in the system')
    expect(told({ named: ['air'], share: 0.6 }, { causes }).figures).toEqual([
      { id: 'first', label: 'Likely', value: '6 of 10', says: 'air in the system, clear' },
      { id: 'second', label: 'Else', value: '3 of 10', says: 'overcharge' },
    ])
  })

  it('several together without how bad, a wrong reading last, and none of them as another', () => {
    const all = ranked({ 'reading-or-test-wrong': 0.5, air: 0.3, overcharge: 0.15, none: 0.05 })
    const named = ['reading-or-test-wrong', 'air'] as const
    expect(told({ id: 'cannot-tell', named, share: 0.8 }, { causes: all }).figures).toEqual([
      {
        ...{ id: 'first', label: 'Likely', value: '8 of 10' },
        says: 'air in the system or a wrong reading or test condition',
      },
      { id: 'second', label: 'Else', value: '2 of 10', says: 'overcharge' },
    ])
  })

  it('no other that is less likely than one in twenty', () => {
    const other = (share: number) =>
      told({ named: ['air'], share: 0.9 }, { causes: ranked({ air: 0.9, overcharge: share }) })
        .figures.length
    expect(other(0.049)).toBe(1)
    expect(other(0.051)).toBe(2)
  })

  it('the readings behind them, six in all', () => {
    const figures = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map(
      (id): Figure => ({ id, label: id, value: 1, says: id }),
    )
    const ids = (list: readonly Figure[]) => list.map(({ id }) => id).join(' ')
    expect(ids(told({ named: ['air'] }, { figures, causes }).figures)).toBe('first second a b c d')
    expect(ids(told({ named: ['air'] }, { figures }).figures)).toBe('first a b c d e')
  })

  it.each([
    [0.04, 'under 1 of 10'],
    [0.05, '1 of 10'],
    [0.14, '1 of 10'],
    [0.25, '3 of 10'],
    [0.94, '9 of 10'],
    [0.95, 'over 9 of 10'],
    [1, 'over 9 of 10'],
    [0, 'under 1 of 10'],
  ])('a share of %d as "%s"', (share, words) => {
    expect(inTenths(share)).toBe(words)
  })

  it.each<[readonly Cause[], number | undefined, string]>([
    [[], undefined, ''],
    [['air'], undefined, 'air in the system'],
    [['air', 'overcharge'], undefined, 'air in the system or overcharge'],
    [['air', 'overcharge', 'none'], undefined, 'air in the system, overcharge or no fault'],
    [
      ['air', 'overcharge', 'none', 'restriction'],
      undefined,
      'air in the system, overcharge, no fault or another',
    ],
    [['air', 'overcharge', 'none'], 1, 'air in the system or another'],
  ])('%j, at most %s by name: %s', (causes, most, words) => {
    expect(listed(causes, most)).toBe(words)
  })
})

describe('whether what is told opens the system', () => {
  const asks = (named: readonly Cause[], ...ids: readonly string[]) =>
    opensIt({
      verdict: { id: 'fault', named, share: 0.9, merged: named.length > 1 },
      steps: ids.map(step),
    })

  it('a charge that is wrong, or weighing it among the three next', () => {
    expect(asks(['undercharge'])).toBe(true)
    expect(asks(['air', 'overcharge'])).toBe(true)
    expect(asks(['air'], 'ventK', 'bulb', 'chargeShare')).toBe(true)
    expect(asks(['air'], 'ventK', 'bulb', 'feel-line', 'chargeShare')).toBe(false)
    expect(asks(['condenser-air'], 'ventK')).toBe(false)
    expect(asks([])).toBe(false)
  })
})

describe('whatever is found', () => {
  const cause = fc.constantFrom(...(Object.keys(TEXTS.causes) as Cause[]))
  const anything = fc.record({
    named: fc.uniqueArray(cause, { minLength: 1, maxLength: 4 }),
    id: fc.constantFrom('fault', 'cannot-tell'),
    merged: fc.boolean(),
    soundFits: fc.boolean(),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    steps: fc.uniqueArray(fc.constantFrom(...Object.keys(TEXTS.steps)), { maxLength: 6 }),
    inVacuum: fc.boolean(),
    doubts: fc.uniqueArray(fc.constantFrom<Doubt>(...DOUBTS), { maxLength: 2 }),
  })

  it('nobody is told to add refrigerant, a low charge among others is not acted on, and the first to do is in the headline', () => {
    fc.assert(
      fc.property(anything, ({ named, id, merged, soundFits, share, steps, inVacuum, doubts }) => {
        // A fault is one cause, or several that read alike.
        const several = named.length > 1 && (merged || id === 'fault')
        const verdict = { id, named, share, merged: several } as const
        const said = told(
          {
            ...verdict,
            ...(soundFits && id === 'cannot-tell' && named[0] === 'none' && { soundFits }),
          },
          { steps: steps.map(step), inVacuum, doubts },
        )
        const text = [said.headline, ...said.next].join(' ').replaceAll(ADD_NOTHING, '')
        expect(text).not.toMatch(/\badd\b|top up|fill\b/iu)
        if (named.length > 1) expect(said.next).not.toContain(LEAK)
        if (named.includes('undercharge') && named.length > 1)
          expect(said.next).toContain(ADD_NOTHING)
        else expect(said.next).not.toContain(ADD_NOTHING)
        expect(said.headline.toLowerCase()).toContain((said.next[0] ?? '').toLowerCase())
        expect(said.next.length).toBeLessThanOrEqual(3)
        if (inVacuum) expect(said.next[0]).toBe('Stop it before it draws in air')
        // What is named first stands there by name.
        const [first] = named.filter((each) => each !== 'reading-or-test-wrong')
        if (id === 'fault' && first !== undefined)
          expect(said.headline.toLowerCase()).toContain(nameOf(first).toLowerCase())
      }),
      { numRuns: 300 },
    )
  })
})
