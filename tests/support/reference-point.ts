import golden from '../reference/golden/service.json' with { type: 'json' }

/** Saturation at one temperature as the reference library has it, SI. */
export interface ReferencePoint {
  readonly bubblePa: number
  readonly liquidKgPerM3: number
  readonly dewPa: number
  readonly vapourKgPerM3: number
}

const points: Readonly<Record<string, readonly (readonly number[])[]>> = golden.refrigerants

/** A row of `tests/reference/golden/service.json`, which `tests/reference/service.py` writes. */
export function referencePoint(id: string, fahrenheit: number): ReferencePoint {
  const row = points[id]?.find(([at]) => at === fahrenheit)
  const [, bubblePa, liquidKgPerM3, dewPa, vapourKgPerM3] = row ?? []
  if (
    bubblePa === undefined ||
    liquidKgPerM3 === undefined ||
    dewPa === undefined ||
    vapourKgPerM3 === undefined
  ) {
    throw new Error(`no reference point of ${id} at ${fahrenheit} °F`)
  }
  return { bubblePa, liquidKgPerM3, dewPa, vapourKgPerM3 }
}

/** How far a figure lies from another, relative. */
export const apart = (found: number | undefined, reference: number): number =>
  Math.abs((found ?? Number.NaN) / reference - 1)
