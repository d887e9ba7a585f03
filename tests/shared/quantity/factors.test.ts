import { describe, expect, it } from 'vitest'
import { KINDS, type Kind, parseQuantity, UNITS } from '../../../shared/quantity/index.ts'

/*
 * Every unit again, apart from the table of the code: how many SI units one of it is. NIST SP 811
 * (2008), appendix B, to its digits, or the same worked by hand from the definitions (inch 25.4 mm,
 * pound 0.453 592 37 kg, US gallon 231 in³, standard gravity 9.806 65 m/s², mercury 133.322 387 Pa per mm).
 */
const COLUMNS: Readonly<Record<string, number>> = {
  psi: 6894.757,
  kPa: 1000,
  bar: 100_000,
  MPa: 1_000_000,
  mbar: 100,
  hPa: 100,
  Pa: 1,
  'kgf/cm2': 98_066.5,
  inHg: 3386.389,
  cmHg: 1333.224,
  mmHg: 133.3224,
  inH2O: 249.08891,
  atm: 101_325,
}
const MICRON = 0.133_322_4
const TORR = 133.3224
const entries = (suffix: string, sign = 1) =>
  Object.entries(COLUMNS).map(([name, factor]) => {
    const joined =
      name === 'psi' && suffix !== 'vac' ? `psi${suffix.charAt(0)}` : `${name} ${suffix}`
    return [joined.trim(), sign * factor] as const
  })
const LENGTHS = {
  ...{ in: 0.0254, ft: 0.3048, yd: 0.9144, mm: 0.001, cm: 0.01, m: 1, km: 1000 },
}

const FACTORS: Readonly<Record<Kind, Readonly<Record<string, number>>>> = {
  temperature: { '°F': 0.555_555_56, '°C': 1, K: 1, '°R': 0.555_555_56 },
  temperatureDifference: { '°F': 0.555_555_56, K: 1 },
  gaugePressure: Object.fromEntries([...entries('g'), ...entries('vac', -1)]),
  absolutePressure: { ...Object.fromEntries(entries('abs')), micron: MICRON, Torr: TORR },
  barometricPressure: {
    ...COLUMNS,
    ...Object.fromEntries(entries('abs')),
    micron: MICRON,
    Torr: TORR,
  },
  pressureDifference: { ...COLUMNS, micron: MICRON, Torr: TORR },
  mass: { lb: 0.453_592_37, oz: 0.028_349_523, kg: 1, g: 0.001, mg: 1e-6 },
  volume: {
    'fl oz': 2.957_353e-5,
    'imp fl oz': 2.841_306e-5,
    mL: 1e-6,
    L: 0.001,
    m3: 1,
    in3: 1.638_706e-5,
    ft3: 0.028_316_85,
    gal: 0.003_785_412,
    qt: 9.463_529e-4,
    pt: 4.731_765e-4,
  },
  length: LENGTHS,
  altitude: LENGTHS,
  duration: { s: 1, min: 60, h: 3600, d: 86_400, yr: 31_557_600 },
  density: { 'kg/m3': 1, 'g/mL': 1000, 'g/L': 1, 'lb/ft3': 16.018_46, 'lb/gal': 119.8264 },
  massPerLength: {
    'oz/ft': 0.093_010_25,
    'lb/ft': 1.488_164,
    'g/m': 0.001,
    'g/ft': 0.003_280_84,
    'kg/m': 1,
  },
  volumeFlow: {
    cfm: 4.719_474e-4,
    'L/min': 1.666_667e-5,
    'L/s': 0.001,
    'm3/h': 2.777_778e-4,
    'm3/s': 1,
    'mL/min': 1.666_667e-8,
  },
  massFlow: {
    'g/yr': 3.168_809e-11,
    'oz/yr': 8.983_422e-10,
    'lb/yr': 1.437_348e-8,
    'kg/yr': 3.168_809e-8,
    'g/min': 1.666_667e-5,
    'kg/h': 2.777_778e-4,
    'kg/s': 1,
    'g/s': 0.001,
    'oz/min': 4.724_921e-4,
    'lb/min': 7.559_873e-3,
  },
  leakRate: { 'Pa m3/s': 1, 'mbar L/s': 0.1, 'atm cc/s': 0.101_325, 'std mL/min': 1.688_75e-3 },
  specificEnergy: { 'Btu/lb': 2326, 'kJ/kg': 1000, 'J/kg': 1, 'J/g': 1000 },
  specificEntropy: { 'Btu/(lb °F)': 4186.8, 'kJ/(kg K)': 1000, 'J/(kg K)': 1 },
  speed: { 'ft/s': 0.3048, 'm/s': 1, 'ft/min': 0.005_08 },
  power: { W: 1, kW: 1000, 'Btu/h': 0.293_071_1 },
  fraction: { '%': 0.01, ppm: 1e-6 },
}

