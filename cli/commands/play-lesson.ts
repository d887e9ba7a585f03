import { labelOf } from '../../shared/answer/words.ts'
import { GAUGES, MOVES } from '../../shared/service/lesson/gauges.ts'
import type { ExitStatus } from '../exit.ts'
import type { Play } from './own.ts'

/** Seeds that are easy to say aloud. */
const MOST_SEED = 9999
const NAME_IT = 'name the cause'

interface Lesson {
  readonly choices: readonly string[]
  readonly offers: readonly {
    readonly reading: string
    readonly minutes: { readonly value: number; readonly unit: string }
    readonly shows?: unknown
  }[]
}

/** Whoever gives a prediction, a reading or a cause by an option asks for one answer. */
export const isOpen = (options: Readonly<Record<string, unknown>>) =>
  ['predictions', 'bought', 'named'].every((name) => options[name] === undefined)

/** A lesson from its question to its end: what was said so far is kept here, never in the calculation. */
export async function play({ ask, options, answer, write }: Play): Promise<ExitStatus> {
  const seed = options.seed ?? Math.floor(Math.random() * MOST_SEED)
  await write(answer({ seed }))
  const predictions: Record<string, string> = {}
  for (const gauge of GAUGES) {
    predictions[gauge] = await ask.choose(`${labelOf(gauge)}: up, same or down?`, MOVES)
  }
  const bought: string[] = []
  for (;;) {
    const so = answer({ seed, predictions, bought })
    await write(so)
    const { offers, choices } = so.result as Lesson
    const open = offers
      .filter(({ shows }) => shows === undefined)
      .map(
        ({ reading, minutes }) =>
          [`${reading} (${minutes.value} ${minutes.unit})`, reading] as const,
      )
    const chosen = await ask.choose('What next?', [...open.map(([text]) => text), NAME_IT])
    const reading = open.find(([text]) => text === chosen)?.[1]
    if (reading !== undefined) {
      bought.push(reading)
      continue
    }
    const named = await ask.choose('Which cause?', choices)
    return write(answer({ seed, predictions, bought, named }))
  }
}
