import data from '../../../data/service/oil-types.json' with { type: 'json' }
import { CalcError, refusal } from '../../errors.ts'
import type { CompressorDrive } from '../../fields/index.ts'
import { familyOf } from '../../refrigerant/family.ts'
import type { RefrigerantInfo } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import type { Source } from '../../sources.ts'
import { type Family, familyName, type Oil, type TypeSource, typeSource } from './oil-names.ts'

const { why, hints, refusals, says } = data

type Class =
  | 'cfc'
  | 'hcfc'
  | 'hcfc-blend'
  | 'hfc'
  | 'hfc-with-hydrocarbon'
  | 'hfo'
  | 'hydrocarbon'
  | 'carbon-dioxide'

export interface Fit {
  readonly verdict: 'fits' | 'ask-maker'
  readonly text: string
  readonly sources: readonly Source[]
}

/** Whether an oil may go into this machine. */
interface OilQuestion {
  readonly oil: Oil
  readonly existing: Oil | undefined
  readonly flushed: boolean
  readonly drive: CompressorDrive | undefined
  readonly refrigerant: RefrigerantInfo
}

/**
 * Oil type against the compressor's drive, the refrigerant and the oil that is in the machine.
 *
 * @throws {CalcError} `refused` with the reason for an oil that must not go in.
 */
export function oilFit({ oil, existing, flushed, drive, refrigerant }: OilQuestion): Fit {
  const refuse = (why: string, hint: string) =>
    new CalcError('refused', fillIn(refusals['must-not'], { oil: oil.name, why }), {
      path: ['newOil'],
      hint,
    })
  refuseLive(oil, 'newOil', drive)
  if (existing && !flushed) refuseLive(existing, 'existingOil', drive)
  if (oil.madeFor !== undefined && oil.madeFor !== refrigerant.id) {
    throw refuse(
      fillIn(why['made-for'], { other: oil.madeFor, refrigerant: refrigerant.id }),
      "Take the oil named on the compressor's label.",
    )
  }
  const row = fitOf(oil.family, refrigerant)
  if (row?.verdict === 'refused') {
    throw refuse(row.why, `Fit for ${refrigerant.id}: ${fitting(refrigerant, drive)}.`)
  }
  if (existing && existing.family !== oil.family && !flushed) {
    const misplaced = whyMisplaced(existing, drive, refrigerant)
    throw refuse(
      fillIn(why['not-mixed'], {
        inside: existing.name,
        family: familyName(oil.family),
        other: familyName(existing.family),
      }),
      misplaced === undefined
        ? hints['oil-inside']
        : fillIn(hints['misplaced-inside'], { why: misplaced }),
    )
  }
  const crossing = existing && existing.family !== oil.family ? ['pag-poe-crossing' as const] : []
  const sources = [oil.source, ...crossing.map((id) => typeSource(id))]
  if (!row) {
    return {
      verdict: 'ask-maker',
      text: fillIn(says['no-rule'], {
        family: familyName(oil.family),
        refrigerant: refrigerant.id,
      }),
      sources,
    }
  }
  return {
    verdict: 'fits',
    text: `${row.why.charAt(0).toUpperCase()}${row.why.slice(1)}.`,
    sources: [...sources, typeSource(row.source as TypeSource)],
  }
}

/**
 * PAG in an electric compressor can make its housing live: said before any amount is known.
 *
 * @throws {CalcError} `refused`, level stop.
 */
export function refuseLive(
  { name, family }: Oil,
  field: 'newOil' | 'existingOil',
  drive: CompressorDrive | undefined,
): void {
  if (drive !== 'electric' || family !== 'pag') return
  throw refusal(
    fillIn(refusals[field === 'newOil' ? 'must-not' : 'live'], {
      oil: name,
      why: why['pag-conducts'],
    }),
    {
      path: [field],
      hint: hints[field === 'newOil' ? 'non-conductive' : 'read-label-again'],
      cautions: ['electric-compressor-oil', 'high-voltage'],
    },
  )
}

/** Why an oil that is in the machine does not belong there; undefined where nothing speaks against it. */
export function whyMisplaced(
  { family, madeFor }: Oil,
  drive: OilQuestion['drive'],
  refrigerant: RefrigerantInfo,
): string | undefined {
  if (drive === 'electric' && family === 'pag') return why['pag-conducts']
  if (madeFor !== undefined && madeFor !== refrigerant.id) {
    return fillIn(why['made-for'], { other: madeFor, refrigerant: refrigerant.id })
  }
  const row = fitOf(family, refrigerant)
  return row?.verdict === 'refused' ? row.why : undefined
}

/** Families that fit a refrigerant and the compressor's drive, in words. */
export function fitting(refrigerant: RefrigerantInfo, drive?: OilQuestion['drive']): string {
  const families = (Object.keys(data.families) as Family[]).filter(
    (family) =>
      fitOf(family, refrigerant)?.verdict === 'fits' && !(drive === 'electric' && family === 'pag'),
  )
  return families.length === 0
    ? "what the compressor's label names"
    : families.map(familyName).join(', ')
}

function fitOf(family: Family, refrigerant: RefrigerantInfo) {
  const rows = data.fits.filter((row) => row.family === family)
  return (
    rows.find((row) => row.refrigerant === refrigerant.id) ??
    rows.find((row) => row.class === classOf(refrigerant))
  )
}

/** What the oil sees: the kind of its chlorine, or what its parts are. */
export function classOf({ composition }: RefrigerantInfo): Class | undefined {
  const classes = composition.map(({ substance }) => classOfSubstance(substance))
  const [only, ...others] = new Set(classes)
  if (others.length === 0) return only
  if (classes.includes('cfc') || classes.includes('hcfc')) return 'hcfc-blend'
  if (classes.includes('hydrocarbon')) return 'hfc-with-hydrocarbon'
  return classes.every((entry) => entry !== undefined) ? 'hfc' : undefined
}

/** Its chemical family, or the one that an oil sees in it. */
function classOfSubstance(substance: string): Class | undefined {
  const family = familyOf(substance)
  return (data.classOfFamily[family as keyof typeof data.classOfFamily] ?? family) as
    | Class
    | undefined
}
