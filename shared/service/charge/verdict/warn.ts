import data from '../../../../data/service/charge.json' with { type: 'json' }
import type { CautionId } from '../../../cautions.ts'
import { dangersOf } from '../../../dangers.ts'
import { type Quantity, settle } from '../../../quantity/index.ts'
import { propertyWarnings } from '../../property-sources.ts'
import type { Decision } from '../input/decide.ts'
import type { ChargeInput } from '../input/fields.ts'
import { unusedChargeFields } from '../input/unused.ts'
import type { ChargeJob } from '../mass/job.ts'
import type { Setting } from '../space/setting.ts'
import type { Judgement } from './judge.ts'

/** What the user should know about the answer or the readings. */
export function warn(
  { r, notes }: Setting,
  input: ChargeInput,
  decision: Decision,
  job: ChargeJob,
  { toAdd, tolerance, bound }: Judgement,
  air: boolean,
): void {
  const say = (code: keyof typeof data.warnings) =>
    notes.warnings.push({ code, message: data.warnings[code] })
  notes.warnings.push(
    ...propertyWarnings(r),
    ...unusedChargeFields(input, { kind: decision.kind, whatIf: job.kind === 'what-if', air }),
  )
  if (decision.kind === 'full-charge') return
  if (!input.labelCharge) say('label-charge-missing')
  if (job.kind === 'correction' && bound) say('bound-beside-section')
  const width = toAdd && settle(toAdd).plusMinus
  if (job.kind !== 'correction' || input.makerCorrection) return
  if (width !== undefined && tolerance && width > tolerance.to.si) say('band-wider-than-tolerance')
  const bare = sizesWithoutBand(input)
  if (bare.length > 0) {
    notes.warnings.push({
      code: 'no-band',
      message: `No ± was given with ${bare.join(', ')}, so the band leaves it out. Give it (volume "450 mL ±20 mL") to see how far the mass can be off.`,
    })
  }
}

const SIZES = ['volume', 'length', 'spillVolume', 'makerMassPerLength'] as const

/** Sizes that were given without a ± of their own. */
function sizesWithoutBand(input: ChargeInput): readonly string[] {
  const items: readonly object[] = [input, ...(input.sections ?? []), ...(input.couplings ?? [])]
  return SIZES.filter((field) =>
    items.some((item) => {
      const size = (item as Readonly<Record<string, Quantity | undefined>>)[field]
      return size !== undefined && size.plusMinus === undefined
    }),
  )
}

/** What is dangerous about it, before anything is measured. */
export function cautionsOf(
  { r }: Setting,
  { job: asked, compressorDrive }: ChargeInput,
  job: ChargeJob,
): readonly CautionId[] {
  const parts = asked === 'couplers-parted' || job.couplings.length > 0
  const opens = asked !== 'couplers-parted'
  return dangersOf({
    refrigerant: r,
    compressorDrive,
    does: [
      ...(parts ? (['parts-couplings'] as const) : []),
      ...(opens ? (['opens'] as const) : []),
    ],
  })
}
