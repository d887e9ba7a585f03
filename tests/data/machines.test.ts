import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import file from '../../data/service/machines.json' with { type: 'json' }
import tables from '../../data/service/performance-tables.json' with { type: 'json' }
import {
  ARCHITECTURES,
  NO_DEVIATIONS,
  NO_FAULTS,
  presets,
  run,
  stateOf,
} from '../../shared/cycle/index.ts'
import { refrigerant } from '../../shared/refrigerant/index.ts'

const positive = z.number().positive()
const share = z.number().min(0).max(1)
const drop = z.strictObject({ nominalPa: positive, density: positive })
const coil = z.strictObject({
  refrigerantConductance: positive,
  singlePhaseShare: share,
  airConductance: positive,
  airExponent: share,
  airFlow: positive.max(2),
  volume: positive.max(0.01),
})
const kelvin = z.number().min(230).max(330)
const pascal = z.number().min(1e5).max(5e6)

/** A machine with nothing left out and nothing over; SI, and of a size that the trade meets. */
const machine = z.strictObject({
  id: z.string(),
  refrigerant: z.string(),
  store: z.union([
    z.strictObject({ kind: z.literal('none') }),
    z.strictObject({ kind: z.literal('receiver'), volume: positive.max(0.005) }),
    z.strictObject({
      kind: z.literal('accumulator'),
      volume: positive.max(0.005),
      bleed: z.number().min(0).max(0.1),
    }),
  ]),
  device: z.union([
    z.strictObject({
      kind: z.literal('valve'),
      flowArea: positive.max(1e-5),
      staticSuperheatK: positive.max(10),
      openingSuperheatK: positive.max(10),
      bleed: share,
    }),
    z.strictObject({
      kind: z.literal('tube'),
      length: positive.max(0.05),
      diameter: positive.max(0.003),
    }),
  ]),
  compressor: z.strictObject({
    displacement: positive.max(0.0005),
    nominalSpeed: positive.max(120),
    clearance: positive.max(0.1),
    leakage: share,
    throttling: share,
    efficiency: z.strictObject({ best: share, atRatio: positive, fall: positive }),
    shellLoss: share,
    stroke: z
      .strictObject({ minimum: share, setPa: pascal, setAtDischargePa: pascal, droop: share })
      .optional(),
  }),
  condenser: coil,
  evaporator: coil,
  lines: z.strictObject({
    discharge: positive.max(0.002),
    liquid: positive.max(0.002),
    suction: positive.max(0.002),
  }),
  drops: z.strictObject({ discharge: drop, liquid: drop, suction: drop }),
  nominalFlow: positive.max(0.2),
  charge: positive.max(5),
  controls: z.strictObject({
    thermostat: z.strictObject({ opensK: kelvin, closesK: kelvin }).optional(),
    cyclingSwitch: z.strictObject({ opensPa: pascal, closesPa: pascal }).optional(),
    highCutOutPa: pascal,
    lowCutOutPa: pascal.optional(),
  }),
  ports: z.strictObject({
    low: z.enum(['compressor', 'evaporator']),
    high: z.enum(['discharge', 'liquid']),
    liquidThermometer: z.enum(['before-restriction', 'behind-restriction']),
  }),
  ductGainK: z.number().min(0).max(5),
})

describe.each(presets())('model machine $machine.id', (preset) => {
  it('is complete, of a known architecture, and of a refrigerant that is here', () => {
    expect(machine.safeParse(preset.machine).error?.issues ?? []).toEqual([])
    expect(ARCHITECTURES).toContain(preset.architecture)
    expect(refrigerant(preset.machine.refrigerant).info.id).toBe(preset.machine.refrigerant)
    const { controls } = preset.machine
    expect(controls.thermostat?.closesK ?? 1).toBeGreaterThan(controls.thermostat?.opensK ?? 0)
    expect(controls.highCutOutPa).toBeLessThan(
      0.93 * refrigerant(preset.machine.refrigerant).criticalPressurePa,
    )
  })

  it('is fitted: `node tests/generate/fit-machines.ts` would write the same sizes', () => {
    const state = stateOf(
      run({
        machine: preset.machine,
        conditions: preset.nominal,
        faults: NO_FAULTS,
        deviations: NO_DEVIATIONS,
      }),
    )
    if (state === undefined) throw new Error('no state')
    const { trial, level } = state.solution
    const { liquidEnthalpy, liquidHeatCapacity } = trial.condensingAt
    const subcoolingK = (liquidEnthalpy - trial.condensation.enthalpy) / liquidHeatCapacity
    const { store, device } = preset.machine
    if (device.kind === 'valve') expect(trial.device.opening).toBeCloseTo(0.62, 1)
    if (store.kind === 'receiver') expect(level).toBeCloseTo(0.5, 1)
    if (store.kind === 'accumulator') expect(level).toBeCloseTo(0.4, 1)
    if (store.kind !== 'receiver') expect(Math.abs(subcoolingK - 6)).toBeLessThan(0.5)
    if (store.kind === 'none' && device.kind === 'tube') {
      expect(Math.abs(trial.bulbK - 7)).toBeLessThan(1)
    }
  })
})

it('every part of a machine has a mark, and each architecture a machine', () => {
  const known = { ...file.sources, ...tables.sources }
  for (const source of Object.values(file.marks)) expect(Object.keys(known)).toContain(source)
  const parts = new Set(file.machines.flatMap((row) => Object.keys(row)))
  for (const plain of ['id', 'name', 'architecture', 'like', 'refrigerant']) parts.delete(plain)
  for (const part of parts) expect(Object.keys(file.marks)).toContain(part)
  for (const architecture of ARCHITECTURES) {
    expect(presets().some((preset) => preset.architecture === architecture)).toBe(true)
  }
  // the published switch is the one that the machine has
  const opens = presets().find(({ machine: { store } }) => store.kind === 'accumulator')?.machine
    .controls.cyclingSwitch?.opensPa
  expect(((opens ?? 0) - 101_325) / 6894.757).toBeCloseTo(25, 1)
})
