import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { CalcError } from '../../shared/errors.ts'
import { fieldsOf } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import { operations } from '../../shared/operations.ts'
import { standardAtmosphere } from '../../shared/quantity/index.ts'
import { leaves, redrawn } from '../support/redrawn.ts'

type Input = Readonly<Record<string, unknown>>
const SEED = Number(process.env.FUZZ_SEED ?? 20261127)

/** Inputs beside the example whose verdicts stand elsewhere. */
const MORE: Readonly<Record<string, readonly Input[]>> = {
  readings: [
    {
      refrigerant: 'R-410A',
      machine: 'stationary',
      meteringDevice: 'fixed-orifice',
      suctionPressure: '118 psig',
      suctionTemperature: '55 °F',
      dischargePressure: '340 psig',
      ambient: '90 °F',
      returnWetBulb: '66 °F',
    },
    {
      refrigerant: 'R-134a',
      suctionPressure: '80 psig',
      dischargePressure: '80 psig',
      ambient: '75 °F',
    },
  ],
  'air-check': [
    {
      refrigerant: 'R-407C',
      pressure: '157 psig',
      temperature: '77 °F',
      volume: '21.6 L',
      contents: '8 lb',
    },
    { refrigerant: 'R-134a', pressure: '79 psig', temperature: '66 °F' },
  ],
  'leak-test': [
    {
      startPressure: '400 micron',
      endPressure: '450 micron',
      startTemperature: '75 °F',
      endTemperature: '75 °F',
      elapsed: '10 min',
      vacuumLimit: 'rise-500-micron-in-10-min',
    },
    { systemPressure: '52 psig', ambient: '60 °F', refrigerant: 'R-134a' },
  ],
  evacuation: [
    { temperature: '50 °F', vacuum: '510 micron' },
    { temperature: '75 °F', vacuum: '29.8 inHg vac', altitude: '2000 ft' },
  ],
  'cooling-check': [
    { refrigerant: 'R-134a', ambient: '75 °F', staticLow: '78 psig', staticHigh: '78 psig' },
    { refrigerant: 'R-134a', ambient: '90 °F', suctionPressure: '30 psig', makerLowTo: '31 psig' },
  ],
  charge: [
    {
      refrigerant: 'R-134a',
      job: 'section-opened',
      labelCharge: '900 g',
      volume: '40 mL',
      phase: 'liquid',
      temperature: '80 °F',
      scaleTolerance: '15 g',
    },
  ],
}

/** Words that leave a question open, so that a finer instrument may close it. */
const OPEN: readonly unknown[] = [
  'cannot-tell',
  // Nothing shows by these instruments: finer ones may show it.
  'no-leak-shown',
  'no-air-shown',
  'at',
  'too-coarse',
  'too-short-to-tell',
  // Not to be filled while it may be full: the side of safety.
  'do-not-fill',
]

/** What only finer instruments bring to light, and what leaves nothing to judge. */
const VOID: readonly unknown[] = ['no-valid-test', 'below-saturation']

/**
 * Names of the fields that can say "cannot tell".
 */
function verdictNames(schema: unknown, name = ''): readonly string[] {
  if (typeof schema !== 'object' || schema === null) return []
  const { enum: words } = schema as { enum?: readonly unknown[] }
  if (words?.includes('cannot-tell')) return [name]
  return Object.entries(schema).flatMap(([key, part]) =>
    verdictNames(
      part,
      ['properties', 'items', 'anyOf', '$defs'].includes(key) || /^\d+$/u.test(key) ? name : key,
    ),
  )
}

const answerOf = (entry: Operation, input: Input) => {
  try {
    return entry.run({ ...input, units: 'si', precise: true })
  } catch (error) {
    if (error instanceof CalcError) return undefined
    throw error
  }
}

const unit = fc.double({ min: 0, max: 1, noNaN: true })
const draws = fc.array(unit, { minLength: 60, maxLength: 60 })
const basesOf = ({ name, example }: Operation) => [example, ...(MORE[name] ?? [])]

