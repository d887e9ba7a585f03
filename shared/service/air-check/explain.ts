import data from '../../../data/service/air-check.json' with { type: 'json' }
import type { Notes } from '../../notes.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { sourceTable } from '../../source-table.ts'
import type { Condition } from '../condition.ts'
import type { AirLimit } from './limit.ts'
import type { Verdict } from './verdict.ts'

const sourceOf = sourceTable(data.sources)

/** Says with a warning each what limits the verdict. */
export function explain(
  r: Refrigerant,
  verdict: Verdict,
  limit: AirLimit | undefined,
  conditions: readonly Condition[],
  notes: Notes,
): void {
  if (limit) {
    const published = limit.basis === 'published-cells'
    notes.sources.push(
      ...(published
        ? [sourceOf('cfr-82b-app-a')]
        : [sourceOf('sae-j2211'), sourceOf('compressor-manual')]),
    )
    notes.assumptions.push({
      field: 'altitude',
      taken: 'a limit made for gauges at sea level, compared as an absolute pressure',
      because: 'the table gives gauge pressures and no altitude',
    })
    if (!published) {
      notes.warnings.push({
        code: 'limit-computed',
        message:
          'The limit for R-134a is computed (saturation pressure plus 5 psi, fraction dropped) by the method of SAE J2211; its printed table was not read.',
      })
    } else if (limit.atLeastPa !== limit.atMostPa) {
      notes.warnings.push({
        code: 'between-cells',
        message:
          'The temperature lies between cells of the table that were verified, or outside them: the limit is only bounded by the nearest ones. Read again at a temperature from 70 to 74, 80 to 84, 90 to 94, 100 to 104 or 110 to 114 °F.',
      })
    }
  }
  if (r.info.kind === 'zeotrope') {
    notes.warnings.push({
      code: 'composition-may-have-shifted',
      message: `${r.info.id} is a zeotropic blend: after a vapour leak, or with little liquid left, its pressure differs from the table without any air. The bubble pressure was used.`,
    })
  }
  if (verdict === 'below-saturation') {
    notes.warnings.push({
      code: 'below-saturation',
      message:
        'The pressure is below saturation: no liquid is left in it, the temperature is not that of the contents, or it is another refrigerant. The check says nothing about air.',
    })
  }
  const missed = conditions.filter((entry) => entry.met === 'no')
  if (missed.length > 0) {
    notes.warnings.push({
      code: 'conditions-not-met',
      message: `Read again when this holds: ${missed.map((entry) => entry.text.replace(/^Unverified, look it up: /u, '')).join(' ')}`,
    })
  }
}
