import { describe, expect, it } from 'vitest'
import { COMPRESSOR_DRIVES, LAWS, MACHINES } from '../../../shared/fields/index.ts'
import { refrigerants } from '../../../shared/refrigerant/index.ts'
import { type Facts, refrigerantFacts } from '../../../shared/rules/facts.ts'
import { JURISDICTIONS } from '../../../shared/rules/library.ts'
import { allMatches, firstMatch, type Regimes } from '../../../shared/rules/match.ts'
import { ACTIONS, type Condition, type Row, TOPICS } from '../../../shared/rules/types.ts'
import { loader, factsOf as of } from '../../support/loader-facts.ts'

const POUND_KG = 0.45359237
const row = (when: Condition, answer = 'a'): Row => ({ when, answer, statements: ['s'] })
const applies = (when: Condition, facts: Facts, regimes?: Regimes) =>
  allMatches([row(when)], facts, regimes).map((match) => [match.applies, ...match.missing])

describe('a condition', () => {
  it('holds when it asks for nothing, and for each fact that is there', () => {
    expect(applies({}, loader)).toEqual([['yes']])
    expect(applies({ machine: ['bus', 'off-road'] }, loader)).toEqual([['yes']])
    expect(applies({ machine: ['bus'] }, loader)).toEqual([])
    expect(applies({ forPay: false }, loader)).toEqual([])
    expect(applies({ factorySealed: false }, loader)).toEqual([['yes']])
    expect(applies({ sector: ['mining', 'construction'] }, loader)).toEqual([['yes']])
    expect(applies({ sector: ['mining'] }, loader)).toEqual([])
    expect(applies({ sector: ['mining'] }, { ...loader, sector: undefined })).toEqual([
      ['depends', 'sector'],
    ])
  })

  it('depends on a fact that was not given, unless another already denies it', () => {
    const unknown = { ...loader, compressorDrive: undefined, chargeKg: undefined }
    const when = { compressorDrive: ['open'], chargeLb: { atMost: 20 } }
    expect(applies(when, unknown)).toEqual([['depends', 'compressorDrive', 'labelCharge']])
    expect(applies({ ...when, machine: ['bus'] }, unknown)).toEqual([])
    expect(applies({ to: { refrigerant: ['R-134a'] } }, loader)).toEqual([
      ['depends', 'newRefrigerant'],
    ])
  })

  it('reads charge limits at the pound, exactly', () => {
    const at = (pounds: number, chargeLb: Condition['chargeLb']) =>
      applies({ ...(chargeLb ? { chargeLb } : {}) }, { ...loader, chargeKg: pounds * POUND_KG })
        .length
    expect(at(20, { atMost: 20 })).toBe(1)
    expect(at(20, { above: 20 })).toBe(0)
    expect(at(20.001, { above: 20 })).toBe(1)
    expect(at(50, { atLeast: 50 })).toBe(1)
    expect(at(49.999, { atLeast: 50 })).toBe(0)
    expect(at(50, { above: 5, below: 50 })).toBe(0)
  })

  it('knows families: what depletes ozone, what burns, what is of one kind only', () => {
    expect(of('R-12').families).toEqual(['cfc', 'ods'])
    expect(of('R-1234yf').families).toEqual(['hfo', 'flammable'])
    expect(of('R-290')).toMatchObject({
      onlyFamily: 'hydrocarbon',
      families: ['hydrocarbon', 'flammable'],
    })
    expect(of('R-744').families).toEqual(['carbon-dioxide'])
    expect(of('R-410A').families).toEqual(['hfc'])
    expect(of('R-454B').families).toEqual(['hfc', 'hfo', 'flammable'])
    expect(of('R-422B').onlyFamily).toBeUndefined()
    expect(of('R-409A').families).toContain('ods')
  })

  it('depends on a regime that is itself undecided, for the same facts', () => {
    const both: Regimes = { ids: ['mvac-like', 'appliance'], missing: ['charge'] }
    expect(applies({ regime: ['appliance'] }, loader, both)).toEqual([['depends', 'charge']])
    expect(applies({ regime: ['appliance', 'mvac-like'] }, loader, both)).toEqual([['yes']])
    expect(applies({ regime: ['mvac'] }, loader, both)).toEqual([])
  })
})

describe('the first match', () => {
  it('stops at the first row that surely applies', () => {
    const rows = [row({ machine: ['bus'] }, 'a'), row({}, 'b'), row({}, 'c')]
    expect(firstMatch(rows, loader).map((match) => match.row.answer)).toEqual(['b'])
  })

  it('keeps what may apply before it', () => {
    const rows = [row({ compressorDrive: ['open'] }, 'a'), row({}, 'b')]
    const found = firstMatch(rows, { ...loader, compressorDrive: undefined })
    expect(found.map((match) => [match.row.answer, match.applies])).toEqual([
      ['a', 'depends'],
      ['b', 'yes'],
    ])
  })
})

describe.each(LAWS)('every row of the tables of %s', (law) => {
  it('is reached by some machine, refrigerant, labelCharge, action and person', () => {
    const { tables } = JURISDICTIONS[law]
    const reached = new Set<Row>()
    for (const facts of everyFacts()) {
      const regimeRows = firstMatch(tables.regime, facts)
      const regimes: Regimes = {
        ids: regimeRows.map((match) => match.row.answer ?? ''),
        missing: [],
      }
      for (const match of regimeRows) reached.add(match.row)
      for (const topic of TOPICS) {
        if (topic === 'regime' || (topic === 'retrofit' && facts.action !== 'retrofit')) continue
        const first = ['certificate', 'venting', 'use', 'retrofit'].includes(topic)
        const found = (first ? firstMatch : allMatches)(tables[topic], facts, regimes)
        for (const match of found) reached.add(match.row)
      }
    }
    for (const topic of TOPICS) {
      tables[topic].forEach((entry, index) => {
        expect(reached.has(entry), `${topic} ${index}`).toBe(true)
      })
    }
  })
})

function* everyFacts(): Generator<Facts> {
  const sectorsOf = (machine: Facts['machine']) =>
    machine === 'off-road' ? (['mining', 'other'] as const) : [undefined]
  const to = [of('R-134a'), of('R-1234yf'), of('R-744'), of('R-407C')]
  for (const machine of MACHINES)
    for (const sector of sectorsOf(machine))
      for (const compressorDrive of COMPRESSOR_DRIVES)
        for (const factorySealed of [true, false])
          for (const info of refrigerants())
            for (const pounds of [1, 6, 30, 60])
              for (const action of ACTIONS)
                for (const forPay of [true, false])
                  for (const target of action === 'retrofit' ? to : [undefined])
                    yield {
                      machine,
                      compressorDrive,
                      factorySealed,
                      sector,
                      refrigerant: refrigerantFacts(info),
                      chargeKg: pounds * POUND_KG,
                      action,
                      forPay,
                      to: target,
                    }
}
