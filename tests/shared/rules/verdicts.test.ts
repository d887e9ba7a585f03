import { describe, expect, it } from 'vitest'
import { refrigerant } from '../../../shared/refrigerant/index.ts'
import { cautionsFor, certificateSentence, warningsFor } from '../../../shared/rules/advice.ts'
import type { CertificateAnswer } from '../../../shared/rules/certificate.ts'
import { type Decision, decide } from '../../../shared/rules/decide.ts'
import type { Facts } from '../../../shared/rules/facts.ts'
import { rulesTold } from '../../../shared/rules/told.ts'
import { loader, factsOf as of } from '../../support/loader-facts.ts'

const real = decide('us-federal', loader, undefined)
/** The decision of a loader, with what is asked and held by hand. */
const made = (certificate: Partial<CertificateAnswer>, more: Partial<Decision> = {}): Decision => ({
  ...real,
  certificate: { ...real.certificate, ...certificate },
  ...more,
})
const told = (decision: Decision, facts: Partial<Facts> = {}) =>
  rulesTold(decision, { ...loader, ...facts })

const NAMED = ['us-609'] as const
const TEXT = '(40 CFR 82.34, 82.161; 2015 text)'
const TWO_REGIMES = { regime: { ...real.regime, ids: ['mvac', 'mvac-like'], missing: ['machine'] } }

describe('a decision in one sentence', () => {
  it.each<readonly [string, Partial<CertificateAnswer>, Partial<Decision>, string, string]>([
    [
      'held, and enough',
      { held: 'enough', anyOf: NAMED },
      {},
      'fine',
      `What is held is enough to recover from this machine: {certificate} {text}.`,
    ],
    [
      'enough, whichever of two regimes binds',
      { held: 'enough', anyOf: NAMED, missing: ['labelCharge'] },
      TWO_REGIMES,
      'check',
      'What is held is enough either way, but which rules bind depends on: label charge, machine.',
    ],
    [
      'held, and not enough',
      { held: 'not-enough', anyOf: NAMED },
      {},
      'stop',
      'Do not recover from this machine, paid or not, unless a supervised apprentice: it takes a certificate: {certificate} {text}.',
    ],
    [
      'none is needed',
      { held: 'not-needed', needed: 'not-required', anyOf: [] },
      {},
      'fine',
      'To recover from this machine takes no certificate {text}; the other rules bind all the same.',
    ],
    [
      'required, and nobody said what is held',
      { held: 'not-given', needed: 'required', anyOf: NAMED },
      {},
      'check',
      'To recover from this machine takes a certificate: {certificate} {text}. Say which certificates are held.',
    ],
    [
      'required, which one not known',
      { held: 'not-given', needed: 'required', anyOf: [], missing: ['labelCharge'] },
      {},
      'check',
      'To recover from this machine takes a certificate; which one depends on: label charge {text}.',
    ],
    [
      'perhaps required, one enough in any case',
      { held: 'not-given', needed: 'depends', anyOf: NAMED, missing: ['forPay'] },
      {},
      'check',
      'Whether to recover from this machine takes a certificate depends on: paid or not; enough in any case: {certificate} {text}.',
    ],
    [
      'perhaps required, which one not known either',
      { held: 'not-given', needed: 'depends', anyOf: [], missing: ['forPay'] },
      {},
      'check',
      'Whether to recover from this machine takes a certificate, and which, depends on: paid or not {text}.',
    ],
    [
      'something is held, and one would be enough in any case',
      { held: 'cannot-tell', needed: 'depends', anyOf: NAMED, missing: ['forPay'] },
      {},
      'check',
      'Cannot tell whether what is held is enough to recover from this machine: it depends on: paid or not. Enough: {certificate} {text}.',
    ],
    [
      'something is held, and none is named',
      { held: 'cannot-tell', needed: 'depends', anyOf: [], missing: ['forPay'] },
      {},
      'check',
      'Whether to recover from this machine takes a certificate, and which, depends on: paid or not {text}.',
    ],
    [
      'the text does not settle it',
      { held: 'not-given', needed: 'look-up', anyOf: [] },
      {},
      'check',
      'Look up which certificate it takes to recover from this machine: this text does not settle it {text}.',
    ],
    [
      'the same, though something is held',
      { held: 'cannot-tell', needed: 'look-up', anyOf: NAMED },
      {},
      'check',
      'Look up which certificate it takes to recover from this machine: this text does not settle it {text}.',
    ],
  ])('%s', (_, certificate, more, level, headline) => {
    const said = told(made(certificate, more))
    const text = said.figures.find(({ id }) => id === 'text')?.value
    expect(`(${text})`).toBe(TEXT)
    expect(said.level).toBe(level)
    // Short enough that the first, whole sentence fits.
    expect(said.headline.replace('({text})', '{text}')).toBe(headline)
  })

  it('what would settle it is the place, or the kind of certificate, where no fact is missing', () => {
    const open = { held: 'not-given', needed: 'required', anyOf: [], missing: [] } as const
    expect(told(made({ ...open, settled: true, placeDecides: true })).headline).toContain(
      'depends on: the place: federal or province',
    )
    expect(told(made({ ...open, settled: true, placeDecides: false })).headline).toContain(
      'depends on: the kind of certificate, to be looked up',
    )
    expect(told(made({ ...open, settled: false, placeDecides: true })).headline).toContain(
      'depends on: the kind of certificate, to be looked up',
    )
  })

  it('what is forbidden comes before whatever is held', () => {
    const unfit = { use: { ...real.use, answers: ['not-acceptable'] } }
    const enough = { held: 'enough', anyOf: NAMED } as const
    const charging = { action: 'charge', refrigerant: of('R-290') } as const
    expect(told(made(enough, unfit), charging)).toMatchObject({
      level: 'stop',
      headline: expect.stringMatching(/^Do not charge R-290 into this machine: it burns/u),
      next: ['Keep it out; find out what the machine was made for', expect.any(String)],
    })
    // To recover it is another matter.
    expect(told(made(enough, unfit), { ...charging, action: 'recover' }).level).toBe('fine')
    const retrofit = { action: 'retrofit', to: of('R-290') } as const
    expect(told(made(enough), retrofit)).toMatchObject({
      level: 'stop',
      headline: expect.stringMatching(/^Do not convert this machine to R-290/u),
    })
    expect(told(made(enough), { ...retrofit, to: of('R-134a') }).level).toBe('fine')
    expect(told(made(enough), { ...retrofit, action: 'recover' }).level).toBe('fine')
    const refused = { retrofit: { ...real.retrofit, answers: ['not-acceptable'] } }
    expect(told(made(enough, refused), { ...retrofit, to: of('R-134a') }).level).toBe('stop')
  })
})

