import { ZERO_CELSIUS_K } from '../gas-constants.ts'

/**
 * A unit and what it takes to reach SI.
 *
 * A unit maps to SI by `si = value * factor + offset`. Conversion factors are exact by definition
 * (international yard and pound agreement of 1959; NIST SP 811, 2008, appendix B; Btu is that of the
 * International Table) except the columns, which are conventional: mercury at 0 °C, 133.322387415 Pa
 * per mm, and water of 1000 kg/m³, both under standard gravity (NIST SP 811).
 */
export interface Unit {
  /** How we print it. Parses back to the same unit. */
  readonly symbol: string
  readonly factor: number
  readonly offset: number
  /** Other spellings, lower case, as `normalizeUnit` leaves them. */
  readonly spellings: readonly string[]
}

const POUND = 0.45359237
const INCH = 0.0254
const FOOT = 12 * INCH
const US_GALLON = 231 * INCH ** 3
const STANDARD_GRAVITY = 9.80665
const PSI = (POUND * STANDARD_GRAVITY) / INCH ** 2
const MM_HG = 133.322387415
const MINUTE = 60
const HOUR = 3600
/** Julian year, 365.25 days. */
const YEAR = 365.25 * 24 * HOUR

const unit = (symbol: string, factor: number, ...spellings: string[]): Unit => ({
  symbol,
  factor,
  offset: 0,
  spellings: [symbol.toLowerCase(), ...spellings],
})

const withOffset = (symbol: string, factor: number, offset: number, ...spellings: string[]) => ({
  ...unit(symbol, factor, ...spellings),
  offset,
})

/** Column or force units that say nothing about their zero: gauge, absolute and difference are built from these. */
const PRESSURE_BASES: readonly (readonly [symbol: string, factor: number, ...names: string[]])[] = [
  ['psi', PSI, 'lb/in2', 'lbf/in2'],
  ['kPa', 1e3],
  ['bar', 1e5],
  ['MPa', 1e6],
  ['mbar', 100],
  ['hPa', 100],
  ['Pa', 1],
  ['kgf/cm2', 98066.5, 'kg/cm2', 'at'],
  ['inHg', 25.4 * MM_HG, 'in hg', '"hg', '" hg', 'in. hg', 'in.hg'],
  ['cmHg', 10 * MM_HG, 'cm hg'],
  ['mmHg', MM_HG, 'mm hg'],
  ['inH2O', 25.4 * STANDARD_GRAVITY, 'in h2o', 'inwc', 'in wc'],
  ['atm', 101325],
]

const suffixed = (symbol: string, factor: number, names: readonly string[], suffixes: string[]) =>
  unit(
    `${symbol} ${suffixes[0]}`,
    factor,
    ...[symbol.toLowerCase(), ...names].flatMap((name) =>
      suffixes.flatMap((suffix) => [`${name} ${suffix}`, `${name}(${suffix})`, `${name}${suffix}`]),
    ),
  )

const GAUGE = ['g', 'ga', 'gauge']
const ABSOLUTE = ['abs', 'a', 'absolute']
const VACUUM = ['vac', 'v', 'vacuum', 'of vacuum']

const gaugeUnits: readonly Unit[] = [
  unit('psig', PSI, 'psi g', 'psi ga', 'psi gauge', 'psi(g)', 'lb/in2 g', 'lb/in2 gauge'),
  ...PRESSURE_BASES.slice(1).map(([symbol, factor, ...names]) =>
    suffixed(symbol, factor, names, GAUGE),
  ),
  // A vacuum reading counts downward from the barometer.
  ...PRESSURE_BASES.map(([symbol, factor, ...names]) =>
    suffixed(symbol, -factor, symbol === 'inHg' ? [...names, 'in', 'in.', '"'] : names, VACUUM),
  ),
  // By trade usage inches written with their mark are those of a compound gauge: a vacuum.
  { ...unit('inHg vac', -25.4 * MM_HG, '"hg', '" hg', '″hg', '"hg vac'), symbol: 'inHg vac' },
]

