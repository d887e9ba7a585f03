import { CalcError, under } from '../../errors.ts'
import {
  absolutePressure,
  density,
  findUnit,
  type Kind,
  type Quantity,
  requireUnit,
  specificEnergy,
  temperature,
  temperatureDifference,
  toGauge,
} from '../../quantity/index.ts'
import {
  glide,
  type Line,
  latentHeat,
  type Refrigerant,
  saturatedDensity,
  saturationPressure,
  saturationTemperature,
} from '../../refrigerant/index.ts'
import type { TableKind } from './grid.ts'

/** What may stand beside the first column. */
export const CHOICES = ['saturation', 'density', 'latent-heat', 'glide'] as const
export type Choice = (typeof CHOICES)[number]

/** Units that the user chose for the columns; undefined follows the unit system. */
interface ColumnUnits {
  readonly temperatureUnit?: string | undefined
  readonly pressureUnit?: string | undefined
  readonly densityUnit?: string | undefined
  readonly latentHeatUnit?: string | undefined
}

/** A row's temperature (K) or absolute pressure (Pa): the other is found on either line. */
export type RowPoint =
  | { readonly over: 'temperature'; readonly si: number; readonly barometerPa: number }
  | { readonly over: 'pressure'; readonly si: number; readonly barometerPa: number }

export interface Column {
  readonly key: string
  readonly label: string
  figure(point: RowPoint): Quantity
}

/**
 * Columns of a table for this refrigerant: one a line where a blend has two.
 *
 * @throws {CalcError} `wrong-kind` with the path of the field for a unit that the column does not take.
 */
export function columnsOf(
  r: Refrigerant,
  kind: TableKind,
  choices: readonly Choice[],
  units: ColumnUnits,
): readonly Column[] {
  const chosen = {
    temperature: checked('temperatureUnit', 'temperature', units.temperatureUnit),
    difference: checked('temperatureUnit', 'temperatureDifference', units.temperatureUnit),
    density: checked('densityUnit', 'density', units.densityUnit),
    latentHeat: checked('latentHeatUnit', 'specificEnergy', units.latentHeatUnit),
    pressure: pressureShower(units.pressureUnit),
  }
  const pure = r.info.kind === 'pure'
  const lines: readonly Line[] = pure ? ['bubble'] : ['bubble', 'dew']
  const named = (line: Line, word: string) => (pure ? word : `${line} ${word}`)
  const makers: Record<Choice, () => readonly Column[]> = {
    saturation: () =>
      lines.map((line) =>
        kind === 'temperature'
          ? column(named(line, 'pressure'), (point) =>
              chosen.pressure(pressureOn(r, point, line), point.barometerPa),
            )
          : column(named(line, 'temperature'), (point) =>
              temperature(temperatureOn(r, point, line)).in(chosen.temperature),
            ),
      ),
    density: () => [
      column('liquid density', (point) =>
        density(saturatedDensity(r, temperatureOn(r, point, 'bubble'), 'liquid')).in(
          chosen.density,
        ),
      ),
      column('vapour density', (point) =>
        density(saturatedDensity(r, temperatureOn(r, point, 'dew'), 'vapour')).in(chosen.density),
      ),
    ],
    'latent-heat': () => [
      column('latent heat', (point) =>
        specificEnergy(latentHeat(r, pressureOn(r, point, 'bubble'))).in(chosen.latentHeat),
      ),
    ],
    glide: () => [
      column('glide', (point) =>
        temperatureDifference(pure ? 0 : glide(r, pressureOn(r, point, 'bubble'))).in(
          chosen.difference,
        ),
      ),
    ],
  }
  return [...new Set(choices)].flatMap((choice) => makers[choice]())
}

const column = (label: string, figure: (point: RowPoint) => Quantity): Column => ({
  key: label.replace(/ (\w)/gu, (_, letter: string) => letter.toUpperCase()),
  label,
  figure,
})

const temperatureOn = (r: Refrigerant, point: RowPoint, line: Line) =>
  point.over === 'temperature' ? point.si : saturationTemperature(r, point.si, line)

const pressureOn = (r: Refrigerant, point: RowPoint, line: Line) =>
  point.over === 'pressure' ? point.si : saturationPressure(r, point.si, line)

function checked(path: string, kind: Kind, unit: string | undefined): string | undefined {
  return unit === undefined ? undefined : under(path, () => requireUnit(kind, unit).symbol)
}

function pressureShower(unit: string | undefined): (pa: number, barometerPa: number) => Quantity {
  if (unit === undefined) return (pa, barometerPa) => toGauge(pa, barometerPa)
  const gauge = findUnit('gaugePressure', unit)?.symbol
  if (gauge !== undefined) return (pa, barometerPa) => toGauge(pa, barometerPa).in(gauge)
  const absolute = findUnit('absolutePressure', unit)?.symbol
  if (absolute !== undefined) return (pa) => absolutePressure(pa).in(absolute)
  throw new CalcError('wrong-kind', `"${unit}" is not a unit of gauge or absolute pressure.`, {
    path: ['pressureUnit'],
    hint: 'Take psig, bar g, kPa g, psia, bar abs or kPa abs.',
  })
}
