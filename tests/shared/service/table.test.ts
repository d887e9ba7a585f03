import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ErrorCode } from '../../../shared/errors.ts'
import { saturation } from '../../../shared/service/saturation.ts'
import { table } from '../../../shared/service/table.ts'
import { tableCsv, tableText } from '../../../shared/service/table-render.ts'
import { refusalOf } from '../../support/refusal.ts'

const run = (input: Record<string, unknown>) =>
  table.run({ refrigerant: 'R-134a', units: 'us', ...input }).result

const refusal = (input: Record<string, unknown>) => refusalOf(() => run(input))

const column = (result: ReturnType<typeof run>, key: string) =>
  result.rows.map((row) => row[key]?.value)

describe('table', () => {
  it('says where its last row is not the end asked for', () => {
    const warned = (to: string) =>
      table
        .run({ refrigerant: 'R-134a', from: '30 °F', to, step: '10 °F' })
        .warnings.filter(({ code }) => code === 'end-not-met')
        .map(({ message }) => message)
    expect(warned('47 °F')).toEqual(['The steps do not meet 47 °F: the last row is 40 °F.'])
    expect(warned('50 °F')).toEqual([])
    expect(warned('3 °F')).toEqual(['The steps do not meet 3 °F: the last row is 10 °F.'])
  })

  it('runs from one end to the other in the unit of its ends', () => {
    const result = run({ from: '20 °F', to: '60 °F', step: '10 °F' })
    expect(column(result, 'temperature')).toEqual([20, 30, 40, 50, 60])
    // US vehicle table printed for R-134a: 18, 26, 35, 45, 57 psig.
    expect(column(result, 'pressure').map((value) => Math.round(value ?? 0))).toEqual([
      18, 26, 35, 45, 57,
    ])
    expect(result.over).toBe('temperature')
  })

  it('keeps the unit of its ends whatever the unit system and the unit of the step', () => {
    const result = run({ from: '-10 °C', to: '10 °C', step: '9 °F', units: 'us' })
    expect(column(result, 'temperature')).toEqual([-10, -5, 0, 5, 10])
    expect(result.rows[0]?.temperature?.unit).toBe('°C')
    expect(result.rows[0]?.pressure?.unit).toBe('psig')
  })

  it('runs over gauge and over absolute pressure, up and down', () => {
    const gauge = run({ from: '100 psig', to: '0 psig', step: '25 psi' })
    expect(column(gauge, 'gaugePressure')).toEqual([100, 75, 50, 25, 0])
    expect(gauge.over).toBe('gauge-pressure')
    const absolute = run({ from: '2 bar abs', to: '4 bar abs', step: '50 kPa' })
    expect(column(absolute, 'absolutePressure')).toEqual([2, 2.5, 3, 3.5, 4])
    expect(absolute.rows[0]?.absolutePressure?.unit).toBe('bar abs')
  })

  it('runs through vacuum in vacuum units', () => {
    const result = run({ from: '15 inHg vac', to: '0 inHg vac', step: '5 inHg' })
    expect(column(result, 'gaugePressure')).toEqual([15, 10, 5, 0])
  })

  it('ends at the last step before its end', () => {
    expect(column(run({ from: '0 °F', to: '25 °F', step: '10 °F' }), 'temperature')).toEqual([
      0, 10, 20,
    ])
    expect(column(run({ from: '5 °F', to: '5 °F', step: '10 °F' }), 'temperature')).toEqual([5])
  })

  it('meets its end with steps that no binary fraction holds', () => {
    const values = column(run({ from: '0 °F', to: '1 °F', step: '0.1 °F' }), 'temperature')
    expect(values).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1])
  })

  it('puts the chosen columns in the chosen units', () => {
    const result = run({
      from: '0 °C',
      to: '10 °C',
      step: '10 K',
      columns: ['latent-heat', 'saturation', 'saturation'],
      pressureUnit: 'bar abs',
      latentHeatUnit: 'kJ/kg',
      units: 'us',
    })
    expect(result.columns.map((entry) => entry.key)).toEqual([
      'temperature',
      'latentHeat',
      'pressure',
    ])
    expect(result.rows[0]?.pressure).toEqual({ value: 2.928, unit: 'bar abs' })
    expect(result.rows[0]?.latentHeat?.unit).toBe('kJ/kg')
  })

  it('says in each row what saturation says', () => {
    const result = run({
      from: '10 °F',
      to: '90 °F',
      step: '40 °F',
      altitude: '3000 ft',
      precise: true,
    })
    for (const row of result.rows) {
      const single = saturation.run({
        refrigerant: 'R-134a',
        temperature: { value: row.temperature?.value, unit: '°F' },
        altitude: '3000 ft',
        units: 'us',
        precise: true,
      }).result
      expect(row.pressure?.value).toBe(single.bubble.gaugePressure.value)
      expect(row.liquidDensity?.value).toBe(single.bubble.density.value)
      expect(row.vapourDensity?.value).toBe(single.dew.density.value)
      expect(row.latentHeat).toEqual(single.latentHeat)
    }
  })

  it.each<[what: string, input: Record<string, unknown>, code: ErrorCode, path: string]>([
    ['a step of nothing', { from: '0 °F', to: '9 °F', step: '0 °F' }, 'out-of-range', 'step'],
    [
      'more rows than anyone prints',
      { from: '0 °F', to: '100 °F', step: '0.01 °F' },
      'out-of-range',
      'step',
    ],
    [
      'a step so small that it never ends',
      { from: '0 °F', to: '100 °F', step: '1e-300 °F' },
      'out-of-range',
      'step',
    ],
    ['ends of two kinds', { from: '0 °F', to: '100 psig', step: '1 °F' }, 'wrong-kind', 'to'],
    [
      'gauge at one end and absolute at the other',
      { from: '0 psig', to: '100 psia', step: '5 psi' },
      'wrong-kind',
      'to',
    ],
    [
      'a step of pressure over temperature',
      { from: '0 °F', to: '9 °F', step: '5 psi' },
      'wrong-kind',
      'step',
    ],
    ['a bare number', { from: 0, to: '9 °F', step: '1 °F' }, 'ambiguous-quantity', 'from'],
    [
      'an end with an uncertainty',
      { from: '0 ±1 °F', to: '9 °F', step: '1 °F' },
      'bad-quantity',
      'from',
    ],
    [
      'an end beyond the critical point',
      { from: '180 °F', to: '240 °F', step: '5 °F' },
      'above-critical',
      'to',
    ],
    [
      'a column that there is not',
      { from: '0 °F', to: '9 °F', step: '1 °F', columns: ['viscosity'] },
      'bad-input',
      'columns',
    ],
    [
      'no column',
      { from: '0 °F', to: '9 °F', step: '1 °F', columns: [] },
      'missing-input',
      'columns',
    ],
    [
      'a unit of pressure that says neither gauge nor absolute',
      { from: '0 °F', to: '9 °F', step: '1 °F', pressureUnit: 'psi' },
      'wrong-kind',
      'pressureUnit',
    ],
    [
      'a unit of something else',
      { from: '0 °F', to: '9 °F', step: '1 °F', densityUnit: 'psig' },
      'wrong-kind',
      'densityUnit',
    ],
  ])('refuses %s', (_, input, code, path) => {
    const error = refusal(input)
    expect(error.code).toBe(code)
    expect(error.path[0]).toBe(path)
    expect(error.hint + error.message).not.toBe('')
  })

  it('has the rows that its range and step ask for', () => {
    const whole = fc.integer({ min: 0, max: 200 })
    fc.assert(
      fc.property(whole, whole, fc.integer({ min: 1, max: 90 }), (from, to, step) => {
        const rows = run({
          from: { value: from / 10, unit: '°C' },
          to: { value: to / 10, unit: '°C' },
          step: { value: step / 10, unit: 'K' },
        }).rows
        expect(rows).toHaveLength(Math.floor(Math.abs(to - from) / step) + 1)
        expect(rows[0]?.temperature?.value).toBe(from / 10)
      }),
    )
  })
})

