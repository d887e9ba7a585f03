import { describe, expect, it } from 'vitest'
import diagnose from '../../data/service/diagnose.json' with { type: 'json' }
import diagnosis from '../../data/service/diagnosis.json' with { type: 'json' }
import lesson from '../../data/service/lesson.json' with { type: 'json' }
import simulate from '../../data/service/simulate.json' with { type: 'json' }
import { figuresIn, rowsOf } from '../support/figures.ts'

// Judgement that no text was read for, written a second time, so that none changes unseen.

/** What each published pattern may be. */
const PATTERNS = [
  'restriction-in-vacuum: restriction valve-stuck-closed',
  'starved-in-vacuum: restriction valve-stuck-closed undercharge evaporator-air',
  'low-charge: undercharge',
  'starved-not-low: restriction valve-stuck-closed undercharge',
  'not-pumping: compressor-leak stroke-stuck-low valve-stuck-open undercharge',
  'condenser-and-subcooling: condenser-air overcharge air restriction',
  'condenser: condenser-air air overcharge',
  'backed-up: overcharge air restriction condenser-air',
  'both-low: undercharge restriction valve-stuck-closed evaporator-air',
  'overfed: valve-stuck-open compressor-leak',
  'evaporator-air: evaporator-air stroke-stuck-high',
  'evaporator-starved: undercharge restriction valve-stuck-closed evaporator-air stroke-stuck-high',
  'high-side-low: undercharge compressor-leak stroke-stuck-low restriction valve-stuck-closed evaporator-air',
  'low-lift: compressor-leak stroke-stuck-low valve-stuck-open',
  'hot-and-starved: condenser-air undercharge overcharge air restriction valve-stuck-closed',
  'raised-and-starved: condenser-air undercharge overcharge air restriction valve-stuck-closed',
  'tube-starved: undercharge restriction',
  'warm-suction: undercharge compressor-leak stroke-stuck-low restriction valve-stuck-closed',
  'starved: undercharge restriction valve-stuck-closed',
  'weak-lift: compressor-leak stroke-stuck-low undercharge valve-stuck-open',
  'cold-liquid-raised: overcharge condenser-air restriction undercharge',
  'cold-liquid: restriction overcharge',
  'low-side-high: condenser-air overcharge air valve-stuck-open compressor-leak',
  'flooded: valve-stuck-open compressor-leak condenser-air',
  'low-subcooling: undercharge valve-stuck-open condenser-air',
]

describe('the lessons', () => {
  it('count as a move one standard deviation of usual instruments', () => {
    expect(figuresIn(lesson.steps)).toBe(
      'source lesson-steps, lowSide 1 psi, highSide 4 psi, superheat 1.3 K, subcooling 1.3 K, vent 1 K',
    )
    // the same gauges and probes as in the diagnosis: 1 psi is 6895 Pa, superheat has two readings
    const sigma = Object.fromEntries(
      diagnosis.candidates.rows.map(({ feature, sigma: one }) => [feature, one]),
    )
    expect(sigma.lowSidePa).toBe(6895)
    expect(sigma.highSidePa).toBe(4 * 6895)
    expect(sigma.ventK).toBe(1)
  })

  it('draw each truth of a saying within its sizes', () => {
    expect(rowsOf(lesson.topics)).toEqual([
      'id both-low, claim …, source misconceptions-model, machines loader van, supposed [fault undercharge, severity 0.7], truths fault evaporator-air, from 0.5, to 0.8 | fault restriction, from 0.45, to 0.65 | fault undercharge, from 0.6, to 0.8, broken …',
      'id normal-pressures, claim …, source misconceptions-model, machines loader tractor pickup, supposed [fault undercharge, severity 0.3], truths fault undercharge, from 0.25, to 0.4 | fault overcharge, from 0.2, to 0.32 | fault none, broken …',
      'id low-charge-suction, claim …, source misconceptions-model, machines van, supposed [fault undercharge, severity 0.15], truths fault undercharge, from 0.15, to 0.22 | fault evaporator-air, from 0.5, to 0.8 | fault none, broken …',
      'id high-head, claim …, source misconceptions-model, machines van loader, supposed [fault overcharge, severity 0.65], truths fault condenser-air, from 0.4, to 0.65 | fault air, from 0.4, to 0.7 | fault overcharge, from 0.6, to 0.8, broken …',
      'id more-subcooling, claim …, source misconceptions-model, machines van cooler-valve, supposed [fault overcharge, severity 0.55], truths fault overcharge, from 0.45, to 0.65 | fault air, from 0.4, to 0.6, broken …',
      'id normal-superheat, claim …, source misconceptions-model, machines van loader, supposed [fault undercharge, severity 0.15], truths fault undercharge, from 0.15, to 0.22 | fault overcharge, from 0.2, to 0.35 | fault none, broken …',
      'id suction-normal, claim …, source misconceptions-model, machines tractor, supposed [fault compressor-leak, severity 0.35], truths fault compressor-leak, from 0.3, to 0.45 | fault condenser-air, from 0.4, to 0.6 | fault none, broken …, weather [ambientK -6, returnAirK -4, humidity 0.45]',
      'id sight-glass, claim …, source misconceptions-trade, machines loader tractor, supposed [fault undercharge, severity 0.25], truths fault undercharge, from 0.25, to 0.4 | fault overcharge, from 0.2, to 0.32 | fault none, broken …',
      'id vent, claim …, source vent-and-humidity-1998, machines loader pickup van, supposed [fault none], truths fault none | fault none | fault evaporator-air, from 0.5, to 0.75, broken …, weather [ambientK 5, returnAirK 7, humidity 0.8], before nominal',
    ])
    for (const { id, truths } of lesson.topics) {
      for (const { from = 0, to = 1 } of truths as readonly { from?: number; to?: number }[]) {
        expect(from, id).toBeLessThan(to)
        expect(to, id).toBeLessThanOrEqual(1)
      }
    }
  })

  it('ask for something to do at each stage', () => {
    expect(Object.entries(lesson.next).map(([stage, list]) => `${stage} ${list.length}`)).toEqual([
      'predict 1',
      'buy 1',
      'reveal 2',
    ])
    expect(lesson.next.reveal[1]).toContain('--full')
  })
})

