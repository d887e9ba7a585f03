import type { CertificateId } from '../rules/library.ts'
import { shortNames } from '../rules/words.ts'

/** Certificates that somebody holds: "609, 608 Universal"; undefined where nobody said. */
export function certificatesText(held: readonly CertificateId[] | undefined): string | undefined {
  if (held === undefined) return undefined
  return held.length === 0 ? 'none held' : held.map((id) => shortNames([id])).join(', ')
}
