import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import type { Effect } from './effects.ts'
import { FEATURES, type Feature, type Observation } from './features.ts'
import { cholesky, forward } from './gaussian.ts'
import {
  KNOWN_SHARE,
  type MachineNuisance,
  NUISANCES,
  OF_THE_MACHINE,
  OF_THE_TEST,
  SPREAD,
  type TestNuisance,
} from './nuisance.ts'

/**
 * How far this machine lies from the model, as far as it is known: its shares of OF_THE_MACHINE,
 * then how far the model itself is off in each of FEATURES, then by how many kelvin more its coils
 * bring the refrigerant to their air.
 */
export interface Latent {
  readonly mean: Float64Array
  /** Row by row. */
  readonly covariance: Float64Array
}

const MACHINE = OF_THE_MACHINE.length
const OFFSETS = MACHINE + FEATURES.length

const { discrepancy } = figures

type Move = { readonly share?: number; readonly kelvin?: number }
/** How far coils bring the refrigerant to their air: machines differ in that by several kelvin. */
const APPROACHES = Object.values(discrepancy.approach) as readonly {
  readonly sigmaK: number
  readonly moves: Readonly<Partial<Record<Feature, Move>>>
}[]
export const LATENT_SIZE = OFFSETS + APPROACHES.length

/**
 * Before anything of this machine was read.
 *
 * @param kind - `model`: one of the model's own, known as well as a machine can be; else one of its kind.
 * @param scale - Readings of a typical sound machine, for what is off by a share.
 */
export function priorLatent(kind: 'model' | 'kind', scale: Float64Array): Latent {
  const covariance = new Float64Array(LATENT_SIZE * LATENT_SIZE)
  const set = (index: number, sigma: number) => {
    covariance[index * LATENT_SIZE + index] = sigma * sigma
  }
  OF_THE_MACHINE.forEach((name: MachineNuisance, k) => {
    set(k, SPREAD[name] * (kind === 'model' ? KNOWN_SHARE : 1))
  })
  if (kind === 'kind') {
    FEATURES.forEach((feature, i) => {
      set(MACHINE + i, offOf(feature, scale[i] as number))
    })
    APPROACHES.forEach(({ sigmaK }, k) => {
      set(OFFSETS + k, sigmaK)
    })
  }
  return { mean: new Float64Array(LATENT_SIZE), covariance }
}

/** How far the model may be off in a feature of a sound machine, 1 σ. */
function offOf(feature: Feature, value: number): number {
  const { share, kelvin } = discrepancy.offset[feature]
  return share * value + kelvin
}

/** What the latent's parts add to a feature. */
function loadings({ columns, mean }: Effect, feature: number): Float64Array {
  const row = new Float64Array(LATENT_SIZE)
  for (let k = 0; k < MACHINE; k += 1) {
    row[k] = (columns[NUISANCES.indexOf(OF_THE_MACHINE[k] as MachineNuisance)] as Float64Array)[
      feature
    ] as number
  }
  row[MACHINE + feature] = 1
  APPROACHES.forEach(({ moves }, k) => {
    const { share = 0, kelvin = 0 } = moves[FEATURES[feature] as Feature] ?? {}
    row[OFFSETS + k] = share * (mean[feature] as number) + kelvin
  })
  return row
}

/** Spread of a test's conditions, 1 σ. */
export type TestSizes = Readonly<Record<TestNuisance, number>>

/** What a test's conditions move together: a column of all readings each, by 1 σ. */
const byTest = ({ columns }: Effect, sizes: TestSizes): readonly Float64Array[] =>
  OF_THE_TEST.map((name) => scaled(columns[NUISANCES.indexOf(name)] as Float64Array, sizes[name]))

function scaled(column: Float64Array, by: number): Float64Array {
  const out = new Float64Array(column.length)
  for (let i = 0; i < out.length; i += 1) out[i] = (column[i] as number) * by
  return out
}

