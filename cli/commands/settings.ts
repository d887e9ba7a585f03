import type { Command } from 'commander'
import { CalcError } from '../../shared/errors.ts'
import { kebab } from '../../shared/input/index.ts'
import { nearestNames } from '../../shared/nearest.ts'
import { jsonText, visible } from '../../shared/visible.ts'
import { EXIT, type ExitStatus } from '../exit.ts'
import { inkOf } from '../render/ink.ts'
import { hanging } from '../render/wrap.ts'
import { type Person, type Settings, settingFields } from '../settings/schema.ts'
import { checked, readSettings, writeSettings } from '../settings/store.ts'
import type { Streams } from '../streams.ts'

interface Given {
  readonly set?: readonly string[]
  readonly remove?: readonly string[]
  readonly person?: readonly string[]
  readonly json?: boolean
}

const several = (text: string, before: readonly string[] = []) => [...before, text]

/** `settings`: what the shop keeps, so that nobody types it again; each answer says what came from here. */
export function settingsCommand(
  program: Command,
  streams: Streams,
  done: (status: ExitStatus) => void,
): Command {
  return program
    .command('settings')
    .summary('Show or change what the shop keeps: altitude, law, units, instruments, people')
    .description(
      'Kept on this machine for this user. An option on a command line overrides them, --no-settings leaves them out, and each answer says what came from them. Certificates are confirmed in each order: the list of people permits nothing by itself.',
    )
    .option(
      '--set <name=value>',
      `One of ${names().map(kebab).join(', ')}; may be repeated`,
      several,
    )
    .option('--remove <name>', 'Forget a setting, or a person by name; may be repeated', several)
    .option(
      '--person <name: certificates>',
      'Somebody who works here, with certificates or none',
      several,
    )
    .option('--json', 'Print exactly one JSON value')
    .addHelpText(
      'after',
      '\nExample:\n  chargewright settings --set "altitude=1200 ft" --set law=us --person "Bay two: us-609"',
    )
    .action(async (given: Given) => {
      const before = await readSettings(streams.settings)
      const now = changed(before, given)
      if (now !== before) await writeSettings(streams.settings, now)
      streams.out(given.json ? `${jsonText(asFile(now))}\n` : settingsText(now, streams))
      done(EXIT.answered)
    })
}

const names = () => Object.keys(settingFields)
const asFile = ({ fields, people }: Settings) => ({ ...fields, people })

function changed(before: Settings, { set = [], remove = [], person = [] }: Given): Settings {
  if (set.length + remove.length + person.length === 0) return before
  const fields: Record<string, unknown> = { ...before.fields }
  let people = [...before.people]
  for (const name of remove) {
    const field = names().find((known) => known === name || kebab(known) === name)
    const left = people.filter((entry) => entry.name.toLowerCase() !== name.toLowerCase())
    if (field === undefined && left.length === people.length) throw unknownSetting(name)
    if (field !== undefined) delete fields[field]
    people = left
  }
  for (const text of set) {
    const [, name = '', value = ''] = /^\s*([\w-]+)\s*=\s*(.*)$/su.exec(text) ?? []
    const field = names().find((known) => known === name || kebab(known) === name)
    if (field === undefined) throw unknownSetting(name === '' ? text : name)
    fields[field] = value.trim()
  }
  for (const text of person) {
    const added = personOf(text)
    people = [...people.filter(({ name }) => name !== added.name), added]
  }
  return checked(people.length > 0 ? { ...fields, people } : fields)
}

/** "Bay two: us-609, us-608-universal"; nothing behind the colon says none is held. */
function personOf(text: string): Person {
  const [name = '', held] = text.split(/:(.*)/su)
  const certificates = held?.split(/[,;]/u).map((entry) => entry.trim())
  return {
    name: name.trim(),
    ...(certificates ? { certificates: certificates.filter((entry) => entry !== '') } : {}),
  }
}

function unknownSetting(name: string): CalcError {
  const nearest = nearestNames(name, names().map(kebab))
  return new CalcError('bad-input', `There is no setting "${name.slice(0, 60)}".`, {
    hint:
      nearest.length > 0
        ? `Did you mean ${nearest.join(' or ')}?`
        : `There are: ${names().map(kebab).join(', ')}.`,
  })
}

function settingsText({ fields, people }: Settings, streams: Streams): string {
  const ink = inkOf(streams.color.out)
  const rows = [
    ...Object.entries(fields).map(([name, value]) => [kebab(name), String(value)] as const),
    ...people.map(({ name, certificates }) => {
      const held = certificates?.join(', ')
      return [name, held === undefined || held === '' ? 'no certificate listed' : held] as const
    }),
  ]
  const lines =
    rows.length === 0
      ? ['Nothing is set. For example: chargewright settings --set "altitude=1200 ft" --set law=us']
      : rows.flatMap(([name, value]) => hanging(visible(name), visible(value), 20, streams.width))
  return `${[...lines, '', ink.quiet(`kept in ${visible(streams.settings.path)}`)].join('\n')}\n`
}
