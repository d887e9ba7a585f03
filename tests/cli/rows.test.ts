import { describe, expect, it } from 'vitest'
import { MADE_BY } from '../../shared/about.ts'
import { operation } from '../../shared/operations.ts'
import { session } from './session.ts'

const saturation = operation('saturation')
const pressures = ['10 psig', '32 psig', '70 psig']
const answers = pressures.map((pressure) => saturation.run({ refrigerant: 'R-134a', pressure }))
const parsed = (out: string) =>
  out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as unknown)

describe('rows from standard input', () => {
  it('as JSON lines are answered one line each', async () => {
    const stdin = pressures.map((pressure) => JSON.stringify({ refrigerant: 'R-134a', pressure }))
    const { status, out } = await session(['saturation', '-'], { stdin: stdin.join('\n') })
    expect(status).toBe(0)
    expect(parsed(out)).toEqual(answers)
  })

  it('as a JSON list are answered alike', async () => {
    const stdin = JSON.stringify(pressures.map((pressure) => ({ refrigerant: 'R-134a', pressure })))
    expect(parsed((await session(['saturation', '--input', '-'], { stdin })).out)).toEqual(answers)
  })

  it('as CSV take their field names from the first line and options for every row', async () => {
    const stdin = `pressure\r\n${pressures.join('\r\n')}\r\n`
    const { status, out } = await session(['saturation', 'R-134a', '-'], { stdin })
    expect(status).toBe(0)
    expect(parsed(out)).toEqual(answers)
  })

  it('as CSV may have the unit in the head, spelt in kebab case, with a byte-order mark', async () => {
    const stdin = '\uFEFFRefrigerant,pressure (psig)\nR-134a,10\nR-134a,32\nR-134a,70\n'
    expect(parsed((await session(['saturation', '-'], { stdin })).out)).toEqual(answers)
  })

  it('arrive in whatever pieces', async () => {
    const text = `refrigerant,pressure\n${pressures.map((entry) => `R-134a,${entry}\n`).join('')}`
    const { out } = await session(['saturation', '-'], { stdin: [...text] })
    expect(parsed(out)).toEqual(answers)
  })

  it('may be a single object, answered as if it were typed', async () => {
    const stdin = JSON.stringify({ refrigerant: 'R-134a', pressure: '32 psig' }, null, 2)
    expect(await session(['saturation', '-'], { stdin })).toEqual(
      await session(['saturation', 'R-134a', '--pressure', '32 psig']),
    )
  })
})

describe('a bad row', () => {
  const stdin =
    'refrigerant,pressure\nR-134a,32\nR-134a,32 psig\nR-13x,32 psig\nR-134a,32 psig,extra\n'

  it('is answered in its place with its number, and the others go on', async () => {
    const { status, out } = await session(['saturation', '-'], { stdin })
    const rows = parsed(out) as { row?: number; error?: { code: string }; result?: unknown }[]
    expect(status).toBe(2)
    expect(rows.map(({ row, error }) => [row, error?.code])).toEqual([
      [1, 'ambiguous-quantity'],
      [undefined, undefined],
      [3, 'unknown-refrigerant'],
      [4, 'bad-input'],
    ])
    expect(rows[1]).toEqual(answers[1])
  })

  it('that is understood and refused ends with 1', async () => {
    const { status } = await session(['saturation', 'R-134a', '-'], {
      stdin: 'temperature\n20 °C\n150 °C\n',
    })
    expect(status).toBe(1)
  })

  it('of broken JSON does not stop the next', async () => {
    const lines =
      '{"refrigerant":"R-134a","pressure":"10 psig"}\n{"refrigerant":\n{"refrigerant":"R-134a","pressure":"70 psig"}\n'
    const rows = parsed((await session(['saturation', '-'], { stdin: lines })).out)
    expect(rows[0]).toEqual(answers[0])
    expect(rows[1]).toEqual(expect.objectContaining({ row: 2 }))
    expect(rows[2]).toEqual(answers[2])
  })

  it('has its error beside it in CSV', async () => {
    const { status, out } = await session(['saturation', '-', '--csv', '--units', 'us'], { stdin })
    const [head = '', ...rows] = out.trimEnd().split('\n')
    expect(status).toBe(2)
    expect(head).toMatch(
      /^row,refrigerant,.*dew\.temperature\.value,dew\.temperature\.unit.*,warnings,error,/u,
    )
    expect(rows).toHaveLength(4)
    expect(rows[0]).toContain('ambiguous-quantity')
    expect(rows[1]).toContain('°F')
  })
})

