import type { Assumption } from '../../operation.ts'
import { say, temperature } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import type { DiagnoseInput } from './input/fields.ts'
import type { Kinds } from './input/kinds.ts'
import { conditionsIn, type Weather } from './input/weather.ts'
import { TEXTS } from './verdict/texts.ts'

const { assumed, unread } = TEXTS

/** What a diagnosis rests on besides the readings. */
export function diagnosisAssumptions(
  input: DiagnoseInput,
  r: Refrigerant,
  kinds: Kinds,
  weather: Weather,
): readonly Assumption[] {
  const names = kinds.presets.map(({ preset }) => preset.name)
  const [first] = kinds.presets
  const list: Assumption[] = [{ field: 'modelMachine', ...assumed.model }]
  if (input.priors !== 'equal') list.push({ field: 'priors', ...assumed.usual })
  if (kinds.knowledge === 'unknown') {
    list.push({
      field: 'architecture',
      ...assumed.unknown,
      taken: fillIn(assumed.unknown.taken, { kinds: names.join('; ') }),
    })
  }
  if (kinds.knowledge === 'kind') {
    list.push({
      field: 'baseline',
      ...assumed.kind,
      taken: fillIn(assumed.kind.taken, { kinds: names.join('; ') }),
      short: fillIn(assumed.kind.short, { kind: first?.preset.name.split(':')[0] ?? '' }),
    })
  }
  if (kinds.modelRefrigerant !== r.info.id) {
    const words = { own: r.info.id, model: kinds.modelRefrigerant }
    list.push({
      field: 'refrigerant',
      taken: fillIn(assumed.stands.taken, words),
      because: fillIn(assumed.stands.because, words),
      short: fillIn(assumed.stands.short, words),
    })
  }
  return first === undefined ? list : [...list, ...unreadAssumptions(first.preset, weather)]
}

/** Each with what was assumed instead; on the screen they share their line. */
function unreadAssumptions(
  preset: Kinds['presets'][number]['preset'],
  weather: Weather,
): readonly Assumption[] {
  const { known } = weather
  const at = conditionsIn(preset.nominal, weather)
  const rows = [
    ['ambient', known.ambientK, say(temperature(at.ambientK))],
    ['returnAir', known.returnAirK, say(temperature(at.returnAirK))],
    ['relativeHumidity', known.returnHumidity, `${Math.round(at.returnHumidity * 100)} %`],
    ['compressorRpm', known.speed, `${Math.round(at.speed * 60)} a minute`],
  ] as const
  const missing = rows.filter(([, read]) => read === undefined)
  const short = fillIn(unread.short, { names: missing.map(([name]) => unread[name]).join(', ') })
  return missing.map(([field, , value]) => ({
    field,
    taken: fillIn(assumed.unread.taken, { value }),
    because: assumed.unread.because,
    short,
  }))
}
