import { describe, expect, it } from 'vitest'
import told from '../../../data/rules/told.json' with { type: 'json' }
import { LONGEST_HEADLINE } from '../../../shared/answer/told.ts'
import { COMPRESSOR_DRIVES, LAWS, MACHINES } from '../../../shared/fields/index.ts'
import { CERTIFICATE_IDS } from '../../../shared/rules/library.ts'
import { rules } from '../../../shared/rules/rules.ts'
import { ACTIONS, TOPICS } from '../../../shared/rules/types.ts'

type Input = Record<string, unknown>
const loader = {
  law: 'us-federal',
  machine: 'off-road',
  compressorDrive: 'open',
  refrigerant: 'R-134a',
  labelCharge: '3 lb 8 oz',
  action: 'open',
}
/** As it stands in the data: an answer may begin it with a capital, and fill its slots. */
const plain = (text: string) => text.toLowerCase()
const startsAlike = (text: string, start: string) => plain(text).startsWith(plain(start))
const ask = (input: Input) => rules.run({ ...loader, ...input })

describe('the first line of the rules', () => {
  const cells: [string, Input, string, string][] = [
    [
      'no certificate',
      { certificates: [] },
      'stop',
      'Do not open or charge this machine, paid or not, unless a supervised apprentice: it takes 609, 608 Type II or Universal (40 CFR 82.34, 82.161; 2015 text).',
    ],
    [
      'the wrong certificate',
      { certificates: ['us-608-type-i'] },
      'stop',
      'Do not open or charge this machine, paid or not, unless a supervised apprentice: it takes 609, 608 Type II or Universal (40 CFR 82.34, 82.161; 2015 text).',
    ],
    [
      'nobody said which',
      {},
      'check',
      'To open or charge this machine takes a certificate: 609, 608 Type II or Universal (40 CFR 82.34, 82.161; 2015 text). Say which certificates are held.',
    ],
    [
      'the right one',
      { certificates: ['us-609'] },
      'fine',
      'What is held is enough to open or charge this machine: 609, 608 Type II or Universal (40 CFR 82.34, 82.161; 2015 text).',
    ],
    [
      'paid work on a vehicle without one',
      { machine: 'road-vehicle', forPay: true, certificates: [] },
      'stop',
      'Do not open or charge this machine for pay: it takes a certificate: 609 (40 CFR 82.34; copy of June 2026).',
    ],
    [
      'an own vehicle',
      { machine: 'road-vehicle', ownMachine: true },
      'fine',
      'To open or charge this machine takes no certificate (40 CFR 82.30, 82.34); the other rules bind all the same.',
    ],
    [
      'a charge that would decide',
      { labelCharge: undefined, certificates: ['us-609'] },
      'check',
      'Cannot tell whether what is held is enough: it depends on: label charge. Enough: 608 Type II or Universal.',
    ],
    [
      'propane into a loader',
      { refrigerant: 'R-290', action: 'charge', certificates: ['us-609'] },
      'stop',
      'Do not charge R-290 into this machine: it burns and is not acceptable there (40 CFR part 82 subpart G, appendix B; 2015 text).',
    ],
    [
      'a conversion to propane',
      { action: 'retrofit', newRefrigerant: 'R-290', certificates: ['us-609'] },
      'stop',
      'Do not convert this machine to R-290: that is not acceptable (40 CFR part 82 subpart G).',
    ],
    [
      'a licence in Australia',
      { law: 'australia', certificates: [] },
      'stop',
      'Do not open or charge this machine: it takes a certificate: handling licence (Regulations 1995, reg. 111).',
    ],
    [
      'the United Kingdom',
      { law: 'uk' },
      'check',
      'Look up which certificate it takes to open or charge this machine: this text does not settle it (guidance of 2010).',
    ],
  ]
  it.each(cells)('%s', (_, input, level, headline) => {
    expect(ask(input)).toMatchObject({ level, headline })
  })

  it('tells regime, certificate, text, venting, equipment and records, in that order', () => {
    const { figures = [] } = ask({})
    expect(figures.map(({ id }) => id)).toEqual([
      'regime',
      'certificate',
      'text',
      'venting',
      'equipment',
      'records',
    ])
    expect(figures.find(({ id }) => id === 'venting')?.text).toBe('do not vent; recover')
    expect(figures.find(({ id }) => id === 'equipment')?.text).toBe('40 CFR 82.36; 2015 text')
    expect(ask({ refrigerant: 'R-744' }).figures?.find(({ id }) => id === 'venting')?.text).toBe(
      'R-744 may be let out slowly, outdoors',
    )
  })

  it('says what to do next, what would decide first', () => {
    expect(ask({}).next?.[0]).toBe('Say which certificates the worker holds')
    expect(ask({ certificates: ['us-609'], labelCharge: undefined }).next?.[0]).toMatch(
      /label charge/u,
    )
    expect(ask({ certificates: [] }).next).toEqual([
      'Have somebody do it who holds the certificate',
      'Until then leave the system closed',
      'An apprentice: only under close supervision, all the time',
    ])
  })
})

