import { type Completable, firstSentence } from './model.ts'

/** Completion for fish 3 and newer. */
export function fishScript(commands: readonly Completable[]): string {
  const lines = commands.flatMap(({ name, help, words, options }) => {
    const inside = `complete -c chargewright -n ${quoted(`__fish_seen_subcommand_from ${name}`)}`
    return [
      `complete -c chargewright -n __fish_use_subcommand -f -a ${name} -d ${quoted(firstSentence(help))}`,
      ...(words.length > 0 ? [`${inside} -f -a ${quoted(words.join(' '))}`] : []),
      ...options.map(({ flag, letter, help: text, values, takes }) => {
        const kind = { nothing: ' -f', value: ' -x', file: ' -r -F' }[takes]
        const offered = values.length > 0 ? ` -a ${quoted(values.join(' '))}` : ''
        const short = letter === undefined ? '' : ` -s ${letter.replace(/^-/u, '')}`
        return `${inside} -l ${flag.replace(/^--/u, '')}${short}${kind}${offered} -d ${quoted(firstSentence(text))}`
      }),
    ]
  })
  return `# chargewright completion for fish\n${lines.join('\n')}\n`
}

const quoted = (text: string) => `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`
