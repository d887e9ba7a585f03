import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workOrderMarkdown } from '../../../shared/work-order/markdown.ts'
import { workOrder } from '../../../shared/work-order/work-order.ts'
import { EXAMPLES, run } from './examples.ts'
import { arbitraryOrder } from './orders.ts'

function numbersIn(tree: unknown, into: number[] = []): number[] {
  if (typeof tree === 'number') into.push(tree)
  else if (tree === null) throw new Error('null in place of a figure')
  else if (typeof tree === 'object') for (const value of Object.values(tree)) numbersIn(value, into)
  return into
}

describe('any order made of these', () => {
  it('gives a sheet that fits the schema, with finite figures only', () => {
    fc.assert(
      fc.property(arbitraryOrder, (input) => {
        const answer = run(input)
        workOrder.output.parse(answer)
        expect(numbersIn(answer).every(Number.isFinite)).toBe(true)
        expect(workOrderMarkdown(answer)).not.toMatch(/undefined|NaN|Infinity/u)
      }),
      { numRuns: 150 },
    )
  })

  it('says of every step in which state it is, and fails only with a problem', () => {
    fc.assert(
      fc.property(arbitraryOrder, (input) => {
        const { steps, failed } = run(input).result
        for (const { id, state, problems, missing } of steps) {
          expect(state === 'failed').toBe(problems.length > 0)
          expect(failed.includes(id)).toBe(problems.length > 0)
          if (state === 'complete' || state === 'instructions') expect(missing).toEqual([])
        }
      }),
      { numRuns: 100 },
    )
  })

  it('is answered the same every time, and in the same sense in both unit systems', () => {
    fc.assert(
      fc.property(arbitraryOrder, (input) => {
        expect(run(input)).toEqual(run(input))
        const [us, si] = ['us', 'si'].map((units) => run({ ...input, units }).result)
        expect(us?.steps.map(({ id, state }) => [id, state])).toEqual(
          si?.steps.map(({ id, state }) => [id, state]),
        )
        expect(us?.missing).toEqual(si?.missing)
      }),
      { numRuns: 40 },
    )
  })
})

describe('mass is kept', () => {
  const grams = fc.integer({ min: 400, max: 6000 })
  const millilitres = fc.integer({ min: 1, max: 900 })
  const base = EXAMPLES.crane

  it('from label and altered parts to what leaves the cylinder and what the scale shows', () => {
    fc.assert(
      fc.property(grams, millilitres, millilitres, (label, before, after) => {
        const { computed, failed } = run({
          ...base,
          labelCharge: `${label} g`,
          parts: [
            {
              name: 'Condenser',
              old: { volume: `${before} mL` },
              new: { volume: `${after} mL` },
              phase: 'liquid',
              temperature: '40 °C',
            },
          ],
          recovery: {},
          charging: { scaleStart: '40 kg', serviceHoseHolds: 'liquid', serviceHoseStarts: 'empty' },
          precise: true,
          units: 'si',
        }).result
        const gramsOf = (shown: { value: number; unit: string } | undefined) =>
          (shown?.value ?? Number.NaN) * (shown?.unit === 'kg' ? 1000 : 1)
        if (failed.includes('charge')) {
          // A smaller part can take more off the label than is on it: then nothing may be charged.
          expect(after).toBeLessThan(before)
          return
        }
        const toAdd = gramsOf(computed.charge?.massToAdd)
        expect(toAdd).toBeCloseTo(label + gramsOf(computed.charge?.changeOfCharge), 6)
        expect(gramsOf(computed.charging?.toAdd)).toBeCloseTo(toAdd, 6)
        const leaves = gramsOf(computed.charging?.leavesSource)
        expect(leaves).toBeCloseTo(toAdd + gramsOf(computed.charging?.hose?.holdUp), 6)
        expect(40_000 - gramsOf(computed.charging?.scale?.stop)).toBeCloseTo(leaves, 6)
        expect(gramsOf(computed.charge?.setOnScale)).toBeCloseTo(leaves, 0)
      }),
      { numRuns: 120 },
    )
  })

  it('never puts in more oil than the system holds', () => {
    fc.assert(
      fc.property(
        fc.subarray(['condenser', 'evaporator', 'drier', 'accumulator', 'hose']),
        fc.integer({ min: 20, max: 400 }),
        (kinds, total) => {
          const { computed } = run({
            ...base,
            oilTotal: `${total} mL`,
            parts: kinds.map((part) => ({ part })),
            oil: { leak: 'sudden' },
            precise: true,
            units: 'si',
          }).result
          expect(computed.oil?.add.value ?? 0).toBeLessThanOrEqual(total + 1e-9)
        },
      ),
      { numRuns: 60 },
    )
  })
})
