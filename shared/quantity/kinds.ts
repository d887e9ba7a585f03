import { keptBy } from '../kept.ts'
import { tables, type Unit } from './units.ts'

/** What a quantity measures; its units are never mixed with those of another kind. */
export type Kind = keyof typeof tables

export const UNITS: Readonly<Record<Kind, readonly Unit[]>> = tables
export const KINDS = Object.keys(tables) as Kind[]

interface KindName {
  /** With its article, as it stands in a sentence. */
  readonly name: string
  readonly examples: readonly string[]
}

export const KIND_NAMES: Readonly<Record<Kind, KindName>> = {
  temperature: { name: 'a temperature', examples: ['52 °F', '11 °C', '284 K'] },
  temperatureDifference: { name: 'a temperature difference', examples: ['9 °F', '5 K'] },
  gaugePressure: {
    name: 'a gauge pressure',
    examples: ['32 psig', '2.2 bar g', '220 kPa g', '10 inHg vac'],
  },
  absolutePressure: {
    name: 'an absolute pressure',
    examples: ['47 psia', '320 kPa abs', '500 micron'],
  },
  barometricPressure: {
    name: 'a barometric pressure',
    examples: ['29.92 inHg', '1013 hPa', '101.3 kPa'],
  },
  pressureDifference: {
    name: 'a pressure difference',
    examples: ['3 psi', '20 kPa', '500 micron'],
  },
  mass: { name: 'a mass', examples: ['2 lb 6 oz', '28 oz', '340 g', '1.1 kg'] },
  volume: { name: 'a volume', examples: ['8 fl oz', '240 mL', '240 cc', '1.2 L'] },
  length: { name: 'a length', examples: ['3/8 in', '12 ft', '9.5 mm', '3.6 m'] },
  altitude: { name: 'an altitude', examples: ['1200 ft', '365 m', '-150 ft'] },
  duration: { name: 'a time', examples: ['10 min', '1 h 30 min', '90 s'] },
  density: { name: 'a density', examples: ['1207 kg/m3', '1.2 g/mL', '75 lb/ft3'] },
  massPerLength: { name: 'a mass per length', examples: ['0.6 oz/ft', '56 g/m'] },
  volumeFlow: { name: 'a volume flow', examples: ['6 cfm', '170 L/min', '10 m3/h'] },
  massFlow: { name: 'a mass flow', examples: ['14 g/yr', '0.5 oz/yr', '2 lb/min'] },
  leakRate: { name: 'a leak rate', examples: ['1e-6 Pa m3/s', '1e-5 mbar L/s'] },
  specificEnergy: { name: 'an energy per mass', examples: ['200 kJ/kg', '86 Btu/lb'] },
  specificEntropy: { name: 'an entropy per mass', examples: ['1.0 kJ/(kg K)'] },
  speed: { name: 'a speed', examples: ['200 ft/min', '1 m/s'] },
  power: { name: 'a power', examples: ['5 kW', '18000 Btu/h'] },
  fraction: { name: 'a percentage', examples: ['55 %', '0.5 %'] },
}

/**
 * Spelling to the shape that the tables hold: case, spaces, exponents and look-alike signs folded.
 * A millipascal keeps its case, else it would be read as a thousand million of itself.
 */
function normalizeUnit(text: string): string {
  return text
    .trim()
    .replace(/mPa/gu, 'millipascal')
    .replace(/[˚º]/gu, '°')
    .replace(/℉/gu, '°F')
    .replace(/℃/gu, '°C')
    .replace(/³/gu, '3')
    .replace(/²/gu, '2')
    .replace(/[Δ∆]/gu, 'δ')
    .replace(/\s+/gu, ' ')
    .replace(/°\s+(?=[CFRKcfrk])/gu, '°')
    .replace(/(?<=[a-z])\.$/iu, '')
    .toLowerCase()
}

const lookups = new Map<Kind, ReadonlyMap<string, Unit>>()

/** The units of a kind by every spelling; made when one is asked for. */
function lookupOf(kind: Kind): ReadonlyMap<string, Unit> {
  const before = lookups.get(kind)
  if (before) return before
  const made = new Map(
    UNITS[kind].flatMap((entry) =>
      [...entry.spellings, entry.symbol].map((name) => [name, entry] as const),
    ),
  )
  lookups.set(kind, made)
  return made
}

/** Spellings that somebody makes up are not kept without end. */
const MOST_SPELLINGS = 200

const spelled = new Map<Kind, (text: string) => Unit | undefined>()

/** Units of a kind by any spelling; one that was met before is not folded again. */
function spelledIn(kind: Kind): (text: string) => Unit | undefined {
  const before = spelled.get(kind)
  if (before) return before
  const made = keptBy((text: string) => lookupOf(kind).get(normalizeUnit(text)), MOST_SPELLINGS)
  spelled.set(kind, made)
  return made
}

/** The unit of `kind` that `text` spells, or undefined. */
export function findUnit(kind: Kind, text: string): Unit | undefined {
  // Our own symbols are found as they stand: showing an answer looks up dozens.
  return lookupOf(kind).get(text) ?? spelledIn(kind)(text)
}

/** Kinds in which `text` is a unit, in table order. */
export function kindsOfUnit(text: string): readonly Kind[] {
  return KINDS.filter((kind) => findUnit(kind, text) !== undefined)
}