describe('in every cell', () => {
  it('stops exactly where what is held is not enough or the refrigerant may not go in, in one line', () => {
    let stops = 0
    for (const law of LAWS)
      for (const machine of MACHINES)
        for (const compressorDrive of [undefined, ...COMPRESSOR_DRIVES])
          for (const refrigerant of ['R-134a', 'R-744', 'R-290', 'R-1234yf', 'R-22'])
            for (const action of ACTIONS.filter((entry) => entry !== 'retrofit'))
              for (const certificates of [undefined, [], [...CERTIFICATE_IDS]]) {
                const input = { law, machine, compressorDrive, refrigerant, action, certificates }
                const { level, headline = '', result, figures = [], next = [] } = ask(input)
                const forbidden =
                  action === 'charge' && result.use.answers.includes('not-acceptable')
                const stop = result.certificate.held === 'not-enough' || forbidden
                expect(level === 'stop', JSON.stringify(input)).toBe(stop)
                expect(headline.length, headline).toBeLessThanOrEqual(LONGEST_HEADLINE)
                expect(figures.length).toBeLessThanOrEqual(6)
                expect(next.length).toBeLessThanOrEqual(3)
                if (level === 'fine') {
                  expect(['enough', 'not-needed']).toContain(result.certificate.held)
                }
                stops += stop ? 1 : 0
              }
    expect(stops).toBeGreaterThan(100)
  })
})

describe('the sentence on the certificate', () => {
  it('says what is needed, names whatever suffices, and what would decide', () => {
    let named = 0
    for (const law of LAWS)
      for (const machine of MACHINES)
        for (const compressorDrive of [undefined, ...COMPRESSOR_DRIVES])
          for (const refrigerant of ['R-134a', 'R-744', 'R-22'])
            for (const certificates of [undefined, [], [...CERTIFICATE_IDS]]) {
              const { result } = ask({ law, machine, compressorDrive, refrigerant, certificates })
              const { says, needed, anyOf, held } = result.certificate
              const inAnyCase = /(?:required|in any case): [A-Z]/u.test(says)
              if (needed === 'required' || needed === 'depends') {
                for (const { name } of anyOf) expect(says).toContain(name)
                expect(inAnyCase, says).toBe(anyOf.length > 0)
                named += anyOf.length > 0 ? 1 : 0
              }
              expect(says).toMatch(
                {
                  required: /^A certificate is required[:;] /u,
                  'not-required': /^No certificate is required by this law\./u,
                  'look-up': /^Look up whether a certificate is required: see the statements\./u,
                  depends: /^Whether a certificate is required depends on \S/u,
                }[needed],
              )
              expect(says).toMatch(
                {
                  enough: / What is held is enough\.$/u,
                  'not-enough': / What is held is not enough: do not do this work\.$/u,
                  'not-needed': /law\.$/u,
                  'not-given': / Which certificates are held was not given\.$/u,
                  'cannot-tell': / Whether what is held is enough cannot be told\.$/u,
                }[held],
              )
            }
    expect(named).toBeGreaterThan(100)
  })
})

