/**
 * Fits the saturation curves of every refrigerant and writes data/saturation/<id>.json; what they were
 * made from and how well they fit goes to data/saturation-fits.json, which the program never reads.
 * Then the registry is written: every refrigerant that is described and has curves.
 *
 *     npm run data                 those whose inputs changed
 *     npm run data -- --all        every one
 *     npm run data -- R-32 R-454B  these
 */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import type { RefrigerantInfo } from '../../shared/refrigerant/info.ts'
import type { CurveFile, LargestErrors } from '../../shared/substance/curve.ts'
import { againstReference } from './against-reference.ts'
import { fitCurves } from './fit-curves.ts'
import { linesOf } from './lines.ts'
import { REGISTRY, registryText } from './registry.ts'
import { type Fits, stampOf } from './stamp.ts'

const REFRIGERANTS = new URL('../../data/refrigerants/', import.meta.url)
const SATURATION = new URL('../../data/saturation/', import.meta.url)
const FITS = new URL('../../data/saturation-fits.json', import.meta.url)

const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'))
const all = process.argv.includes('--all')

const files = readdirSync(REFRIGERANTS).filter((name) => name.endsWith('.json'))
const fits: Fits = JSON.parse(readFileSync(FITS, 'utf8'))
let failed = false
for (const name of files) {
  const info = JSON.parse(readFileSync(new URL(name, REFRIGERANTS), 'utf8')) as RefrigerantInfo
  if (asked.length > 0 && !asked.includes(info.id)) continue
  try {
    const source = linesOf(info)
    const madeFrom = stampOf(source)
    const path = new URL(`${info.id}.json`, SATURATION)
    const before = fits[info.id]
    if (!all && asked.length === 0 && before?.madeFrom === madeFrom) {
      const file = JSON.parse(readFileSync(path, 'utf8')) as CurveFile
      console.log(`${report(file, before.largestErrors)}  current`)
      continue
    }
    const started = performance.now()
    const { file, largestErrors } = fitCurves(source.solve())
    const text = written(file)
    writeFileSync(path, text)
    fits[info.id] = { madeFrom, largestErrors }
    const size = `${(text.length / 1000).toFixed(1)} kB`
    const time = `${((performance.now() - started) / 1000).toFixed(1)} s`
    console.log(`${report(file, largestErrors)}  ${size}  ${time}`)
  } catch (error) {
    failed = true
    console.error(`${info.id.padEnd(12)} FAILED: ${error instanceof Error ? error.message : error}`)
  }
}
const ids = files.map((name) => name.replace(/\.json$/u, ''))
for (const name of readdirSync(SATURATION)) {
  if (files.includes(name)) continue
  rmSync(new URL(name, SATURATION))
  console.log(`${name.replace(/\.json$/u, '').padEnd(12)} is described no more: taken out`)
}
const kept = Object.entries(fits).filter(([id]) => ids.includes(id))
const sorted = Object.fromEntries(kept.sort(([a], [b]) => (a < b ? -1 : 1)))
writeFileSync(FITS, `${JSON.stringify(sorted, null, 2)}\n`)
// Only what has curves: an import of a file that is not there would stop every program.
const fitted = ids.filter((id) => existsSync(new URL(`${id}.json`, SATURATION)))
writeFileSync(REGISTRY, registryText(fitted))
if (failed) process.exitCode = 1

/** One line a list, so that a change of fit is a change of few lines. */
function written(file: CurveFile): string {
  const text = JSON.stringify(file, null, 1)
  return `${text.replace(/\[\s+([^[\]]*?)\s+\]/g, (_, list: string) => `[${list.replace(/\s+/g, '')}]`)}\n`
}

/** Largest errors against our own solver, and distance from the reference's blends. */
function report(file: CurveFile, errors: LargestErrors): string {
  return [
    file.id.padEnd(12),
    `T ${(errors.temperatureK * 1e3).toPrecision(2)} mK`,
    `p ${errors.pressureRelative.toExponential(1)}`,
    `rho ${errors.densityRelative.toExponential(1)} (near critical ${errors.densityRelativeNearCritical.toExponential(1)})`,
    againstReference(file),
  ].join('  ')
}
