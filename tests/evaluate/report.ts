import type { Evaluated } from './cases.ts'
import { MATTERS } from './draw.ts'
import { LEVELS, SETS } from './plant.ts'
import { percent } from './steps-report.ts'
import { bootstrap, type Summary, shareWhere, summaryOf } from './summary.ts'

/** From this distance on two classes differ, σ. */
export const DISTINCT = 2

const isReal = ({ truth }: Evaluated) =>
  truth.cause === 'none' || truth.cause === 'reading-or-test-wrong' || truth.impact >= MATTERS
const isDistinct = (each: Evaluated) =>
  each.truth.cause !== 'reading-or-test-wrong' && isReal(each) && each.distance >= DISTINCT

/** The report as Markdown: what went wrong first. */
export function report(list: readonly Evaluated[], failures: number): string {
  return [
    '# Diagnosis on the model’s own machines, drawn anew: an upper bound',
    '',
    ...failureLines(list, failures),
    ...levelLines(
      'Faults that cost a tenth of the capacity or more, and sound machines',
      list.filter(isReal),
    ),
    ...levelLines('Everything that was drawn', list),
    ...levelLines(
      'Of these, distinguishable by the plant (2 σ from every other class)',
      list.filter(isDistinct),
    ),
    ...levelLines(
      'Faults that cost less',
      list.filter((each) => !isReal(each)),
    ),
    ...byLines('By cause, machine of the model, usual readings', list, ({ truth }) => truth.cause),
    ...byLines('By architecture', list, ({ truth }) => truth.preset.architecture),
  ].join('\n')
}

const HEAD = [
  '| machine | readings | cases | correct | cannot tell | no response | false alarm | missed | misdiagnosed | top 1 | top 2 | 90 % set holds | its size | named | truth in open set | calibration | Brier | harm | signs | prior |',
  `|${'---|'.repeat(20)}`,
]

function levelLines(title: string, list: readonly Evaluated[]): readonly string[] {
  const rows = LEVELS.flatMap((level) =>
    (Object.keys(SETS) as (keyof typeof SETS)[]).flatMap((set) => {
      const own = list.filter((each) => each.level === level && each.set === set)
      return own.length === 0 ? [] : [rowOf([level, set], own)]
    }),
  )
  return rows.length === 0 ? [] : ['', `## ${title}`, '', ...HEAD, ...rows]
}

function byLines(
  title: string,
  list: readonly Evaluated[],
  by: (each: Evaluated) => string,
): readonly string[] {
  const own = list.filter((each) => each.level === 'model' && each.set === 'usual' && isReal(each))
  const names = [...new Set(own.map(by))].sort()
  return names.length === 0
    ? []
    : [
        '',
        `## ${title}`,
        '',
        ...HEAD,
        ...names.map((name) =>
          rowOf(
            [name, 'usual'],
            own.filter((each) => by(each) === name),
          ),
        ),
      ]
}

function rowOf(names: readonly string[], own: readonly Evaluated[]): string {
  const s: Summary = summaryOf(own.map(({ score }) => score))
  const { outcomes: o } = s
  const [low, high] = bootstrap(own, (some) => shareWhere(some, ({ score }) => score.top1))
  const cells = [
    ...names,
    String(s.count),
    percent(o.correct),
    percent(o['cannot-tell']),
    percent(o['no-response']),
    percent(o['false-alarm']),
    percent(o['missed-detection']),
    percent(o.misdiagnosis),
    `${percent(s.top1)} (${percent(low)} to ${percent(high)})`,
    percent(s.top2),
    percent(s.coverage),
    s.setSize.toFixed(1),
    s.namedSize.toFixed(1),
    percent(s.inNamedWhereOpen),
    s.calibration.toFixed(3),
    s.brier.toFixed(2),
    String(s.harm),
    percent(shareWhere(own, ({ signsRight }) => signsRight)),
    percent(shareWhere(own, ({ priorRight }) => priorRight)),
  ]
  return `| ${cells.join(' | ')} |`
}

/** The surest of the wrong answers. */
function failureLines(list: readonly Evaluated[], most: number): readonly string[] {
  const wrong = list
    .filter(
      ({ score }) =>
        score.outcome === 'misdiagnosis' || score.outcome === 'false-alarm' || score.harm,
    )
    .sort((a, b) => b.score.confidence - a.score.confidence)
  return [
    `## What went wrong: ${wrong.length} of ${list.length} named another cause than the true one`,
    '',
    ...wrong.slice(0, most).map(({ truth, level, set, result, distance }) => {
      const named = result?.named.join(' + ')
      return `- ${level}, ${set}: ${truth.preset.machine.id} has ${truth.cause} at ${truth.severity.toFixed(2)} (costs ${percent(truth.impact)}, ${distance.toFixed(1)} σ from the next), named ${named} at ${percent(result?.share ?? 0)}; ambient ${(truth.conditions.ambientK - 273.15).toFixed(0)} °C`
    }),
  ]
}