describe.each(KINDS)('the units of %s', (kind) => {
  it('are those of the list', () => {
    const symbols = new Set(UNITS[kind].map(({ symbol }) => symbol))
    expect([...symbols].sort()).toEqual(Object.keys(FACTORS[kind]).sort())
  })

  it.each(UNITS[kind].map((unit) => [unit.symbol, unit] as const))(
    '%s is worth its factor',
    (symbol, { factor, offset }) => {
      const expected = FACTORS[kind][symbol] ?? Number.NaN
      expect(Math.abs(factor / expected - 1)).toBeLessThan(5e-7)
      const zero = kind === 'temperature' ? { '°F': 255.372_222, '°C': 273.15 }[symbol] : 0
      expect(offset).toBeCloseTo(zero ?? 0, 6)
    },
  )
})

describe('the names by which people call a unit', () => {
  it.each<[kind: Kind, symbol: string, names: readonly string[]]>([
    ['gaugePressure', 'psig', ['psig', 'PSI g', 'psi gauge', 'psi(g)', 'psi ga', 'lb/in2 g']],
    ['gaugePressure', 'bar g', ['bar g', 'barg', 'bar(g)', 'bar ga', 'bar gauge', 'BAR(GAUGE)']],
    [
      'gaugePressure',
      'inHg vac',
      ['inHg vac', 'in Hg v', 'in. hg vacuum', 'in vac', '"hg', 'inHg of vacuum'],
    ],
    ['gaugePressure', 'kPa vac', ['kPa vac', 'kPa(v)', 'kpa vacuum']],
    [
      'absolutePressure',
      'psia',
      ['psia', 'psi a', 'psi abs', 'psi absolute', 'psi(a)', 'psi(abs)'],
    ],
    ['absolutePressure', 'kPa abs', ['kPa abs', 'kPa a', 'kpa(a)', 'kPa absolute', 'kPa(abs)']],
    ['absolutePressure', 'micron', ['micron', 'microns', 'mTorr', 'µmHg', 'μmHg', 'millitorr']],
    ['barometricPressure', 'inHg', ['inHg', 'in Hg', 'in. Hg', '" Hg']],
    ['barometricPressure', 'hPa', ['hPa']],
    ['temperature', '°F', ['°F', 'F', 'deg F', '℉', 'degrees Fahrenheit', '˚F', 'º F']],
    ['temperature', '°C', ['°C', 'C', 'deg C', '℃', 'celsius']],
    ['volume', 'mL', ['mL', 'cc', 'cm3', 'cm³', 'ccm', 'millilitres']],
    ['mass', 'oz', ['oz', 'ounces', 'oz.', 'OZ']],
    ['length', 'in', ['in', '"', 'inches', '″']],
  ])('%s: %s', (kind, symbol, names) => {
    const factor = UNITS[kind].find((unit) => unit.symbol === symbol)?.factor ?? Number.NaN
    const offset = UNITS[kind].find((unit) => unit.symbol === symbol)?.offset ?? Number.NaN
    for (const name of names) {
      const read = parseQuantity(`30 ${name}`, [kind])
      expect(Math.abs(read.si - (30 * factor + offset)), name).toBeLessThan(1e-6)
      expect(read.written, name).toBe(symbol)
    }
  })
})