describe('the machines of the simulation', () => {
  it('go by the words of the trade', () => {
    expect(rowsOf(simulate.machines)).toEqual([
      'id loader, name Loader, presets loader-receiver-134a loader-receiver-1234yf, words … valve-receiver receiver',
      'id tractor, name Tractor, presets tractor-variable-134a tractor-variable-1234yf, words valve-receiver-variable variable',
      'id pickup, name Pickup, presets pickup-orifice-134a pickup-orifice-1234yf, words … truck orifice-accumulator accumulator',
      'id van, name Van, presets van-valve-134a van-valve-1234yf, words valve',
      'id split-orifice, name …, presets split-orifice-410a, words stationary-orifice',
      'id split-valve, name …, presets split-valve-410a, words stationary-valve',
      'id cooler-orifice, name …, presets cooler-orifice-134a, words ',
      'id cooler-valve, name …, presets cooler-valve-134a, words ',
    ])
    const words = simulate.machines.flatMap(({ id, words: own }) => [id, ...own])
    expect(new Set(words).size).toBe(words.length)
  })

  it('are followed by a thing to try, other for a sound one, a faulty one and a sweep', () => {
    expect(Object.entries(simulate.next).map(([when, list]) => `${when} ${list.length}`)).toEqual([
      'sound 2',
      'faulty 2',
      'sweep 2',
      'sweep-moves 1',
    ])
    expect(simulate.next.sound[0]).toContain('chargeNow')
    for (const when of ['sound', 'faulty'] as const)
      expect(simulate.next[when][1]).toMatch(/"sweep"$/u)
  })
})

describe('the diagnosis', () => {
  it('opens the system only to weigh, and adds nothing by what a gauge shows', () => {
    expect(diagnose.opening).toEqual(['chargeShare'])
    expect(diagnose.openingCauses).toEqual(['undercharge', 'overcharge'])
  })

  it('looks, each in its minutes, for what it finds', () => {
    expect(rowsOf(diagnosis.looks.rows)).toEqual([
      'id wash-condenser, minutes 15, finds condenser-air',
      'id filter-and-blower, minutes 5, finds evaporator-air',
      'id feel-line, minutes 4, finds restriction',
      'id bulb, minutes 8, finds valve-stuck-open valve-stuck-closed',
      'id clutch-and-belt, minutes 4, finds compressor-leak',
      'id rest-pressure, minutes 30, finds air',
    ])
    expect(diagnosis.looks.missed).toBe(0.1)
  })

  it('thinks of kinds of machines as often as such a shop meets them', () => {
    expect(figuresIn(diagnosis.kinds)).toBe(
      'source diagnosis-kinds-memory, valve-receiver 3, valve-receiver-variable 2, orifice-accumulator 2, valve 1, stationary-orifice 1, stationary-valve 1',
    )
  })

  it('spreads what was not read', () => {
    expect(figuresIn(diagnosis.unread)).toBe(
      'source diagnosis-discrepancy-memory, ambientK 7, returnAirK 4, returnHumidity 0.15, speed 0.25, speedRead 0.03',
    )
  })

  it('trusts the model so far and no farther', () => {
    expect(figuresIn(diagnosis.discrepancy)).toBe(
      'source diagnosis-discrepancy-memory, offset [lowSidePa [share 0.03, kelvin 0], highSidePa [share 0.03, kelvin 0], suctionLineK [share 0, kelvin 2], liquidLineK [share 0, kelvin 2], deviceInletK [share 0, kelvin 2], evaporatorOutletK [share 0, kelvin 2], dischargeLineK [share 0, kelvin 5], ventK [share 0, kelvin 1.5], condenserAirK [share 0, kelvin 2], chargeShare [share 0.01, kelvin 0]], ofTheChange 0.35, carried 0.3, approach [condensing [sigmaK 4.5, moves [highSidePa [share 0.024], liquidLineK [kelvin 1], deviceInletK [kelvin 1], dischargeLineK [kelvin 1.2]]], evaporating [sigmaK 3, moves [lowSidePa [share 0.034], suctionLineK [kelvin 1], evaporatorOutletK [kelvin 1], ventK [kelvin 1]]]]',
    )
  })

  it('counts a published pattern, a pressure at rest and a look so much beside the model', () => {
    const { patterns, ...shares } = diagnosis.evidence
    expect(figuresIn(shares)).toBe(
      'source diagnosis-evidence-memory, againstPattern 0.2, againstVacuum 0.02, againstRest 0.05, ruledOut 0.05',
    )
    expect(Object.entries(patterns).map(([id, causes]) => `${id}: ${causes.join(' ')}`)).toEqual(
      PATTERNS,
    )
  })
})
