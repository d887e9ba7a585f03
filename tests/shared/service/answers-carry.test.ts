import { describe, expect, it } from 'vitest'
import { likeParts } from '../../../shared/service/charge/space/like-parts.ts'
import { charge } from '../../../shared/service/charge.ts'
import { contamination } from '../../../shared/service/contamination.ts'
import { coolingCheck } from '../../../shared/service/cooling-check.ts'
import { leakTest } from '../../../shared/service/leak-test.ts'
import { readings } from '../../../shared/service/readings.ts'
import { workOrder } from '../../../shared/work-order/work-order.ts'
import { refusalOf } from '../../support/refusal.ts'

describe('like parts of a mouth', () => {
  const of = (millimetres: number) => {
    const found = likeParts({ si: millimetres / 1000 })
    return found && [found.from, found.to].map((cubic) => Math.round(cubic * 1e8) / 100)
  }

  it('are the next smaller and the next larger size, a size itself alone', () => {
    expect(of(10)).toEqual([0, 0.8])
    expect(of(12.9)).toEqual([0.8, 0.8])
    expect(of(13)).toEqual([0.8, 1.4])
    expect(of(17.4)).toEqual([1.4, 1.4])
    expect(of(22)).toEqual([2.7, 2.7])
    expect(of(27.9)).toEqual([9.3, 9.3])
    expect(of(28)).toBeUndefined()
  })
})

describe("a maker's target", () => {
  it('is told with the ± that it was given with, and judged by the reading and it together', () => {
    const judged = (superheatTarget: string) =>
      readings.run({
        ...{ refrigerant: 'R-410A', machine: 'stationary', meteringDevice: 'orifice' },
        ...{ suctionPressure: '118 ±0.1 psig', suctionTemperature: '56.8 ±0.1 °F' },
        superheatTarget,
        units: 'us',
      }).result.verdicts[0]
    expect(judged('12 ±0 °F')?.target).toMatchObject({ value: 12, plusMinus: 0 })
    expect(judged('12 ±2 °F')?.target).toMatchObject({ value: 12, plusMinus: 2 })
    const subcooled = (subcoolingTarget: string) =>
      readings
        .run({
          ...{ refrigerant: 'R-410A', machine: 'stationary', meteringDevice: 'expansion-valve' },
          ...{ liquidPressure: '340 ±0.1 psig', liquidTemperature: '95 ±0.1 °F' },
          subcoolingTarget,
          units: 'us',
        })
        .result.verdicts.find(({ method }) => method === 'target-subcooling-of-maker')?.target
    expect(subcooled('10 ±0 °F')).toMatchObject({ value: 10, plusMinus: 0 })
    expect(subcooled('10 ±2 °F')).toMatchObject({ value: 10, plusMinus: 2 })
    // 17 °F at the edge of 12 ± 5: only an exact target can be judged inside.
    expect(judged('12.5 ±0 °F')?.outcome).toBe('inside')
    expect(judged('12.5 ±2 °F')?.outcome).toBe('cannot-tell')
  })
})

describe('a standing test that moves without a reason', () => {
  const sentence = (startPressure: string, endPressure: string) =>
    leakTest.run({
      ...{ startPressure, endPressure, elapsed: '1 h', units: 'us' },
      ...{ startTemperature: '70 ±0.1 °F', endTemperature: '70 ±0.1 °F' },
    }).result.standing?.sentence

  it('says that the readings do not fit together where they go against the gas law, and of a rising vacuum what it may be', () => {
    expect(sentence('150 ±0.5 psig', '155 ±0.5 psig')).toMatch(
      /too high: the readings do not fit together\.$/u,
    )
    expect(sentence('1000 ±10 micron', '1300 ±10 micron')).toMatch(
      /: it rises, by air or by water\. Two readings cannot tell which; a series can\.$/u,
    )
    expect(sentence('1000 ±10 micron', '700 ±10 micron')).toMatch(
      /too deep: the pump still pulled, or it cooled\.$/u,
    )
  })
})

describe('a low resting pressure', () => {
  it('is to be dealt with like a high one: nothing goes in, and it is identified', () => {
    const next = (pressure: string) =>
      contamination.run({ refrigerant: 'R-134a', pressure, temperature: '80 °F' }).result.whatToDo
    expect(next('60 psig').length).toBeGreaterThan(next('87 psig').length)
  })
})

