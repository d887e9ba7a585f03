import { describe, expect, it } from 'vitest'
import { changed, EXAMPLES, type Order, run, without } from './examples.ts'

const { crane, groomer, loader } = EXAMPLES
const electric = (order: Order) => changed(order, 'machine', { compressorDrive: 'electric' })

describe('what forbids the work stands first', () => {
  const cases: [string, Order, RegExp, string | undefined][] = [
    [
      'PAG in an electric compressor, with nothing drained or read yet',
      {
        machine: { name: 'Truck', kind: 'road-vehicle', compressorDrive: 'electric' },
        refrigerant: 'R-134a',
        existingOil: 'PAG 46',
        job: 'system-opened',
      },
      /PAG 46.*PAG conducts/u,
      'electric-compressor-oil',
    ],
    [
      'PAG in an electric compressor, whose couplings alone are parted',
      electric(loader),
      /PAG conducts/u,
      'electric-compressor-oil',
    ],
    [
      'PAG in an electric compressor, though it is only read',
      { ...electric(loader), job: 'diagnose' },
      /PAG conducts/u,
      'electric-compressor-oil',
    ],
    [
      'PAG to be poured into one',
      changed(without(crane, 'existingOil'), 'oil', { newOil: 'PAG 46' }),
      /PAG 46 must not go in/u,
      'electric-compressor-oil',
    ],
    [
      'no certificate that is enough',
      { ...loader, person: { certificates: [], forPay: true } },
      /Do not open or charge this machine/u,
      undefined,
    ],
    [
      'oxygen in the leak test',
      changed(groomer, 'leakTest', { testGas: 'oxygen' }),
      /oxygen/iu,
      'no-oxygen',
    ],
    [
      'a coupling of carbon dioxide parted under charge',
      { ...without(loader, 'existingOil'), refrigerant: 'R-744' },
      /Do not part couplings/u,
      'carbon-dioxide-couplings',
    ],
    [
      'a running pressure beyond what switches allow',
      changed(groomer, 'readings', { liquidPressure: '450 psig' }),
      /STOP the machine/u,
      'stop-the-machine',
    ],
  ]

  it.each(cases)('%s', (_, order, words, caution) => {
    const { result, level, headline, cautions } = run(order)
    expect(result.card.stops.join('\n')).toMatch(words)
    expect(level).toBe('stop')
    expect(headline).toBeDefined()
    expect(result.card.stops[0]?.startsWith((headline ?? '').replace(/\.$/u, ''))).toBe(true)
    if (caution !== undefined) expect(cautions.map(({ id }) => id)).toContain(caution)
  })

  it('and once: the step only points to it', () => {
    const { card } = run(electric(loader)).result
    const oil = card.steps.find(({ id }) => id === 'oil')
    expect(oil?.lines.map(({ text }) => text)).toEqual(['stop: see the top of this card'])
  })

  it('and nowhere where nothing forbids it', () => {
    for (const order of Object.values(EXAMPLES)) {
      const { result, level } = run(order)
      expect(result.card.stops).toEqual([])
      expect(level).not.toBe('stop')
    }
    expect(run(changed(loader, 'machine', { compressorDrive: 'open' })).level).not.toBe('stop')
  })

  it('the law before what can hurt', () => {
    const { card } = run({ ...electric(loader), person: { certificates: [], forPay: true } }).result
    expect(card.stops).toHaveLength(2)
    expect(card.stops[0]).toContain('Do not open')
    expect(card.stops[1]).toContain('PAG')
  })
})

describe('an order in one sentence', () => {
  it('counts the steps that have their figures, and names the next', () => {
    const { level, headline, figures } = run(loader)
    expect(level).toBe('check')
    expect(headline).toBe('0 of 2 steps have their figures; next: before.')
    expect(figures?.map(({ id, value }) => [id, value])).toEqual([
      ['done', 0],
      ['steps', 2],
    ])
  })

  it('goes on behind what is done, and ends with the records', () => {
    const { record: _, ...open } = groomer
    expect(run(open).headline).toMatch(/next: (oil|charge)\.$/u)
    // All but the gauges at rest: they are asked for at last, as what was left out.
    expect(run(groomer).headline).toBe('6 of 7 steps have their figures; next: before.')
    const cooling = { ...(groomer.cooling as Order), staticLow: '80 psig', staticHigh: '80 psig' }
    const whole = run({ ...groomer, cooling })
    expect(whole.result.card.steps.filter(({ asks, done }) => asks && !done)).toEqual([])
    expect(whole.level).toBe('fine')
    expect(whole.headline).toMatch(/^All \d steps that ask for figures have them/u)
  })
})
