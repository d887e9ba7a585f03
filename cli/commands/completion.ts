import { Argument, type Command } from 'commander'
import { diagramsOf } from '../../shared/diagram/index.ts'
import { DRAWING } from '../../shared/diagram/options.ts'
import { fieldsOf, kebab } from '../../shared/input/index.ts'
import type { Operation } from '../../shared/operation.ts'
import type { Completable, CompletableOption } from '../completion/model.ts'
import { optionsOf } from '../input/options.ts'
import { markdownOption, orderOptions, outputOptions, pictureOptions } from '../output.ts'
import type { Streams } from '../streams.ts'
import { own } from './own.ts'

type Script = (commands: readonly Completable[]) => string

const SCRIPTS = {
  bash: async () => (await import('../completion/bash.ts')).bashScript,
  zsh: async () => (await import('../completion/zsh.ts')).zshScript,
  fish: async () => (await import('../completion/fish.ts')).fishScript,
} as const satisfies Record<string, () => Promise<Script>>

export function completionCommand(
  program: Command,
  operations: readonly Operation[],
  streams: Streams,
): Command {
  return program
    .command('completion')
    .summary('Print a completion script for a shell')
    .description('Prints a script that lets the shell complete commands, options and their values.')
    .addArgument(new Argument('<shell>').choices(Object.keys(SCRIPTS)))
    .addHelpText(
      'after',
      '\nExample:\n  chargewright completion bash > ~/.local/share/bash-completion/completions/chargewright',
    )
    .action(async (shell: keyof typeof SCRIPTS) => {
      const { refrigerants } = await import('../../shared/refrigerant/index.ts')
      const names = refrigerants().map(({ id }) => id)
      const script = await SCRIPTS[shell]()
      streams.out(script(completables(program, operations, names)))
    })
}

/** Every command with what can follow it. */
function completables(
  program: Command,
  operations: readonly Operation[],
  names: readonly string[],
): readonly Completable[] {
  return program.commands.map((command) => {
    const operation = operations.find(({ name }) => name === command.name())
    if (!operation) return fromCommander(command, names)
    const fields = fieldsOf(operation)
    const pictures = diagramsOf(operation.name).map(({ kind }) => kind)
    const options: readonly CompletableOption[] = [
      ...[...fields, ...(pictures.length > 0 ? fieldsOf(DRAWING) : [])].flatMap((field) =>
        optionsOf(field).map((option) => ({
          flag: option.long ?? '',
          letter: option.short,
          help: field.description,
          values: valuesOf(field.name, field.shape, names),
          takes: option.required ? ('value' as const) : ('nothing' as const),
        })),
      ),
      { flag: '--input', help: 'Rows or one input from a file', values: [], takes: 'file' },
      ...[
        ...outputOptions(),
        ...(own[operation.name]?.markdown ? [markdownOption(), ...orderOptions()] : []),
      ].map(plain),
      ...(pictures.length > 0 ? pictureOptions(pictures) : []).map((option) => ({
        ...plain(option),
        values: option.long === '--diagram' ? pictures : [],
      })),
    ]
    const words = fields.some(({ name }) => name === 'refrigerant') ? names : []
    return { name: operation.name, help: operation.summary, words, options }
  })
}

function valuesOf(
  name: string,
  shape: ReturnType<typeof fieldsOf>[number]['shape'],
  names: readonly string[],
): readonly string[] {
  if (kebab(name) === 'refrigerant') return names
  const each = shape.type === 'list' ? shape.item : shape
  return each.type === 'choice' ? each.choices : []
}

/** Words that the commands take which calculate nothing. */
function fromCommander(command: Command, names: readonly string[]): Completable {
  const words: Readonly<Record<string, readonly string[]>> = {
    refrigerants: names,
    completion: Object.keys(SCRIPTS),
  }
  return {
    name: command.name(),
    help: command.summary(),
    words: words[command.name()] ?? [],
    options: command.options.map(plain),
  }
}

const plain = (option: Command['options'][number]): CompletableOption => ({
  flag: option.long ?? '',
  help: option.description,
  values: [],
  takes: !option.required ? 'nothing' : option.flags.includes('<file>') ? 'file' : 'value',
})
