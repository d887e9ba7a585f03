import { describe, expect, it } from 'vitest'
import { newBody, state } from '../../../shared/work-order/step.ts'
import { EXAMPLES, type Order, run, stepOf } from './examples.ts'

const { loader } = EXAMPLES
const liquid = {
  name: 'Liquid',
  couplingType: 'two-valve',
  phase: 'liquid',
  spillVolume: '1 mL ±0.2 mL',
}
const suction = {
  name: 'Suction',
  couplingType: 'two-valve',
  phase: 'vapour',
  spillVolume: '2 mL ±0.4 mL',
}
const parted = (...couplings: Order[]) => run({ ...loader, charge: {}, couplings })

describe('couplings on the order', () => {
  it('that were seen to shut need no assumption of it', () => {
    const { result, assumptions } = run({
      ...loader,
      charge: { sealed: true },
      couplings: [liquid, suction],
    })
    expect(result.computed.charge?.kind).toBe('correction')
    expect(assumptions.map(({ field }) => field)).not.toContain('charge.sealed')
  })

  it('of which one does not close leave nothing to correct', () => {
    const answer = parted({ ...liquid, couplingType: 'no-valve' }, suction)
    const { result } = answer
    expect(result.computed.charge).toMatchObject({
      kind: 'full-charge',
      appliedJob: 'pressure-lost',
    })
    const step = stepOf(answer, 'charge')
    expect(step.findings.join(' ')).not.toContain('nothing needs to be added')
    expect(
      parted({ couplingType: 'no-valve' }, { couplingType: 'two-valve' }).result.computed.charge
        ?.kind,
    ).toBe('full-charge')
  })

  it('that cannot close did not seal, whatever the charge section says', () => {
    const couplings = [{ ...liquid, couplingType: 'no-valve' }]
    const { charge } = run({ ...loader, couplings, charge: { sealed: true } }).result.computed
    expect(charge?.kind).toBe('full-charge')
  })

  it('are assumed to close, and it is said, where nobody looked', () => {
    const { couplingType: _, ...unknown } = liquid
    expect(parted(unknown).assumptions.map(({ field }) => field)).toContain('charge.sealed')
    // A valve in each half can shut: whether it did, only somebody beside it can say.
    expect(parted(liquid).assumptions.map(({ field }) => field)).toContain('charge.sealed')
  })

  it('are never passed over: one without figures is asked about', () => {
    const { result } = parted(liquid, { name: 'Suction', couplingType: 'two-valve' })
    expect(result.computed.charge?.kind).toBe('measure')
    expect(result.computed.charge?.massToAdd).toBeUndefined()
    expect(result.missing.map(({ path }) => path)).toContainEqual(['couplings'])
  })

  it('whose figures stand in the charge section are not counted again, nor asked about', () => {
    const bare = [{ couplingType: 'two-valve' }, { couplingType: 'two-valve' }]
    const bySection = {
      couplingsOn: 'both-lines',
      spillVolume: '1.5 mL ±0.3 mL',
      sealed: true,
      suctionDry: true,
    }
    const all = { ...loader, charge: bySection }
    const alone = run({ ...all, couplings: [] }).result.computed.charge
    expect(alone?.kind).toBe('correction')
    const beside = run({ ...all, couplings: bare }).result.computed.charge
    expect(beside?.kind).toBe('correction')
    expect(beside?.massToAdd).toEqual(alone?.massToAdd)
    expect(beside?.couplings).toHaveLength(alone?.couplings.length ?? 0)
  })

  it('at the ends of an opened section add what they spilt', () => {
    const section = { volume: '200 mL', phase: 'liquid', temperature: '110 °F' }
    const order = { ...loader, job: 'section-opened', charge: section }
    const mass = (couplings: Order[] | undefined) =>
      run({ ...order, couplings, units: 'si', precise: true }).result.computed.charge?.massToAdd
        ?.value ?? 0
    const alone = mass(undefined)
    expect(mass([liquid])).toBeGreaterThan(alone + 1)
    expect(mass([{ name: 'Valve', couplingType: 'two-valve' }])).toBeCloseTo(alone, 9)
  })
})

describe('a coupling that cannot close', () => {
  const open = parted({ ...liquid, couplingType: 'no-valve' }, suction)

  it('makes the visit recover, test for leaks and evacuate before it charges', () => {
    expect(open.result.steps.map(({ id }) => id)).toEqual([
      'before-opening',
      'recover',
      'open',
      'leak-test',
      'evacuate',
      'charge',
      'verify',
      'records',
    ])
    expect(open.result.checklist.map(({ what }) => what)).toContain('Mass recovered')
    expect(parted(liquid, suction).result.steps.map(({ id }) => id)).not.toContain('recover')
  })
})

describe('carbon dioxide', () => {
  it('is not asked for a recovery cylinder that could not take it', () => {
    const order = { ...loader, refrigerant: 'R-744', labelCharge: '450 g', job: 'system-opened' }
    const { couplings: _, charge: __, ...opened } = order as Order
    const step = stepOf(run(opened), 'recover')
    expect(step.missing).toEqual([])
    expect(step.title).toBe('Let out')
    const { id: itsName, ...words } = step
    expect(itsName).toBe('recover')
    expect(JSON.stringify(words)).not.toMatch(/recover|cylinder/iu)
    expect(run(opened).law).toContain('R-744 may be let out')
  })
})

describe('a law that hangs on no field', () => {
  it('is not said to depend on nothing', () => {
    const body = newBody()
    const rule = {
      id: 'a-rule',
      text: 'A container of less than 20 lb is sold so.',
      section: '40 CFR 82.34(b)',
      edition: '2015 edition',
      mark: 'verified',
      checked: '2026-11-27',
      source: 'the rule',
      applies: 'depends',
    } as const
    state(body, 'us-federal', [
      { ...rule, dependsOn: [] },
      { ...rule, dependsOn: ['charge'] },
    ])
    const where = `${rule.text} (40 CFR 82.34(b), 2015 edition; checked 2026-11-27)`
    expect(body.rules.map(({ text }) => text)).toEqual([
      `May apply: ${where}`,
      `Depends on charge: ${where}`,
    ])
    const { couplings: _, charge: __, ...opened } = { ...loader, job: 'system-opened' } as Order
    expect(JSON.stringify(run(opened).result)).not.toMatch(/[Dd]epends on [):]/)
  })
})

describe('the sheet of a job too small to weigh', () => {
  it('sets nothing on the scale', () => {
    const step = stepOf(parted(liquid, suction), 'charge')
    expect(step.findings).toContain('For this job alone nothing needs to be added.')
    expect(step.figures.map(({ label }) => label)).not.toContain('Set on the scale')
  })
})
