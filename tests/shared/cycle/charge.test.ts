import { describe, expect, it } from 'vitest'
import {
  type Machine,
  NO_DEVIATIONS,
  NO_FAULTS,
  preset,
  type Readings,
  type Running,
  readingsOf,
  run,
  stateOf,
} from '../../../shared/cycle/index.ts'

/** Without its controls, so that every charge gives a state to compare. */
const uncontrolled = (machine: Machine): Machine => ({
  ...machine,
  controls: { highCutOutPa: 0.9 * (machine.refrigerant === 'R-1234yf' ? 3.38e6 : 4.05e6) },
})

function at(id: string, charge: number): Running {
  const { machine, nominal } = preset(id)
  const outcome = run({
    machine: uncontrolled(machine),
    conditions: nominal,
    faults: { ...NO_FAULTS, charge },
    deviations: NO_DEVIATIONS,
  })
  const state = stateOf(outcome)
  if (state === undefined) throw new Error(`${id} at ${charge}: ${outcome.kind}`)
  return state
}

const STORED = [
  'loader-receiver-134a',
  'loader-receiver-1234yf',
  'tractor-variable-134a',
  'tractor-variable-1234yf',
  'pickup-orifice-134a',
  'pickup-orifice-1234yf',
]

describe.each(STORED)('charge of %s, which has a store for liquid', (id) => {
  const { machine } = preset(id)
  const nominal = at(id, 1)
  const same = (state: Running) =>
    Object.entries(readingsOf(state)).every(([name, value]) => {
      const before = readingsOf(nominal)[name as keyof Readings]
      return typeof value === 'number'
        ? Math.abs(value / (before as number) - 1) < 1e-6 ||
            Math.abs(value - (before as number)) < 1e-5
        : value === before
    })

  /** Where, between a charge with the nominal readings and one without, they begin to move. */
  const end = (inside: number, outside: number) => {
    let [yes, no] = [inside, outside]
    for (let step = 0; step < 36; step += 1) {
      const middle = (yes + no) / 2
      if (same(at(id, middle))) yes = middle
      else no = middle
    }
    return yes
  }

  it('moves no reading at all between an empty store and a full one', () => {
    const { store } = machine
    if (store.kind === 'none') throw new Error(id)
    const { trial } = nominal.solution
    const line = store.kind === 'receiver' ? trial.condensingAt : trial.suctionAt
    const gas =
      store.kind === 'receiver'
        ? line.vapourDensity
        : Math.min(line.vapourDensity, trial.suction.density)
    const expected = store.volume * (line.liquidDensity - gas)
    const [low, high] = [end(1, 0.3), end(1, 1.75)]
    const width = (high - low) * machine.charge
    // an end of the plateau is a corner of the model: its width is the store's own, to 2 %
    expect(width / expected).toBeGreaterThan(0.98)
    expect(width / expected).toBeLessThan(1.02)
    expect(at(id, low + 0.002).solution.level).toBeLessThan(0.02)
    expect(at(id, high - 0.002).solution.level).toBeGreaterThan(0.98)
  })

  it('and shows it beyond: less cooling below, liquid backed up or carried over above', () => {
    const [short, much] = [at(id, 0.45), at(id, 1.6)]
    const readings = readingsOf(nominal)
    expect(short.solution.level).toBe(0)
    expect(much.solution.level).toBe(1)
    if (machine.store.kind === 'receiver') {
      expect(short.remarks).toContain('receiver-empty')
      expect(readingsOf(short).bubbles).toBe(true)
      expect(readings.bubbles).toBe(false)
      expect(readingsOf(much).subcoolingK).toBeGreaterThan(readings.subcoolingK + 5)
    } else {
      expect(short.remarks).toContain('accumulator-empty')
      // makers let one feel the pipe before and behind the accumulator
      expect(readingsOf(short).superheatK).toBeGreaterThan(10)
      expect(Math.abs(readings.superheatK)).toBeLessThan(0.5)
      expect(much.remarks).toContain('liquid-at-compressor')
    }
  })
})

describe.each(['van-valve-134a', 'cooler-valve-134a', 'split-valve-410a'])(
  'charge of %s, a valve without a store',
  (id) => {
    it('shows in subcooling, all the way, while the valve holds the superheat', () => {
      let before = -1
      for (const charge of [0.92, 0.96, 1, 1.04, 1.08, 1.12]) {
        const readings = readingsOf(at(id, charge))
        expect(readings.subcoolingK).toBeGreaterThan(before + 0.5)
        before = readings.subcoolingK
        expect(readings.superheatK).toBeGreaterThan(4)
        expect(readings.superheatK).toBeLessThan(8)
      }
    })

    it('shows in superheat once the valve is wide open', () => {
      expect(at(id, 0.6).solution.trial.device.opening).toBe(1)
      expect(readingsOf(at(id, 0.6)).superheatK).toBeGreaterThan(15)
      // superheat less subcooling falls steadily with charge (H. Li, Purdue 2004, p. 51)
      let before = Infinity
      for (let charge = 0.55; charge < 1.25; charge += 0.05) {
        const { superheatK, subcoolingK } = readingsOf(at(id, charge))
        expect(superheatK - subcoolingK).toBeLessThan(before)
        before = superheatK - subcoolingK
      }
    })
  },
)

describe.each(['cooler-orifice-134a', 'split-orifice-410a'])(
  'charge of %s, a fixed orifice without a store',
  (id) => {
    it('lowers superheat and raises subcooling and both pressures, until liquid comes back', () => {
      let before = readingsOf(at(id, 0.6))
      for (const charge of [0.7, 0.8, 0.9, 1, 1.05]) {
        const now = readingsOf(at(id, charge))
        expect(now.superheatK).toBeLessThan(before.superheatK)
        expect(now.lowSidePa).toBeGreaterThan(before.lowSidePa)
        expect(now.highSidePa).toBeGreaterThan(before.highSidePa)
        expect(now.subcoolingK).toBeGreaterThan(before.subcoolingK - 0.2)
        before = now
      }
      expect(at(id, 1.3).remarks).toContain('liquid-at-compressor')
    })
  },
)
