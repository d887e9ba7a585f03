import { pressureDifference, type Quantity, show } from '../../quantity/index.ts'

export const STANDING_VERDICTS = ['no-leak-shown', 'leak', 'no-valid-test', 'rises'] as const
export type StandingVerdict = (typeof STANDING_VERDICTS)[number]

/** "Fell 3.1 psi; 3.1 ±0.9 psi explained by cooling: no leak shown." */
export function sentence(
  kind: 'pressure' | 'vacuum',
  verdict: StandingVerdict,
  change: Quantity<'pressureDifference'>,
  byTemperature: Quantity<'pressureDifference'>,
  unexplained: Quantity<'pressureDifference'>,
): string {
  const unit = isCoarse(change.si, unexplained.plusMinus) ? 'inHg' : 'micron'
  const magnitude = kind === 'vacuum' ? inVacuum(unit) : inPsi
  const amount = kind === 'vacuum' ? vacuumAmount(unit) : psiAmount
  const read = magnitude(change.within(undefined))
  const moved = change.si < 0 ? `Fell ${read}` : change.si > 0 ? `Rose ${read}` : 'Did not change'
  const cause = byTemperature.si < 0 ? 'fall by cooling' : 'rise by warming'
  const band = magnitude(byTemperature.within(unexplained.plusMinus))
  const explained =
    change.si < 0 && byTemperature.si < 0
      ? `${band} explained by cooling`
      : byTemperature.si === 0
        ? `no change expected, ±${amount(unexplained.plusMinus ?? 0)}`
        : `${band} of ${cause} expected`
  const rest = magnitude(unexplained)
  switch (verdict) {
    case 'no-leak-shown':
      return `${moved}; ${explained}: no leak shown.`
    case 'leak':
      return `${moved}; ${explained}; ${rest} is not: it leaks.`
    case 'rises':
      return `${moved}; ${explained}: it rises, by air or by water. Two readings cannot tell which; a series can.`
    case 'no-valid-test':
      return kind === 'pressure'
        ? `${moved}; ${explained}; ${rest} too high: the readings do not fit together.`
        : `${moved}; ${explained}; ${rest} too deep: the pump still pulled, or it cooled.`
  }
}

const US = { units: 'us', precise: false, onScreen: true } as const
/** A vacuum is read in micron, or on a compound gauge in inches of mercury. */
const DIAL_FROM_PA = 1_000
/** Whether a change of pressure in Pa is a matter for a dial rather than for a vacuum gauge. */
export const isCoarse = (changePa: number, plusMinusPa: number | undefined) =>
  Math.max(Math.abs(changePa), plusMinusPa ?? 0) > DIAL_FROM_PA

const inVacuum = (unit: 'micron' | 'inHg') => (q: Quantity<'pressureDifference'>) => {
  const { value, plusMinus } = show(pressureDifference(Math.abs(q.si), q.plusMinus).in(unit), US)
  const shown = Number(value.toPrecision(3))
  return plusMinus === undefined ? `${shown} ${unit}` : `${shown} ±${plusMinus} ${unit}`
}
const vacuumAmount = (unit: 'micron' | 'inHg') => (pa: number) =>
  `${Number(show(pressureDifference(pa).in(unit), US).value.toPrecision(2))} ${unit}`

const inPsi = (q: Quantity<'pressureDifference'>) => {
  const { value, unit, plusMinus } = show(
    pressureDifference(Math.abs(q.si), q.plusMinus).in('psi'),
    US,
  )
  const shown = Number(value.toFixed(plusMinus === undefined ? 1 : 2))
  return plusMinus === undefined ? `${shown} ${unit}` : `${shown} ±${plusMinus} ${unit}`
}
const psiAmount = (pa: number) => {
  const { value, unit } = show(pressureDifference(pa).in('psi'), US)
  return `${Number(value.toPrecision(2))} ${unit}`
}
