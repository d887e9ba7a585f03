import {
  difference,
  exactly,
  product,
  type Quantity,
  type Tied,
  tied,
} from '../../../quantity/index.ts'
import type { Path } from '../input/gather.ts'
import type { Geometry, Part, Section } from '../input/items.ts'
import { fillingOf } from '../space/contents.ts'
import type { Filling } from '../space/filling.ts'
import { type Space, spaceOf } from '../space/geometry.ts'
import type { Setting } from '../space/setting.ts'
import { type LineCheck, lineChecks } from './line-check.ts'
import { densityOf, massOf, values, volumeOf } from './shown.ts'

/** The refrigerant in one space, or the change of it. */
export interface Inventory {
  readonly name: string
  readonly mass: Tied
  readonly density: Quantity<'density'> | undefined
  readonly volume: Quantity<'volume'> | undefined
  readonly checks: readonly LineCheck[]
}

/** Mass that a section holds: its volume times the density of what fills it, or the maker's mass per length. */
export function sectionInventory(setting: Setting, section: Section, path: Path): Inventory {
  const name = section.name ?? 'section'
  const space = spaceOf(setting, section, path)
  const filling = fillingFor(setting, section, [section], path)
  const held = massIn(section, space, filling)
  const shownVolume = space.volume && volumeOf(space.volume)
  setting.notes.steps.push({
    what: `Refrigerant in the ${name}`,
    formula: section.makerMassPerLength ? "maker's mass per length × length" : 'volume × density',
    values: values({ volume: shownVolume, how: space.how, ...fillingValues(filling) }),
    gives: massOf(held),
  })
  return {
    name,
    mass: held,
    density: filling && densityOf(filling.density),
    volume: shownVolume,
    checks: lineChecks(setting, section, space, filling),
  }
}

/** Change of what a part holds: (new volume − old volume) × operating density, by the maker's mass per length where given. */
export function partChange(setting: Setting, part: Part, path: Path): Inventory {
  const name = part.name ?? 'part'
  const before = part.old && spaceOf(setting, part.old, [...path, 'old'])
  const after = part.new && spaceOf(setting, part.new, [...path, 'new'])
  const measured = [part.old, part.new].filter((geometry) => geometry !== undefined)
  const filling = fillingFor(setting, part, measured, path)
  const was = part.old && before ? massIn(part.old, before, filling) : exactly(0)
  const is = part.new && after ? massIn(part.new, after, filling) : exactly(0)
  const change = difference(is, was)
  setting.notes.steps.push({
    what: `Change of charge by the ${name}`,
    formula: measured.some((geometry) => geometry.makerMassPerLength)
      ? "what the new part holds − what the old one held, by the maker's mass per length where given"
      : '(new volume − old volume) × operating density',
    values: values({
      'old volume': before?.volume && volumeOf(before.volume),
      'new volume': after?.volume && volumeOf(after.volume),
      ...fillingValues(filling),
    }),
    gives: massOf(change),
  })
  return {
    name,
    mass: change,
    density: filling && densityOf(filling.density),
    volume: undefined,
    checks: part.new && after ? lineChecks(setting, part.new, after, filling) : [],
  }
}

/** The state is needed unless the maker's mass per length says it all; given anyway, it makes the check beside it. */
function fillingFor(
  setting: Setting,
  { phase, temperature, pressure, quality }: Section | Part,
  geometries: readonly Geometry[],
  path: Path,
): Filling | undefined {
  const silent = [phase, temperature, pressure, quality].every((value) => value === undefined)
  if (silent && geometries.every((geometry) => geometry.makerMassPerLength)) return undefined
  return fillingOf(setting, { phase, temperature, pressure, quality }, path)
}

function massIn(geometry: Geometry, space: Space, filling: Filling | undefined): Tied {
  const { makerMassPerLength, length } = geometry
  if (makerMassPerLength && length) {
    return product(tied(makerMassPerLength, "maker's mass per length"), tied(length, 'length'))
  }
  return product(space.volume ?? exactly(0), filling?.density ?? exactly(0))
}

const fillingValues = (filling: Filling | undefined) =>
  filling ? { contents: filling.how, density: densityOf(filling.density) } : {}
