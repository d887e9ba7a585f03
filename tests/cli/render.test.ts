import { describe, expect, it } from 'vitest'
import { exampleArgv } from '../../cli/example.ts'
import { gridLines } from '../../cli/render/grid.ts'
import { inkOf } from '../../cli/render/ink.ts'
import { type Page, pairLines } from '../../cli/render/pairs.ts'
import { treeLines } from '../../cli/render/tree.ts'
import { columnsOf, hanging, padEnd } from '../../cli/render/wrap.ts'
import { untilBrokenOff, wantsColor, widthOf } from '../../cli/terminal.ts'
import { labelOf } from '../../shared/answer/words.ts'
import { rules } from '../../shared/rules/rules.ts'
import { session } from './session.ts'

const page: Page = { ink: inkOf(false), width: 60, precise: false }

describe('width of a text', () => {
  it('counts letters, not codes, marks or bytes', () => {
    expect(columnsOf('52 °F')).toBe(5)
    expect(columnsOf('\u001B[1m52 °F\u001B[22m')).toBe(5)
    expect(columnsOf('e\u0301')).toBe(1)
    expect(columnsOf('冷媒')).toBe(4)
    expect(padEnd('°', 3)).toBe('°  ')
  })
})

describe('wrapping', () => {
  it('breaks between words and hangs under the first', () => {
    expect(hanging('NOTE', 'one two three four five six seven', 6, 30)).toEqual([
      'NOTE  one two three four five',
      '      six seven',
    ])
  })

  it('gives a head that is too long a line of its own', () => {
    expect(hanging('A long head', 'text', 4, 40)).toEqual(['A long head', '    text'])
  })

  it('cuts a word only where it is longer than a line, and never an address', () => {
    expect(hanging('', 'x'.repeat(45), 0, 20)).toEqual([
      'x'.repeat(20),
      'x'.repeat(20),
      'x'.repeat(5),
    ])
    const address = `https://example.org/${'y'.repeat(40)}`
    expect(hanging('', `see ${address}`, 0, 20)).toEqual(['see', address])
  })
})

describe('labels', () => {
  it('are the words of a field name', () => {
    expect(labelOf('liquidDensity')).toBe('Liquid density')
    expect(labelOf('dew-point')).toBe('Dew point')
    expect(labelOf('gwp')).toBe('GWP')
    expect(labelOf('pressureAt104F')).toBe('Pressure at 104 °F')
  })
})

describe('pairs', () => {
  it('line figures up on their points, the other system beside them', () => {
    const lines = pairLines(
      [
        {
          label: 'Temperature',
          value: { value: 36.8, unit: '°F', also: { value: 2.6, unit: '°C' } },
        },
        {
          label: 'Pressure',
          value: {
            value: 132,
            unit: 'psig',
            plusMinus: 4,
            also: { value: 910, unit: 'kPa g', plusMinus: 28 },
          },
        },
        { label: 'Refrigerant', value: 'R-134a' },
      ],
      2,
      page,
    )
    expect(lines).toEqual([
      '  Temperature   36.8 °F       2.6 °C',
      '  Pressure     132 ±4 psig  910 ±28 kPa g',
      '  Refrigerant  R-134a',
    ])
  })

  it('never pass the width', () => {
    const lines = pairLines(
      [
        {
          label: 'A label that is very long indeed for a figure',
          value: 'words '.repeat(30).trim(),
        },
      ],
      2,
      page,
    )
    expect(lines.every((line) => line.length <= page.width)).toBe(true)
  })
})

