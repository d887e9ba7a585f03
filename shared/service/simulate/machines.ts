import data from '../../../data/service/simulate.json' with { type: 'json' }
import { type Preset, preset } from '../../cycle/index.ts'
import { CalcError } from '../../errors.ts'
import { choiceIn, pickRefrigerant } from '../../fields/index.ts'

/** An invented machine under its trade word, with the presets of its refrigerants. */
export interface ModelMachine {
  readonly id: string
  readonly name: string
  readonly presets: readonly string[]
  readonly words: readonly string[]
}

export const MODEL_MACHINES: readonly ModelMachine[] = data.machines

const IDS = MODEL_MACHINES.map(({ id }) => id) as [string, ...string[]]

/** One of the invented machines, by its trade word or by what makes such machines alike. */
export const modelMachineIn = choiceIn(
  IDS,
  Object.fromEntries(MODEL_MACHINES.flatMap(({ id, words }) => words.map((word) => [word, id]))),
).describe(
  'Invented machine: loader (receiver), tractor (receiver, variable stroke), pickup (orifice, accumulator), van (valve alone), and four stationary ones',
)

/**
 * The machine that is meant, with the refrigerant that it is asked with, else its first.
 *
 * @throws {CalcError} `refused` where this machine is not modelled with that refrigerant.
 */
export function machineFor(id: string, refrigerant: string | undefined): ModelMachine & Preset {
  const found = MODEL_MACHINES.find((row) => row.id === id) as ModelMachine
  const all = found.presets.map(preset)
  const wanted = refrigerant === undefined ? undefined : pickRefrigerant(refrigerant).info.id
  const chosen = all.find(({ machine }) => wanted === undefined || machine.refrigerant === wanted)
  if (chosen !== undefined) return { ...found, ...chosen, name: found.name }
  const known = all.map(({ machine }) => machine.refrigerant).join(' or ')
  throw new CalcError('refused', `The invented ${id} is modelled with ${known} alone.`, {
    path: ['refrigerant'],
    hint: `Leave the refrigerant out, or give ${known}.`,
  })
}
