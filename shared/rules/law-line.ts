import data from '../../data/rules/told.json' with { type: 'json' }
import { fitting } from '../answer/fitting.ts'
import type { Law } from '../fields/place.ts'
import { fillIn } from '../sentence.ts'
import type { CertificateAnswer } from './certificate.ts'
import { decide, type Statement } from './decide.ts'
import { factsFor, type JobGiven } from './facts.ts'
import { inWords, shortCitation, shortNames } from './words.ts'

export const LONGEST_LAW_LINE = 160

const { laws, line } = data

/**
 * What the law asks of whoever opens a system, in one line of at most 160 characters: what may not be
 * let out, which certificate, and where that stands. Every job that opens a system shows it.
 *
 * @param law - Whose law; undefined where nobody said.
 */
export function lawLine(law: Law | undefined, job?: JobGiven): string {
  if (law === undefined || job === undefined) return line.noLaw
  const { venting, certificate } = decide(law, factsFor(job), undefined)
  const cited = certificate.cites.flatMap(
    (id) => certificate.statements.find((statement) => statement.id === id) ?? [],
  )
  const gas = ventingWords(venting.answers)
  const asks = certificateWords(certificate)
  const rule = venting.statements.slice(0, 1)
  const ways = [
    `${gas} (${shortCitation(rule, true)}). ${asks} (${shortCitation(cited, true)})`,
    `${gas}. ${asks} (${shortCitation(cited, true)})`,
    `${gas}. ${asks} (${shortCitation(cited)})`,
    `${gas}. ${asks} (${shortCitation(firstOf(cited))})`,
    `${gas}. ${asks}`,
    `${gas}.`,
  ].map((text) => `${laws[law]}: ${text}`)
  return fitting(ways, LONGEST_LAW_LINE)
}

const firstOf = (statements: readonly Statement[]) => statements.slice(0, 1)

/** One answer, or the strictest of several where a fact that would decide was not given. */
function ventingWords(answers: readonly string[]): string {
  const [only, ...others] = answers
  if (others.length > 0) return line.prohibited
  return line[only as 'prohibited' | 'exempt' | 'look-up']
}

function certificateWords(answer: CertificateAnswer): string {
  const { needed, anyOf, settled, missing, held, placeDecides } = answer
  const names = shortNames(anyOf)
  const words = { names, missing: inWords(missing) }
  if (held === 'not-needed' || needed === 'not-required') return line['not-required']
  const named = anyOf.length > 0
  switch (needed) {
    case 'required':
      if (!named) return fillIn(line['required-unnamed'], words)
      if (placeDecides) return fillIn(line['required-place'], words)
      return fillIn(settled ? line.required : line['required-several'], words)
    case 'look-up':
      return fillIn(named ? line['look-up-named'] : line['look-up-unnamed'], words)
    case 'depends':
      return fillIn(named ? line['depends-named'] : line['depends-unnamed'], words)
  }
}
