import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { shellWords } from '../support/shell-words.ts'
import { QUESTIONS } from './screens/questions.ts'
import { session } from './session.ts'

const FOLDER = 'tests/cli/screens'
const UNITS = ['us', 'si'] as const
const WIDTH = 80
/** Lines of a terminal as it opens. */
const SCREEN = 24
const ONE_THING = 3
const CARD = 70

/** Written anew by CHARGEWRIGHT_UPDATE_SCREENS=1; then read each aloud before it is kept. */
const UPDATES = process.env.CHARGEWRIGHT_UPDATE_SCREENS === '1'
/** Left alone by CHARGEWRIGHT_NO_GOLDEN=1, as while faults are put in by hand. */
const COMPARES = process.env.CHARGEWRIGHT_NO_GOLDEN !== '1'

const files = Object.fromEntries(
  readdirSync('data/examples').map((name) => [
    `data/examples/${name}`,
    readFileSync(`data/examples/${name}`, 'utf8'),
  ]),
)

async function asked(line: string) {
  const shown = await session(shellWords(line), { files, width: WIDTH })
  return { ...shown, lines: (shown.out + shown.err).trimEnd().split('\n') }
}

/** How many lines a question may take, its rows aside. */
function most(line: string, lines: readonly string[]): number {
  if (line.startsWith('work-order')) return CARD
  if (line.startsWith('saturation')) return ONE_THING
  return line.startsWith('table') ? SCREEN + lines.length - headOf(lines) : SCREEN
}

/** Lines above the head of a table. */
const headOf = (lines: readonly string[]) =>
  Math.max(
    lines.findIndex((entry) => /^ *(?:temperature|gauge|absolute)/u.test(entry)),
    0,
  )

describe.each(Object.entries(QUESTIONS))('%s', (name, line) => {
  it.each(UNITS)('fits the screen in %s', async (units) => {
    const { status, out, err, lines } = await asked(`${line} -u ${units}`)
    expect(lines.length).toBeLessThanOrEqual(err === '' ? most(line, lines) : SCREEN)
    expect(lines.filter((entry) => [...entry].length > WIDTH)).toEqual([])
    expect(out === '').toBe(err !== '')
    expect(status === 0).toBe(err === '')
    expect(out + err).not.toMatch(/undefined|NaN|\[object|\{\w+\}|\.\.(?:\s|$)/u)
    // JSON's spelling of a field is none for the terminal.
    expect(out + err).not.toMatch(/(?<![\w-])(?:[a-z]+[A-Z]\w*)(?!\w)(?<!inHg|kPa|mL|hPa|kJ|kW)/u)
  })

  it.runIf(COMPARES)('reads as it was approved', async () => {
    const blocks = []
    for (const units of UNITS) {
      const command = `${line} -u ${units}`
      const { status, lines } = await asked(command)
      blocks.push(
        `$ chargewright ${command}${status === 0 ? '' : `   (exit status ${status})`}\n${lines.join('\n')}\n`,
      )
    }
    const text = blocks.join('\n')
    const path = `${FOLDER}/${name}.txt`
    if (UPDATES) writeFileSync(path, text)
    expect(existsSync(path), `${path} is not there: CHARGEWRIGHT_UPDATE_SCREENS=1 writes it`).toBe(
      true,
    )
    expect(text).toBe(readFileSync(path, 'utf8'))
  })
})

describe('the approved screens', () => {
  it('are at least forty questions in both unit systems, and no file is left over', () => {
    expect(Object.keys(QUESTIONS).length).toBeGreaterThanOrEqual(40)
    const kept = readdirSync(FOLDER).filter((name) => name.endsWith('.txt'))
    const known = Object.keys(QUESTIONS).map((name) => `${name}.txt`)
    expect(kept.filter((name) => !known.includes(name))).toEqual([])
  })

  it('begin with the stop where something is forbidden or would hurt', async () => {
    const stops = [
      'rules-no-certificate',
      'charging-dry-ice',
      'charging-engine-running',
      'oil-electric',
      'retrofit-propane',
    ]
    for (const name of stops) {
      const { lines } = await asked(QUESTIONS[name] ?? '')
      expect(lines[0], name).toMatch(/^STOP:/u)
      expect(lines.join('\n'), name).toMatch(/^danger: \S|^Danger {2,}\S/imu)
    }
  })

  it('say nothing in the other unit system', async () => {
    for (const line of Object.values(QUESTIONS)) {
      if (line.startsWith('work-order') || line.startsWith('rules')) continue
      const { out } = await asked(`${line} -u si`)
      const told = out.split(/^(?:Check|Danger|Law|Assumed)/mu)[0] ?? ''
      expect(told, line).not.toMatch(/\d (?:psig?|psia|°F|lb|oz|fl oz|inHg)\b/u)
    }
  })
})
