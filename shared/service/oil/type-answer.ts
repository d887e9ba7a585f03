import data from '../../../data/service/oil-types.json' with { type: 'json' }
import type { Warning } from '../../operation.ts'
import type { RefrigerantInfo } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import type { Mark, Source } from '../../sources.ts'
import type { OilInput } from './fields.ts'
import { fitting, oilFit, refuseLive, whyMisplaced } from './oil-fit.ts'
import {
  type Family,
  familyName,
  type Oil,
  oilNamed,
  type TypeSource,
  typeSource,
} from './oil-names.ts'
import type { OilResult } from './result.ts'

interface TypeAnswer {
  readonly result: OilResult['oilType']
  readonly notes: readonly { readonly text: string; readonly source: Source }[]
  readonly sources: readonly Source[]
  readonly warnings: readonly Warning[]
  /** How far it was checked that this oil fits: the weakest of its sources. */
  readonly mark: Mark | undefined
}

/** Whether the oil may go in, or which would; an oil that must not is refused. */
export function typeAnswer(input: OilInput, info: RefrigerantInfo): TypeAnswer {
  const oil = input.newOil === undefined ? undefined : oilNamed(input.newOil, 'newOil')
  const existing =
    input.existingOil === undefined ? undefined : oilNamed(input.existingOil, 'existingOil')
  if (!oil && existing && !input.flushed) {
    refuseLive(existing, 'existingOil', input.compressorDrive)
  }
  const family = (oil ?? existing)?.family
  const notes = family ? notesFor(family) : []
  const misplaced = existing && whyMisplaced(existing, input.compressorDrive, info)
  const wrongOil: readonly Warning[] =
    existing && misplaced !== undefined
      ? [wrongOilInside(existing, input.compressorDrive, misplaced)]
      : []
  if (!oil) {
    return {
      result: {
        verdict: 'not-given',
        text: [
          ...wrongOil.map(({ message }) => message),
          whatFits(info, input.compressorDrive),
        ].join(' '),
      },
      notes,
      sources: [],
      warnings: wrongOil,
      mark: undefined,
    }
  }
  const fit = oilFit({
    oil,
    existing,
    flushed: input.flushed,
    drive: input.compressorDrive,
    refrigerant: info,
  })
  return {
    result: {
      verdict: fit.verdict,
      oil: oil.name,
      family: familyName(oil.family),
      text: input.compressorDrive === 'electric' ? `${fit.text} ${data.says.electric}` : fit.text,
    },
    notes,
    sources: fit.sources,
    mark: weakest(fit.sources),
    warnings: [
      ...(existing?.viscosity && oil.viscosity && existing.viscosity !== oil.viscosity
        ? [
            {
              code: 'viscosity-differs',
              message: fillIn(data.warnings['viscosity-differs'], {
                inside: existing.viscosity,
                new: oil.viscosity,
              }),
            },
          ]
        : []),
      ...wrongOil,
      ...(input.compressorDrive === undefined && oil.family === 'pag'
        ? [
            {
              code: 'drive-not-given',
              message: data.warnings['drive-not-given'],
            },
          ]
        : []),
    ],
  }
}

const WEAKEST_FIRST: readonly Mark[] = ['memory', 'common-practice', 'secondary']

const weakest = (sources: readonly Source[]): Mark | undefined =>
  WEAKEST_FIRST.find((mark) => sources.some((entry) => entry.mark === mark))

/** The machine holds an oil that does not belong there, whatever is to go in. */
function wrongOilInside(
  { name, family }: Oil,
  drive: OilInput['compressorDrive'],
  why: string,
): Warning {
  const code =
    drive === 'electric' && family === 'pag' ? 'pag-in-electric-system' : 'wrong-oil-inside'
  return { code, message: fillIn(data.warnings[code], { oil: name, why }) }
}

/** What to look for, and what would do, where no oil was named. */
function whatFits(info: RefrigerantInfo, drive: OilInput['compressorDrive']): string {
  const sentence = data.says[drive === 'electric' ? 'not-given-electric' : 'not-given']
  return fillIn(sentence, { refrigerant: info.id, families: fitting(info, drive) })
}

const notesFor = (family: Family) =>
  data.notes
    .filter((note) => note.families.includes(family))
    .map((note) => ({ text: note.text, source: typeSource(note.source as TypeSource) }))
