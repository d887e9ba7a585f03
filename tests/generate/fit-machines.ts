/**
 * Fits what is marked 'fitted' in data/service/machines.json: the size of each machine's device and
 * its charge, so that the sound machine in its nominal weather runs at the aims below.
 *
 *     node tests/generate/fit-machines.ts
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { type Branch, solveBranch } from '../../shared/cycle/branch.ts'
import { presets } from '../../shared/cycle/machines.ts'
import { newton } from '../../shared/cycle/newton.ts'
import { setUp } from '../../shared/cycle/setup.ts'
import { type Machine, NO_DEVIATIONS, NO_FAULTS } from '../../shared/cycle/types.ts'

/** Usual for such machines, from memory. */
const AIMS = {
  opening: 0.62,
  superheatK: 7,
  subcoolingK: 6,
  receiverLevel: 0.5,
  accumulatorLevel: 0.4,
}

const path = new URL('../../data/service/machines.json', import.meta.url)
const file = JSON.parse(readFileSync(path, 'utf8')) as { machines: Record<string, unknown>[] }

for (const { machine, nominal } of presets()) {
  const sized = (size: number, charge: number): Machine => ({
    ...machine,
    charge: machine.charge * charge,
    device:
      machine.device.kind === 'valve'
        ? { ...machine.device, flowArea: machine.device.flowArea * size }
        : { ...machine.device, diameter: machine.device.diameter * size },
  })
  const gaps = (size: number, charge: number): Float64Array | undefined => {
    const trial = sized(size, charge)
    const setup = setUp({
      machine: trial,
      conditions: nominal,
      faults: NO_FAULTS,
      deviations: NO_DEVIATIONS,
    })
    const branch: Branch = {
      liquid: trial.store.kind === 'none' ? 'none' : 'between',
      stroke: trial.compressor.stroke === undefined ? 'given' : 'holding',
    }
    const solved = solveBranch(setup, branch, {
      suctionPa: setup.fluid.saturationPressure(nominal.returnAirK - 24),
      dischargePa: setup.fluid.saturationPressure(nominal.ambientK + 18),
      superheatK: 6,
      stroke: branch.stroke === 'holding' ? 0.7 : 1,
    })
    if (solved === undefined) return undefined
    const { trial: t, level } = solved
    const { liquidEnthalpy, liquidHeatCapacity } = t.condensingAt
    const subcooling = (liquidEnthalpy - t.condensation.enthalpy) / liquidHeatCapacity
    const subcoolingGap = (subcooling - AIMS.subcoolingK) / 10
    const openingGap = t.device.opening - AIMS.opening
    if (trial.store.kind === 'receiver') {
      return Float64Array.of(openingGap, (level as number) - AIMS.receiverLevel)
    }
    if (trial.store.kind === 'accumulator') {
      return Float64Array.of(subcoolingGap, (level as number) - AIMS.accumulatorLevel)
    }
    return Float64Array.of(
      trial.device.kind === 'valve' ? openingGap : (t.bulbK - AIMS.superheatK) / 10,
      subcoolingGap,
    )
  }
  const found = newton(
    (x) => gaps(Math.exp(x[0] as number), Math.exp(x[1] as number)),
    Float64Array.of(0, 0),
    [0.08, 0.1],
  )
  if (found === undefined || found.error > 1e-3) {
    console.error(machine.id, 'not fitted', found)
    process.exitCode = 1
    continue
  }
  const fitted = sized(Math.exp(found.at[0] as number), Math.exp(found.at[1] as number))
  const row = file.machines.find(({ id }) => id === machine.id)
  if (row === undefined) throw new Error(machine.id)
  const round = (value: number) => Number(value.toPrecision(3))
  row.charge = round(fitted.charge)
  row.device =
    fitted.device.kind === 'valve'
      ? { ...fitted.device, flowArea: round(fitted.device.flowArea) }
      : { ...fitted.device, diameter: round(fitted.device.diameter) }
  console.log(machine.id.padEnd(26), row.charge, JSON.stringify(row.device))
}
writeFileSync(path, `${JSON.stringify(file, null, 2)}\n`)
