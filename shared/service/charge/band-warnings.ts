import type { Warning } from '../../operation.ts'
import type { ChargeResult } from './result.ts'

/** A correction without a band, or with one wider than the charge may be off. */
export function bandWarnings(
  kind: ChargeResult['kind'],
  settled: { readonly plusMinus: number | undefined } | undefined,
  toleranceKg: number | undefined,
): readonly Warning[] {
  if (kind !== 'correction' || !settled) return []
  if (settled.plusMinus === undefined) {
    return [
      {
        code: 'no-band',
        message:
          'No reading carries an uncertainty, so the mass to add has no band. Give them (volume "450 mL ±20 mL", temperature "110 °F ±4 °F") to see how far it can be off.',
      },
    ]
  }
  if (toleranceKg !== undefined && settled.plusMinus > toleranceKg) {
    return [
      {
        code: 'band-wider-than-tolerance',
        message:
          "The band of the mass to add is wider than the charge's tolerance: recover, evacuate and weigh in the full charge.",
      },
    ]
  }
  return []
}