describe('input that is none', () => {
  it.each([
    ['empty', ''],
    ['blank', ' \n\n'],
  ])('because it is %s is missing', async (_, stdin) => {
    const { status, err } = await session(['saturation', '-', '--json'], { stdin })
    expect(status).toBe(2)
    expect(JSON.parse(err)).toEqual(expect.objectContaining({ code: 'missing-input' }))
  })

  it('because JSON breaks off says so', async () => {
    const { status, err } = await session(['saturation', '-'], {
      stdin: '{"refrigerant": "R-134a",',
    })
    expect(status).toBe(2)
    expect(err).toContain('not valid JSON')
  })

  it('because the file is not there says so', async () => {
    const { status, err } = await session(['saturation', 'nowhere.json'])
    expect(status).toBe(2)
    expect(err).toContain('nowhere.json cannot be read (ENOENT)')
  })

  it('because a column is no field names the nearest', async () => {
    const { status, out, err } = await session(['saturation', 'R-134a', '-'], {
      stdin: 'presure\n32 psig\n',
    })
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err).toContain('Did you mean pressure')
  })

  it.each([
    [
      'two columns are called the same',
      'pressure,Pressure (psig)\n1,2\n',
      'Two columns are called',
    ],
    ['cells are parted by semicolons', 'refrigerant;pressure\nR-22;1 psig\n', 'instead of ";"'],
    ['cells are parted by tabs', 'refrigerant\tpressure\nR-22\t1 psig\n', 'instead of tabs'],
    ['a JSON value is no object', 'null', 'There is no field "null"'],
  ])('because %s says so', async (_, stdin, message) => {
    const { status, out, err } = await session(['saturation', 'R-134a', '-'], { stdin })
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err.replace(/\s+/gu, ' ')).toContain(message)
  })

  it('does not mind the column without a name that commas at the ends of lines leave', async () => {
    const { status, out } = await session(['saturation', 'R-134a', '-'], {
      stdin: 'pressure,\r\n10 psig,\r\n',
    })
    expect(status).toBe(0)
    expect(parsed(out)).toEqual([answers[0]])
  })
})

describe('input from a file', () => {
  it('is read by its name, and options go before what it says', async () => {
    const files = { 'ask.json': '{"refrigerant":"R-22","pressure":"32 psig"}' }
    const { out } = await session(['saturation', 'ask.json', '--refrigerant', 'R-134a', '--json'], {
      files,
    })
    expect(JSON.parse(out)).toEqual({ ...answers[1], madeBy: MADE_BY })
  })

  it('is CSV or JSON lines by its ending', async () => {
    const files = {
      'rows.csv': `pressure\n${pressures.join('\n')}`,
      'rows.ndjson': '{"pressure":"10 psig"}',
    }
    expect(parsed((await session(['saturation', 'R-134a', 'rows.csv'], { files })).out)).toEqual(
      answers,
    )
    const one = await session(['saturation', 'R-134a', '--input', 'rows.ndjson'], { files })
    expect(parsed(one.out)).toEqual([answers[0]])
  })
})

describe('table --csv', () => {
  it('is the table, with units in its head', async () => {
    const { out } = await session([
      'table',
      'R-134a',
      '--from',
      '0 °F',
      '--to',
      '20 °F',
      '--step',
      '10 °F',
      '--units',
      'us',
      '--csv',
    ])
    const [head, ...rows] = out.trimEnd().split('\r\n')
    expect(head).toMatch(/^temperature \(°F\),/u)
    expect(rows).toHaveLength(3)
  })
})
