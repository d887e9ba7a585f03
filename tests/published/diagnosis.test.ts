import { describe, expect, it } from 'vitest'
import tables from '../../data/service/performance-tables.json' with { type: 'json' }
import type { FaultKind } from '../../shared/cycle/index.ts'
import {
  refrigerant,
  saturationPressure,
  saturationTemperature,
} from '../../shared/refrigerant/index.ts'
import { diagnose } from '../../shared/service/diagnose.ts'

const ask = (input: Record<string, unknown>) =>
  diagnose.run({ refrigerant: 'R-134a', ...input }).result
const share = (result: ReturnType<typeof ask>, cause: string) =>
  result.causes.find((each) => each.cause === cause)?.share ?? 0

const VEHICLE = { machine: 'road-vehicle' } as const

describe('readings that makers and the trade have printed causes for', () => {
  it('a low side in deep vacuum with about 120 psi on the high side is a restriction', () => {
    // Mobile Air Climate Systems Association, a sure sign of a restriction (2023): high side near
    // 120 psi, low side near 20 inHg vacuum; the valve in four of five.
    const result = ask({
      ...VEHICLE,
      meteringDevice: 'expansion-valve',
      suctionPressure: '20 inHg vac',
      dischargePressure: '120 psig',
    })
    const blocked = share(result, 'restriction') + share(result, 'valve-stuck-closed')
    expect(blocked).toBeGreaterThan(0.3)
    expect(result.named.some((cause) => BLOCKED.includes(cause))).toBe(true)
    expect(share(result, 'compressor-leak')).toBeLessThan(0.02)
  })

  it('low side high with high side low is a bad compressor, or a low charge', () => {
    // GM service information 2005, chart of gauge readings.
    for (const [low, high] of [
      [60, 130],
      [55, 125],
    ] as const) {
      const result = ask({
        ...VEHICLE,
        suctionPressure: `${low} psig`,
        dischargePressure: `${high} psig`,
        ambient: '85 °F',
      })
      expect(result.named).toEqual(expect.arrayContaining(['compressor-leak', 'undercharge']))
      for (const cause of ['overcharge', 'condenser-air', 'air']) {
        expect(share(result, cause)).toBeLessThan(0.05)
      }
    }
  })
})

const BLOCKED: readonly string[] = ['restriction', 'valve-stuck-closed']

describe('sound machines by the performance tables of makers', () => {
  const rows = tables.rows.flatMap((row) =>
    row.refrigerant === 'R-134a' && 'pressures' in row && row.pressures
      ? row.pressures.map((each) => ({ id: row.id, ...each }))
      : [],
  )
  const middle = (band: readonly string[]) => {
    const numbers = band.map((text) => Number.parseFloat(text))
    const unit = (band[0] ?? '').replace(/^[\d.\s-]+/u, '')
    return `${((numbers[0] as number) + (numbers.at(-1) as number)) / 2} ${unit}`
  }

  it.each(rows)('$id at $ambient: no fault is named', ({ ambient, low, high }) => {
    const result = ask({
      ...VEHICLE,
      suctionPressure: middle(low),
      dischargePressure: middle(high),
      ambient,
    })
    expect(['cannot-tell', 'no-fault-shown']).toContain(result.verdict)
    expect(share(result, 'none')).toBeGreaterThan(0.02)
  })
})

/**
 * Rossi and Braun 1997, rules for a rooftop unit with a fixed orifice, as reproduced in table 1-1 of
 * H. Li's thesis (Purdue 2004): signs of evaporating temperature, superheat, condensing temperature,
 * subcooling, discharge temperature, condenser air rise and evaporator air drop against the same
 * machine sound. How large the changes are it does not say: they are ours.
 */
const RULES: Readonly<Partial<Record<FaultKind, string>>> = {
  undercharge: '-+--+--',
  'compressor-leak': '+---?--',
  restriction: '-+-++--',
  'condenser-air': '+-+-++-',
  'evaporator-air': '------+',
}
const CHANGE_K = [3, 5, 3, 4, 7, 1.5, 1.5]