/** What is set in a model or a table has no ±; a posterior is no verdict by a band, see its evaluation. */
const WITHOUT_BANDS = ['table', 'simulate', 'lesson', 'diagnose']
const banded = operations.filter(({ name }) => !WITHOUT_BANDS.includes(name))

describe.each(banded.map((entry) => [entry.name, entry] as const))('%s', (_, entry) => {
  const verdicts = new Set(verdictNames(z.toJSONSchema(entry.output, { unrepresentable: 'any' })))

  // Above saturation is known only by a finer gauge, and ends the test of what a charge holds at least.
  it('never takes back a verdict, nor doubts it, because a ± is smaller', () => {
    let answered = 0
    fc.assert(
      fc.property(fc.constantFrom(...basesOf(entry)), draws, unit, (base, drawn, share) => {
        const at = (widths: number) => {
          let next = 0
          const draw = () => drawn[next++ % drawn.length] ?? 0
          return answerOf(
            entry,
            redrawn(base, (number, symbol) => ({
              value: number * (0.9 + 0.2 * draw()),
              unit: symbol,
              plusMinus: Math.abs(number) * 0.1 * draw() ** 3 * widths,
            })) as Input,
          )
        }
        const [wide, fine] = [at(1), at(share)]
        if (!wide || !fine) return
        answered += 1
        const found = new Map(leaves(fine.result))
        for (const [path, word] of leaves(wide.result)) {
          const name = path.split('.').findLast((part) => !/^\d+$/u.test(part)) ?? ''
          if (!verdicts.has(name) || OPEN.includes(word)) continue
          if (VOID.includes(found.get(path))) continue
          if (path === '.rest.test' && found.get('.rest.state') === 'above') continue
          expect(`${path} ${found.get(path)}`).toBe(`${path} ${word}`)
        }
      }),
      { numRuns: 100, seed: SEED },
    )
    expect(answered).toBeGreaterThan(40)
  })
})

/** A posterior weighs each reading by its ±. */
const placed = operations.filter((entry) => {
  if (entry.name === 'diagnose') return false
  const names = fieldsOf(entry).map(({ name }) => name)
  return names.includes('altitude') && names.includes('barometer')
})

/** Ends of a band, which the ± of the place moves. */
const AN_END = /(?:plusMinus|[fF]rom|To|[lL]east|[mM]ost|[sS]mallest\w*)(?:\.|$)/u

describe.each(placed.map((entry) => [entry.name, entry] as const))('%s', (_, entry) => {
  it('gives the same central values by an altitude and by the barometer that belongs to it', () => {
    let compared = 0
    fc.assert(
      fc.property(
        fc.constantFrom(...basesOf(entry)),
        fc.double({ min: -200, max: 3500, noNaN: true }),
        draws,
        (base, metres, drawn) => {
          let next = 0
          const input = redrawn(base, (number, symbol) => ({
            value: number * (0.95 + 0.1 * (drawn[next++ % drawn.length] ?? 0)),
            unit: symbol,
          })) as Input
          const byAltitude = answerOf(entry, { ...input, altitude: { value: metres, unit: 'm' } })
          const { altitude: _none, ...rest } = input
          const byBarometer = answerOf(entry, {
            ...rest,
            barometer: { value: standardAtmosphere(metres), unit: 'Pa' },
          })
          if (!byAltitude || !byBarometer) return
          const found = new Map(leaves(byBarometer.result))
          for (const [path, value] of leaves(byAltitude.result)) {
            const other = found.get(path)
            if (typeof value !== 'number' || typeof other !== 'number' || AN_END.test(path))
              continue
            compared += 1
            const off = Math.abs(value - other) / Math.max(Math.abs(value), 1e-3)
            // Where the curve lies within the ± over a stretch, the middle of that stretch is told.
            const allowed = entry.name === 'contamination' && path.includes('.share.') ? 1e-3 : 1e-6
            expect(off < allowed ? '' : `${path} ${value} or ${other}`).toBe('')
          }
        },
      ),
      { numRuns: 60, seed: SEED },
    )
    expect(compared).toBeGreaterThan(60)
  })
})