describe('a tree', () => {
  it('shows like rows as a table with units in its head', () => {
    const rows = [
      { at: '1', mass: { value: 9.25, unit: 'oz' } },
      { at: '2', mass: { value: 11, unit: 'oz' } },
    ]
    expect(gridLines(rows, 0, page)).toEqual(['At   Mass, oz', '1        9.25', '2       11'])
  })

  it('shows scalars before sections, words in one line, and sentences as a list', () => {
    const tree = {
      parts: { hose: { value: 2, unit: 'ft' } },
      verdict: 'inside',
      ok: true,
      words: ['condenser', 'drier'],
      notes: [{ text: 'A sentence that is long enough to stand alone.', mark: 'memory', id: 'x' }],
      nothing: [],
    }
    expect(treeLines(tree, 0, page)).toEqual([
      'Verdict  inside',
      'Ok       yes',
      'Words    condenser, drier',
      '',
      'Parts',
      '  Hose  2 ft',
      '',
      'Notes',
      '  - A sentence that is long enough to stand alone. (memory)',
    ])
  })

  it('shows a ratio to four figures, all of them where precision is asked for', () => {
    expect(treeLines({ ratio: 4.3217654 }, 0, page)).toEqual(['Ratio  4.322'])
    expect(treeLines({ ratio: 4.3217654 }, 0, { ...page, precise: true })).toEqual([
      'Ratio  4.3217654',
    ])
    expect(treeLines({ ratio: { value: 4.32, plusMinus: 0.13 } }, 0, page)).toEqual([
      'Ratio  4.32 ±0.13',
    ])
  })
})

describe('colour', () => {
  it('is for a terminal only, and both variables are heeded', () => {
    expect(wantsColor({ isTTY: true }, {})).toBe(true)
    expect(wantsColor({}, {})).toBe(false)
    expect(wantsColor({ isTTY: true }, { TERM: 'dumb' })).toBe(false)
    expect(wantsColor({ isTTY: true }, { NO_COLOR: '1' })).toBe(false)
    expect(wantsColor({ isTTY: true }, { NO_COLOR: '' })).toBe(true)
    expect(wantsColor({}, { FORCE_COLOR: '1' })).toBe(true)
    expect(wantsColor({}, { FORCE_COLOR: '1', NO_COLOR: '1' })).toBe(false)
    expect(wantsColor({ isTTY: true }, { FORCE_COLOR: '0' })).toBe(false)
  })

  it('changes nothing but codes', async () => {
    const ask = ['saturation', 'R-134a', '--pressure', '32 psig', '--steps']
    const plain = await session(ask)
    const painted = await session(ask, { color: true })
    const codes = new RegExp(`${String.fromCharCode(27)}\\[[\\d;]*m`, 'gu')
    expect(plain.out).not.toMatch(codes)
    expect(painted.out).toMatch(codes)
    expect(painted.out.replace(codes, '')).toBe(plain.out)
  })

  it('is never in JSON', async () => {
    const { out } = await session(['saturation', 'R-134a', '--pressure', '32 psig', '--json'], {
      color: true,
    })
    expect(out).not.toContain(String.fromCharCode(27))
  })
})

describe('width', () => {
  it('is the terminal’s within what reads well', () => {
    expect(widthOf({ columns: 72 }, {})).toBe(72)
    expect(widthOf({ columns: 300 }, {})).toBe(100)
    expect(widthOf({ columns: 10 }, {})).toBe(40)
    expect(widthOf({}, { COLUMNS: '90' })).toBe(90)
    expect(widthOf({}, { COLUMNS: 'wide' })).toBe(80)
  })
})

describe('readings for people', () => {
  const read = [
    'readings',
    'R-407C',
    '--suction-pressure',
    '32 psig',
    '--liquid-pressure',
    '210 psig',
    '--units',
    'us',
  ]

  it('name what cannot be, with causes, beside the figure', async () => {
    const { out } = await session([...read, '--suction-temperature', '-10 °F', '--full'])
    expect(out).toMatch(/Superheat +-\d/u)
    expect(out.replace(/\s+/gu, ' ')).toContain(
      'Cannot be: Suction line colder than the dew point of its own pressure',
    )
    expect(out).toContain('What would settle it')
  })

  it('show both lines of a blend, and one saturation temperature of a pure refrigerant', async () => {
    const blend = await session([...read, '--full'])
    expect(blend.out).toMatch(/Bubble temperature .*\n +Dew temperature/u)
    const pure = await session([
      ...read.map((word) => (word === 'R-407C' ? 'R-134a' : word)),
      '--full',
    ])
    expect(pure.out).not.toContain('Dew temperature')
    expect(pure.out).toMatch(/Saturation temperature +36\.8 ±1\.2 °F/u)
  })
})