/** Covariance of two readings by what moves them together. */
function together(columns: readonly Float64Array[], i: number, j: number): number {
  let sum = 0
  for (const column of columns) sum += (column[i] as number) * (column[j] as number)
  return sum
}

/**
 * The latent after the machine was read when it was sound.
 *
 * @param sound - What the model says of it in the weather of that day.
 * @returns it, and ln of how well the model fits those readings.
 */
export function afterBaseline(
  { mean, covariance }: Latent,
  sound: Effect,
  observations: readonly Observation[],
  sizes: TestSizes,
): { readonly latent: Latent; readonly logLikelihood: number } {
  const m = observations.length
  const index = observations.map(({ feature }) => FEATURES.indexOf(feature))
  const rows = index.map((i) => loadings(sound, i))
  // covariance of the latent with the readings, and of the readings
  const cross = rows.map((row) => times(covariance, row))
  const tested = byTest(sound, sizes)
  const total = new Float64Array(m * m)
  for (let a = 0; a < m; a += 1) {
    for (let b = 0; b < m; b += 1) {
      total[a * m + b] =
        dot(rows[a] as Float64Array, cross[b] as Float64Array) +
        together(tested, index[a] as number, index[b] as number)
    }
    const { sigma } = observations[a] as Observation
    total[a * m + a] = (total[a * m + a] as number) + sigma * sigma
  }
  const gap = Float64Array.from(
    observations,
    ({ value }, a) =>
      value - (sound.mean[index[a] as number] as number) - dot(rows[a] as Float64Array, mean),
  )
  const factor = cholesky(total, m)
  const half = forward(factor, gap)
  const updated = Float64Array.from(mean)
  const left = Float64Array.from(covariance)
  // L⁻¹ times the cross covariances: a column for each part of the latent
  const scaled = Array.from({ length: LATENT_SIZE }, (_, p) =>
    forward(
      factor,
      Float64Array.from(cross, (column) => column[p] as number),
    ),
  )
  for (let p = 0; p < LATENT_SIZE; p += 1) {
    updated[p] = (updated[p] as number) + dot(scaled[p] as Float64Array, half)
    for (let q = 0; q < LATENT_SIZE; q += 1) {
      left[p * LATENT_SIZE + q] =
        (left[p * LATENT_SIZE + q] as number) -
        dot(scaled[p] as Float64Array, scaled[q] as Float64Array)
    }
  }
  let logDeterminant = 0
  for (let a = 0; a < m; a += 1) logDeterminant += 2 * Math.log(factor[a * m + a] as number)
  return {
    latent: { mean: updated, covariance: left },
    logLikelihood: -0.5 * (logDeterminant + dot(half, half)),
  }
}

/** Mean and covariance of an effect's readings, the latent and the test counted in. */
export function spreadBy(
  latent: Latent,
  effect: Effect,
  sizes: TestSizes,
): { readonly shift: Float64Array; readonly covariance: Float64Array } {
  const n = FEATURES.length
  const rows = FEATURES.map((_, i) => loadings(effect, i))
  const cross = rows.map((row) => times(latent.covariance, row))
  const tested = byTest(effect, sizes)
  const covariance = new Float64Array(n * n)
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      const value = dot(rows[i] as Float64Array, cross[j] as Float64Array) + together(tested, i, j)
      covariance[i * n + j] = value
      covariance[j * n + i] = value
    }
  }
  return { shift: Float64Array.from(rows, (row) => dot(row, latent.mean)), covariance }
}

function times(matrix: Float64Array, vector: Float64Array): Float64Array {
  const n = vector.length
  const out = new Float64Array(n)
  for (let j = 0; j < n; j += 1) {
    const value = vector[j] as number
    if (value === 0) continue
    for (let i = 0; i < n; i += 1) {
      out[i] = (out[i] as number) + (matrix[i * n + j] as number) * value
    }
  }
  return out
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i += 1) sum += (a[i] as number) * (b[i] as number)
  return sum
}