describe('a table on paper', () => {
  const result = run({ from: '20 °F', to: '40 °F', step: '10 °F', columns: ['saturation'] })

  it('as text has its figures under its headings', () => {
    expect(tableText(result).split('\n')).toEqual([
      'temperature  pressure',
      '         °F      psig',
      '───────────  ────────',
      '         20      18.4',
      '         30      26.1',
      '         40      35.0',
      '',
    ])
  })

  it('as CSV has a header with units and a line for each row', () => {
    expect(tableCsv(result)).toBe(
      'temperature (°F),pressure (psig)\r\n20,18.4\r\n30,26.1\r\n40,35.0\r\n',
    )
  })

  it('has a column for each unit system', () => {
    const both = run({
      from: '20 °F',
      to: '40 °F',
      step: '10 °F',
      columns: ['saturation'],
      units: 'both',
    })
    expect(tableCsv(both).split('\r\n')[0]).toBe(
      'temperature (°F),pressure (psig),pressure (kPa g)',
    )
    expect(tableCsv(both).split('\r\n')[1]).toBe('20,18.4,127.1')
  })

  it('has one unit a column even where the gauge turns to vacuum', () => {
    const deep = run({ from: '-40 °F', to: '0 °F', step: '20 °F', columns: ['saturation'] })
    expect(deep.rows.map((row) => row.pressure?.unit)).toEqual(['inHg vac', 'inHg vac', 'psig'])
    const [header, ...lines] = tableCsv(deep).trimEnd().split('\r\n')
    expect(header).toBe('temperature (°F),pressure (psig)')
    expect(lines.map((line) => Number(line.split(',')[1]))).toEqual([-7.3, -1.8, 6.47])
  })

  it('quotes what CSV must quote', () => {
    const odd = {
      columns: [{ key: 'a', label: 'so-called "pressure", gauge' }],
      rows: [{ a: { value: 1, unit: 'psig' } }],
    }
    expect(tableCsv(odd)).toBe('"so-called ""pressure"", gauge (psig)"\r\n1\r\n')
  })
})
