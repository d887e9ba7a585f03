import { expect, it } from 'vitest'
import { answered, asked } from '../../support/choices.ts'

it('promises these words in an answer, and takes these in its fields', () => {
  expect(answered('rules')).toEqual([
    'law: us-federal eu uk canada australia',
    'certificate.needed: required not-required look-up depends',
    'certificate.held: enough not-enough not-needed not-given cannot-tell',
    'venting.answers: prohibited exempt look-up',
    'use.answers: acceptable-with-conditions not-acceptable look-up',
    'reuse.answers: recycle-first recover same-owner look-up',
    'leakRepair.answers: duty no-federal-duty look-up',
    'retrofit.answers: acceptable-with-conditions not-acceptable look-up',
  ])
  expect(asked('rules')).toEqual(
    expect.arrayContaining([
      'action: open recover charge buy dispose retrofit',
      'certificates: us-609 us-608-type-i us-608-type-ii us-608-type-iii us-608-universal eu-training-attestation eu-stationary-certificate uk-training-attestation ca-certified ca-ontario-odp-card ca-other-province au-handling-licence au-trading-authorisation',
    ]),
  )
})
