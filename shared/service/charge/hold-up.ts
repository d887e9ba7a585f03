import { CalcError } from '../../errors.ts'
import type { Assumption, Step } from '../../operation.ts'
import { type HoseContents, holdUp, hoseVolume } from '../../physics/hose.ts'
import type { Quantity } from '../../quantity/index.ts'
import type { Phase, Refrigerant } from '../../refrigerant/index.ts'
import { combine, type Estimate, reading } from './estimate.ts'
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
  const inside = combine([reading(bore), reading(length)], ([boreM = 0, lengthM = 0]) =>
    hoseVolume({ boreM, lengthM }),
  )
  const before = starts ?? 'empty'
  const filling = (content: Phase | 'empty'): { readonly holds: HoseContents } => ({
    holds: content === 'empty' ? 'evacuated' : content,
  })
  const held = combine(
    [reading(bore), reading(length), reading(ambient)],
    ([boreM = 0, lengthM = 0, kelvin = 0]) =>
      holdUp(r, { boreM, lengthM }, kelvin, filling(before), filling(holds)),
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
