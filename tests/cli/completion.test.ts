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

  it('in bash offers values behind a letter, the options of an order, and nothing that is not there', async () => {
    const text = await script('bash')
    expect(offered(text, ['chargewright', 'readings', '-m', 'off'])).toEqual(['off-road'])
    expect(offered(text, ['chargewright', 'charge', '-t', ''])).toContain('two-valve')
    const order = offered(text, ['chargewright', 'work-order', '--'])
    expect(order).toEqual(
      expect.arrayContaining([
        '--new',
        '--set',
        '--save',
        '--customer',
        '--markdown',
        '--full',
        '--no-settings',
      ]),
    )
    expect(offered(text, ['chargewright', 'saturation', '--'])).not.toContain('--save')
    expect(offered(text, ['chargewright', 'settings', ''])).toEqual(
      expect.arrayContaining(['--set', '--remove', '--person']),
    )
    expect(offered(text, ['chargewright', 'settings', ''])).not.toContain('bash')
  })

  it.each(['zsh', 'fish'])('in %s names every command and option', async (shell) => {
    const text = await script(shell)
    for (const { name } of operations) expect(text).toContain(name)
    expect(text).toContain('suction-pressure')
    for (const name of ['customer', 'no-settings', 'person']) expect(text).toContain(name)
    expect(text).toMatch(shell === 'fish' ? / -l machine -s m -x -a 'road-vehicle/u : /\*-m\[/u)
    expect(text).toContain('R-134a')
  })

  it('of another shell is refused with those that there are', async () => {
    const { status, err } = await session(['completion', 'tcsh'])
    expect(status).toBe(2)
    expect(err.replace(/\s+/gu, ' ')).toContain('bash, zsh, fish')
  })
})