const absoluteUnits: readonly Unit[] = [
  unit('psia', PSI, 'psi a', 'psi abs', 'psi absolute', 'psi(a)', 'psi(abs)'),
  ...PRESSURE_BASES.slice(1).map(([symbol, factor, ...names]) =>
    suffixed(symbol, factor, names, ABSOLUTE),
  ),
  // Absolute by trade usage: vacuum gauges read upward from a perfect vacuum in these.
  unit('micron', MM_HG / 1000, 'microns', 'µmhg', 'umhg', 'μmhg', 'µm hg', 'mtorr', 'millitorr'),
  unit('Torr', 101325 / 760, 'torr abs'),
]

const differenceUnits: readonly Unit[] = [
  ...PRESSURE_BASES.map(([symbol, factor, ...names]) => unit(symbol, factor, ...names)),
  unit('micron', MM_HG / 1000, 'microns', 'mtorr'),
  unit('Torr', 101325 / 760),
]

const barometricUnits: readonly Unit[] = [
  ...differenceUnits,
  ...absoluteUnits.filter(
    (candidate) => candidate.symbol.endsWith('abs') || candidate.symbol === 'psia',
  ),
]

const FAHRENHEIT = 5 / 9

const LENGTH_UNITS: readonly Unit[] = [
  unit('in', INCH, '"', 'inch', 'inches', '″'),
  unit('ft', FOOT, "'", 'foot', 'feet', '′'),
  unit('yd', 3 * FOOT, 'yard', 'yards'),
  unit('mm', 1e-3, 'millimetre', 'millimeter', 'millimetres', 'millimeters'),
  unit('cm', 1e-2, 'centimetre', 'centimeter', 'centimetres', 'centimeters'),
  unit('m', 1, 'metre', 'meter', 'metres', 'meters'),
  unit('km', 1e3, 'kilometre', 'kilometer', 'kilometres', 'kilometers'),
]

