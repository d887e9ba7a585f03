import { describe, expect, it } from 'vitest'
import { session } from './session.ts'

const SEED = ['lesson', 'high-head', '--seed', '7', '--no-settings']
const PREDICTIONS = 'low-side=same,high-side=up,superheat=same,subcooling=up,vent=same'

/** A person who answers in this order; what was asked is kept. */
function person(answers: readonly string[]) {
  const left = [...answers]
  const heard: { readonly message: string; readonly choices: readonly string[] }[] = []
  return {
    heard,
    left,
    ask: {
      text: async () => '',
      choose: async (message: string, choices: readonly string[]) => {
        heard.push({ message, choices })
        const said = left.shift() ?? ''
        const found = choices.find((choice) => choice.startsWith(said))
        if (found === undefined)
          throw new Error(`${message}: no "${said}" among ${choices.join(', ')}`)
        return found
      },
    },
  }
}

describe('a lesson at a terminal', () => {
  it('goes from question to question, and ends as the same said by options', async () => {
    const guest = person([
      'same',
      'up',
      'same',
      'up',
      'same',
      'high-side',
      'liquid-line',
      'name',
      'overcharge',
    ])
    const played = await session(SEED, { ask: guest.ask })
    expect(played).toMatchObject({ status: 0, err: '' })
    expect(guest.left).toEqual([])
    const bought = guest.heard[6]?.choices ?? []
    expect(bought.some((choice) => choice.startsWith('high-side'))).toBe(false)
    expect(bought.every((choice) => /\(\d+ min\)$|^name the cause$/u.test(choice))).toBe(true)
    const said = await session([
      ...SEED,
      '--predictions',
      PREDICTIONS,
      '--bought',
      'high-side,liquid-line',
      '--named',
      'overcharge',
    ])
    expect(said.status).toBe(0)
    expect(played.out.endsWith(said.out)).toBe(true)
    expect(played.out).toMatch(/^Right: overcharged, found for 5 min of readings\.$/mu)
  })

  it('shows nothing of the answer on its way', async () => {
    const guest = person(['same', 'up', 'same', 'up', 'same', 'high-side', 'name', 'air'])
    const { out } = await session(SEED, { ask: guest.ask })
    const [before = ''] = out.split(/^It is /mu)
    expect(before).not.toMatch(/Fault|parted|chance|Right/u)
    expect(before).toMatch(/when sound/u)
  })

  it('draws a seed where none is given, and says it in the result', async () => {
    const guest = person(['same', 'up', 'same', 'up', 'same', 'name', 'none'])
    expect((await session(['lesson', 'vent', '--no-settings'], { ask: guest.ask })).status).toBe(0)
    const alone = await session(['lesson', 'vent', '--no-settings'])
    expect(alone).toMatchObject({ status: 2, out: '' })
    expect(alone.err).toMatch(/--seed/u)
  })

  it('asks nothing of a program', async () => {
    const guest = person([])
    for (const more of [['--json'], ['--predictions', PREDICTIONS], ['--csv']]) {
      const { status, out } = await session([...SEED, ...more], { ask: guest.ask })
      expect(status).toBe(0)
      expect(out).not.toBe('')
    }
    expect(guest.heard).toEqual([])
    const json = await session([...SEED, '--json'], { ask: guest.ask })
    expect(JSON.parse(json.out).result.stage).toBe('predict')
  })
})
