/**
 * Fits the saturation curves of every refrigerant and writes data/saturation/<id>.json.
 *
 *     npm run data                 those whose inputs changed
 *     npm run data -- --all        every one
 *     npm run data -- R-32 R-454B  these
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import type { RefrigerantInfo } from '../../shared/refrigerant/info.ts'
import type { CurveFile } from '../../shared/substance/curve.ts'
import { againstReference } from './against-reference.ts'
import { fitCurves } from './fit-curves.ts'
import { linesOf } from './lines.ts'
import { stampOf } from './stamp.ts'

const REFRIGERANTS = new URL('../../data/refrigerants/', import.meta.url)
const SATURATION = new URL('../../data/saturation/', import.meta.url)

const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'))
const all = process.argv.includes('--all')

const files = readdirSync(REFRIGERANTS).filter((name) => name.endsWith('.json'))
let failed = false
for (const name of files) {
  const info = JSON.parse(readFileSync(new URL(name, REFRIGERANTS), 'utf8')) as RefrigerantInfo
  if (asked.length > 0 && !asked.includes(info.id)) continue
  try {
    const source = linesOf(info)
    const stamp = stampOf(source)
    const path = new URL(`${info.id}.json`, SATURATION)
    if (!all && asked.length === 0 && stampIn(path) === stamp) {
      console.log(`${info.id.padEnd(12)} current`)
      continue
    }
    const started = performance.now()
    const file = fitCurves(source.solve(), stamp)
    const text = written(file)
    writeFileSync(path, text)
    console.log(report(file, text.length, performance.now() - started))
  } catch (error) {
    failed = true
    console.error(`${info.id.padEnd(12)} FAILED: ${error instanceof Error ? error.message : error}`)
  }
}
if (failed) process.exitCode = 1

function stampIn(path: URL): string | undefined {
  try {
    return (JSON.parse(readFileSync(path, 'utf8')) as CurveFile).madeFrom
  } catch {
    return undefined
  }
}

/** One line a list, so that a change of fit is a change of few lines. */
function written(file: CurveFile): string {
  const text = JSON.stringify(file, null, 1)
  return `${text.replace(/\[\s+([^[\]]*?)\s+\]/g, (_, list: string) => `[${list.replace(/\s+/g, '')}]`)}\n`
}

function report(file: CurveFile, bytes: number, milliseconds: number): string {
  const e = file.largestErrors
  return [
    file.id.padEnd(12),
    `T ${(e.temperatureK * 1e3).toPrecision(2)} mK`,
    `p ${e.pressureRelative.toExponential(1)}`,
    `rho ${e.densityRelative.toExponential(1)} (near critical ${e.densityRelativeNearCritical.toExponential(1)})`,
    `h ${e.enthalpyJPerKg} J/kg`,
    `s ${e.entropyJPerKgK} J/(kg K)`,
    againstReference(file),
    `${(bytes / 1000).toFixed(1)} kB`,
    `${(milliseconds / 1000).toFixed(1)} s`,
  ].join('  ')
}
