import { describe, expect, it } from 'vitest'
import { EVERYDAY } from '../../cli/input/shorthand.ts'
import { operations } from '../../shared/operations.ts'
import { session } from './session.ts'

/** Keys pressed for a question, the name of the program not counted. */
const MOST_KEYS = { saturation: 25, readings: 60 } as const

describe('the everyday line', () => {
  it('is there for every operation and for nothing else', () => {
    const where =
      'each operation needs its line in EVERYDAY of cli/input/shorthand.ts, in their order'
    expect(Object.keys(EVERYDAY), where).toEqual(operations.map(({ name }) => name))
    // A line that needs quotation marks is none for gloves.
    for (const line of Object.values(EVERYDAY)) expect(line).not.toMatch(/["'$*#&;|<>()\\!?]/u)
  })

  it.each(Object.entries(EVERYDAY))(
    'of %s is answered, and stands in its help',
    async (name, line) => {
      const written = {}
      const { status, out, err } = await session(line.split(' '), { written })
      expect({ status, err }).toEqual({ status: 0, err: '' })
      expect(line.split(' ')[0]).toBe(name)
      expect(out).toMatch(/\d/u)
      for (const width of [80, 40]) {
        const help = (await session([name, '-h'], { width })).out
        expect(help.replace(/ \\\n\s*/gu, ' ')).toContain(`chargewright ${line}`)
      }
    },
  )

  it.each(Object.entries(MOST_KEYS))('of %s takes at most %i keys', (name, most) => {
    expect([...(EVERYDAY[name] ?? '')].length).toBeLessThanOrEqual(most)
  })

  it.each(
    operations
      .filter(({ name }) => !['leak-test', 'work-order'].includes(name))
      .map(({ name }) => name),
  )('ends the error of a bare %s', async (name) => {
    const { status, err } = await session([name])
    if (status === 0) return
    expect(err).toContain('\nlike:  chargewright ')
    const like = err
      .slice(err.indexOf('like:') + 5)
      .replace(/ \\\n\s*/gu, ' ')
      .trim()
    expect(like).toBe(`chargewright ${EVERYDAY[name]}`)
  })
})

describe('help', () => {
  it.each([80, 40])('is no wider than %i columns', async (width) => {
    for (const name of ['', ...operations.map((entry) => entry.name), 'settings', 'refrigerants']) {
      const { out } = await session(name === '' ? ['-h'] : [name, '-h'], { width })
      const wide = out
        .split('\n')
        .filter((line) => [...line].length > width && /\s/u.test(line.trim()))
        // An option or a command line is not broken inside a word that a person must type.
        .filter((line) => !/^ *(?:-|chargewright |Usage:)/u.test(line))
      expect(wide, name).toEqual([])
    }
  })

  it('says how quantities are written, the settings, and the exit statuses', async () => {
    const { out } = await session(['-h'])
    for (const text of ['32psig/48F', '15inHg vac', '3lb8oz', '--no-settings', 'Exit status']) {
      expect(out).toContain(text)
    }
  })

  it('begins with what was asked and ends its options with the instruments', async () => {
    const { out } = await session(['readings', '-h'])
    const places = [
      'Everyday:',
      'Input:',
      '--suction-pressure',
      'Place and instruments:',
      '--low-gauge',
      'Output:',
    ]
    const found = places.map((text) => out.indexOf(text))
    expect(found).toEqual([...found].sort((a, b) => a - b))
    expect(found[0]).toBeGreaterThan(0)
  })
})
