import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { density } from '../../shared/substance/density.ts'
import { SUBSTANCES, substanceModel } from '../../shared/substance/library.ts'
import { saturation } from '../../shared/substance/saturation.ts'
import { stateAt } from '../../shared/substance/state.ts'
import { AGREEMENT } from '../support/agreement.ts'

/** Differences of enthalpy and entropy may pass through zero: J/mol and J/(mol·K). */
const NEAR_ZERO = 1e-5

interface Table {
  readonly columns: readonly string[]
  readonly rows: readonly (readonly number[])[]
}
interface Golden {
  readonly madeBy: string
  readonly saturation: Table
  readonly states: Table
}

function golden(id: string): Golden {
  const file = new URL(`golden/${id}.json`, import.meta.url)
  if (!existsSync(file))
    throw new Error(`${id} has no golden values: run tests/reference/golden.py`)
  return JSON.parse(readFileSync(file, 'utf8')) as Golden
}

function expectClose(actual: number, expected: number, what: string): void {
  const allowed =
    AGREEMENT.pure * Math.abs(expected) + (what.startsWith('difference') ? NEAR_ZERO : 0)
  expect(Math.abs(actual - expected), `${what}: ${actual} for ${expected}`).toBeLessThanOrEqual(
    allowed,
  )
}

// Each file says which program and version made it (golden.py).
describe.each(SUBSTANCES)('$id against CoolProp 8.0.0', (data) => {
  const model = substanceModel(data.id)
  const file = golden(data.id)

  it('has a reference made by that version', () => {
    expect(file.madeBy).toContain('CoolProp 8.0.0')
    expect(file.saturation.rows.length).toBeGreaterThan(20)
    expect(file.states.rows.length).toBeGreaterThan(40)
  })

  it('has the same saturation from −60 °C or the triple point to 0.9999 of the critical', () => {
    for (const [t = 0, p = 0, liquid = 0, vapour = 0] of file.saturation.rows) {
      const found = saturation(model, data, t)
      expectClose(found.pressurePa, p, `pressure at ${t} K`)
      expectClose(found.liquid, liquid, `liquid density at ${t} K`)
      expectClose(found.vapour, vapour, `vapour density at ${t} K`)
    }
  })

  it('has the same pressure, enthalpy, entropy, heat capacities and speed of sound', () => {
    const [first] = file.states.rows
    const zero = stateAt(model, first?.[0] ?? 0, first?.[1] ?? 0)
    for (const [t = 0, rho = 0, p = 0, h = 0, s = 0, cv = 0, cp = 0, w = 0] of file.states.rows) {
      const found = stateAt(model, t, rho)
      const where = `at ${t} K, ${rho} mol/m³`
      expectClose(found.pressurePa, p, `pressure ${where}`)
      expectClose(found.enthalpy - zero.enthalpy, h, `difference of enthalpy ${where}`)
      expectClose(found.entropy - zero.entropy, s, `difference of entropy ${where}`)
      expectClose(found.cv, cv, `cv ${where}`)
      expectClose(found.cp, cp, `cp ${where}`)
      expectClose(found.speedOfSound, w, `speed of sound ${where}`)
    }
  })

  it('finds each of those densities again from its temperature and pressure', () => {
    for (const [t = 0, rho = 0, p = 0] of file.states.rows) {
      const phase = rho > data.critical.densityMolPerM3 ? 'liquid' : 'vapour'
      expectClose(density(model, t, p, phase), rho, `density at ${t} K, ${p} Pa`)
    }
  })
})
