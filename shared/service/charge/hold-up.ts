import { CalcError } from '../../errors.ts'
import type { Assumption, Step } from '../../operation.ts'
import type { Quantity } from '../../quantity/index.ts'
import { type Phase, type Refrigerant, saturatedDensity } from '../../refrigerant/index.ts'
import { combine, type Estimate, exactly, reading } from './estimate.ts'
import { massQuantity, volumeQuantity } from './inventory.ts'

interface ServiceHose {
  readonly bore: Quantity<'length'> | undefined
  readonly length: Quantity<'length'> | undefined
  /** What fills it when charging ends. */
  readonly holds: Phase | undefined
  /** What filled it when the scale was read first. */
  readonly starts: Phase | 'empty' | undefined
  readonly ambient: Quantity<'temperature'> | undefined
}

interface HoldUp {
  /** Mass that leaves the cylinder and stays in the hose, kg; negative when a full hose ends with vapour. */
  readonly mass: Estimate
  readonly steps: readonly Step[]
  readonly assumptions: readonly Assumption[]
}

/**
 * Refrigerant that a charging hose keeps: π/4 · bore² · length × (density at the end − at the start).
 *
 * Saturated at ambient: liquid on the bubble line, vapour on the dew line.
 *
 * @returns undefined when neither bore nor length is given.
 * @throws {CalcError} `missing-input` when only part of it is given.
 */
export function serviceHoseHoldUp(r: Refrigerant, hose: ServiceHose): HoldUp | undefined {
  const { bore, length, holds, starts, ambient } = hose
  if (!bore && !length && !holds && !starts) return undefined
  if (!bore || !length || !holds || !ambient) {
    const [field, hint] = !bore
      ? ['serviceHoseBore', 'Write it like 1/4 in or 6 mm.']
      : !length
        ? ['serviceHoseLength', 'Write it like 72 in or 1.8 m.']
        : !holds
          ? ['serviceHoseHolds', 'liquid or vapour: what fills the hose when charging ends.']
          : ['ambient', 'The hose is taken at the temperature of the air: write it like 75 °F.']
    throw new CalcError('missing-input', `For the hold-up of the hose ${field} is needed.`, {
      path: [field ?? ''],
      hint: hint ?? '',
    })
  }
  const inside = combine(
    [reading(bore), reading(length)],
    ([d = 0, long = 0]) => (Math.PI / 4) * d ** 2 * long,
  )
  const before = starts ?? 'empty'
  const densityAt = (content: Phase | 'empty') =>
    content === 'empty'
      ? exactly(0)
      : combine([reading(ambient)], ([kelvin = 0]) => saturatedDensity(r, kelvin, content))
  const held = combine(
    [inside, densityAt(holds), densityAt(before)],
    ([cubic = 0, end = 0, start = 0]) => cubic * (end - start),
  )
  return {
    mass: held,
    steps: [
      {
        what: 'Refrigerant that stays in the service hose',
        formula: 'π/4 × bore² × length × (density when charging ends − when it starts)',
        values: {
          bore,
          length,
          volume: volumeQuantity(inside),
          'at the end': `saturated ${holds} at ambient`,
          'at the start': before === 'empty' ? 'empty' : `saturated ${before} at ambient`,
        },
        gives: massQuantity(held),
      },
    ],
    assumptions:
      starts === undefined
        ? [
            {
              field: 'serviceHoseStarts',
              taken: 'the hose is evacuated when the scale is read first',
              because: 'what it holds at the start was not given',
            },
          ]
        : [],
  }
}
