import { type Completable, shellQuoted } from './model.ts'

/** Completion for bash 3.2 and newer. */
export function bashScript(commands: readonly Completable[]): string {
  const cases = commands.map(({ name, words, options }) => {
    const values = options
      .filter((option) => option.takes !== 'nothing')
      .map(({ flag, letter, values: list, takes }) => ({
        flag: letter === undefined ? flag : `${flag}|${letter}`,
        list,
        takes,
      }))
      .map(({ flag, list, takes }) =>
        takes === 'file'
          ? `        ${flag}) COMPREPLY=($(compgen -f -- "$word")); return ;;`
          : `        ${flag}) COMPREPLY=($(compgen -W ${shellQuoted(list.join(' '))} -- "$word")); return ;;`,
      )
    const offered = [...options.map(({ flag }) => flag), '--help', ...words].join(' ')
    return `    ${name})
      case "$before" in
${values.join('\n')}
      esac
      COMPREPLY=($(compgen -W ${shellQuoted(offered)} -- "$word")) ;;`
  })
  const names = [...commands.map(({ name }) => name), 'help', '--help', '--version'].join(' ')
  return `# chargewright completion for bash
_chargewright() {
  local word before command
  word="\${COMP_WORDS[COMP_CWORD]}"
  before="\${COMP_WORDS[COMP_CWORD-1]}"
  command="\${COMP_WORDS[1]}"
  COMPREPLY=()
  if [ "$COMP_CWORD" -le 1 ]; then
    COMPREPLY=($(compgen -W ${shellQuoted(names)} -- "$word"))
    return
  fi
  case "$command" in
${cases.join('\n')}
  esac
}
complete -o default -F _chargewright chargewright
`
}
