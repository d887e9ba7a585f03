import { describe, expect, it } from 'vitest'
import { joinWords } from '../../cli/input/join-quantities.ts'
import { LETTERS, SECOND_NAME, WORDS } from '../../cli/input/shorthand.ts'
import { sortWords } from '../../cli/input/words.ts'
import { fieldsOf } from '../../shared/input/index.ts'
import { operation, operations } from '../../shared/operations.ts'
import { refusalOf } from '../support/refusal.ts'
import { session } from './session.ts'

const sorted = (name: string, ...words: string[]) => sortWords(operation(name), words, {})

describe('words without an option', () => {
  it.each(Object.entries(WORDS))('%s: fill fields that there are', (name, groups) => {
    const fields = fieldsOf(operation(name)).map((field) => field.name)
    expect(fields).toEqual(expect.arrayContaining(groups.flat()))
  })

  it('have letters for fields that there are, each its own', () => {
    const all = new Set(operations.flatMap((entry) => fieldsOf(entry).map(({ name }) => name)))
    for (const field of Object.keys(LETTERS)) expect(all).toContain(field)
    const letters = Object.values(LETTERS)
    expect(new Set(letters).size).toBe(letters.length)
    for (const [name, field] of Object.entries(SECOND_NAME)) {
      expect(fieldsOf(operation(name)).map((entry) => entry.name)).toContain(field)
    }
  })

  it('are told apart by their unit', () => {
    expect(sorted('saturation', '134a', '32psig').fields).toEqual({
      refrigerant: '134a',
      pressure: '32psig',
    })
    expect(sorted('saturation', '75F', 'yf').fields).toEqual({
      refrigerant: 'yf',
      temperature: '75F',
    })
    expect(sorted('saturation', '134a', '32', 'psig').fields.pressure).toBe('32 psig')
    expect(sorted('charge', '134a', '3', 'lb', '8', 'oz').fields.labelCharge).toBe('3 lb 8 oz')
  })

  it('are a refrigerant where they are the name of one, whatever unit they look like', async () => {
    // 407 °C would be a temperature.
    const { out } = await session(['saturation', '407C', '5.2barg', '--json'])
    expect(JSON.parse(out).result.refrigerant).toBe('R-407C')
    expect(out).toBe((await session(['saturation', '5.2barg', 'R-407C', '--json'])).out)
  })

  it('are joined as a person parts them, and no further', async () => {
    expect(joinWords(['20inHg', 'vac'])).toEqual(['20inHg vac'])
    expect(joinWords(['2.2bar', 'g', '9C'])).toEqual(['2.2bar g', '9C'])
    expect(joinWords(['210', '±4', 'psig'])).toEqual(['210 ±4 psig'])
    expect(joinWords(['3lb', '8oz'])).toEqual(['3lb 8oz'])
    expect(joinWords(['5', 'ft', '4', 'in'])).toEqual(['5 ft 4 in'])
    expect(joinWords(['32', 'psig', '48', 'F'])).toEqual(['32 psig', '48 F'])
    expect(joinWords(['8', 'oz', '3', 'lb'])).toEqual(['8 oz', '3 lb'])
  })

  it('may be below zero without being an option', async () => {
    const cold = await session(['saturation', '134a', '-10C', '--json'])
    expect(cold.status).toBe(0)
    expect(cold.out).toBe(
      (await session(['saturation', '134a', '--temperature', '-10 °C', '--json'])).out,
    )
  })

  it('hold pressure and temperature of one place, in the order of the visit', () => {
    expect(sorted('readings', '134a', '32psig/48F', '210psig/122F', '95F').fields).toEqual({
      refrigerant: '134a',
      suctionPressure: '32psig',
      suctionTemperature: '48F',
      liquidPressure: '210psig',
      liquidTemperature: '122F',
      ambient: '95F',
    })
    expect(sorted('readings', '134a', '32psig', '210psig').fields).toEqual({
      refrigerant: '134a',
      suctionPressure: '32psig',
      liquidPressure: '210psig',
    })
  })

  it('name a file by its ending, or standard input', () => {
    expect(sorted('saturation', 'rows.csv').file).toBe('rows.csv')
    expect(sorted('saturation', '134a', '-')).toEqual({
      file: '-',
      fields: { refrigerant: '134a' },
    })
    expect(refusalOf(() => sorted('saturation', 'a.csv', 'b.csv')).message).toContain('b.csv')
  })

  it('that fit nowhere are refused in the words of their field', () => {
    expect(refusalOf(() => sorted('saturation', '134a', '32psi')).hint).toContain('32 psig')
    expect(refusalOf(() => sorted('saturation', '134a', '32psig', '75F', '1 lb')).code).toBe(
      'bad-input',
    )
    expect(refusalOf(() => sorted('readings', '134a', '22')).code).toBe('ambiguous-quantity')
  })
})

describe('options', () => {
  it('take a beginning that only one of them has', async () => {
    const whole = await session(['saturation', '134a', '--pressure', '32psig', '--json'])
    expect((await session(['saturation', '134a', '--press', '32psig', '--json'])).out).toBe(
      whole.out,
    )
  })

  it.each([
    [['readings', '--suction-temp', '1'], /./u],
    [['saturation', '--altitud', '1 ft'], /./u],
    [['saturation', '--presure', '1 psig'], /--pressure/u],
    [['readings', '134a', '--s', '1'], /--suction-pressure/u],
    [['readings', '134a', '--indoor-wet-bulb', '60F'], /now called --return-wet-bulb/u],
    [['readings', '134a', '--temp', '60F'], /--suction-temperature/u],
  ])('%j gets an error that names the nearest of this command', async (argv, hint) => {
    const { err, status } = await session(argv)
    expect(status).toBe(2)
    expect(err).toMatch(hint)
    expect(err).not.toContain('--help?')
  })

  it('are named in an error once, and as a person types them', async () => {
    const { err } = await session(['retrofit', 'R-12'])
    expect(err).toMatch(/^error: --new-refrigerant is missing\.\ntry: {3}The new refrigerant/u)
    const other = await session(['charge', '134a', '3lb8oz', '-j', 'parted', '--what-if'])
    expect(other.err + other.out).not.toMatch(/spillFrom|spillVolume|couplingType/u)
  })

  it('name everything that is missing at once, and end with a line that works', async () => {
    const { err } = await session(['air-check'])
    expect(err).toMatch(/--refrigerant, --pressure and --temperature are missing/u)
    expect(err).toContain('like:  chargewright air-check 134a')
  })
})
