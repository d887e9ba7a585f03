import { CalcError } from '../../shared/errors.ts'
import { LONGEST_LINE } from './lines.ts'

/** The refusal of a line that was passed over for its length. */
export const tooLong = (): CalcError =>
  new CalcError('bad-input', `The line is longer than ${LONGEST_LINE} characters.`, {
    hint: 'Write one input a line; is a line end missing?',
  })
