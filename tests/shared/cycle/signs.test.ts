import { describe, expect, it } from 'vitest'
import {
  type FaultKind,
  faultOf,
  faultsOf,
  NO_DEVIATIONS,
  NO_FAULTS,
  preset,
  type Readings,
  readingsOf,
  run,
  stateOf,
} from '../../../shared/cycle/index.ts'

/** 1 σ of the usual instruments, SI. */
const NOISE = {
  lowSidePa: 6895,
  highSidePa: 27_580,
  superheatK: 1.3,
  subcoolingK: 1.3,
  dischargeLineK: 2,
  ventK: 1,
} as const
type Feature = keyof typeof NOISE
const FEATURES = Object.keys(NOISE) as Feature[]

/**
 * Signs against the same machine sound, in the order low side, high side, superheat, subcooling,
 * discharge line, vent. `+` and `-` move by more than 1 σ that way, `0` by less than 1 σ, `?` is
 * not asserted. `why` says where a row comes from; what is only the model's own arithmetic says so
 * and guards against a slip, it proves nothing about machines.
 */
interface Row {
  readonly fault: FaultKind
  readonly severity: number
  readonly signs: string
  readonly why: string
}

const BLOCKED_AIR =
  'maker’s performance tests: the high side follows the condenser’s air; a slower blower lowers the discharge pressure (service manual of 1987, see performance-tables.json)'
const LEAK =
  'makers’ charts: low side high with high side low means a compressor that does not pump (GM 2005, document 62332)'
const RESTRICTION =
  'service trade: a restriction draws the low side down, and the high side is not high (MACS 2023)'
const STORE = 'a store’s level is all that the charge moves between its ends: balance of mass'
const FLOOD =
  'a valve stuck open floods the evaporator: superheat gone, gas colder (trade practice)'
const STARVE = 'a valve stuck nearly shut starves it: as a restriction'
const HELD =
  'the stroke holds the suction pressure, whatever else changes (GM 1998, document 49470)'
const AIR = 'Dalton: the air’s pressure is added to the refrigerant’s, and reads as subcooling'
const OWN = 'the model’s own arithmetic'

const TABLES: Readonly<Record<string, readonly Row[]>> = {
  'van-valve-134a': [
    {
      fault: 'undercharge',
      severity: 0.5,
      signs: '--+-+?',
      why: 'valve wide open: as a fixed orifice then (Rossi and Braun 1997)',
    },
    {
      fault: 'overcharge',
      severity: 0.5,
      signs: '0+0+??',
      why: 'the valve holds superheat; liquid backs up (Li 2004)',
    },
    { fault: 'condenser-air', severity: 0.5, signs: '?+00+?', why: BLOCKED_AIR },
    { fault: 'evaporator-air', severity: 0.5, signs: '--00?-', why: BLOCKED_AIR },
    { fault: 'restriction', severity: 0.6, signs: '--+?+?', why: RESTRICTION },
    {
      fault: 'valve-stuck-open',
      severity: 0.6,
      signs: '?0---?',
      why: FLOOD,
    },
    { fault: 'valve-stuck-closed', severity: 0.5, signs: '--+?++', why: STARVE },
    { fault: 'compressor-leak', severity: 0.5, signs: '+-0??+', why: LEAK },
    { fault: 'air', severity: 0.5, signs: '0+0+?0', why: AIR },
  ],
  'loader-receiver-134a': [
    { fault: 'undercharge', severity: 0.35, signs: '000000', why: STORE },
    { fault: 'overcharge', severity: 0.35, signs: '000000', why: STORE },
    { fault: 'undercharge', severity: 0.8, signs: '--+0+?', why: RESTRICTION },
    { fault: 'condenser-air', severity: 0.5, signs: '?+00+?', why: BLOCKED_AIR },
    { fault: 'evaporator-air', severity: 0.5, signs: '--00?-', why: BLOCKED_AIR },
    { fault: 'restriction', severity: 0.5, signs: '--+0++', why: RESTRICTION },
    { fault: 'valve-stuck-closed', severity: 0.5, signs: '--+0++', why: STARVE },
    { fault: 'compressor-leak', severity: 0.5, signs: '+-00?+', why: LEAK },
    { fault: 'air', severity: 0.5, signs: '0+0+?0', why: AIR },
  ],
  'pickup-orifice-134a': [
    { fault: 'undercharge', severity: 0.4, signs: '000000', why: STORE },
    { fault: 'overcharge', severity: 0.4, signs: '000000', why: STORE },
    {
      fault: 'undercharge',
      severity: 0.8,
      signs: '--+-+?',
      why: 'accumulator empty: warm behind it (makers let one compare inlet and outlet)',
    },
    { fault: 'condenser-air', severity: 0.5, signs: '?+0?+?', why: BLOCKED_AIR },
    { fault: 'evaporator-air', severity: 0.5, signs: '--0??-', why: BLOCKED_AIR },
    { fault: 'compressor-leak', severity: 0.5, signs: '+-0??+', why: LEAK },
    { fault: 'air', severity: 0.5, signs: '?+0??0', why: AIR },
  ],
  'tractor-variable-134a': [
    { fault: 'undercharge', severity: 0.35, signs: '000000', why: STORE },
    { fault: 'overcharge', severity: 0.35, signs: '000000', why: STORE },
    { fault: 'condenser-air', severity: 0.4, signs: '0+00+0', why: HELD },
    { fault: 'evaporator-air', severity: 0.5, signs: '0-??--', why: HELD },
    { fault: 'compressor-leak', severity: 0.3, signs: '0000+0', why: HELD },
    { fault: 'restriction', severity: 0.4, signs: '0-+0?+', why: HELD },
    {
      fault: 'stroke-stuck-low',
      severity: 0.5,
      signs: '+-?0-+',
      why: 'makers list a stroke stuck small: low side high, high side low',
    },
    { fault: 'stroke-stuck-high', severity: 1, signs: '-?00?-', why: OWN },
  ],
}

describe.each(Object.entries(TABLES))('signs on %s', (id, rows) => {
  const { machine, nominal } = preset(id)
  // what the compressor would run to, so that a clutch does not hide it
  const free = { ...machine, controls: { highCutOutPa: 3.7e6 } }
  const readings = (faults: typeof NO_FAULTS): Readings => {
    const state = stateOf(
      run({ machine: free, conditions: nominal, faults, deviations: NO_DEVIATIONS }),
    )
    if (state === undefined) throw new Error('no state')
    return readingsOf(state)
  }
  const sound = readings(NO_FAULTS)

  it.each(rows.map((row) => [row.fault, row.severity, row] as const))(
    '%s at severity %d',
    (_, __, row) => {
      expect(row.signs).toHaveLength(FEATURES.length)
      expect(row.why).not.toBe('')
      const faulty = readings(faultOf(machine, row.fault, row.severity))
      FEATURES.forEach((feature, i) => {
        const effect = (faulty[feature] - sound[feature]) / NOISE[feature]
        const what = `${feature}: ${effect.toFixed(2)} σ`
        if (row.signs[i] === '+') expect(effect, what).toBeGreaterThan(1)
        if (row.signs[i] === '-') expect(effect, what).toBeLessThan(-1)
        if (row.signs[i] === '0') expect(Math.abs(effect), what).toBeLessThan(1)
      })
    },
  )

  it('asserts only faults that the machine can have', () => {
    for (const { fault } of rows) expect(faultsOf(machine)).toContain(fault)
  })
})