/** Every unit by the kind of quantity that it measures, the ones shown first. */
export const tables = {
  temperature: [
    withOffset(
      '°F',
      FAHRENHEIT,
      459.67 * FAHRENHEIT,
      'f',
      'deg f',
      'degf',
      'degree f',
      'degrees f',
      'fahrenheit',
      'degrees fahrenheit',
    ),
    withOffset(
      '°C',
      1,
      ZERO_CELSIUS_K,
      'c',
      'deg c',
      'degc',
      'degree c',
      'degrees c',
      'celsius',
      'degrees celsius',
    ),
    unit('K', 1, 'kelvin'),
    unit('°R', FAHRENHEIT, 'rankine', 'deg r'),
  ],
  temperatureDifference: [
    unit('°F', FAHRENHEIT, 'f', 'deg f', 'degf', 'f°', 'δf', 'δ°f', '°r', 'fahrenheit degrees'),
    unit('K', 1, 'kelvin', '°c', 'c', 'deg c', 'degc', 'c°', 'δc', 'δ°c', 'δk'),
  ],
  gaugePressure: gaugeUnits,
  absolutePressure: absoluteUnits,
  barometricPressure: barometricUnits,
  pressureDifference: differenceUnits,
  mass: [
    unit('lb', POUND, 'lbs', 'pound', 'pounds', 'lbm'),
    unit('oz', POUND / 16, 'ounce', 'ounces', 'oz wt', 'oz av'),
    unit('kg', 1, 'kilogram', 'kilograms'),
    unit('g', 1e-3, 'gram', 'grams'),
    unit('mg', 1e-6, 'milligram', 'milligrams'),
  ],
  volume: [
    unit('fl oz', US_GALLON / 128, 'floz', 'fl. oz', 'fluid ounce', 'fluid ounces', 'us fl oz'),
    unit('imp fl oz', 28.4130625e-6, 'uk fl oz', 'imperial fl oz'),
    unit('mL', 1e-6, 'cc', 'cm3', 'ccm', 'milliliter', 'milliliters', 'millilitre', 'millilitres'),
    unit('L', 1e-3, 'liter', 'liters', 'litre', 'litres', 'dm3'),
    unit('m3', 1, 'cubic metre', 'cubic meter'),
    unit('in3', INCH ** 3, 'cu in', 'cubic inch', 'cubic inches'),
    unit('ft3', FOOT ** 3, 'cu ft', 'cubic foot', 'cubic feet'),
    unit('gal', US_GALLON, 'us gal', 'gallon', 'gallons'),
    unit('qt', US_GALLON / 4, 'quart', 'quarts'),
    unit('pt', US_GALLON / 8, 'pint', 'pints'),
  ],
  length: LENGTH_UNITS,
  altitude: LENGTH_UNITS,
  duration: [
    unit('s', 1, 'sec', 'secs', 'second', 'seconds'),
    unit('min', MINUTE, 'mins', 'minute', 'minutes'),
    unit('h', HOUR, 'hr', 'hrs', 'hour', 'hours'),
    unit('d', 24 * HOUR, 'day', 'days'),
    unit('yr', YEAR, 'year', 'years', 'y', 'a'),
  ],
  density: [
    unit('kg/m3', 1),
    unit('g/mL', 1e3, 'g/cc', 'g/cm3', 'kg/l'),
    unit('g/L', 1),
    unit('lb/ft3', POUND / FOOT ** 3, 'lb/cu ft'),
    unit('lb/gal', POUND / US_GALLON),
  ],
  massPerLength: [
    unit('oz/ft', POUND / 16 / FOOT),
    unit('lb/ft', POUND / FOOT),
    unit('g/m', 1e-3),
    unit('g/ft', 1e-3 / FOOT),
    unit('kg/m', 1),
  ],
  volumeFlow: [
    unit('cfm', FOOT ** 3 / MINUTE, 'ft3/min', 'cu ft/min'),
    unit('L/min', 1e-3 / MINUTE, 'lpm'),
    unit('L/s', 1e-3),
    unit('m3/h', 1 / HOUR),
    unit('m3/s', 1),
    unit('mL/min', 1e-6 / MINUTE, 'cc/min', 'cm3/min'),
  ],
  massFlow: [
    unit('g/yr', 1e-3 / YEAR, 'g/year', 'g/a'),
    unit('oz/yr', POUND / 16 / YEAR, 'oz/year'),
    unit('lb/yr', POUND / YEAR, 'lb/year'),
    unit('kg/yr', 1 / YEAR, 'kg/year'),
    unit('g/min', 1e-3 / MINUTE),
    unit('kg/h', 1 / HOUR),
    unit('kg/s', 1),
    unit('g/s', 1e-3),
    unit('oz/min', POUND / 16 / MINUTE),
    unit('lb/min', POUND / MINUTE),
  ],
  leakRate: [
    unit('Pa m3/s', 1, 'pa·m3/s', 'pa.m3/s', 'pa*m3/s'),
    unit('mbar L/s', 0.1, 'mbar·l/s', 'mbar.l/s', 'mbar*l/s'),
    unit('atm cc/s', 0.101325, 'atm·cc/s', 'std cc/s', 'atm.cc/s'),
    unit('std mL/min', (101325 * 1e-6) / MINUTE, 'std cc/min', 'sccm'),
  ],
  specificEnergy: [unit('Btu/lb', 2326), unit('kJ/kg', 1e3), unit('J/kg', 1), unit('J/g', 1e3)],
  specificEntropy: [
    unit('Btu/(lb °F)', 4186.8, 'btu/lb°f', 'btu/(lb·°f)', 'btu/lb f'),
    unit('kJ/(kg K)', 1e3, 'kj/kgk', 'kj/kg k', 'kj/(kg·k)'),
    unit('J/(kg K)', 1, 'j/kgk', 'j/kg k', 'j/(kg·k)'),
  ],
  speed: [unit('ft/s', FOOT, 'fps'), unit('m/s', 1), unit('ft/min', FOOT / MINUTE, 'fpm')],
  power: [unit('W', 1), unit('kW', 1e3), unit('Btu/h', 0.29307107017222, 'btuh', 'btu/hr')],
  fraction: [unit('%', 0.01, 'percent', 'pct', '% rh', '%rh', 'wt%'), unit('ppm', 1e-6)],
} satisfies Record<string, readonly Unit[]>
