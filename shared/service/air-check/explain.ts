import data from '../../../data/service/air-check.json' with { type: 'json' }
import type { Notes } from '../../notes.ts'
import type { AtRest } from '../../physics/at-rest.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import { sourceTable } from '../../source-table.ts'
import { type Condition, isOpen } from '../condition.ts'
import { PRINTED_AT_SEA_LEVEL } from '../printed-gauge.ts'
import type { AirLimit } from './limit.ts'
import type { Verdict } from './verdict.ts'

const sourceOf = sourceTable(data.sources)
const { warnings } = data

interface Known {
  readonly found: AtRest
  readonly verdict: Verdict
  readonly limit: AirLimit | undefined
  readonly conditions: readonly Condition[]
  readonly farAbove: boolean
}

/** Says with a warning each what limits the verdict. */
export function explain(
  r: Refrigerant,
  { found, verdict, limit, conditions, farAbove }: Known,
  notes: Notes,
): void {
  const warn = (code: keyof typeof warnings, words: Readonly<Record<string, string>> = {}) =>
    notes.warnings.push({ code, message: fillIn(warnings[code], words) })
  if (farAbove) warn('far-above-saturation')
  if (limit) {
    const published = limit.basis === 'published-cells'
    notes.sources.push(
      ...(published
        ? [sourceOf('cfr-82b-app-a')]
        : [sourceOf('sae-j2211'), sourceOf('compressor-manual')]),
    )
    notes.assumptions.push(PRINTED_AT_SEA_LEVEL)
    if (!published) warn('limit-computed')
    else if (limit.atLeastPa !== limit.atMostPa) warn('between-cells')
  }
  if (r.info.kind === 'zeotrope') {
    warn('composition-may-have-shifted', { refrigerant: r.info.id })
    if (found.from !== 'contents') warn('give-contents')
  }
  if (found.holds === 'vapour') warn('no-liquid')
  if (verdict === 'below-saturation') warn('below-saturation')
  const missed = conditions.filter(isOpen)
  if (missed.length > 0) {
    warn('conditions-not-met', { conditions: missed.map((entry) => entry.text).join(' ') })
  }
}
