import { CalcError } from '../../shared/errors.ts'
import { parseJson } from '../../shared/input/index.ts'
import { parseInput } from '../../shared/operation.ts'
import type { SettingsFile } from '../streams.ts'
import { NO_SETTINGS, type Settings, settingsSchema } from './schema.ts'

/** @throws {CalcError} `bad-input` for a file that is not understood; it names the file and what is wrong. */
export async function readSettings(file: SettingsFile): Promise<Settings> {
  const text = await file.read()
  if (text === undefined) return NO_SETTINGS
  try {
    return checked(parseJson(text))
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    throw new CalcError(error.code, `The settings in ${file.path}: ${error.message}`, {
      path: error.path,
      hint: `${error.hint} Mend or remove the file, or add --no-settings.`.trim(),
    })
  }
}

/** The settings as they were given, once they are known to be good. @throws {CalcError} */
export function checked(raw: unknown): Settings {
  parseInput(settingsSchema, raw)
  const { people = [], ...fields } = raw as Record<string, unknown> & {
    people?: Settings['people']
  }
  return { fields, people }
}

export async function writeSettings(
  file: SettingsFile,
  { fields, people }: Settings,
): Promise<void> {
  const all = people.length > 0 ? { ...fields, people } : fields
  await file.write(`${JSON.stringify(all, null, 2)}\n`)
}
