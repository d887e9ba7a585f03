import type { CautionId } from '../cautions.ts'
import type { Warning } from '../operation.ts'
import type { CertificateAnswer } from './certificate.ts'
import type { Decision, Statement } from './decide.ts'
import type { Facts } from './facts.ts'
import { CERTIFICATES } from './library.ts'

/** What the law asks of the person, in one sentence, and whether what is held is enough. */
export function certificateSentence({ needed, anyOf, settled, held }: CertificateAnswer): string {
  const names = anyOf.map((id) => CERTIFICATES[id]).join('; or ')
  const need = {
    required: settled
      ? `A certificate is required: ${names}.`
      : names
        ? `A certificate is required; which one hangs on what is not known yet. Enough in any case: ${names}.`
        : 'A certificate is required; which one hangs on what is not known yet.',
    'not-required': 'No certificate is required by this law.',
    'look-up': 'Look up whether a certificate is required: see the statements.',
    depends: names
      ? `Whether a certificate is required depends on what was not given; enough in any case: ${names}.`
      : 'Whether a certificate is required depends on what was not given.',
  }[needed]
  const hold = {
    enough: ' What is held is enough.',
    'not-enough': ' What is held is not enough: do not do this work.',
    'not-needed': '',
    'not-given': ' Which certificates are held was not given.',
    'cannot-tell': ' Whether what is held is enough cannot be told.',
  }[held]
  return need + hold
}

/** Cautions that go with an action on this refrigerant; what may be let out still displaces air. */
export function cautionsFor(
  { action, refrigerant: { families }, to }: Facts,
  ventingExempt: boolean,
): CautionId[] {
  const opens = action === 'open' || action === 'recover' || action === 'retrofit'
  return [
    'local-rules',
    ...(ventingExempt ? (['asphyxiation'] as const) : (['no-venting'] as const)),
    ...(opens ? (['pressure', 'cold-burns'] as const) : []),
    ...(action === 'recover' ? (['no-disposable-refill', 'full-cylinder'] as const) : []),
    ...([...families, ...(to?.families ?? [])].includes('flammable')
      ? (['flammable'] as const)
      : []),
  ]
}

/** What is undecided, not covered, dangerous or unverified. */
export function warningsFor(
  { regime, certificate }: Decision,
  facts: Facts,
  unverified: readonly Statement[],
): Warning[] {
  return [
    ...(regime.ids.length > 1
      ? [
          {
            code: 'regime-undecided',
            message: `Which regime binds is not decided: ${
              regime.missing.length > 0
                ? `give ${regime.missing.join(', ')}`
                : 'look up the statement that is marked unverified'
            }.`,
          },
        ]
      : []),
    ...(certificate.held === 'not-enough'
      ? [
          {
            code: 'certificate-not-enough',
            message: 'The certificates held do not cover this work.',
          },
        ]
      : []),
    ...(facts.action === 'retrofit' && facts.to?.families.includes('flammable')
      ? [
          {
            code: 'flammable-retrofit',
            message: `${facts.to.id} burns: putting it into a machine made for another refrigerant endangers people.`,
          },
        ]
      : []),
    ...(unverified.length > 0
      ? [
          {
            code: 'unverified',
            message: `${unverified.length === 1 ? 'One statement is from memory and says what to look up before relying on it.' : `${unverified.length} statements are from memory and say what to look up before relying on them.`}`,
          },
        ]
      : []),
  ]
}