describe('lists', () => {
  it('name up to 12 suspects of 60 letters', () => {
    const suspects = (count: number) =>
      contamination.run({
        ...{ refrigerant: 'R-134a', pressure: '87 psig', temperature: '80 °F' },
        suspects: Array(count).fill('R-12'),
      })
    expect(() => suspects(12)).not.toThrow()
    expect(refusalOf(() => suspects(13)).path).toEqual(['suspects'])
    const named = (name: string) =>
      refusalOf(() =>
        contamination.run({
          ...{ refrigerant: 'R-134a', pressure: '87 psig', temperature: '80 °F' },
          suspects: [name],
        }),
      ).code
    expect(named('x'.repeat(60))).toBe('unknown-refrigerant')
    expect(named('x'.repeat(61))).toBe('bad-input')
  })

  it('say which of them lacks what', () => {
    const sections = [{ volume: '1 L', phase: 'vapour', temperature: '75 °F' }, { hoseSize: '#8' }]
    const asked = { refrigerant: 'R-134a', job: 'section-opened', labelCharge: '3 lb' }
    expect(refusalOf(() => charge.run({ ...asked, sections })).path).toEqual([
      ...['sections', 1, 'length'],
    ])
    const temper = [{ tubeTemper: 'drawn', volume: '1 L', phase: 'vapour', temperature: '75 °F' }]
    expect(refusalOf(() => charge.run({ ...asked, sections: temper })).path).toEqual([
      ...['sections', 0, 'tubeTemper'],
    ])
  })
})

describe('lines by the words of the trade', () => {
  it('liquid is the liquid line, suction and vapour the suction line, both the two of them', () => {
    const lines = (couplingsOn: string) =>
      charge
        .run({
          ...{ refrigerant: 'R-134a', job: 'couplers-parted', labelCharge: '3 lb', couplingsOn },
          ...{ couplingType: 'two-valve', mouthDiameter: '18 mm', firstDepth: '4 mm' },
          ...{ secondDepth: '2 mm', coldest: '60 °F' },
        })
        .steps.map(({ what }) => /(liquid|suction)/u.exec(what)?.[0])
    expect(lines('liquid')).toEqual(lines('liquid-line'))
    expect(lines('suction')).toEqual(lines('suction-line'))
    expect(lines('vapour-line')).toEqual(lines('suction-line'))
    expect(lines('both')).toEqual(lines('both-lines'))
    expect(lines('liquid-line')).not.toEqual(lines('suction-line'))
    expect(lines('both')).toHaveLength(2)
  })
})

describe('what a work order takes from its steps', () => {
  const order = {
    machine: { name: 'X', kind: 'road-vehicle', compressorDrive: 'open' },
    ...{ refrigerant: 'R-134a', labelCharge: '2 lb', job: 'diagnose' },
    place: { ambient: '90 °F' },
    cooling: {
      ventTemperature: '45 °F',
      suctionPressure: '30 psig',
      dischargePressure: '230 psig',
    },
    readings: { suctionPressure: '30 psig', suctionTemperature: '45 °F' },
  }

  it('has the sentence of every band that was read', () => {
    const { bands } = coolingCheck.run({
      ...{ refrigerant: 'R-134a', machine: 'road-vehicle', ambient: '90 °F' },
      ...order.cooling,
    }).result
    const said = workOrder.run(order).result.steps.flatMap(({ findings }) => findings)
    for (const { sentence = '' } of [bands.high, bands.low, bands.vent]) {
      expect(sentence).not.toBe('')
      expect(said).toContain(sentence.charAt(0).toUpperCase() + sentence.slice(1))
    }
  })

  it('says each warning once, with the steps that it comes from', () => {
    const { warnings } = workOrder.run({
      ...order,
      refrigerant: 'R-409A',
      machine: { ...order.machine, kind: 'stationary' },
    })
    const estimated = warnings.filter(({ code }) => code === 'estimated-mixing')
    expect(estimated).toHaveLength(1)
    expect(estimated[0]?.message).toMatch(
      /^[A-Z][^:,]+, [A-Z][^:]+: Its properties are partly estimated/u,
    )
    for (const { message } of warnings) expect(message).toMatch(/^[A-Z][^.]*(?:: |\. ?|$)/u)
  })

  it('misses the drier where parts were replaced without one, and not where one is among them', () => {
    const replaced = (parts: readonly unknown[]) =>
      workOrder
        .run({ ...order, job: 'system-opened', parts })
        .result.steps.find(({ id }) => id === 'replace')
        ?.findings.join(' ')
    expect(replaced([{ part: 'condenser' }])).toContain('No receiver-drier or accumulator')
    expect(replaced([{ part: 'drier' }])).toBe('')
    expect(replaced([{ name: 'Receiver-drier' }])).toBe('')
  })
})
