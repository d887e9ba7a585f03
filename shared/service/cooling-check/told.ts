import { type Basis, type Figure, type Level, MOST_FIGURES, type Told } from '../../answer/told.ts'
import { GAUGE_STEP_PA, type Place } from '../../instrument/index.ts'
import type { Computed } from '../../operation.ts'
import type { Quantity } from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import { TEXTS } from '../readings/texts.ts'
import type { AirResult } from './air-part.ts'
import { type BandsResult, SIDES, type Side } from './band.ts'
import type { ClutchResult } from './clutch-part.ts'
import type { CondensingResult } from './condensing-part.ts'
import type { Danger } from './danger.ts'
import type { CoolingReadings, MakerResult } from './readings.ts'
import type { Rest } from './rest-part.ts'
import { coolingFacts } from './tables.ts'

const {
  headlines,
  sides,
  names,
  words,
  maker: makerWords,
  air: airWords,
  clutch: clutchWords,
} = coolingFacts.told
const { labels, says, next } = coolingFacts.told

interface Known {
  readonly refrigerant: string
  /** Said beside every figure that rests on saturation. */
  readonly mixing: Basis | undefined
  readonly readings: CoolingReadings
  readonly place: Place
  readonly danger: Danger | undefined
  readonly swapped: boolean
  readonly rest: Rest | undefined
  readonly bands: BandsResult
  readonly fitting: number
  readonly maker: Computed<MakerResult> | undefined
  readonly temperatures: CondensingResult | undefined
  readonly air: AirResult | undefined
  readonly clutch: ClutchResult | undefined
  readonly cyclesPerMinute: number | undefined
}

interface Saying {
  readonly level: Level
  readonly headline: string
  readonly figures: readonly (Figure | undefined)[]
  readonly next: readonly string[]
}

/** Danger first, then what cannot be, a machine at rest, the tables, the air, the clutch. */
export function coolingTold(known: Known): Told {
  const said =
    danger(known) ??
    swapped(known) ??
    atRest(known) ??
    tables(known) ??
    airSide(known) ??
    clutch(known)
  const figures = [...said.figures, ...runningFigures(known)].flatMap((entry) => entry ?? [])
  const once = [...new Map(figures.toReversed().map((entry) => [entry.id, entry])).values()]
  return { ...said, figures: once.toReversed().slice(0, MOST_FIGURES) }
}

function figure(
  id: keyof typeof labels,
  value: Quantity | number | undefined,
  more: Partial<Figure> = {},
): Figure | undefined {
  return value === undefined ? undefined : { id, label: labels[id], value, ...more }
}

/** As for every set of readings: the same words for the same danger. */
function danger({ danger: found }: Known): Saying | undefined {
  if (!found) return undefined
  const { pressure, cutOut, why } = found
  const { headlines: said, says: meanings } = TEXTS
  return {
    level: 'stop',
    headline: why === 'above-cut-out' ? said['cut-out'] : said['above-critical'],
    figures: [
      figure('danger', pressure, { says: meanings.danger }),
      cutOut && {
        id: 'cutOut',
        label: labels.stopAt,
        value: cutOut.pressure.in(undefined),
        says: meanings.cutOut,
        safe: 'down',
        ...(cutOut.basis === 'published' ? {} : { basis: cutOut.basis }),
      },
    ],
    next: TEXTS.next.stop,
  }
}

function swapped(known: Known): Saying | undefined {
  if (!known.swapped) return undefined
  const { high, low } = known.readings
  return {
    level: 'check',
    headline: headlines['high-below-low'],
    figures: [figure('high', high?.shown), figure('low', low?.shown)],
    next: next['high-below-low'],
  }
}

/** As for gauges that read alike in any set of readings. */
function atRest({ rest, readings, place, mixing }: Known): Saying | undefined {
  if (!rest || (!readings.alike && (readings.high || readings.low))) return undefined
  const { found, lowest, shown } = rest
  const state = found.state === 'liquid-full' ? 'cannot-tell' : found.state
  const line = found.from === 'dew' ? found.dew : found.bubble
  return {
    level: state === 'at' || state === 'between' ? 'information' : 'check',
    headline: headlines.rest[state],
    figures: [
      figure('rest', lowest.shown),
      figure('air', readings.ambient, { says: TEXTS.says.air }),
      figure('saturation', line && place.gauge(line.si).within(undefined), {
        says: TEXTS.says.saturation,
        step: GAUGE_STEP_PA,
        basis: mixing,
      }),
      figure('off', shown.off, { says: TEXTS.says.off }),
      figure('least', shown.least, { says: says.least, safe: 'up', step: GAUGE_STEP_PA }),
    ],
    next: TEXTS.next.rest[state],
  }
}

