/**
 * Solves what every fault shows on each of the model's machines in its nominal weather, and writes it
 * to `data/diagnosis/effects.json` (R-1234yf runs so near to R-134a that it shares them): a diagnosis of a machine whose kind is open then solves nothing.
 *
 *     npm run effects
 */
import { writeFileSync } from 'node:fs'
import { preset, presets } from '../../shared/cycle/index.ts'
import { effectsOf } from '../../shared/diagnosis/effects.ts'
import { solvedAt } from '../../shared/diagnosis/kinds.ts'
import { packed } from '../../shared/diagnosis/packed.ts'

export const EFFECTS_FILE = new URL('../../data/diagnosis/effects.json', import.meta.url)

/** One machine's effects as they stand in the file. */
export function packedOf(id: string) {
  const { machine, nominal } = preset(id)
  return packed(effectsOf(machine, nominal, solvedAt))
}

if (import.meta.main) {
  const lines = presets()
    .filter(({ machine }) => machine.refrigerant !== 'R-1234yf')
    .map(({ machine: { id } }) => `${JSON.stringify(id)}: ${JSON.stringify(packedOf(id))}`)
  writeFileSync(EFFECTS_FILE, `{\n${lines.join(',\n')}\n}\n`)
}
