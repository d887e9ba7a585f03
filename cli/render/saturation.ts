import type { Answer } from '../../shared/operation.ts'
import type { saturation } from '../../shared/service/saturation.ts'
import type { Page } from './pairs.ts'
import { treeLines } from './tree.ts'

type Saturation = ReturnType<typeof saturation.run>['result']

/** Where both lines are one, each figure once: what was asked first, then the rest. */
export function saturationLines(answer: Answer, page: Page): readonly string[] {
  const result = answer.result as Saturation
  if (result.lines !== 'one') return treeLines(result, 2, page)
  const { refrigerant, given, bubble, dew, latentHeat } = result
  const { temperature, gaugePressure, absolutePressure } = dew
  const figures =
    given === 'pressure'
      ? { temperature, gaugePressure, absolutePressure }
      : { gaugePressure, absolutePressure, temperature }
  const all = {
    refrigerant,
    ...figures,
    liquidDensity: bubble.density,
    vapourDensity: dew.density,
    latentHeat,
  }
  return treeLines(all, 2, page)
}
