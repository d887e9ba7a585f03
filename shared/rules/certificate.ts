import { type CertificateId, isCertificate } from './library.ts'
import type { Match } from './match.ts'

export const NEEDED = ['required', 'not-required', 'look-up', 'depends'] as const
export const HELD = ['enough', 'not-enough', 'not-needed', 'not-given', 'cannot-tell'] as const

export interface CertificateAnswer {
  readonly needed: (typeof NEEDED)[number]
  /** One of these suffices; when it depends, those that suffice in every case. */
  readonly anyOf: readonly CertificateId[]
  /** Whether one row of the table answers: else other certificates may do once more is known. */
  readonly settled: boolean
  /** Input fields that would decide between the rows that are left. */
  readonly missing: readonly string[]
  /** Which of them it is depends on a place finer than these rules know. */
  readonly placeDecides: boolean
  /** Ids of the statements that a short citation names. */
  readonly cites: readonly string[]
  readonly held: (typeof HELD)[number]
}

/**
 * What the certificate rows ask, and whether what the person holds is enough.
 *
 * When facts are missing several rows remain: a certificate is `enough` only where it is enough
 * for all of them, and `not-enough` only where it is for none.
 *
 * @param held - Certificates of the person; undefined when nobody said.
 */
export function certificateAnswer(
  matches: readonly Match[],
  held: readonly string[] | undefined,
): CertificateAnswer {
  const rows = matches.map(({ row }) => row)
  const answers = [...new Set(rows.map((row) => row.answer))]
  const only = answers.length === 1 ? NEEDED.find((entry) => entry === answers[0]) : undefined
  const asking = rows.filter((row) => row.answer !== 'not-required')
  const anyOf = asking
    .map((row) => (row.anyOf ?? []).filter(isCertificate))
    .reduce<readonly CertificateId[] | undefined>(
      (common, ids) => common?.filter((id) => ids.includes(id)) ?? ids,
      undefined,
    )
  return {
    needed: only ?? 'depends',
    anyOf: anyOf ?? [],
    settled: rows.length === 1,
    missing: rows.length > 1 ? [...new Set(matches.flatMap(({ missing }) => missing))] : [],
    placeDecides: rows.some((row) => row.placeDecides === true),
    cites: [...new Set(rows.flatMap(({ cite, statements }) => cite ?? statements.slice(0, 1)))],
    held: verdict(),
  }

  function verdict(): CertificateAnswer['held'] {
    if (asking.length === 0 && rows.length > 0) return 'not-needed'
    if (held === undefined) return 'not-given'
    if (asking.length === 0 || asking.some((row) => row.answer !== 'required')) return 'cannot-tell'
    const met = asking.filter((row) => row.anyOf?.some((id) => held.includes(id)))
    if (asking.some((row) => row.placeDecides)) return met.length > 0 ? 'cannot-tell' : 'not-enough'
    if (met.length === asking.length) return 'enough'
    if (asking.some((row) => row.perhaps?.some((id) => held.includes(id)))) return 'cannot-tell'
    return met.length === 0 && asking.length === rows.length ? 'not-enough' : 'cannot-tell'
  }
}