describe('sources', () => {
  it('are named beside every answer, and told in full when asked for', async () => {
    const argv = ['saturation', 'R-134a', '--pressure', '32 psig']
    const [short, full] = [
      await session([...argv, '--full']),
      await session([...argv, '--sources']),
    ]
    expect(short.out).toContain('Tillner-Roth')
    expect(short.out).not.toContain('https://')
    expect(full.out).toContain('https://doi.org/10.1063/1.555958')
  })
})

describe('lists of sections', () => {
  it('are headed by what each is called, in words', () => {
    const lines = treeLines(
      [
        { name: 'cannot-tell', id: 'x', inner: { deep: [{ a: 1 }] } },
        { name: 'second', figure: 2, inner: { deep: [{ a: 2 }] } },
      ],
      0,
      page,
    )
    expect(lines[0]).toBe('1 cannot tell')
    expect(lines.join('\n')).not.toContain('ID')
  })

  it('become a table when their parts lie one level down', () => {
    const side = (value: number) => ({ value, unit: 'psig' })
    const rows = [
      { at: '70', high: { from: side(120), to: side(190) } },
      { at: '80', high: { from: side(140), to: side(210) } },
    ]
    const [head, first] = treeLines(rows, 0, page)
    expect(head).toMatch(/At +High from, psig +High to, psig/u)
    expect(first).toMatch(/70 +120 +190/u)
  })
})

describe('lists of choices', () => {
  it('take commas as well as repeated options', async () => {
    const tail = ['--existing-oil', 'PAG 46', '--json']
    const commas = await session(['oil', 'R-134a', '--replaced', 'condenser,drier', ...tail])
    const repeated = ['--replaced', 'condenser', '--replaced', 'drier']
    expect(commas.status).toBe(0)
    expect(await session(['oil', 'R-134a', ...repeated, ...tail])).toEqual(commas)
  })
})

describe('a place below sea level', () => {
  it('is given as a negative altitude', async () => {
    const { out } = await session([
      'saturation',
      'R-134a',
      '--pressure',
      '0 psig',
      '--altitude',
      '-1300 ft',
      '--precise',
      '--json',
    ])
    // The standard atmosphere at −1300 ft: 106.2 kPa, so 0 psig is warmer than at sea level.
    const { result } = JSON.parse(out) as {
      result: { dew: { absolutePressure: { also: { value: number } } } }
    }
    expect(result.dew.absolutePressure.also.value).toBeCloseTo(106.2, 1)
  })
})

describe('a tree of figures', () => {
  it('has no heading with nothing under it, and says of no rule that it applies', async () => {
    const { out } = await session([...exampleArgv(rules), '--full'])
    expect(out).not.toMatch(/^ +Retrofit$/mu)
    expect(out).not.toContain('applies: yes')
    expect(out).toMatch(/ 1 Section 609.*\n +2 Section 608/u)
  })
})

describe('a table', () => {
  const argv = ['table', '134a', '0F', '20F', '10F']

  it('shows as many columns as the terminal is wide, and names the others', async () => {
    const { out } = await session(argv, { width: 40 })
    expect(out).toContain('temperature  pressure  pressure')
    expect(out).not.toContain('latent heat\n')
    expect(out.replace(/\s+/gu, ' ')).toContain(
      'liquid density, vapour density, latent heat: --full',
    )
    expect((await session([...argv, '--full'])).out).toContain('Btu/lb')
  })

  it('leaves nothing to the sheet where all of it fits', async () => {
    const { out } = await session([...argv, '--columns', 'saturation'])
    expect(out).not.toContain(': --full')
  })
})

describe('a question', () => {
  it('may be broken off, and a fault in it stays one', async () => {
    const broken = Object.assign(new Error('User force closed'), { name: 'ExitPromptError' })
    await expect(untilBrokenOff(() => Promise.reject(broken))).rejects.toMatchObject({
      code: 'refused',
      message: 'Broken off: nothing is written.',
    })
    const fault = new TypeError('a fault')
    await expect(untilBrokenOff(() => Promise.reject(fault))).rejects.toBe(fault)
    expect(await untilBrokenOff(async () => 'an answer')).toBe('an answer')
  })
})
