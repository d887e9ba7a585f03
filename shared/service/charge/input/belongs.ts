import data from '../../../../data/service/charge.json' with { type: 'json' }
import { CalcError } from '../../../errors.ts'
import type { ChargeInput } from './fields.ts'

/** How many of each item a correction has. */
interface Counts {
  readonly couplings: number
  readonly sections: number
  readonly parts: number
}

/** Refuses what does not belong to a correction, and asks for a section. @throws {CalcError} with the field. */
export function checkBelongs(input: ChargeInput, { couplings, sections, parts }: Counts): void {
  if (input.makerCharge) {
    throw new CalcError(
      'bad-input',
      "The maker's full charge belongs to a weighed-in full charge.",
      {
        path: ['makerCharge'],
        hint: data.hints['maker-charge'],
      },
    )
  }
  if (couplings === 0 && input.job === 'section-opened') {
    refuseLoose(input, ['spillVolume', 'spillFrom', 'spillTo', 'mouthDiameter', 'airInclusion'])
  }
  if (input.job === 'couplers-parted') {
    if (input.couplingsOn) refuseLoose(input, ['phase', 'quality'])
    if (sections + parts > 0) {
      throw new CalcError(
        'bad-input',
        'Where only couplers were parted, no section was emptied and no part altered.',
        {
          path: [sections > 0 ? 'sections' : 'parts'],
          hint: data.hints['section-emptied'],
        },
      )
    }
  } else if (sections === 0 && !input.makerCorrection) {
    throw new CalcError('missing-input', 'The section that was opened is needed.', {
      path: ['sections'],
      hint: data.hints['section-size'],
    })
  }
}

/** A field that nothing would read is refused rather than passed over. */
function refuseLoose(input: ChargeInput, fields: readonly (keyof ChargeInput)[]): void {
  const loose = fields.find((field) => input[field] !== undefined)
  if (!loose) return
  const ofSpill = loose !== 'phase' && loose !== 'quality'
  throw new CalcError(
    'bad-input',
    ofSpill
      ? `${loose} belongs to a coupling, and none is named.`
      : `${loose} is said of no coupling in particular.`,
    {
      path: [loose],
      hint: ofSpill
        ? 'Give couplingsOn, or list the couplings.'
        : 'Leave it out, or list the couplings, each with its own state.',
    },
  )
}
