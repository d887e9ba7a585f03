import { describe, expect, it } from 'vitest'
import { workOrder } from '../../../shared/work-order/work-order.ts'

const ORDER = {
  version: 2,
  machine: { name: 'Grader 2', kind: 'off-road', meteringDevice: 'expansion-valve' },
  refrigerant: 'R-134a',
  job: 'diagnose',
  place: { ambient: '90 °F' },
  readings: {
    suctionPressure: '38 psig',
    suctionTemperature: '52 °F',
    liquidPressure: '265 psig',
    liquidTemperature: '132 °F',
  },
} as const
const KNOWN = { liquidStore: 'receiver', displacement: 'fixed' } as const
const BASELINE = {
  suctionPressure: '31 psig',
  suctionTemperature: '46 °F',
  liquidPressure: '205 psig',
  liquidTemperature: '121 °F',
  ambient: '90 °F',
} as const

const cardText = (order: object) => JSON.stringify(workOrder.run(order).result.card)

describe('an order to find out what is wrong', () => {
  it('weighs causes as soon as device, air and both pressures are there, or where it is asked to', () => {
    const diagnosisOf = (order: object) => workOrder.run(order).result.computed.diagnosis
    const { machine, place, readings, ...rest } = ORDER
    expect(diagnosisOf(ORDER)).toBeDefined()
    expect(diagnosisOf({ ...rest, machine, readings })).toBeUndefined()
    const { meteringDevice: _, ...plain } = machine
    expect(diagnosisOf({ ...rest, machine: plain, place, readings })).toBeUndefined()
    const { liquidPressure: __, ...low } = readings
    expect(diagnosisOf({ ...rest, machine, place, readings: low })).toBeUndefined()
    expect(diagnosisOf({ ...rest, machine, readings, diagnosis: KNOWN })).toBeDefined()
    // a machine that the model has none of is not asked about
    expect(diagnosisOf({ ...ORDER, refrigerant: 'R-744' })).toBeUndefined()
  })

  it('uses the readings of the machine when it was sound', () => {
    const order = { ...ORDER, diagnosis: KNOWN, baseline: BASELINE }
    const { computed } = workOrder.run(order).result
    const share = (cause: string, of = computed.diagnosis) =>
      of?.causes.find((each) => each.cause === cause)?.share ?? 0
    expect(computed.diagnosis?.machine).toEqual({ known: 'baseline', kinds: ['valve-receiver'] })
    expect(computed.diagnosis?.causes[0]?.cause).toBe('condenser-air')
    const without = workOrder.run({ ...ORDER, diagnosis: KNOWN }).result.computed.diagnosis
    expect(share('condenser-air')).toBeGreaterThan(share('condenser-air', without) + 0.1)
    // 60 psi more than when it was sound, in the same air
    expect(share('none')).toBeLessThan(0.02)
    // the same readings as then show nothing
    const same = workOrder.run({ ...order, readings: { ...BASELINE } }).result.computed.diagnosis
    expect(share('none', same)).toBeGreaterThan(5 * share('none'))
    expect(same?.verdict).not.toBe('fault')
  })

  it('has a cause and what to do first on its card, with the model and without', () => {
    const hot = {
      ...ORDER,
      readings: { ...ORDER.readings, liquidPressure: '330 psig', liquidTemperature: '108 °F' },
    }
    const plain = cardText(hot)
    const { computed } = workOrder.run(hot).result
    expect(computed.diagnosis?.named).toEqual(
      expect.arrayContaining(['condenser-air', 'overcharge']),
    )
    expect(plain).toMatch(/Overcharge or condenser air flow|Condenser air flow or overcharge/u)
    expect(plain).toMatch(/To do: /u)
    const weighed = cardText({ ...hot, diagnosis: KNOWN })
    expect(weighed).toMatch(/overcharge|condenser air flow/iu)
    expect(weighed).not.toMatch(/add (some|refrigerant)|top up/iu)
  })

  it('names the place on the order of what is wrong with it', () => {
    const { result } = workOrder.run({
      ...ORDER,
      diagnosis: KNOWN,
      baseline: { ...BASELINE, returnAir: '70 °F', returnWetBulb: '90 °F' },
    })
    expect(JSON.stringify(result)).toMatch(/No air has a wet bulb of/u)
  })
})
