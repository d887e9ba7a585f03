import { describe, expect, it } from 'vitest'
import { EXAMPLES, type Order, run, without } from './examples.ts'

const { groomer, loader } = EXAMPLES
const scale = { scaleStart: '30 lb', supply: 'cylinder' }
const leaves = (order: Order) => {
  const { charge, charging } = run({ ...order, units: 'si', precise: true }).result.computed
  const grams = (shown: { value: number; unit: string } | undefined) =>
    shown && shown.value * (shown.unit === 'kg' ? 1000 : 1)
  return {
    toAdd: grams(charge?.massToAdd),
    total: grams(charge?.totalTarget),
    out: grams(charging?.leavesSource),
    hose: grams(charging?.hose?.holdUp) ?? 0,
  }
}

describe('the mass that the charge step found is the one that is charged', () => {
  it('a full charge: all of it, and what the hose keeps', () => {
    const { toAdd = 0, out, hose } = leaves(groomer)
    expect(toAdd).toBeGreaterThan(1000)
    expect(out).toBeCloseTo(toAdd + hose, 6)
  })

  const section = {
    ...without(loader, 'couplings'),
    job: 'section-opened',
    charge: { volume: '200 mL', phase: 'liquid', temperature: '110 °F', sealed: true },
    charging: scale,
  }

  it('a section that was opened: its contents, on top of what stayed in', () => {
    const { toAdd = 0, total = 0, out, hose } = leaves(section)
    expect(toAdd).toBeGreaterThan(150)
    expect(total).toBeGreaterThan(toAdd)
    expect(out).toBeCloseTo(toAdd + hose, 6)
  })

  it('the same where the whole charge is not known', () => {
    const { toAdd = 0, total, out, hose } = leaves(without(section, 'labelCharge'))
    expect(total).toBeUndefined()
    expect(out).toBeCloseTo(toAdd + hose, 6)
  })

  it('a bound or a what-if: nothing, and never the label charge in its place', () => {
    const charge = { whatIf: true, sealed: true }
    const couplings = [
      { couplingType: 'two-valve', spillFrom: '1 mL', spillTo: '8 mL', line: 'liquid' },
    ]
    const { charging, charge: found } = run({ ...loader, charge, couplings, charging: scale })
      .result.computed
    expect(found?.kind).toBe('what-if')
    expect(charging).toBeUndefined()
  })
})
