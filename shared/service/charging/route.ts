import { dangersOf } from '../../dangers.ts'
import { CalcError, refusal } from '../../errors.ts'
import { burns, isCarbonDioxide } from '../../fields/index.ts'
import type { Warning } from '../../operation.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'

export const SUPPLIES = ['cylinder', 'small-cans', 'charging-machine'] as const
type Supply = (typeof SUPPLIES)[number]

interface RouteWish {
  readonly supply: Supply
  readonly engine?: 'off' | 'running' | undefined
  readonly side?: 'high' | 'low' | undefined
  readonly phase?: 'liquid' | 'vapour' | undefined
  readonly throttled?: boolean | undefined
  readonly ratedForFlammable?: boolean | undefined
}

/** Whether vapour taken from the cylinder has another composition than the blend. */
export const isBlendWithGlide = (r: Refrigerant) => r.info.kind === 'zeotrope'

/** ASHRAE 34 class 3, as hydrocarbons are. */
const burnsFiercely = (r: Refrigerant) => r.info.safetyClass.value.endsWith('3')

/** Names of the ways in that are right for this refrigerant and engine state. */
export function rightRoutes(
  r: Refrigerant,
  engine: RouteWish['engine'],
): readonly (
  | 'carbon-dioxide-vapour-first'
  | 'liquid-high-off'
  | 'vapour-low-running'
  | 'throttled-low-running'
)[] {
  if (isCarbonDioxide(r)) return ['carbon-dioxide-vapour-first']
  const off = engine === 'running' ? [] : (['liquid-high-off'] as const)
  if (engine === 'off') return off
  const running = isBlendWithGlide(r)
    ? (['throttled-low-running'] as const)
    : (['vapour-low-running', 'throttled-low-running'] as const)
  return [...off, ...running]
}

/**
 * Refuses a way in that hurts somebody, breaks a compressor or changes a blend.
 *
 * @throws {CalcError} `refused`, level stop where somebody could be hurt.
 */
export function checkRoute(r: Refrigerant, wish: RouteWish): readonly Warning[] {
  const { supply, engine, side, phase, throttled } = wish
  checkFlammable(r, wish)
  if (engine === 'running' && side === 'high') {
    throw refusal('Never charge into the high side with the engine running.', {
      hint: 'Its pressure goes back into the source and can burst it. Engine running: low side only.',
      path: ['side'],
      cautions: ['no-high-side-running'],
    })
  }
  if (phase === 'liquid' && side === 'low' && throttled !== true) {
    throw new CalcError('refused', 'Liquid must not go unthrottled into the low side.', {
      hint: 'It can break the compressor. Liquid into the high side with the engine off, or throttled to vapour into the low side.',
      path: ['phase'],
    })
  }
  if (phase !== 'vapour') return []
  if (isBlendWithGlide(r)) return blendAsVapour(r, supply)
  return r.info.kind === 'near-azeotrope'
    ? [
        {
          code: 'blend-as-vapour',
          message: `${r.info.id} shifts a little when it is taken as vapour: take it as liquid.`,
        },
      ]
    : []
}

/** A hydrocarbon goes only into what is said to be built for it; any other that burns, not into what is said not to be. */
function checkFlammable(r: Refrigerant, { ratedForFlammable }: RouteWish): void {
  if (!burns(r)) return
  const allowed = burnsFiercely(r) ? ratedForFlammable === true : ratedForFlammable !== false
  if (allowed) return
  throw refusal(`Do not charge ${r.info.id} into a system or with a machine not built for it.`, {
    hint: 'It burns. Where label and maker say that system and charging machine are rated for it, say so (ratedForFlammable).',
    path: ['ratedForFlammable'],
    cautions: [...dangersOf({ refrigerant: r, does: ['charges'] }), 'no-flammable-retrofit'],
  })
}

function blendAsVapour(r: Refrigerant, supply: Supply): readonly Warning[] {
  if (supply !== 'small-cans') {
    throw new CalcError(
      'refused',
      `${r.info.id} is a zeotropic blend and must leave its cylinder as liquid.`,
      {
        hint: 'Take liquid (dip tube, or cylinder turned over) and throttle it where it goes into the low side.',
        path: ['phase'],
      },
    )
  }
  return [
    {
      code: 'blend-as-vapour',
      message: 'A part of a can taken as vapour changes the blend: use whole cans, or take liquid.',
    },
  ]
}
