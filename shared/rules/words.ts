import data from '../../data/rules/told.json' with { type: 'json' }
import type { Statement } from './decide.ts'
import type { CertificateId } from './library.ts'

const FACTS: Readonly<Record<string, string>> = data.facts
const SHORT: Readonly<Record<CertificateId, string>> = data.certificates

/** Facts that were not given, in the words of the trade: "compressor drive, label charge". */
export const inWords = (fields: readonly string[]): string =>
  fields.length === 0
    ? 'what these tables do not settle'
    : fields.map((field) => FACTS[field] ?? field).join(', ')

/** Certificates of which one suffices: "609, 608 Type II or Universal". */
export function shortNames(ids: readonly CertificateId[]): string {
  const all = ids.map((id) => SHORT[id])
  const names = all.map((name, index) => {
    const section = /^\d+ /u.exec(name)?.[0]
    const same = section !== undefined && all[index - 1]?.startsWith(section)
    return same ? name.slice(section.length) : name
  })
  const last = names.pop() ?? ''
  return names.length === 0 ? last : `${names.join(', ')} or ${last}`
}

type Cited = Pick<Statement, 'section' | 'edition' | 'mark'>

const VOLUME = /^\d+ CFR /u

/** The sections without their paragraphs: "40 CFR 82.30(b), 82.34(a)" is "40 CFR 82.30, 82.34". */
function bare(section: string): string {
  const numbers = VOLUME.test(section) ? section.match(/\d+\.\d+/gu) : null
  return numbers ? `${VOLUME.exec(section)?.[0]}${[...new Set(numbers)].join(', ')}` : section
}

/**
 * "40 CFR 82.34, 82.161; 2015 text": where it stands and which text was read.
 *
 * @param paragraphs - With the paragraphs of a section, or the section alone.
 */
export function shortCitation(statements: readonly Cited[], paragraphs = false): string {
  const sections = statements.map(({ section }) => (paragraphs ? section : bare(section)))
  const [first = '', ...others] = [...new Set(sections)]
  const volume = VOLUME.exec(first)?.[0] ?? '\n'
  const places = [first, ...others.map((entry) => entry.replace(volume, ''))].join(', ')
  const from = statements.some(({ mark }) => mark === 'memory')
    ? 'unverified'
    : editionWords(statements.flatMap(({ edition }) => edition ?? []))
  return from === undefined || places.includes(from) ? places : `${places}; ${from}`
}

/** The oldest text is the one to be wary of. */
const editionWords = (editions: readonly string[]): string | undefined =>
  (editions.find((edition) => edition.startsWith('2015')) ?? editions[0])
    ?.replace(/ edition$/u, ' text')
    .replace(/^consolidation /u, '')
