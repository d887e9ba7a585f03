import type { ChargeResult } from './result.ts'
import type { Against, ScaleComparison } from './tolerance.ts'

/** The answer in one sentence, from what is missing, what the charge allows and what the scale can tell. */
export function conclusionOf(
  kind: ChargeResult['kind'],
  add: string,
  charge: Against | undefined,
  scale: ScaleComparison['verdict'] | undefined,
  beyondHeld: boolean,
): string {
  if (kind === 'full-charge') return `Weigh in the full charge of ${add}.`
  if (kind === 'what-if') {
    return charge === 'inside'
      ? 'By this what-if even the most that may be missing lies within the tolerance of the charge; only the weighed full charge makes sure.'
      : 'By this what-if the missing mass may matter: recover, evacuate and weigh in the full charge.'
  }
  if (beyondHeld) {
    return `At least ${add} is missing, more than the opened part can have held: recover the rest, evacuate and weigh in the full charge.`
  }
  if (charge === 'inside') {
    return scale === 'weighable'
      ? `${add} is missing, within the tolerance of the charge: it may be added, and by itself need not be.`
      : `${add} is missing, within the tolerance of the charge and too little to weigh: by itself nothing has to be added.`
  }
  if (scale !== 'weighable') {
    return `${add} is missing, but the scale cannot weigh that surely: recover, evacuate and weigh in the full charge, or take a finer scale.`
  }
  return charge === 'outside'
    ? `${add} is missing: weigh it in.`
    : `${add} is missing, about what the tolerance of the charge allows: weigh it in, or weigh in the full charge to be sure.`
}

/** What to do with the scale, in the same sense as the conclusion. */
export function onTheScaleText(
  weighIn: string | undefined,
  inHose: string | undefined,
  tooLittle: boolean,
): string {
  if (weighIn === undefined) return 'Nothing to set on the scale: a what-if is no measurement.'
  if (tooLittle) {
    return `By itself nothing to weigh in: ${weighIn} is within the tolerance of the charge and less than the scale can tell.`
  }
  return `Weigh in ${weighIn}${inHose === undefined ? '' : `, of which ${inHose} stays in the service hose`}.`
}
