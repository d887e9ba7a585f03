import { execFileSync } from 'node:child_process'
import { describe, expect, it } from 'vitest'
import { operations } from '../../shared/operations.ts'
import { session } from './session.ts'

const script = async (shell: string) => (await session(['completion', shell])).out

/** What bash offers for a line that is being typed. */
function offered(text: string, words: readonly string[]): readonly string[] {
  const line = words.map((word) => `'${word}'`).join(' ')
  const program = `${text}
COMP_WORDS=(${line})
COMP_CWORD=${words.length - 1}
_chargewright
printf '%s\\n' "\${COMPREPLY[@]}"`
  return execFileSync('bash', ['-c', program], { encoding: 'utf8' }).trim().split('\n')
}

describe('completion', () => {
  it('in bash offers commands, options and values', async () => {
    const text = await script('bash')
    const commands = offered(text, ['chargewright', ''])
    expect(commands).toEqual(expect.arrayContaining(operations.map(({ name }) => name)))
    expect(commands).toContain('serve')
    expect(offered(text, ['chargewright', 'satu'])).toEqual(['saturation'])
    expect(offered(text, ['chargewright', 'saturation', '--pre'])).toEqual(
      expect.arrayContaining(['--pressure', '--precise']),
    )
    expect(offered(text, ['chargewright', 'saturation', '--units', ''])).toEqual([
      'us',
      'si',
      'both',
    ])
    expect(offered(text, ['chargewright', 'saturation', '--refrigerant', 'R-1234'])).toEqual(
      expect.arrayContaining(['R-1234yf', 'R-1234ze(E)']),
    )
  })

  it.each(['zsh', 'fish'])('in %s names every command and option', async (shell) => {
    const text = await script(shell)
    for (const { name } of operations) expect(text).toContain(name)
    expect(text).toContain('suction-pressure')
    expect(text).toContain('R-134a')
  })

  it('of another shell is refused with those that there are', async () => {
    const { status, err } = await session(['completion', 'tcsh'])
    expect(status).toBe(2)
    expect(err.replace(/\s+/gu, ' ')).toContain('bash, zsh, fish')
  })
})