describe('the certificate in whole sentences', () => {
  const says = (more: Partial<CertificateAnswer>) =>
    certificateSentence({
      ...{ needed: 'required', anyOf: [], settled: true, missing: ['labelCharge'] },
      ...{ placeDecides: false, cites: [], held: 'not-given' },
      ...more,
    } as CertificateAnswer)

  it.each<readonly [Partial<CertificateAnswer>, RegExp]>([
    [{ anyOf: NAMED }, /^A certificate is required: [^;]*609[^;]*\. Which certificates are held/u],
    [
      { anyOf: NAMED, settled: false },
      /^A certificate is required; which one depends on label charge\. Enough in any case: .*609/u,
    ],
    [{ settled: false }, /^A certificate is required; which one depends on label charge\. Which/u],
    [{ needed: 'not-required', held: 'not-needed' }, /^No certificate is required by this law\.$/u],
    [{ needed: 'look-up' }, /^Look up whether a certificate is required: see the statements\. Wh/u],
    [
      { needed: 'depends', anyOf: NAMED },
      /^Whether a certificate is required depends on label charge; enough in any case: .*609/u,
    ],
    [{ needed: 'depends' }, /^Whether a certificate is required depends on label charge\. Which/u],
    [{ anyOf: NAMED, held: 'enough' }, / What is held is enough\.$/u],
    [{ anyOf: NAMED, held: 'not-enough' }, / What is held is not enough: do not do this work\.$/u],
    [{ anyOf: NAMED, held: 'cannot-tell' }, / Whether what is held is enough cannot be told\.$/u],
  ])('%j', (more, words) => {
    expect(says(more)).toMatch(words)
  })
})

describe('what is warned of, and what can hurt', () => {
  const codes = (decision: Decision, facts: Partial<Facts> = {}, unverified = 0) =>
    warningsFor(
      decision,
      { ...loader, ...facts },
      real.certificate.statements.slice(0, 1).flatMap((one) => Array(unverified).fill(one)),
    )

  it('two regimes: which fact decides, or which statement is to be looked up', () => {
    expect(codes(made({}, TWO_REGIMES))).toEqual([
      { code: 'regime-undecided', message: 'Which regime binds is not decided: give machine.' },
    ])
    expect(codes(made({}, { regime: { ...TWO_REGIMES.regime, missing: [] } }))[0]?.message).toBe(
      'Which regime binds is not decided: look up the statement that is marked unverified.',
    )
    expect(codes(real)).toEqual([])
  })

  it('what is held or charged that may not be, and what is from memory', () => {
    const of1 = (decision: Decision, facts?: Partial<Facts>) =>
      codes(decision, facts).map(({ code }) => code)
    expect(of1(made({ held: 'not-enough' }))).toEqual(['certificate-not-enough'])
    const unfit = made({}, { use: { ...real.use, answers: ['not-acceptable'] } })
    expect(of1(unfit, { action: 'charge' })).toEqual(['refrigerant-not-acceptable'])
    expect(of1(unfit, { action: 'recover' })).toEqual([])
    expect(of1(real, { action: 'retrofit', to: of('R-290') })).toEqual(['flammable-retrofit'])
    expect(of1(real, { action: 'retrofit', to: of('R-744') })).toEqual([])
    expect(of1(real, { action: 'charge', to: of('R-290') })).toEqual([])
    expect(codes(real, {}, 1)[0]?.message).toMatch(/^One statement is from memory/u)
    expect(codes(real, {}, 3)[0]?.message).toMatch(/^3 statements are from memory/u)
  })

  it('cautions by the action, the refrigerants in and coming, and the exemption from venting', () => {
    const cautions = (action: Facts['action'], more: Partial<Facts> = {}, decision = real) =>
      cautionsFor({ ...loader, action, ...more }, decision, refrigerant('R-134a'), undefined)
    expect(cautions('open')).toContain('no-venting')
    expect(cautions('buy')).toEqual(['no-venting'])
    const exempt = made({}, { venting: { ...real.venting, answers: ['exempt'] } })
    expect(cautions('open', {}, exempt)).not.toContain('no-venting')
    const mixed = made({}, { venting: { ...real.venting, answers: ['exempt', 'prohibited'] } })
    expect(cautions('open', {}, mixed)).toContain('no-venting')
    const coming = (name: string) =>
      cautionsFor(
        { ...loader, action: 'retrofit', to: of(name) },
        real,
        refrigerant('R-134a'),
        refrigerant(name),
      )
    expect(coming('R-290')).toEqual(expect.arrayContaining(['flammable', 'no-flammable-retrofit']))
    expect(coming('R-407C')).not.toContain('no-flammable-retrofit')
    expect(coming('R-407C')).not.toContain('flammable')
  })
})
