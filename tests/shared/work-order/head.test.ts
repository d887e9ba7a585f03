import { describe, expect, it } from 'vitest'
import { HEAD_PATHS, headOf } from '../../../shared/work-order/head.ts'
import type { WorkOrderInput } from '../../../shared/work-order/input.ts'
import { workOrder } from '../../../shared/work-order/work-order.ts'
import { EXAMPLES, type Order, run, stepOf, without } from './examples.ts'

const { groomer } = EXAMPLES

describe('the head of the order', () => {
  const whole = workOrder.parse({
    ...groomer,
    machine: { ...(groomer.machine as Order), factorySealed: false, sector: 'other' },
    place: { ...(groomer.place as Order), barometer: '24.6 inHg' },
    instruments: {
      thermometer: 'iec-60751-class-aa',
      lowGauge: 'en-837-1-class-0.1',
      lowGaugeSpan: '150 psi',
    },
  }) as WorkOrderInput

  it('stands where a missing field of it is asked for', () => {
    const head = headOf(whole)
    for (const [name, path] of Object.entries(HEAD_PATHS)) {
      expect(head[name]?.path, name).toEqual(path)
    }
  })

  it('gives steps every instrument, the place and the person, but not the name', () => {
    const head = headOf(whole)
    expect(head.lowGauge?.path).toEqual(['instruments', 'lowGauge'])
    expect(head.barometer?.path).toEqual(['place', 'barometer'])
    expect(head.name).toBeUndefined()
    expect(head.machine?.value).toBe('off-road')
  })

  it('asks for the air of a cooling check at the place', () => {
    const order = { ...without(groomer, 'place'), readings: {} }
    const { missing } = stepOf(run(order), 'verify')
    expect(missing.map(({ path }) => path)).toContainEqual(['place', 'ambient'])
    expect(missing.map(({ path }) => path.join('.'))).not.toContain('cooling.ambient')
  })

  it('takes for the cooling check the air that was read with the pressures', () => {
    const readings = { ...(groomer.readings as Order), ambient: '100 °F' }
    const above = (order: Order) =>
      run({ ...order, precise: true }).result.computed.cooling?.temperatures?.aboveAmbient?.value ??
      Number.NaN
    expect(above(groomer) - above({ ...groomer, readings })).toBeCloseTo(20, 6)
  })

  it('is no inventory of a section that was opened: the label charge is not expected out of it', () => {
    const order = { ...groomer, job: 'section-opened' }
    expect(run(groomer).result.computed.recovery?.expected?.most).toBeDefined()
    expect(run(order).result.computed.recovery?.expected).toBeUndefined()
  })

  it('lets a section override it, and a gauge of the shop carry its class into every reading', () => {
    const readings = { ...(groomer.readings as Order), suctionPressure: '21 psig' }
    const band = (instruments: Order | undefined) =>
      run({ ...groomer, readings, instruments, precise: true }).result.computed.readings?.lowSide
        ?.gaugePressure?.plusMinus ?? Number.NaN
    const [coarse, fine] = [
      band({ lowGauge: 'en-837-1-class-4', lowGaugeSpan: '150 psi' }),
      band({ lowGauge: 'en-837-1-class-0.6', lowGaugeSpan: '150 psi' }),
    ]
    expect(coarse).toBeGreaterThan(fine * 2)
    const vapour = (evacuation: Order) => {
      const { computed } = run({ ...groomer, evacuation, units: 'si' }).result
      const { value = Number.NaN, unit } = computed.evacuation?.water?.vapourPressure ?? {}
      return unit === 'kPa abs' ? value * 1000 : value
    }
    const section = groomer.evacuation as Order
    // Water boils at 1767 Pa at 60 °F, at 3497 Pa at the 80 °F of the place (saturation tables).
    expect(vapour({ ...section, temperature: '60 °F' })).toBeCloseTo(1767, -2)
    expect(vapour(section)).toBeCloseTo(3497, -2)
  })
})
