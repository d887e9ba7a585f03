import data from '../../../data/service/fractionation.json' with { type: 'json' }
import {
  type Budget,
  budget,
  type Quantity,
  surelyAbove,
  surelyBelow,
} from '../../quantity/index.ts'
import { propertyUncertainty, type Refrigerant } from '../../refrigerant/index.ts'
import { LEAST_LOST, MOST_LOST } from './limits.ts'
import type { Leak } from './work-out.ts'

/** What topping up would come to. */
export const TOP_UPS = ['top-up-reads-close', 'recover-and-weigh-in', 'cannot-tell'] as const
export type TopUp = (typeof TOP_UPS)[number]

/**
 * The shift of the topped-up charge with its ±: that of the share lost, and the uncertainty of the
 * blend's data. Both compositions share much of the latter, so it is counted too large rather than too small.
 */
export function shiftOf(
  r: Refrigerant,
  temperatureK: number,
  lost: Quantity<'fraction'>,
  leak: Leak,
): Budget {
  const dataK = Math.max(
    propertyUncertainty(r, temperatureK, 'bubble').temperatureK,
    propertyUncertainty(r, temperatureK, 'dew').temperatureK,
  )
  return budget(
    [
      { name: 'share lost', si: lost.si, plusMinus: lost.plusMinus },
      { name: 'refrigerant data', si: 0, plusMinus: dataK },
    ],
    (...[share = 0, off = 0]) =>
      (share === lost.si
        ? leak.shiftK
        : leak.shiftAtK(Math.min(MOST_LOST, Math.max(LEAST_LOST, share)))) + off,
  )
}

/** Whether a topped-up charge would read like the fresh blend, as far as gauges can tell. */
export function topUpOf(shift: Budget): TopUp {
  if (surelyBelow(shift, data.closeK)) return 'top-up-reads-close'
  return surelyAbove(shift, data.closeK) ? 'recover-and-weigh-in' : 'cannot-tell'
}
