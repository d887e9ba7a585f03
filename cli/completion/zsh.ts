import { type Completable, type CompletableOption, firstSentence, shellQuoted } from './model.ts'

/** Completion for zsh, to be saved as `_chargewright` in a folder of `fpath`. */
export function zshScript(commands: readonly Completable[]): string {
  const described = commands.map(({ name, help }) =>
    shellQuoted(`${name}:${firstSentence(help).replaceAll(':', ' ')}`),
  )
  const cases = commands.map(({ name, words, options }) => {
    const specs = options.flatMap(optionSpecs)
    const positional = words.length > 0 ? [shellQuoted(`*:name:(${words.join(' ')})`)] : []
    return `    ${name})
      _arguments ${[...specs, ...positional, "'--help[Help]'"].join(' \\\n        ')} ;;`
  })
  return `#compdef chargewright
_chargewright() {
  local -a commands
  commands=(
    ${described.join('\n    ')}
  )
  if (( CURRENT == 2 )); then
    _describe 'command' commands
    return
  fi
  local chosen="$words[2]"
  shift words
  (( CURRENT-- ))
  case "$chosen" in
${cases.join('\n')}
  esac
}
_chargewright "$@"
`
}

/** One for the option, one for its letter. */
function optionSpecs({ flag, letter, help, values, takes }: CompletableOption): readonly string[] {
  const text = firstSentence(help).replace(/[[\]\\:]/gu, ' ')
  const after =
    takes === 'nothing'
      ? ''
      : takes === 'file'
        ? ':file:_files'
        : `:value:${values.length > 0 ? `(${values.join(' ')})` : ''}`
  return [flag, ...(letter === undefined ? [] : [letter])].map((name) =>
    shellQuoted(`*${name}[${text}]${after}`),
  )
}