describe.each([
  ['R-134a', [278.8, 8, 321.6, 6.1, 343.5, 6.2, 11.6]],
  ['R-410A', [279.6, 7.8, 320.9, 6.4, 355.3, 6, 11.4]],
] as const)('changes against a sound fixed-orifice machine with %s', (name, sound) => {
  const r = refrigerant(name)
  const celsius = (kelvin: number) => `${(kelvin - 273.15).toFixed(2)} °C`
  const bar = (pa: number) => `${(pa / 1e5).toFixed(3)} bar a`
  const typed = (values: readonly number[]) => {
    const [boils = 0, over = 0, condenses = 0, under = 0, out = 0, rise = 0, drop = 0] = values
    return {
      suctionPressure: bar(saturationPressure(r, boils, 'dew')),
      suctionTemperature: celsius(boils + over),
      liquidPressure: bar(saturationPressure(r, condenses, 'bubble')),
      liquidTemperature: celsius(condenses - under),
      dischargeTemperature: celsius(out),
      condenserOutAir: celsius(308.15 + rise),
      ventTemperature: celsius(299.85 - drop),
      ambient: celsius(308.15),
      returnAir: celsius(299.85),
      relativeHumidity: '50 %',
    }
  }

  it.each(Object.entries(RULES))('%s is among the named', (fault, signs) => {
    const changed = sound.map((value, i) => {
      const sign = signs[i] === '+' ? 1 : signs[i] === '-' ? -1 : 0
      return value + sign * (CHANGE_K[i] as number)
    })
    const result = diagnose.run({
      refrigerant: name,
      machine: 'stationary',
      meteringDevice: 'fixed-orifice',
      ...typed(changed),
      baseline: typed(sound),
    }).result
    expect(result.named).toContain(fault)
    if (fault === 'undercharge' || fault === 'compressor-leak' || fault === 'restriction') {
      expect(result.causes[0]?.cause).toBe(fault)
    }
    // the rules' own opposite is none of them
    if (fault !== 'condenser-air') expect(share(result, 'overcharge')).toBeLessThan(0.05)
  })
})

describe('charge by superheat at a fixed orifice, by subcooling at a valve', () => {
  // California Residential Appendix RA3.2 (2008): above the target superheat of a fixed orifice, or
  // below the target subcooling of a valve, the charge is low; the other way round it is too much.
  const r = refrigerant('R-410A')
  const evaporating = saturationTemperature(r, 9.6e5, 'dew')
  const condensing = saturationTemperature(r, 28.8e5, 'bubble')
  const charged = (device: string, superheatK: number, subcoolingK: number) => {
    const result = diagnose.run({
      refrigerant: 'R-410A',
      machine: 'stationary',
      meteringDevice: device,
      suctionPressure: '9.6 bar a',
      liquidPressure: '28.8 bar a',
      suctionTemperature: `${(evaporating + superheatK - 273.15).toFixed(2)} °C`,
      liquidTemperature: `${(condensing - subcoolingK - 273.15).toFixed(2)} °C`,
      ambient: '35 °C',
      returnAir: '26.7 °C',
      relativeHumidity: '50 %',
    }).result
    return share(result, 'undercharge') / share(result, 'overcharge')
  }

  it('turns with the superheat of the orifice', () => {
    const right = charged('fixed-orifice', 8, 6)
    expect(charged('fixed-orifice', 16, 6)).toBeGreaterThan(3 * right)
    expect(charged('fixed-orifice', 1, 6)).toBeLessThan(right / 3)
  })

  it('turns with the subcooling of the valve', () => {
    const right = charged('expansion-valve', 7, 6)
    expect(charged('expansion-valve', 7, 1)).toBeGreaterThan(3 * right)
    expect(charged('expansion-valve', 7, 14)).toBeLessThan(right / 3)
  })
})
