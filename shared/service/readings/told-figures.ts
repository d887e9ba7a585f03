import { type Basis, entry, type Figure } from '../../answer/told.ts'
import { cutOutOf } from '../../diagnosis/cut-out.ts'
import type { Quantity } from '../../quantity/index.ts'
import { propertyUncertainty } from '../../refrigerant/index.ts'
import type { Figures } from './figures.ts'
import { highestGauge } from './gauges.ts'
import type { Measured } from './measured.ts'
import { nearestLine, type Rest } from './rest.ts'
import { ratioResult } from './result.ts'
import { TEXTS } from './texts.ts'
import type { Verdict } from './verdict.ts'

const { says } = TEXTS

/** Figures of a running machine, in the order that matters. */
export function runningFigures(
  m: Measured,
  f: Figures,
  verdicts: readonly Verdict[],
): readonly Figure[] {
  const blend = m.refrigerant.info.kind === 'pure' ? '' : '-blend'
  const basis = basisOf(m, f)
  const bare = f.low?.state === 'supercritical' ? f.low.reading : undefined
  const bareHigh = f.high?.state === 'supercritical' ? f.high.reading : undefined
  return [
    ...entry('superheat', 'Superheat', f.superheat?.shown, {
      says: saysOf('superheat', verdicts),
      basis,
    }),
    ...entry('subcooling', 'Subcooling', f.subcooling?.shown, {
      says: saysOf('subcooling', verdicts),
      basis,
    }),
    ...entry('evaporating', 'Evaporating', f.low?.dew?.shown, {
      says: says[`evaporating${blend}`],
      basis,
    }),
    ...entry('condensing', 'Condensing', f.condensing?.shown, {
      says: says[`condensing${blend}`],
      basis,
    }),
    ...entry('overAmbient', 'Over ambient', f.condensingOverAmbient?.shown, {
      says: says.overAmbient,
      basis,
    }),
    ...(f.ratio
      ? [{ id: 'ratio', label: 'Ratio', value: ratioResult(f.ratio).value, says: says.ratio }]
      : []),
    ...entry('lowSide', 'Low side', bare ?? m.suctionPressure, {}),
    ...entry('highSide', 'High side', bareHigh ?? m.highPressure, {}),
  ]
}

/** The pressure that is too high, and the one at which switches stop the machine. */
export function dangerFigures(m: Measured): readonly Figure[] {
  const cutOut = cutOutOf(m.refrigerant)
  return [
    ...entry('danger', 'Pressure', highestGauge(m), { says: says.danger }),
    ...entry('cutOut', 'Cut-out', cutOut?.pressure.in(undefined), {
      says: says.cutOut,
      safe: 'down',
      basis: cutOut && cutOut.basis !== 'published' ? cutOut.basis : undefined,
    }),
  ]
}

/** What both gauges show at rest, beside saturation at the temperature of the air. */
export function restFigures(m: Measured, rest: Rest, result: { off?: Quantity | undefined }) {
  return [
    ...entry('rest', 'At rest', rest.pressure, { says: says.rest }),
    ...entry('air', 'Air', rest.air, { says: says.air }),
    ...entry('saturation', 'Saturation', nearestLine(rest, m), { says: says.saturation }),
    ...entry('off', 'Off by', result.off, { says: says.off }),
  ]
}

/** Where a figure stands, and how far the band can be trusted. */
function saysOf(figure: Verdict['figure'], verdicts: readonly Verdict[]): string | undefined {
  const verdict = verdicts.find((one) => one.figure === figure && one.outcome in OUTCOMES_SAID)
  if (!verdict) return undefined
  const said = says[verdict.outcome as keyof typeof OUTCOMES_SAID]
  const mark = verdict.method === 'range-of-maker' ? undefined : verdict.sources[0]?.mark
  return mark === 'secondary' || mark === 'memory' || mark === 'common-practice'
    ? `${said} (${mark === 'common-practice' ? 'common practice' : mark})`
    : said
}

const OUTCOMES_SAID = { inside: 0, below: 0, above: 0, 'cannot-tell': 0 } as const

/** Estimated mixing is said beside every figure that rests on it. */
function basisOf(m: Measured, f: Figures): Basis | undefined {
  const at = f.low?.dew?.si ?? f.high?.bubble?.si
  if (at === undefined) return undefined
  const { basis } = propertyUncertainty(m.refrigerant, at, f.low?.dew ? 'dew' : 'bubble')
  return basis === 'estimated' ? 'estimated' : undefined
}
