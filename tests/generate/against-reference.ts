import { type CurveFile, curves } from '../../shared/substance/curve.ts'
import golden from '../reference/golden/blends.json' with { type: 'json' }

/** Rows: T/K, p/Pa, liquid and vapour mol/m³ (see the file's `columns`). */
interface Entry {
  readonly bubble: readonly (readonly number[])[]
  readonly dew: readonly (readonly number[])[]
  readonly unsolved: readonly unknown[]
}
const entries = golden.blends as unknown as Readonly<Record<string, Entry>>

/**
 * How far a blend's fitted curves are from the independent mixture model of tests/reference, in
 * words for the progress line; pure substances have their own comparison there.
 */
export function againstReference(file: CurveFile): string {
  const entry = entries[file.id]
  if (entry === undefined) return 'reference: see tests/reference'
  const fitted = curves(file)
  let [kelvin, density] = [0, 0]
  for (const line of ['bubble', 'dew'] as const) {
    for (const [t = 0, pressurePa = 0, liquid = 0, vapour = 0] of entry[line]) {
      const exact = (line === 'bubble' ? liquid : vapour) * file.molarMass
      kelvin = Math.max(kelvin, Math.abs(fitted[line].temperature(pressurePa) - t))
      density = Math.max(density, Math.abs(fitted[line].density(t) / exact - 1))
    }
  }
  const points = entry.bubble.length + entry.dew.length
  return `reference, ${points} of ${points + entry.unsolved.length} points: T ${(kelvin * 1e3).toPrecision(2)} mK, rho ${density.toExponential(1)}`
}
