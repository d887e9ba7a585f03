import { describe, expect, it } from 'vitest'
import { LOADED_ALONE, operationsFor } from '../../cli/catalogue.ts'
import { exampleArgv, exampleText } from '../../cli/example.ts'
import { EXIT, exitStatusOf } from '../../cli/exit.ts'
import { choicesOf } from '../../cli/render/choices.ts'
import packageData from '../../package.json' with { type: 'json' }
import { ABOUT } from '../../shared/about.ts'
import { type CalcError, ERROR_CODES } from '../../shared/errors.ts'
import { fieldsOf } from '../../shared/input/index.ts'
import { operations } from '../../shared/operations.ts'
import { session } from './session.ts'

const byName = operations.map((operation) => [operation.name, operation] as const)

describe('the command line', () => {
  it('says the name, version and purpose that package.json has', async () => {
    const { name, version, description, license } = packageData
    const { data, ...about } = ABOUT
    expect(about).toEqual({ name, version, description, licence: license })
    expect(data).toMatch(/^\d{4}-\d\d-\d\d$/u)
    expect(await session(['--version'])).toEqual({ status: 0, out: `${version}\n`, err: '' })
  })

  it('prints help without a command, with --help and with help, and lists every operation', async () => {
    const bare = await session([])
    expect(bare.status).toBe(EXIT.answered)
    expect(await session(['--help'])).toEqual(bare)
    for (const [name, { summary }] of byName) {
      expect(bare.out).toContain(name)
      expect(bare.out.replace(/\s+/gu, ' ')).toContain(summary)
    }
  })

  it('gives every code of error an exit status that says whose turn it is', () => {
    expect(Object.keys(exitStatusOf).sort()).toEqual([...ERROR_CODES].sort())
    expect(exitStatusOf['bad-quantity']).toBe(EXIT.misused)
    expect(exitStatusOf['no-convergence']).toBe(EXIT.failed)
    expect(exitStatusOf.refused).toBe(EXIT.failed)
  })

  it('loads alone exactly the operation that it is asked for', async () => {
    for (const name of LOADED_ALONE) {
      const listed = operations.find((operation) => operation.name === name)
      expect(listed).toBeDefined()
      expect(await operationsFor([name])).toEqual([listed])
    }
    const missing = operations.filter(({ name }) => !LOADED_ALONE.includes(name))
    expect(
      missing.map(({ name }) => name),
      'each operation needs its line in cli/catalogue.ts, or its command loads all of them',
    ).toEqual([])
    expect(await operationsFor(['constructor'])).toBe(operations)
    expect(await operationsFor([])).toBe(operations)
  })
})

