import { readdirSync, readFileSync } from 'node:fs'
import type { RefrigerantInfo } from '../../shared/refrigerant/info.ts'
import { substanceData } from '../../shared/substance/library.ts'
import { mixtureOf, moleFractions } from '../../shared/substance/mixture.ts'
import { multifluid } from '../../shared/substance/multifluid.ts'
import { followLine } from '../../shared/substance/saturation-line.ts'

const folder = new URL('../../data/refrigerants/', import.meta.url)

/** Every blend that a person can pick. */
export const BLENDS: readonly RefrigerantInfo[] = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as RefrigerantInfo)
  .filter((info) => info.composition.length > 1)

const known = new Map<string, ReturnType<typeof build>>()

/** A blend with both lines followed from −60 °C to its critical region by the solver itself. */
export function solved(id: string): ReturnType<typeof build> {
  const found = known.get(id) ?? build(id)
  known.set(id, found)
  return found
}

function build(id: string) {
  const info = BLENDS.find((b) => b.id === id)
  if (info === undefined) throw new Error(`no blend ${id}`)
  const fluid = multifluid(info.composition.map((c) => substanceData(c.substance)))
  const fractions = moleFractions(
    info.composition.map((c) => c.massFraction),
    fluid.molarMasses,
  )
  const z = Float64Array.from(fractions)
  const fromK = Math.max(213.15, ...fluid.components.map((c) => c.triple.temperatureK))
  return {
    info,
    fluid,
    z,
    fromK,
    model: mixtureOf(fluid, fractions),
    bubble: followLine(fluid, z, 'bubble', fromK),
    dew: followLine(fluid, z, 'dew', fromK),
  }
}

/** Temperature in K at which a line has a pressure in Pa, by bisection: slow and sure. */
export function temperatureAt(
  pressureAt: (temperatureK: number) => number,
  pressurePa: number,
  lowK: number,
  highK: number,
): number {
  let [low, high] = [lowK, highK]
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2
    if (pressureAt(middle) > pressurePa) high = middle
    else low = middle
  }
  return (low + high) / 2
}