/** Each side that was read, in a word. */
function tables({ readings, bands, maker, fitting, refrigerant }: Known): Saying | undefined {
  const read = SIDES.filter((side) => readings[side] !== undefined)
  if (read.length === 0) return undefined
  const judged = read.map((side) => ({ side, ...wordOf(bands[side], maker?.[side]) }))
  const nothing = judged.every(({ verdict }) => verdict === 'no-table')
  // A side without a table is among the figures; the sentence speaks of those that were judged.
  const spoken = judged.filter(({ verdict }) => verdict !== 'no-table')
  const sentence = spoken.map(({ side, word }) => sides[side].replace('{word}', word)).join(', ')
  const unfit = fitting === 0 ? 'no-table' : 'not-printed'
  const ventAlone = fitting > 0 && read.every((side) => side === 'vent')
  const off = judged.some(({ verdict }) => verdict === 'off')
  const open = judged.some(({ verdict }) => verdict === 'open')
  return {
    level: nothing || off || open ? 'check' : 'fine',
    headline: nothing
      ? fillIn(headlines[unfit], {
          refrigerant,
          sides: judged.map(({ side }) => names[side]).join(', no '),
        })
      : headlines.bands.replace('{sides}', sentence),
    figures: judged.map(({ side, word }) =>
      figure(side, readings[side]?.shown, { says: nothing ? tableCount(fitting) : word }),
    ),
    next: next[
      nothing
        ? ventAlone
          ? 'vent-alone'
          : 'no-table'
        : off
          ? 'off'
          : open
            ? 'cannot-tell'
            : 'normal'
    ],
  }
}

const tableCount = (fitting: number) =>
  fitting === 0
    ? says.none
    : fitting === 1
      ? says.table
      : fillIn(says.tables, { count: String(fitting) })

/** The maker's figure overrides the tables. */
function wordOf(band: BandsResult[Side], byMaker: MakerResult[Side]) {
  if (byMaker) {
    const verdict = byMaker === 'inside' ? 'normal' : byMaker === 'cannot-tell' ? 'open' : 'off'
    return { verdict, word: makerWords[byMaker] } as const
  }
  const found = band.verdict ?? 'no-table'
  const verdict = (
    {
      'in-every-table': 'normal',
      'in-some-tables': 'normal',
      'below-all': 'off',
      'above-all': 'off',
      'between-tables': 'open',
      'cannot-tell': 'open',
      'no-table': 'no-table',
    } as const
  )[found]
  return { verdict, word: words[found] }
}

function airSide({ air, readings }: Known): Saying | undefined {
  if (!air?.dewPointIn && !air?.drop) return undefined
  const parts = [
    ...(air.drop ? [airWords.drop] : []),
    ...(air.coil ? [airWords[air.coil]] : air.dewPointIn ? [airWords.humidity] : []),
  ]
  return {
    level: 'information',
    headline: headlines.air.replace('{air}', parts.join(', ')),
    figures: [
      figure('returnAir', readings.returnAir),
      figure('drop', air.drop, { says: says.drop }),
      figure('dewPoint', air.dewPointIn, { says: says.dewPoint }),
    ],
    next: next.air,
  }
}

function clutch({ clutch: found, readings, cyclesPerMinute }: Known): Saying {
  const { cutOut, cutIn } = readings
  const word = (states: readonly (string | undefined)[]) =>
    states.includes('inside')
      ? clutchWords.inside
      : states.includes('cannot-tell')
        ? clutchWords['cannot-tell']
        : clutchWords.outside
  const rows = found?.rows ?? []
  const parts = [
    ...(cutOut ? [clutchWords.opens.replace('{word}', word(rows.map(({ opens }) => opens)))] : []),
    ...(cutIn
      ? [clutchWords.closes.replace('{word}', word(rows.map(({ closes }) => closes)))]
      : []),
  ]
  return {
    level: 'information',
    headline:
      parts.length > 0 ? headlines.clutch.replace('{clutch}', parts.join('; ')) : headlines.cycling,
    figures: [
      figure('cutOut', cutOut?.shown),
      figure('cutIn', cutIn?.shown),
      figure('cycles', cyclesPerMinute, { says: says.cycles }),
    ],
    next: next.clutch,
  }
}

/** None of them is said of a machine at rest. */
function runningFigures({ temperatures, air, mixing }: Known): readonly (Figure | undefined)[] {
  return [
    figure('condensing', temperatures?.aboveAmbient, { says: says.condensing, basis: mixing }),
    figure('evaporating', temperatures?.evaporating, { says: says.evaporating, basis: mixing }),
    figure('drop', air?.drop, { says: says.drop }),
    figure('dewPoint', air?.dewPointIn, { says: says.dewPoint }),
  ]
}