describe.each(byName)('%s', (name, operation) => {
  it('answers its example as the operation itself does', async () => {
    const { status, out, err } = await session([...exampleArgv(operation), '--json'])
    expect({ status, err }).toEqual({ status: 0, err: '' })
    expect(JSON.parse(out)).toEqual({
      ...operation.run(operation.example),
      madeBy: `chargewright ${ABOUT.version}, data of ${ABOUT.data}`,
    })
    expect(out.trimEnd().split('\n')).toHaveLength(1)
  })

  it('explains every option, with an example, in help', async () => {
    const { status, out } = await session([name, '--help'])
    expect(status).toBe(0)
    expect(out).toContain(exampleText(operation, 78))
    expect(await session(['help', name])).toEqual({ status, out, err: '' })
    const tooLong = out
      .split('\n')
      .filter((line) => [...line].length > 80 && !/^ {4}--/u.test(line))
    expect(tooLong).toEqual([])
  })

  it('names every choice in help, and long lists once', async () => {
    const { out } = await session([name, '--help'])
    for (const { shape } of fieldsOf(operation)) {
      const choices = choicesOf(shape)
      const times = (choice: string) => out.split(/[\s,;:()]+/u).filter((word) => word === choice)
      for (const choice of choices) expect(times(choice).length, choice).toBeGreaterThan(0)
    }
  })

  it('prints every caution and its sources on the sheet, within the width', async () => {
    const { out } = await session([...exampleArgv(operation), '--full'], { width: 72 })
    const answer = operation.run(operation.example)
    for (const { text } of answer.cautions) {
      expect(out.replace(/\s+/gu, ' ')).toContain(text)
    }
    expect(out).toMatch(/^Sources(?:$| \(--sources)/mu)
    expect(out).not.toMatch(/\[object|undefined|NaN/u)
    const tooLong = out.split('\n').filter((line) => [...line].length > 72 && !line.includes('://'))
    expect(tooLong).toEqual([])
  })

  it('has nothing on the screen that the sheet leaves out', async () => {
    const words = async (argv: readonly string[]) =>
      new Set((await session([...exampleArgv(operation), ...argv])).out.split(/\s+/u))
    const sheet = await words(['--full'])
    const only = [...(await words([]))].filter((word) => !sheet.has(word))
    expect(
      only.filter((word) => !'--full for rules, steps and sources in full'.includes(word)),
    ).toEqual([])
  })
})

describe('a mistake', () => {
  it('in the name of a command is answered with the nearest', async () => {
    const { status, out, err } = await session(['satuartion'])
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err).toContain("Unknown command 'satuartion'")
    expect(err).toContain('Did you mean saturation?')
  })

  it('in the name of a command is told by help too', async () => {
    for (const words of [
      ['help', 'satration'],
      ['satration', '--help'],
    ]) {
      const { status, out, err } = await session(words)
      expect({ status, out }).toEqual({ status: EXIT.misused, out: '' })
      expect(err).toContain('Did you mean saturation?')
    }
  })

  it('of a value given twice takes neither', async () => {
    const twice = ['--pressure', '32 psig', '--pressure', '23 psig']
    const { status, out, err } = await session(['saturation', 'R-134a', ...twice])
    expect({ status, out }).toEqual({ status: EXIT.misused, out: '' })
    expect(err).toContain('--pressure is given twice: "32 psig" and "23 psig".')
  })

  it('of both answers to one question takes neither', async () => {
    const argv = ['charge', 'R-134a', '--job', 'section-opened', '--sealed', '--no-sealed']
    const { status, out, err } = await session(argv)
    expect({ status, out }).toEqual({ status: EXIT.misused, out: '' })
    expect(err).toContain('Both --sealed and --no-sealed are given.')
  })

  it('of two files says how many go into one', async () => {
    const { status, err } = await session(['work-order', 'one.json', 'two.json'])
    expect(status).toBe(EXIT.misused)
    expect(err).toContain('"two.json" is one word too many')
    expect(err).toContain('a JSON object a line')
  })

  it('in the name of an option is answered with the nearest', async () => {
    const { status, err } = await session(['saturation', '--presure', '32 psig'])
    expect(status).toBe(2)
    expect(err).toContain('Did you mean --pressure')
  })

  it('in a quantity says what was wrong, where, and what would do', async () => {
    const { status, err } = await session(['saturation', 'R-134a', '--pressure', '32'])
    expect(status).toBe(2)
    expect(err).toMatch(/^error: "32" has no unit\. \(pressure\)/u)
    expect(err).toContain('32 psig')
  })

  it('is told as JSON on the error stream when JSON is asked for, and nothing goes to the answer', async () => {
    const { status, out, err } = await session([
      'saturation',
      'R-134a',
      '--pressure',
      '32',
      '--json',
    ])
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(JSON.parse(err)).toEqual(
      expect.objectContaining({ code: 'ambiguous-quantity', path: ['pressure'] }),
    )
    const unknown = await session(['saturation', '--colour', '--json'])
    expect(JSON.parse(unknown.err)).toEqual(expect.objectContaining({ code: 'bad-input' }))
  })

  it('that leaves an option without its value names the option', async () => {
    const { status, err } = await session(['saturation', 'R-134a', '--pressure', '--json'])
    expect(status).toBe(2)
    expect(err).toContain('--pressure has no value')
  })

  it('of one word too many shows the quotation marks that were missing', async () => {
    const { status, err } = await session(['saturation', 'R-134a', 'R-22', '--pressure', '32 psig'])
    expect(status).toBe(2)
    expect(err).toContain('"R-22" is one word too many')
  })

  it('that is understood but cannot be computed ends with 1', async () => {
    const { status, err } = await session(['saturation', 'R-134a', '--temperature', '150 °C'])
    expect(status).toBe(EXIT.failed)
    expect(err).toMatch(/^error: /u)
  })

  it.each([
    ['32 °F', 'wrong-kind'],
    ['NaN psig', 'bad-quantity'],
    ['Infinity psig', 'bad-quantity'],
    ['٣٢ psig', 'bad-quantity'],
    ['3２ psig', 'bad-quantity'],
    ['1,5 bar g', 'bad-quantity'],
    ['', 'missing-input'],
    ['32 psi', 'ambiguous-quantity'],
    ['0 psia', 'out-of-range'],
    [`${'9'.repeat(400)} psig`, 'bad-quantity'],
  ])('in a pressure of "%s" is %s', async (pressure, code) => {
    const { status, out, err } = await session([
      'saturation',
      'R-134a',
      '--pressure',
      pressure,
      '--json',
    ])
    const error = JSON.parse(err) as CalcError
    expect({ code: error.code, out }).toEqual({ code, out: '' })
    expect(status).toBe(exitStatusOf[error.code])
  })
})

describe('what a shell hands over', () => {
  it('is one quantity although its words come apart', async () => {
    const whole = await session(['saturation', 'R-134a', '--pressure', '32 psig', '--json'])
    const apart = await session(['saturation', 'R-134a', '--pressure', '32', 'psig', '--json'])
    expect(whole.status).toBe(0)
    expect(apart).toEqual(whole)
  })

  it('is no quantity where a letter stands before the digits', async () => {
    const { status, err } = await session(['saturation', '--refrigerant', 'R134', 'psig'])
    expect(status).toBe(EXIT.misused)
    expect(err).toContain('"psig" is one word too many')
  })

  it('may name the refrigerant with an option or without', async () => {
    const bare = await session(['saturation', 'propane', '--temperature', '−10 °C', '--json'])
    const named = await session([
      'saturation',
      '--refrigerant',
      'R-290',
      '--temperature',
      '-10 °C',
      '--json',
    ])
    expect(bare.status).toBe(0)
    expect(bare.out).toEqual(named.out)
  })
})

describe('units and precision', () => {
  const ask = ['saturation', 'R-134a', '--pressure', '32 psig', '--json']

  it('come as asked', async () => {
    const us = await session([...ask, '--units', 'us'])
    const si = await session([...ask, '--units', 'si', '--precise'])
    expect(us.out).toContain('°F')
    expect(us.out).not.toContain('°C')
    expect(si.out).not.toContain('°F')
    const { result } = JSON.parse(si.out) as { result: { dew: { temperature: { value: number } } } }
    expect(String(result.dew.temperature.value).length).toBeGreaterThan(10)
  })

  it('that do not exist are refused with those that do', async () => {
    const { status, err } = await session([...ask.slice(0, -1), '--units', 'metric'])
    expect(status).toBe(2)
    expect(err).toContain('us, si, both')
  })
})

describe('--steps', () => {
  it('shows how the figures came about, and nothing of it without', async () => {
    const ask = ['saturation', 'R-134a', '--pressure', '32 psig']
    const plain = await session(ask)
    const stepped = await session([...ask, '--steps'])
    expect(plain.out).not.toContain('How the figures came about')
    expect(stepped.out).toContain('How the figures came about')
    expect(stepped.out).toContain('→')
  })
})

describe('refrigerants', () => {
  it('lists them all, and as JSON with all that is known', async () => {
    const { out } = await session(['refrigerants'])
    const all = JSON.parse((await session(['refrigerants', '--json'])).out) as { id: string }[]
    expect(all.length).toBeGreaterThanOrEqual(10)
    for (const { id } of all) expect(out).toContain(id)
  })

  it('shows one by any of its names, with its sources', async () => {
    const { status, out } = await session(['refrigerants', '134a'])
    expect(status).toBe(0)
    expect(out).toContain('R-134a')
    expect(out).toMatch(/^Sources(?:$| \(--sources)/mu)
  })

  it('answers an unknown one with the nearest', async () => {
    const { status, err } = await session(['refrigerants', 'R-134z'])
    expect(status).toBe(2)
    expect(err).toContain('R-134a')
  })
})
