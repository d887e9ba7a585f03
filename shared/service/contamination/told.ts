import data from '../../../data/service/contamination.json' with { type: 'json' }
import type { Figure, Level, Told } from '../../answer/told.ts'
import { GAUGE_STEP_PA, type Place } from '../../instrument/index.ts'
import { fraction, type Quantity } from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import { mixingBasis } from '../mixing-sources.ts'
import { ALONE, type OtherRefrigerant, type Reading, type Verdict } from './explain.ts'
import { airOf, offOf, percent, shown } from './tell.ts'

const { headlines, labels, says, next } = data

/** Others that the screen shows, the smallest share first. */
const MOST_OTHERS = 2
interface Known {
  readonly reading: Reading
  readonly verdict: Verdict
  readonly farAbove: boolean
  readonly fits: readonly OtherRefrigerant[]
  readonly pressure: Quantity
  readonly temperature: Quantity<'temperature'>
  readonly place: Place
}

const LEVEL: Readonly<Record<Verdict, Level>> = {
  'too-high': 'check',
  'too-low': 'check',
  'as-expected': 'fine',
  'cannot-tell': 'check',
}

/** What the pressure says, what would make it, and what settles which. */
export function contaminationTold(known: Known): Told {
  const { reading, verdict, farAbove, fits, pressure, temperature, place } = known
  const words = { refrigerant: reading.expected.info.id }
  const sentence = farAbove ? 'full' : verdict
  const below = reading.found.from === 'dew'
  const line = below ? reading.dewPa : reading.bubblePa
  const blend = reading.expected.info.kind === 'zeotrope' && !below
  const saturation = blend ? says['saturation-blend'] : says.saturation
  return {
    level: farAbove ? 'stop' : LEVEL[verdict],
    headline: fillRefrigerant(headlines[sentence], words),
    figures: [
      { id: 'pressure', label: labels.pressure, value: pressure },
      { id: 'temperature', label: labels.temperature, value: temperature },
      {
        id: 'saturation',
        label: labels.saturation,
        value: place.gauge(line).within(undefined),
        step: GAUGE_STEP_PA,
        says: fillIn(saturation, words),
        basis: mixingBasis(reading.expected),
      },
      {
        id: 'off',
        label: labels.off,
        value: offOf(reading),
        says: below ? says['off-dew'] : says.off,
      },
      ...(verdict === 'too-high' ? [airFigure(reading)] : []),
      ...fits.slice(0, verdict === 'too-high' ? 1 : MOST_OTHERS).map(otherFigure),
    ],
    next: next[sentence],
  }
}

/** The figures of a sentence are filled where units are chosen; the refrigerant is a word. */
const fillRefrigerant = (sentence: string, { refrigerant }: { readonly refrigerant: string }) =>
  sentence.replaceAll('{refrigerant}', refrigerant)

function airFigure(reading: Reading): Figure {
  const air = airOf(reading)
  return {
    id: 'air',
    label: labels.air,
    value: fraction(air.si, air.plusMinus).in('%'),
    says: says.air,
  }
}

function otherFigure(fit: OtherRefrigerant, index: number): Figure {
  const { share, estimated } = fit
  return {
    id: `other${index + 1}`,
    label: fit.refrigerant.info.id,
    value: shown(fit).share.within(undefined),
    says:
      share === ALONE
        ? says.alone
        : fillIn(says.other, { from: percent(share.from), to: percent(share.to) }),
    ...(estimated ? { basis: 'estimated' as const } : {}),
  }
}
