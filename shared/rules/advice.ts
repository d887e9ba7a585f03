import type { CautionId } from '../cautions.ts'
import { type Act, dangersOf } from '../dangers.ts'
import type { Warning } from '../operation.ts'
import type { Refrigerant } from '../refrigerant/index.ts'
import type { CertificateAnswer } from './certificate.ts'
import type { Decision, Statement } from './decide.ts'
import type { Facts } from './facts.ts'
import { CERTIFICATES } from './library.ts'
import type { Action } from './types.ts'
import { inWords } from './words.ts'

/** What the law asks of the person, in one sentence, and whether what is held is enough. */
export function certificateSentence(answer: CertificateAnswer): string {
  const { needed, anyOf, settled, held, missing } = answer
  const open = inWords(missing)
  const names = anyOf.map((id) => CERTIFICATES[id]).join('; or ')
  const need = {
    required: settled
      ? `A certificate is required: ${names}.`
      : names
        ? `A certificate is required; which one depends on ${open}. Enough in any case: ${names}.`
        : `A certificate is required; which one depends on ${open}.`,
    'not-required': 'No certificate is required by this law.',
    'look-up': 'Look up whether a certificate is required: see the statements.',
    depends: names
      ? `Whether a certificate is required depends on ${open}; enough in any case: ${names}.`
      : `Whether a certificate is required depends on ${open}.`,
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

/** What each action does to the machine. */
const DOES: Readonly<Record<Action, readonly Act[]>> = {
  open: ['opens'],
  recover: ['recovers'],
  charge: ['charges'],
  buy: [],
  dispose: ['opens', 'recovers'],
  retrofit: ['opens', 'recovers', 'charges'],
}

/** Cautions that go with an action on this machine and refrigerant, before anything is read. */
export function cautionsFor(
  { action, compressorDrive, to }: Facts,
  { venting, use }: Pick<Decision, 'venting' | 'use'>,
  present: Refrigerant,
  coming: Refrigerant | undefined,
): CautionId[] {
  const does = DOES[action]
  const exempt = venting.answers.every((answer) => answer === 'exempt')
  const dangers = [present, ...(coming ? [coming] : [])].flatMap((refrigerant) =>
    dangersOf({ refrigerant, compressorDrive, does }),
  )
  const unfit =
    (action === 'charge' && use.answers.includes('not-acceptable')) ||
    (action === 'retrofit' && (to?.families.includes('flammable') ?? false))
  return [
    ...dangers.filter((id) => id !== 'no-venting'),
    ...(exempt ? [] : (['no-venting'] as const)),
    ...(unfit ? (['no-flammable-retrofit'] as const) : []),
  ]
}

/** What is undecided, not covered, dangerous or unverified. */
export function warningsFor(
  { regime, certificate, use }: Decision,
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
    ...(facts.action === 'charge' && use.answers.includes('not-acceptable')
      ? [
          {
            code: 'refrigerant-not-acceptable',
            message: `Do not charge it: ${facts.refrigerant.id} burns and is not acceptable in this machine. Find out what the machine was made for.`,
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
