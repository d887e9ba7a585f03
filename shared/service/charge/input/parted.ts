import * as z from 'zod'
import data from '../../../../data/service/charge.json' with { type: 'json' }
import { CalcError } from '../../../errors.ts'
import { addCalcIssue, parseQuantity } from '../../../quantity/index.ts'
import type { Coupling } from './items.ts'

const LONGEST = 80

/** "liquid:18mm/4mm+2mm x2": line, mouth of the recess, depth of each half, partings. */
const WRITTEN =
  /^\s*(?<line>[a-z]+)\s*:\s*(?<mouth>[^/:+]+)\/(?<first>[^/:+]+)\+(?<second>[^/:+]+?)(?:\s+x\s?(?<partings>\d{1,3}))?\s*$/iu

const LINE: Readonly<Record<string, Coupling['line']>> = {
  liquid: 'liquid',
  suction: 'suction',
  vapour: 'suction',
  vapor: 'suction',
}

/**
 * A parted coupling in one word, as a terminal takes it.
 *
 * @throws {CalcError} `bad-input` for another form, and what a length refuses.
 */
export function readParted(text: string): Coupling {
  const found = WRITTEN.exec(text)?.groups
  const line = LINE[found?.line?.toLowerCase() ?? '']
  const { mouth, first, second, partings } = found ?? {}
  if (!line || !mouth || !first || !second) {
    throw new CalcError('bad-input', `"${text.slice(0, LONGEST)}" is not a parted coupling.`, {
      hint: data.hints['parted-form'],
    })
  }
  const size = (written: string) => parseQuantity(written.trim(), ['length'])
  const times = partings === undefined ? {} : { partings: Number(partings) }
  if (times.partings === 0) {
    throw new CalcError('bad-input', 'A coupling that was parted no time at all is none.', {
      hint: 'Leave it out, or write x1.',
    })
  }
  return {
    line,
    mouthDiameter: size(mouth),
    firstDepth: size(first),
    secondDepth: size(second),
    ...times,
  }
}

/** Several in one text are parted by a comma that a line follows. */
const BETWEEN = /[,;]\s*(?=[a-z]+\s*:)/iu
const MOST = 50

/** A list of them, as texts of one or several. */
export const partedIn = z
  .array(
    z
      .string()
      .min(1)
      .max(LONGEST * 10),
  )
  .max(MOST)
  .transform((texts, context): readonly Coupling[] =>
    texts.flatMap((text, index) => {
      try {
        return text.split(BETWEEN).map(readParted)
      } catch (error) {
        if (!(error instanceof CalcError)) throw error
        addCalcIssue(context, error.under(index))
        return z.NEVER
      }
    }),
  )
  .refine((couplings) => couplings.length <= MOST, `At most ${MOST} couplings`)
  .describe(
    'Parted couplings by caliper, each "line:mouth/depth+depth" such as liquid:18mm/4mm+2mm,suction:25mm/5mm+3mm: widest diameter of the mouth inside the seal, depth of each shut half from its rim; x2 behind it for two partings',
  )