describe('what was not read', () => {
  it('is exactly what is listed and warned of as unverified', () => {
    const counts = { none: 0, some: 0 }
    for (const law of LAWS)
      for (const machine of MACHINES)
        for (const action of ACTIONS.filter((entry) => entry !== 'retrofit')) {
          const { result, warnings } = ask({ law, machine, action })
          const remembered = TOPICS.flatMap((topic) => result[topic]?.statements ?? [])
            .filter(({ mark }) => mark === 'memory')
            .map(({ id }) => id)
          expect([...new Set(result.unverified)].sort()).toEqual([...new Set(remembered)].sort())
          const warned = warnings.find(({ code }) => code === 'unverified')
          expect(warned !== undefined).toBe(remembered.length > 0)
          counts[remembered.length > 0 ? 'some' : 'none'] += 1
        }
    expect(counts.none).toBeGreaterThan(0)
    expect(counts.some).toBeGreaterThan(0)
  })
})

it('a meaning that would not fit beside its figure is left out, up to 70 letters', () => {
  const lengths = LAWS.flatMap((law) =>
    MACHINES.flatMap((machine) =>
      ['R-134a', 'R-744', 'R-22'].flatMap((refrigerant) =>
        (ask({ law, machine, refrigerant }).figures ?? [])
          .filter(({ id }) => id === 'equipment' || id === 'records')
          .map(({ says = '' }) => says.length),
      ),
    ),
  )
  expect(Math.max(...lengths)).toBeGreaterThan(30)
  expect(Math.max(...lengths)).toBeLessThanOrEqual(70)
})

describe('what to do next', () => {
  it('asks for exactly what is open, in order, at most three', () => {
    const texts = told.next
    const seen = new Set<string>()
    for (const law of LAWS)
      for (const machine of MACHINES)
        for (const refrigerant of ['R-134a', 'R-744', 'R-22', 'R-1234yf'])
          for (const action of ACTIONS.filter((entry) => entry !== 'retrofit'))
            for (const certificates of [undefined, [...CERTIFICATE_IDS]]) {
              const input = { law, machine, refrigerant, action, certificates }
              const { result, next = [], headline = '' } = ask({ ...input, labelCharge: undefined })
              const { certificate, regime, equipment, records, use } = result
              if (use.answers.includes('not-acceptable') || certificate.held === 'not-enough')
                continue
              const remembered = certificate.statements.some(({ mark }) => mark === 'memory')
              const open = [...certificate.missing, ...regime.missing].length > 0
              const expected = [
                ...(certificate.held === 'not-given' ? [texts['give-certificates']] : []),
                ...(open ? ['facts'] : []),
                ...(remembered || certificate.needed === 'look-up' ? [texts['look-up']] : []),
                ...(equipment.statements.length > 0 ? [texts.equipment] : []),
                ...(records.statements.length > 0 ? [texts.records] : []),
              ].slice(0, 3)
              const facts = texts['give-facts'].split('{')[0] ?? ''
              const found = next.map((text) => (startsAlike(text, facts) ? 'facts' : text))
              expect(found.map(plain), `${JSON.stringify(input)} ${headline}`).toEqual(
                expected.map(plain),
              )
              for (const text of found) seen.add(text)
            }
    expect(seen.size).toBeGreaterThanOrEqual(5)
  })

  it('warns of propane in a vehicle before it is charged, and of nothing such where it may be in', () => {
    const cautions = (more: Input) => ask(more).cautions.map(({ id }) => id)
    const vehicle = { machine: 'road-vehicle', action: 'charge' }
    expect(cautions({ ...vehicle, refrigerant: 'R-290' })).toContain('no-flammable-retrofit')
    expect(cautions({ ...vehicle, refrigerant: 'R-134a' })).not.toContain('no-flammable-retrofit')
    expect(cautions({ ...vehicle, refrigerant: 'R-1234yf' })).not.toContain('no-flammable-retrofit')
  })
})
