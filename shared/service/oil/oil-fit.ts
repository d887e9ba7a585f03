import data from '../../../data/service/oil-types.json' with { type: 'json' }
import { CalcError, refusal } from '../../errors.ts'
import type { CompressorDrive } from '../../fields/index.ts'
import type { RefrigerantInfo } from '../../refrigerant/index.ts'
import type { Source } from '../../sources.ts'
import { type Family, familyName, type Oil, type TypeSource, typeSource } from './oil-names.ts'

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
    new CalcError('refused', `${oil.name} must not go in: ${why}.`, { path: ['newOil'], hint })
  refuseLive(oil, 'newOil', drive)
  if (existing && !flushed) refuseLive(existing, 'existingOil', drive)
  if (oil.madeFor !== undefined && oil.madeFor !== refrigerant.id) {
    throw refuse(
      `it is made for ${oil.madeFor}, and the machine holds ${refrigerant.id}`,
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
      `the machine holds ${existing.name}, and ${familyName(oil.family)} must not be mixed with ${familyName(existing.family)}`,
      misplaced === undefined
        ? 'Use the oil that is in the machine, or flush every part and drain the compressor first (flushed).'
        : `Add none of what is in the machine either: ${misplaced}. Ask the maker whether flushing every part and draining the compressor is enough, then say flushed.`,
    )
  }
  const crossing = existing && existing.family !== oil.family ? ['pag-poe-crossing' as const] : []
  const sources = [oil.source, ...crossing.map((id) => typeSource(id))]
  if (!row) {
    return {
      verdict: 'ask-maker',
      text: `No published rule for ${familyName(oil.family)} with ${refrigerant.id} is listed here: take what the compressor's label names.`,
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
    field === 'newOil'
      ? `${name} must not go in: ${PAG_CONDUCTS}.`
      : `The electric compressor is said to hold ${name}: ${PAG_CONDUCTS}. Add none, and do not switch it on.`,
    {
      path: [field],
      hint:
        field === 'newOil'
          ? "Take only the non-conductive oil named on the compressor, usually a POE, from the compressor's maker."
          : 'Read the label again. If it is true, ask the maker whether flushing every part and draining the compressor is enough, then say flushed.',
      cautions: ['electric-compressor-oil', 'high-voltage'],
    },
  )
}

const PAG_CONDUCTS =
  'PAG conducts electricity, and in an electric compressor a trace of it lowers the insulation of the winding'

/** Why an oil that is in the machine does not belong there; undefined where nothing speaks against it. */
export function whyMisplaced(
  { family, madeFor }: Oil,
  drive: OilQuestion['drive'],
  refrigerant: RefrigerantInfo,
): string | undefined {
  if (drive === 'electric' && family === 'pag') return PAG_CONDUCTS
  if (madeFor !== undefined && madeFor !== refrigerant.id) {
    return `it is made for ${madeFor}, and the machine holds ${refrigerant.id}`
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

function classOfSubstance(substance: string): Class | undefined {
  const key = substance as keyof typeof data.substanceClass
  return data.substanceClass[key] as Class | undefined
}
