import { type Sentence, sentence } from '../../answer/sentence.ts'
import { fraction, mass, temperature } from '../../quantity/index.ts'
import type { Present } from '../simulate/faults.ts'
import { TEXTS as SIMULATED } from '../simulate/texts.ts'
import type { LessonCase } from './draw.ts'
import type { Graded, Reveal } from './reveal.ts'
import { TEXTS, wordsOf } from './topics.ts'

const { sheet } = TEXTS

/** What is printed for the class: blanks to fill. */
export function blankSheet({
  seed,
  topic,
  name,
  machine,
  conditions,
}: LessonCase): readonly Sentence[] {
  return [
    sentence(sheet.title, { seed, topic: topic.id, claim: topic.claim }),
    sentence(sheet.machine, {
      machine: name,
      refrigerant: machine.refrigerant,
      charge: mass(machine.charge),
      ambient: temperature(conditions.ambientK),
      cab: temperature(conditions.returnAirK),
      humidity: fraction(conditions.returnHumidity),
      rpm: Math.round(conditions.speed * 60),
    }),
    sentence(sheet.suppose, { supposed: wordsOf(topic.supposed.fault) }),
    sentence(sheet.readings),
    sentence(sheet.cause),
  ]
}

/** The same with its answers, for whoever teaches. */
export function answerSheet(
  case_: LessonCase,
  reveal: Reveal,
  graded: readonly Graded[],
  size: Present | undefined,
): readonly Sentence[] {
  const moves = Object.fromEntries(graded.map(({ gauge, expected }) => [gauge, expected]))
  return [
    ...blankSheet(case_),
    sentence(sheet['suppose-answer'], moves),
    sentence(sheet['readings-answer'], {
      best: reveal.best.map((offer) => TEXTS.readings[offer]).join(', '),
    }),
    sentence(sheet[size ? 'cause-answer' : 'sound-answer'], {
      cause: wordsOf(case_.cause),
      ...(size ? { setting: SIMULATED.settings[size.setting], size: size.size } : {}),
      broken: case_.topic.broken,
    }),
  ]
}
