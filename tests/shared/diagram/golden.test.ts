import { readFileSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { DRAWN } from '../../../shared/diagram/all.ts'
import { DIAGRAMS, exampleOf } from '../../../shared/diagram/index.ts'
import { operation } from '../../../shared/operations.ts'

const FOLDER = new URL('./golden/', import.meta.url).pathname

/**
 * Pictures that somebody looked at: a change of them is looked at again before it is stored by
 * CHARGEWRIGHT_UPDATE_SCREENS=1. They judge nothing by themselves.
 */
const LOOKED_AT = [
  { kind: 'pressure-enthalpy', theme: 'light', width: 360, units: 'us' },
  { kind: 'superheat-subcooling', theme: 'dark', width: 720, units: 'si' },
  { kind: 'charge-bar', theme: 'print', width: 720, units: 'us' },
  { kind: 'vacuum-rise', theme: 'page', width: 360, units: 'si' },
  { kind: 'model-cycle', theme: 'light', width: 720, units: 'si' },
  { kind: 'cycles-apart', theme: 'print', width: 960, units: 'us' },
  { kind: 'cooling-bands', theme: 'light', width: 360, units: 'us' },
] as const

describe.skipIf(process.env.CHARGEWRIGHT_NO_GOLDEN)('pictures as they were looked at', () => {
  it.each(LOOKED_AT)('$kind, $theme, $width px, $units', ({ kind, theme, width, units }) => {
    const entry = DIAGRAMS.find((each) => each.kind === kind)
    if (!entry) throw new Error(`there is no picture ${kind}`)
    const input = { ...exampleOf(entry, operation(entry.operation)), units }
    // An element a line, so that a change can be read.
    const svg = `${DRAWN[kind].draw(input, { theme, width }).replaceAll('><', '>\n<')}\n`
    const file = `${FOLDER}${kind}.svg`
    if (process.env.CHARGEWRIGHT_UPDATE_SCREENS) writeFileSync(file, svg)
    expect(svg).toBe(readFileSync(file, 'utf8'))
  })
})
