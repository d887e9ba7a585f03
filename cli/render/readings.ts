import { isQuantity, scalarText, valueText } from '../../shared/answer/scalar.ts'
import { labelOf } from '../../shared/answer/words.ts'
import type { Answer } from '../../shared/operation.ts'
import type { ShownQuantity } from '../../shared/quantity/index.ts'
import type { readings } from '../../shared/service/readings.ts'
import { type Page, type Pair, pairLines } from './pairs.ts'
import { treeLines } from './tree.ts'
import { hanging, paragraph } from './wrap.ts'

type Readings = ReturnType<typeof readings.run>['result']
type Verdict = Readings['verdicts'][number]

/** Figures first, each verdict with the band it was held against, what does not fit, then the two sides. */
export function readingsLines(answer: Answer, page: Page): readonly string[] {
  const { verdicts, patterns, findings, lowSide, highSide, statements, ...figures } =
    answer.result as Readings
  return [
    ...treeLines(figures, 2, page),
    ...patterns.flatMap((pattern) => ['', ...patternLines(pattern, page)]),
    ...findings.flatMap((finding) => ['', ...findingLines(finding, page)]),
    ...verdicts.flatMap((verdict) => ['', ...verdictLines(verdict, page)]),
    ...sideLines('Low side', lowSide, page),
    ...sideLines('High side', highSide, page),
    ...(statements.length > 0 ? [''] : []),
    ...statements.flatMap((text) => hanging('  -', text, 4, page.width)),
  ]
}

/** "Charge, by the subcooling 11.8 °F: inside 7.2 °F to 14.4 °F" and what it means. */
function verdictLines(verdict: Verdict, page: Page): readonly string[] {
  const { about, figure, outcome, meaning, measured, low, high } = verdict
  if (!measured) return paragraph(meaning, 2, page.width)
  const band = low && high ? ` ${unitsOf(low)} to ${unitsOf(high)}` : ''
  const head = `${labelOf(about)}, by the ${figure} of ${unitsOf(measured)}: ${scalarText(outcome, false)}${band}`
  return [...paragraph(page.ink.heading(head), 2, page.width), ...paragraph(meaning, 4, page.width)]
}

const WORDS = {
  stop: 'Stop the machine',
  impossible: 'Cannot be',
  suspect: 'Check',
  note: 'Note',
} as const

/** "Fits superheat high, subcooling low", the causes and what to do. */
function patternLines(
  { signs, causes, next }: Readings['patterns'][number],
  page: Page,
): readonly string[] {
  return [
    ...paragraph(page.ink.level.warning(`Fits: ${signs.join(', ')}`), 2, page.width),
    '    Likely causes',
    ...causes.flatMap((text) => hanging('    -', text, 6, page.width)),
    '    What to do',
    ...next.flatMap((text) => hanging('    -', text, 6, page.width)),
  ]
}

function findingLines(finding: Readings['findings'][number], page: Page): readonly string[] {
  return [
    ...paragraph(
      page.ink.level.warning(`${WORDS[finding.level]}: ${finding.message}`),
      2,
      page.width,
    ),
    '    Likely causes',
    ...finding.causes.flatMap((text) => hanging('    -', text, 6, page.width)),
    '    What would settle it',
    ...finding.settle.flatMap((text) => hanging('    -', text, 6, page.width)),
  ]
}

/** One side; where bubble and dew are one, once. */
function sideLines(
  title: string,
  side: Readings['lowSide'] | Readings['highSide'],
  page: Page,
): readonly string[] {
  if (!side) return []
  const { bubbleTemperature, dewTemperature, ...others } = side
  const one =
    bubbleTemperature && dewTemperature && unitsOf(bubbleTemperature) === unitsOf(dewTemperature)
  const temperatures: Record<string, ShownQuantity | undefined> = one
    ? { saturationTemperature: dewTemperature }
    : { bubbleTemperature, dewTemperature }
  const pairs = Object.entries({ ...others, ...temperatures }).flatMap(
    ([name, value]): readonly Pair[] =>
      name === 'state' || value === undefined ? [] : [{ label: labelOf(name), value }],
  )
  return ['', `  ${page.ink.heading(title)}`, ...pairLines(pairs, 4, page)]
}

const unitsOf = (value: ShownQuantity) =>
  isQuantity(value.also) ? `${valueText(value)} (${valueText(value.also)})` : valueText(value)
