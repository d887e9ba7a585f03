import type { Figure, Told } from '../../answer/told.ts'
import { Quantity, readQuantity } from '../../quantity/index.ts'
import { leakFacts } from './facts.ts'
import type { FederalResult } from './federal-part.ts'
import type { MethodsResult } from './methods-part.ts'
import type { PressureResult } from './pressure-part.ts'
import type { StandingResult } from './standing-part.ts'
import type { YearlyResult } from './yearly-part.ts'

interface Found {
  readonly test: PressureResult | undefined
  readonly standing: StandingResult | undefined
  readonly searching: MethodsResult | undefined
  readonly yearly: YearlyResult | undefined
  readonly federal: FederalResult | undefined
}

const { headlines, next: steps, says } = leakFacts.told
const NORMAL_LOSS = readQuantity(leakFacts.normalLoss.perYear, ['massFlow'])
const LEAST_PRESSURE = readQuantity(leakFacts.conditions.systemPressure, ['gaugePressure'])
const LEAST_AIR = readQuantity(leakFacts.conditions.temperature, ['temperature'])
type Headline = keyof typeof headlines

const told = (
  level: Told['level'],
  headline: Headline,
  figures: readonly (Figure | undefined)[],
  next: readonly (keyof typeof steps)[],
): Told => ({
  level,
  headline: headlines[headline],
  figures: figures.flatMap((figure) => figure ?? []).slice(0, 6),
  next: next.map((id) => steps[id]),
})

/** The answer in a mechanic's words: the standing test first, then the pressure, the loss, the search, the law. */
export function tell(found: Found): Told {
  const { test, standing, yearly, searching, federal } = found
  if (standing) return ofStanding(standing, test)
  if (test) return ofTest(test)
  if (yearly) return ofYearly(yearly)
  if (searching) return ofSearch(searching)
  if (federal) return ofFederal(federal)
  throw new Error('A leak test without anything to tell.')
}

const figure = (
  id: keyof typeof says,
  label: string,
  value: Figure['value'] | undefined,
  more: Partial<Figure> = {},
): Figure | undefined =>
  value === undefined ? undefined : { id, label, value, says: says[id], ...more }

/** How much, whatever its sign: the verdict says which way. */
const sizeOf = (difference: StandingResult['unexplained']) =>
  new Quantity(difference.kind, Math.abs(difference.si), difference.plusMinus, difference.shownIn)

function ofStanding(standing: StandingResult, test: PressureResult | undefined): Told {
  const { kind, verdict } = standing
  const loss = standing.refrigerantAtRestTo
  const figures = [
    figure('change', 'Read', standing.measuredChange),
    figure('byTemperature', 'Temperature', standing.byTemperature),
    figure('unexplained', 'Not explained', sizeOf(standing.unexplained)),
    figure('smallest', 'Would show', standing.smallestAsRefrigerant ?? standing.smallestLeak, {
      safe: 'up',
    }),
    figure('loss', 'Would lose', loss, { basis: 'estimated', safe: 'up' }),
    figure('weakestRating', 'Rated for', test?.weakestRating, { safe: 'down' }),
  ]
  switch (verdict) {
    case 'leak':
      return told('check', 'leak', figures, ['search', 'repair', 'test-again'])
    case 'rises':
      return told('check', 'rises', figures, ['series', 'nitrogen'])
    case 'no-valid-test':
      return kind === 'vacuum'
        ? told('check', 'vacuum-falls', figures, ['close-off', 'settle', 'series'])
        : told('check', 'disagree', figures, ['settle', 'read-again'])
    case 'no-leak-shown':
      return kind === 'vacuum'
        ? told('check', 'vacuum-holds', figures, ['nitrogen', 'detector'])
        : told('fine', 'no-leak', figures, ['let-off', 'detector'])
  }
}

function ofTest(test: PressureResult): Told {
  const { weakestRating, highest, margin, weakestPart } = test
  if (!weakestRating) {
    return told(
      'check',
      'gas-only',
      [figure('gas', 'Gas', gasName(test.gas))],
      ['ratings', 'regulator'],
    )
  }
  const figures = [
    figure('part', 'Weakest part', weakestPart),
    figure('weakestRating', 'Rated for', weakestRating, { safe: 'down' }),
    figure('highest', 'This test', highest),
    figure('margin', 'Margin', margin, { safe: 'down' }),
    figure('gas', 'Gas', gasName(test.gas)),
  ]
  return told('check', highest ? 'within-rating' : 'rating', figures, [
    'regulator',
    'stand',
    'search',
  ])
}

const gasName = (gas: string) => gas.replaceAll('-', ' ')

function ofYearly({ perYear, lost, shareOfChargePerYear, againstNormal }: YearlyResult): Told {
  const headline = `yearly-${againstNormal}` as const
  const figures = [
    figure('perYear', 'Loss a year', perYear),
    figure('lost', 'Lost', lost),
    figure('share', 'Of the charge', shareOfChargePerYear),
    figure('normal', 'Called normal', NORMAL_LOSS),
  ]
  const next = againstNormal === 'below' ? (['detector'] as const) : (['search', 'oil'] as const)
  return told(againstNormal === 'below' ? 'information' : 'check', headline, figures, next)
}

/** A condition of the search, and whether it is met. */
const met = (
  id: 'leastPressure' | 'leastAir',
  label: string,
  least: Figure['value'],
  found: string,
): Figure => ({
  id,
  label,
  value: least,
  says: `${says[id]}: ${found.replaceAll('-', ' ')}`,
  safe: 'up',
})

function ofSearch({ methods, systemPressure, ambient }: MethodsResult): Told {
  const [only] = methods
  const unmet = [systemPressure, ambient].includes('not-met')
  const open = [systemPressure, ambient].some((entry) => entry !== 'met')
  const figures = [
    met('leastPressure', 'Pressure', LEAST_PRESSURE, systemPressure),
    met('leastAir', 'Air', LEAST_AIR, ambient),
    methods.length === 1 && only ? figure('smallestLeak', 'Shows', only.smallest) : undefined,
  ]
  const headline = unmet ? 'search-not-yet' : open ? 'search-conditions' : 'search'
  return told(open ? 'check' : 'information', headline, figures, [
    'engine-off',
    ...(unmet ? (['warm-or-nitrogen'] as const) : []),
    'soap',
  ])
}

function ofFederal(federal: FederalResult): Told {
  const rate = federal.annualizing ?? federal.rolling
  const figures = [
    figure('rate', 'Leak rate', rate),
    figure('threshold', 'Threshold', federal.threshold, { basis: 'secondary' }),
    figure('applies', 'Duty', federal.applies.replaceAll('-', ' ')),
  ]
  if (federal.applies === 'no') return told('information', 'federal-no', figures, ['local'])
  if (federal.applies === 'look-up')
    return told('check', 'federal-look-up', figures, ['local', 'record'])
  const above = federal.above ?? 'not-given'
  return told(
    'check',
    `federal-yes-${above}`,
    figures,
    above === 'no' ? ['record'] : ['repair-30', 'record'],
  )
}
