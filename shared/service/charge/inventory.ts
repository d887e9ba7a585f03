import type { Assumption, Step, Warning } from '../../operation.ts'
import { density, mass, type Quantity, volume as volumeOf } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import type { Source } from '../../sources.ts'
import { difference, type Estimate, exactly, product, reading, settle } from './estimate.ts'
import type { Geometry, Part, Section } from './fields.ts'
import type { Filling } from './filling.ts'
import { type Space, spaceOf } from './geometry.ts'
import { type LineCheck, lineChecks } from './line-check.ts'
import { fillingOf } from './states.ts'

type Path = readonly (string | number)[]

/** The refrigerant in one space, or the change of it. */
export interface Inventory {
  readonly name: string
  readonly mass: Estimate
  readonly density: Quantity<'density'> | undefined
  readonly volume: Quantity<'volume'> | undefined
  readonly checks: readonly LineCheck[]
  readonly step: Step
  readonly sources: readonly Source[]
  readonly assumptions: readonly Assumption[]
  readonly warnings: readonly Warning[]
}

/** Mass that a section holds: its volume times the density of what fills it, or the maker's mass per length. */
export function sectionInventory(
  r: Refrigerant,
  section: Section,
  barometerPa: number,
  path: Path,
): Inventory {
  const name = section.name ?? 'section'
  const space = spaceOf(section, path)
  const filling = fillingFor(r, section, [section], barometerPa, path)
  const held = massIn(section, space, filling)
  const shownVolume = space.volume && volumeQuantity(space.volume)
  return {
    name,
    mass: held,
    density: filling && densityQuantity(filling),
    volume: shownVolume,
    checks: lineChecks(r, section, space, filling),
    step: {
      what: `Refrigerant in the ${name}`,
      formula: section.makerMassPerLength ? "maker's mass per length × length" : 'volume × density',
      values: values({ volume: shownVolume, how: space.how, ...fillingValues(filling) }),
      gives: massQuantity(held),
    },
    ...collected([space], filling),
  }
}

/** Change of what a part holds: (new volume − old volume) × operating density, by the maker's mass per length where given. */
export function partChange(r: Refrigerant, part: Part, barometerPa: number, path: Path): Inventory {
  const name = part.name ?? 'part'
  const [before, after] = [part.old, part.new].map((geometry, index) =>
    geometry ? spaceOf(geometry, [...path, index === 0 ? 'old' : 'new']) : undefined,
  )
  const measured = [part.old, part.new].filter((geometry) => geometry !== undefined)
  const filling = fillingFor(r, part, measured, barometerPa, path)
  const was = part.old && before ? massIn(part.old, before, filling) : exactly(0)
  const is = part.new && after ? massIn(part.new, after, filling) : exactly(0)
  const change = difference(is, was)
  const spaces = [before, after].flatMap((space) => space ?? [])
  return {
    name,
    mass: change,
    density: filling && densityQuantity(filling),
    volume: undefined,
    checks: part.new && after ? lineChecks(r, part.new, after, filling) : [],
    step: {
      what: `Change of charge by the ${name}`,
      formula: measured.some((geometry) => geometry.makerMassPerLength)
        ? "what the new part holds − what the old one held, by the maker's mass per length where given"
        : '(new volume − old volume) × operating density',
      values: values({
        'old volume': before?.volume ? volumeQuantity(before.volume) : undefined,
        'new volume': after?.volume ? volumeQuantity(after.volume) : undefined,
        ...fillingValues(filling),
      }),
      gives: massQuantity(change),
    },
    ...collected(spaces, filling),
  }
}

/** The state is needed unless the maker's mass per length says it all; given anyway, it makes the check beside it. */
function fillingFor(
  r: Refrigerant,
  contents: Section | Part,
  geometries: readonly Geometry[],
  barometerPa: number,
  path: Path,
): Filling | undefined {
  const { phase, temperature, pressure, quality } = contents
  const silent = [phase, temperature, pressure, quality].every((value) => value === undefined)
  if (silent && geometries.every((geometry) => geometry.makerMassPerLength)) return undefined
  return fillingOf(r, { phase, temperature, pressure, quality }, barometerPa, path)
}

function massIn(geometry: Geometry, space: Space, filling: Filling | undefined): Estimate {
  const { makerMassPerLength, length } = geometry
  if (makerMassPerLength && length) return product(reading(makerMassPerLength), reading(length))
  return product(space.volume ?? exactly(0), filling?.density ?? exactly(0))
}

function collected(spaces: readonly Space[], filling: Filling | undefined) {
  return {
    sources: spaces.flatMap((space) => space.sources),
    assumptions: [...spaces.flatMap((space) => space.assumptions), ...(filling?.assumptions ?? [])],
    warnings: filling?.warnings ?? [],
  }
}

const fillingValues = (filling: Filling | undefined) =>
  filling ? { contents: filling.how, density: densityQuantity(filling) } : {}

const densityQuantity = (filling: Filling) => {
  const { si, plusMinus } = settle(filling.density)
  return density(si, plusMinus)
}

/** A mass in kg with its uncertainty, to be shown. */
export const massQuantity = (estimate: Estimate) => {
  const { si, plusMinus } = settle(estimate)
  return mass(si, plusMinus)
}

/** A volume in m³ with its uncertainty, to be shown. */
export const volumeQuantity = (estimate: Estimate) => {
  const { si, plusMinus } = settle(estimate)
  return volumeOf(si, plusMinus)
}

/** Step values without the missing ones. */
export const values = (
  entries: Readonly<Record<string, Quantity | number | string | undefined>>,
): Record<string, Quantity | number | string> =>
  Object.fromEntries(
    Object.entries(entries).flatMap(([key, value]) => (value === undefined ? [] : [[key, value]])),
  )
