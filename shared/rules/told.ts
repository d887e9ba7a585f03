import data from '../../data/rules/told.json' with { type: 'json' }
import { fitting } from '../answer/fitting.ts'
import { type Figure, type Level, LONGEST_HEADLINE, MOST_NEXT, type Told } from '../answer/told.ts'
import { fillIn } from '../sentence.ts'
import type { Decision, Statement } from './decide.ts'
import type { Facts } from './facts.ts'
import { inWords, shortCitation, shortNames } from './words.ts'

type Verdict = keyof typeof data.headlines

const { headlines, labels, says, next, acts, unless, settles, line } = data

const LEVEL: Readonly<Record<Verdict, Level>> = {
  'not-acceptable': 'stop',
  'no-conversion': 'stop',
  'not-enough': 'stop',
  'not-given': 'check',
  'not-given-unnamed': 'check',
  depends: 'check',
  'depends-unnamed': 'check',
  'cannot-tell': 'check',
  'look-up': 'check',
  undecided: 'check',
  enough: 'fine',
  'not-needed': 'fine',
}

/** What the law says of the job: whether it may be done at all, by whom, and by which text. */
export function rulesTold(decision: Decision, facts: Facts): Told {
  const verdict = verdictOf(decision, facts)
  const figures = figuresOf(decision, facts, verdict)
  const { certificate } = decision
  const words = {
    act: acts[facts.action],
    unless: unlessWords(certificate.statements),
    missing: missingWords(decision),
    refrigerant: (facts.to ?? facts.refrigerant).id,
    certificate: '{certificate}',
    text: '{text}',
  }
  const shown = new Map(figures.map(({ id, value }) => [id, String(value)]))
  const ways = headlines[verdict].map((sentence) => fillIn(sentence, words))
  const length = (sentence: string) =>
    sentence.replace(/\{(\w+)\}/gu, (_, id: string) => shown.get(id) ?? '').length
  return {
    level: LEVEL[verdict],
    headline: fitting(ways, LONGEST_HEADLINE, length),
    figures,
    next: nextOf(decision, verdict),
  }
}

function verdictOf({ regime, certificate, use, retrofit }: Decision, facts: Facts): Verdict {
  if (facts.action === 'charge' && use.answers.includes('not-acceptable')) return 'not-acceptable'
  const burns = facts.action === 'retrofit' && (facts.to?.families.includes('flammable') ?? false)
  if (burns || retrofit.answers.includes('not-acceptable')) return 'no-conversion'
  const { held, needed, anyOf } = certificate
  if (held === 'not-enough') return 'not-enough'
  if (held === 'not-needed') return 'not-needed'
  if (held === 'enough') return regime.ids.length > 1 ? 'undecided' : 'enough'
  if (needed === 'look-up') return 'look-up'
  const named = anyOf.length > 0
  if (held === 'cannot-tell') return named ? 'cannot-tell' : 'depends-unnamed'
  if (needed === 'depends') return named ? 'depends' : 'depends-unnamed'
  return named ? 'not-given' : 'not-given-unnamed'
}

/** Whom the certificate binds, as the statements of the row say: paid or not, apprentices aside. */
const unlessWords = (statements: readonly Statement[]): string =>
  Object.entries(unless)
    .flatMap(([id, words]) => (statements.some((statement) => statement.id === id) ? [words] : []))
    .join('')

function missingWords({ regime, certificate }: Decision): string {
  const missing = [...new Set([...certificate.missing, ...regime.missing])]
  if (missing.length > 0) return inWords(missing)
  return certificate.settled && certificate.placeDecides ? settles.place : settles.kind
}

/** The statements that carry the verdict: those of the certificate, unless something is forbidden outright. */
function carrying({ certificate, use, retrofit }: Decision, verdict: Verdict) {
  if (verdict === 'not-acceptable') return use.statements.slice(0, 1)
  if (verdict === 'no-conversion') return retrofit.statements.slice(0, 1)
  return certificate.cites.flatMap(
    (id) => certificate.statements.find((statement) => statement.id === id) ?? [],
  )
}

function figuresOf(decision: Decision, facts: Facts, verdict: Verdict): readonly Figure[] {
  const { regime, certificate, venting, equipment, records } = decision
  const certificates = shortNames(certificate.anyOf)
  return [
    { id: 'regime', label: labels.regime, value: regime.names.join('; or ') },
    {
      id: 'certificate',
      label: labels.certificate,
      value: certificates === '' ? noneOrLookUp(certificate.needed) : certificates,
      says: says.held[certificate.held],
    },
    { id: 'text', label: labels.text, value: shortCitation(carrying(decision, verdict)) },
    { id: 'venting', label: labels.venting, value: ventingValue(venting.answers) },
    ...first('equipment', equipment.statements),
    ...(facts.action === 'buy' ? [] : first('records', records.statements)),
  ]
}

const noneOrLookUp = (needed: Decision['certificate']['needed']) =>
  needed === 'not-required' ? says.none : says['look-up']

const ventingValue = (answers: readonly string[]) =>
  answers.length === 1 ? line[answers[0] as 'prohibited' | 'exempt' | 'look-up'] : line.prohibited

/** Letters of a meaning that a screen has room for beside its figure. */
const LONGEST_MEANING = 70

/** The first statement of a topic: where it stands, and its first sentence where that is short. */
function first(id: 'equipment' | 'records', statements: readonly Statement[]): readonly Figure[] {
  const [statement] = statements
  if (!statement) return []
  const found = /^.*?[.;](?=\s|$)/su.exec(statement.text)?.[0].replace(/;$/u, '.')
  const says = found !== undefined && found.length <= LONGEST_MEANING ? found : undefined
  return [{ id, label: labels[id], value: shortCitation([statement]), says }]
}

function nextOf(decision: Decision, verdict: Verdict): readonly string[] {
  if (verdict === 'not-acceptable' || verdict === 'no-conversion') return next[verdict]
  const { certificate, regime } = decision
  if (verdict === 'not-enough') {
    const apprentice = certificate.statements.some(({ id }) => id === 'apprentice')
    return [...next['not-enough'], ...(apprentice ? [next.apprentice] : [])]
  }
  const missing = [...new Set([...certificate.missing, ...regime.missing])]
  const unverified = certificate.statements.some(({ mark }) => mark === 'memory')
  return [
    ...(certificate.held === 'not-given' ? [next['give-certificates']] : []),
    ...(missing.length > 0 ? [fillIn(next['give-facts'], { missing: inWords(missing) })] : []),
    ...(unverified || certificate.needed === 'look-up' ? [next['look-up']] : []),
    ...(decision.equipment.statements.length > 0 ? [next.equipment] : []),
    ...(decision.records.statements.length > 0 ? [next.records] : []),
  ].slice(0, MOST_NEXT)
}
