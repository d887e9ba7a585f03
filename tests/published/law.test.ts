import { describe, expect, it } from 'vitest'
import leak from '../../data/service/leak-test.json' with { type: 'json' }
import recovery from '../../data/service/recovery.json' with { type: 'json' }
import retrofit from '../../data/service/retrofit.json' with { type: 'json' }
import visit from '../../data/service/visit.json' with { type: 'json' }
import type { Law } from '../../shared/fields/index.ts'
import { JURISDICTIONS } from '../../shared/rules/library.ts'
import { rules } from '../../shared/rules/rules.ts'

/**
 * Figures of law against the text of the section that is named, as it was read on 2026-11-27.
 *
 * "2015" is the annual edition of 1 July 2015 of 40 CFR and of 1 October 2015 of 49 CFR, held in the
 * repository 18F/allregs (html/sections). Law has no tolerance: a figure is the one printed, or wrong.
 */
const us = { law: 'us-federal', refrigerant: 'R-134a', action: 'recover' } as const
const off = { ...us, machine: 'off-road', compressorDrive: 'open' } as const
const regime = (input: object) => rules.run(input).result.regime.ids
const shown = (topic: 'equipment' | 'records' | 'leakRepair', input: object) =>
  rules.run(input).result[topic].statements.map(({ id }) => id)

describe('40 CFR 82.152, 2015: what each class of equipment is', () => {
  it('MVAC-like: open drive, "a normal charge of 20 pounds or less", not R-22', () => {
    expect(regime({ ...off, labelCharge: '20 lb' })).toEqual(['mvac-like'])
    expect(regime({ ...off, labelCharge: '20.01 lb' })).toEqual(['appliance'])
    expect(regime({ ...off, labelCharge: '2 lb', refrigerant: 'R-22' })).toEqual(['appliance'])
    expect(
      regime({ ...off, labelCharge: '2 lb', compressorDrive: 'electric', factorySealed: false }),
    ).toEqual(['appliance'])
  })

  it('small appliance: sealed in a factory with "five (5) pounds or less"', () => {
    const unit = { ...us, machine: 'stationary', factorySealed: true }
    expect(regime({ ...unit, labelCharge: '5 lb' })).toEqual(['small-appliance'])
    expect(regime({ ...unit, labelCharge: '5.01 lb' })).toEqual(['appliance'])
    expect(regime({ ...unit, labelCharge: '5 lb', factorySealed: false })).toEqual(['appliance'])
    const roof = { ...off, compressorDrive: 'electric', factorySealed: true }
    expect(regime({ ...roof, labelCharge: '5 lb' })).toEqual(['small-appliance'])
    expect(regime({ ...roof, labelCharge: '5.01 lb' })).toEqual(['appliance'])
  })

  it('pressure classes: 45, 170 and 355 psia at 104 °F', () => {
    const { at, upTo, above } = recovery.pressureClasses
    expect(at).toEqual({ value: 104, unit: '°F' })
    expect(upTo.map(({ class: name, psia }) => [name, psia])).toEqual([
      ['low-pressure', 45],
      ['medium-pressure', 170],
      ['high-pressure', 355],
    ])
    expect(above).toBe('very-high-pressure')
  })
})

describe('40 CFR 82.156, 2015: how far', () => {
  it('(g) 102 mm of mercury vacuum before a vehicle or similar machine is scrapped', () => {
    for (const machine of ['road-vehicle', 'off-road']) {
      const statement = rules
        .run({ ...off, machine, labelCharge: '2 lb', action: 'dispose' })
        .result.equipment.statements.find(({ id }) => id === 'recover-102')
      expect(statement?.text).toMatch(/to or below 102 mmHg of vacuum/u)
      expect(statement).toMatchObject({ edition: '2015 edition', mark: 'verified' })
    }
    expect(recovery.statements['disposal-102-mm'].text).toMatch(/102 mm Hg \(4\.0 inHg\)/u)
    expect(102 / 25.4).toBeCloseTo(4, 1)
  })

  it('(a)(4) small appliances: 90 % and 80 %, 80 % with old equipment, or four inches of mercury', () => {
    const text = JURISDICTIONS['us-federal'].statements['equipment-small']?.text ?? ''
    for (const entry of [text, recovery.statements['small-appliance'].text]) {
      expect(entry).toMatch(
        /90 % w.*works, 80 % w.*not or with equipment made before 15 November 1993, or pull 4 inHg/u,
      )
    }
  })

  it("(e) back into the same owner's equipment without recycling, vehicles and the like aside", () => {
    const reuse = (machine: string) =>
      rules.run({ ...off, machine, labelCharge: '8 lb', forPay: true }).result.reuse.answers
    expect(reuse('stationary')).toEqual(['same-owner'])
    expect(reuse('off-road')).toEqual(['recycle-first'])
    expect(reuse('road-vehicle')).toEqual(['recycle-first'])
  })
})

describe('40 CFR 82.42 and 82.166, 2015: records', () => {
  const paid = { ...us, machine: 'road-vehicle', labelCharge: '2 lb', forPay: true }

  it('82.42(a) binds paid motor-vehicle service alone', () => {
    expect(shown('records', paid)).toContain('records-shop')
    expect(shown('records', { ...paid, forPay: false })).not.toContain('records-shop')
    expect(shown('records', { ...off, labelCharge: '2 lb', forPay: true })).not.toContain(
      'records-shop',
    )
  })

  it('82.42(b)(4), 82.166(m): "a minimum of three years"', () => {
    const { statements } = JURISDICTIONS['us-federal']
    expect(statements['records-years']?.text).toMatch(/at least 3 years/u)
    expect(statements['records-years-608']?.text).toMatch(/at least 3 years/u)
    expect(statements['records-small-ods']?.text).toMatch(/less than 20 lb.*for 3 years/u)
  })

  it('82.166(j), (k): from 50 pounds', () => {
    const unit = { ...us, machine: 'stationary', refrigerant: 'R-22', factorySealed: false }
    expect(shown('records', { ...unit, labelCharge: '50 lb' })).toContain('records-invoice-50')
    expect(shown('records', { ...unit, labelCharge: '49.99 lb' })).not.toContain(
      'records-invoice-50',
    )
  })
})

describe('EPA, records of disposal, page of 19 January 2021: between 5 and 50 pounds', () => {
  it.each([
    ['5 lb', false],
    ['5.01 lb', true],
    ['49.99 lb', true],
    ['50 lb', false],
  ])('%s: %s', (labelCharge, asked) => {
    const split = { ...us, machine: 'stationary', refrigerant: 'R-410A', factorySealed: false }
    const found = shown('records', { ...split, labelCharge, action: 'dispose' })
    expect(found.includes('records-disposal')).toBe(asked)
  })
})

describe('leak repair: 40 CFR 82.157 (from 50 lb of ODS) and 84.106 as reported (from 15 lb of HFC)', () => {
  const unit = { ...us, machine: 'stationary', factorySealed: false }
  it.each([
    ['R-22', '50 lb', 'leak-50-lb', true],
    ['R-22', '49.99 lb', 'leak-50-lb', false],
    ['R-410A', '15 lb', 'leak-15-lb', true],
    ['R-410A', '14.99 lb', 'leak-15-lb', false],
  ])('%s, %s: %s %s', (refrigerant, labelCharge, id, asked) => {
    expect(shown('leakRepair', { ...unit, refrigerant, labelCharge }).includes(id)).toBe(asked)
  })

  it('10 % comfort cooling, 20 % commercial refrigeration, 30 % industrial process, both rules', () => {
    expect(leak.thresholds).toEqual({
      'commercial-refrigeration': 0.2,
      'industrial-process': 0.3,
      'comfort-cooling': 0.1,
    })
    const { statements } = JURISDICTIONS['us-federal']
    expect(statements['leak-15-lb-rates']?.text).toMatch(
      /10 % .*comfort.*20 % .*commercial.*30 % .*industrial/u,
    )
    expect(statements['leak-50-lb']?.text).toMatch(/10 % .*comfort.*20 % .*commercial.*30 %/u)
    expect(statements['cab-below-limits']?.text).toMatch(
      /50 lb of ozone.*15 lb of hydrofluorocarbon/u,
    )
    expect(leak.federalLimits).toEqual({ ozoneDepleting: '50 lb', hydrofluorocarbon: '15 lb' })
  })
})

describe('40 CFR 82 subpart B, appendices A, C and D, 2015', () => {
  it('A, J1989 3.2.1 and 5.1: unit off 5 min, stable 2 min; container 12 h at 65 °F or above', () => {
    expect(recovery.recoveryWait).toMatchObject({
      unitOff: { value: 5, unit: 'min' },
      stable: { value: 2, unit: 'min' },
    })
    expect(recovery.airCheckRest).toMatchObject({
      value: 12,
      unit: 'h',
      atLeast: { value: 65, unit: '°F' },
    })
    for (const text of [
      recovery.statements['vacuum-five-minutes'].text,
      visit.statements['wait-and-look'].text,
    ]) {
      expect(text).toMatch(/at least five minutes.*two minutes/u)
    }
  })

  it('A, J1989 7.1 and 7.2: 27 inHg (75 mmHg absolute); 60 % of the gross weight rating', () => {
    expect(recovery.statements['evacuate-cylinder'].text).toMatch(/27 inHg.*75 mm Hg absolute/u)
    expect(recovery.grossRatingFraction).toMatchObject({ value: 0.6, refrigerant: 'R-12' })
  })

  it('A 7.4.1.3 and C 7.3.3: first retest 5 years after manufacture, and every 5 years', () => {
    expect(recovery.requalificationYears.value).toBe(5)
  })

  it('C 7.1.1, 7.1.2: 95 % in 30 min at 70 to 75 °F; up to 15 min of engine at 2000 rpm before', () => {
    expect(recovery.recoveryShare).toMatchObject({
      fraction: 0.95,
      within: { value: 30, unit: 'min' },
      from: { value: 70, unit: '°F' },
      to: { value: 75, unit: '°F' },
    })
    expect(recovery.warmUp).toMatchObject({ atMost: { value: 15, unit: 'min' }, rpm: 2000 })
    const { text } = recovery.statements['j2788-share']
    expect(text).toMatch(/95 % within 30 minutes at 70 to 75 °F.*15 minutes.*2000 rpm, is allowed/u)
  })

  it('D 6.1.2: recovery only, 85 % in 30 min at 50 to 55 °F', () => {
    expect(recovery.recoveryShareCold).toMatchObject({
      fraction: 0.85,
      within: { value: 30, unit: 'min' },
      from: { value: 50, unit: '°F' },
      to: { value: 55, unit: '°F' },
    })
    const law = JURISDICTIONS['us-federal'].statements['equipment-r134a-performance']?.text
    for (const text of [law, recovery.statements['j2810-share'].text]) {
      expect(text).toMatch(/95 % .*30 minutes at 70 to 75 °F.*85 % at 50 to 55 °F/u)
    }
  })

  it('C 7.1.3, 7.2, 7.6, 9.1: recovered mass 30 g, cut-off 80 % at 70 °F, oil 20 mL, charge 15 g', () => {
    expect(recovery.indicatedRecovered.plusMinus).toEqual({ value: 30, unit: 'g' })
    expect(recovery.overfillCutOff).toMatchObject({ fraction: 0.8, at: { value: 70, unit: '°F' } })
    expect(leak.sources['j2788-accuracy'].where).toMatch(/15 g \(0\.5 oz\).*30 g \(1 oz\)/u)
    expect(visit.sources['appendix-oil'].where).toMatch(/20 mL.*R-134a.*30 mL.*R-12/u)
  })
})

describe('49 CFR 173.301, 173.304a, 2015: cylinders', () => {
  it('173.301(a)(8): at 131 °F at most 5/4 of the service pressure', () => {
    expect(recovery.servicePressure).toMatchObject({
      factor: 5 / 4,
      at: { value: 131, unit: '°F' },
    })
    expect(recovery.statements['service-pressure'].text).toMatch(/131 °F.*5\/4/u)
  })

  it.each([
    ['R-12', 119],
    ['R-22', 105],
    ['R-115', 110],
    ['R-142b', 100],
    ['R-152a', 79],
    ['R-744', 68],
  ])('173.304a(a)(2): %s at most %d %% of the water capacity by weight', (refrigerant, percent) => {
    const rows = recovery.fillingDensity.filter((row) => row.refrigerant === refrigerant)
    expect(rows.map(({ ofWaterCapacity }) => Math.round(1000 * ofWaterCapacity) / 10)).toEqual([
      percent,
    ])
  })

  it('173.304a(a)(2): no other refrigerant of ours is in the table', () => {
    expect(recovery.fillingDensity).toHaveLength(6)
  })
})

describe('40 CFR 82 subpart G, appendices B, C, D and H, 2015', () => {
  const { statements } = JURISDICTIONS['us-federal']

  it('B: R-744 fittings 16.6, 18.1 and 20.955 mm; 3 % over 15 minutes, 4 % at any time', () => {
    const ours = retrofit.acceptability.find(({ to, use }) => to === 'R-744' && use === 'new')?.text
    expect(ours).toMatch(/16\.6 mm low side, 18\.1 mm high side, 20\.955 mm.*3 % over 15 min.*4 %/u)
    expect(statements['r744-use']?.text).toMatch(
      /16\.6 mm .*low side, 18\.1 mm .*high side, 20\.955 mm.*3 % over 15 minutes, nor 4 %/u,
    )
  })

  it('C and D, 2.a: what the label carries', () => {
    for (const text of [statements['retrofit-label']?.text, retrofit.statements.label.text]) {
      for (const item of [
        'address',
        'date',
        'trade name',
        'charge',
        'lubricant',
        'ozone depleter',
      ]) {
        expect(text).toContain(item)
      }
    }
  })

  it('H (b): screw-on fittings differ by 1/16 inch or by the hand of the thread', () => {
    for (const text of [
      statements['retrofit-fittings']?.text,
      retrofit.statements['fittings-differ'].text,
    ]) {
      expect(text).toMatch(/1\/16 in of diameter or by the hand of the thread/u)
    }
  })
})

/** Where each rule stands in the editions of 2015: paragraph by paragraph, as read. */
const PARAGRAPHS: Readonly<Record<string, string>> = {
  'vehicle-definition': '40 CFR 82.32(c), (d)',
  'bus-r22-excluded': '40 CFR 82.32(d)',
  'mvac-like-definition': '40 CFR 82.152',
  'small-appliance': '40 CFR 82.152',
  'barter-is-pay': '40 CFR 82.32(g)',
  'type-ii': '40 CFR 82.161(a)(2), (4), (5)',
  'type-i': '40 CFR 82.161(a)(1), (4)',
  apprentice: '40 CFR 82.161(a)(6), 82.152',
  'disposal-certificate': '40 CFR 82.152 (technician)',
  'top-off': '40 CFR 82.32(e)(4), (h)',
  'top-off-equipment': '40 CFR 82.32(e)(4)',
  'equipment-at-hand': '40 CFR 82.32(e)(5), 82.156(a)(5)',
  'venting-prohibited': '40 CFR 82.154(a)(1), (2)',
  'venting-co2': '40 CFR 82.154(a)(1)(i)(D)',
  'venting-vehicle-hydrocarbon': '40 CFR 82.154(a)(1)(i) to (iii)',
  'equipment-r12': '40 CFR 82.36(a)(2), (3), (6)',
  'equipment-r134a': '40 CFR 82.36(a)(4), (5), (6)',
  'equipment-r134a-performance':
    '40 CFR part 82 subpart B, appendix C 7.1.1, appendix D 6.1.1, 6.1.2',
  'equipment-other': '40 CFR 82.36(a)(7)',
  'properly-using': '40 CFR 82.32(e)(1)',
  'equipment-small': '40 CFR 82.156(a)(4)',
  'recover-102': '40 CFR 82.156(g), 82.158(l)',
  'recover-102-old': '40 CFR 82.158(g), 82.36(b)(3)',
  'recycle-before-return': '40 CFR 82.32(e)(1)',
  'same-vehicle': '40 CFR 82.32(e)(1)',
  'recover-only': '40 CFR 82.32(e)(1)',
  'recycled-r12': '40 CFR part 82 subpart B, appendix A (J1991) 3',
  'sale-needs-reclaim': '40 CFR 82.154(g)',
  'reuse-608': '40 CFR 82.156(e)',
  'flammable-2015': '40 CFR part 82 subpart G, appendix B',
  'new-systems-only': '40 CFR part 82 subpart G, appendix B',
  'r744-use': '40 CFR part 82 subpart G, appendix B',
  'retrofit-label': '40 CFR part 82 subpart G, appendices C and D, 2',
  'retrofit-fittings': '40 CFR part 82 subpart G, appendices D and H',
  'retrofit-shut-off': '40 CFR part 82 subpart G, appendices C and D',
  'records-shop': '40 CFR 82.42(a)',
  'records-proof': '40 CFR 82.42(b)(2)',
  'records-sent-to': '40 CFR 82.42(b)(1)',
  'records-years': '40 CFR 82.42(b)(4)',
  'records-on-site': '40 CFR 82.42(b)(4), (5)',
  'records-small-ods': '40 CFR 82.42(b)(3)',
  'records-equipment-608': '40 CFR 82.154(e), (f)',
  'records-certificate': '40 CFR 82.166(l)',
  'records-years-608': '40 CFR 82.166(m)',
  'records-invoice-50': '40 CFR 82.166(j), (k)',
  'records-final-person': '40 CFR 82.156(f), 82.166(i)',
  'records-seller': '40 CFR 82.166(a), (m)',
}

describe('the paragraphs of the 2015 editions', () => {
  const { statements, sources } = JURISDICTIONS['us-federal']

  it.each(Object.entries(PARAGRAPHS))('%s stands in %s', (id, section) => {
    expect(statements[id]).toMatchObject({ section, mark: 'verified', checked: '2026-11-27' })
  })

  it('are all of what is marked verified in them', () => {
    const read = Object.entries(statements).filter(
      ([, { mark, source }]) => mark === 'verified' && sources[source]?.edition === '2015 edition',
    )
    expect(read.map(([id]) => id).toSorted()).toEqual(Object.keys(PARAGRAPHS).toSorted())
  })
})

/** [law, statement, section, figures that the text must carry] */
const ELSEWHERE: readonly (readonly [Law, string, string, RegExp])[] = [
  // 86 FR 15587, govinfo.gov FR-2021-03-24/html/2021-05363.htm: summary and dates.
  ['us-federal', 'equipment-r1234yf', '86 FR 15587', /J2843.*J2851.*J3030.*23 April 2021/u],
  // 77 FR 33315, govinfo.gov FR-2012-06-06/html/2012-13189.htm: summary and dates.
  ['us-federal', 'retrofit-r744', '77 FR 33315', /6 August 2012/u],
  // Directive 2006/40/EC, gesetze.legal/eu/rl_2006_40_eg/6.
  ['eu', 'fill-150', 'Directive 2006/40/EC art. 6(2)', /above 150.*1 January 2017.*2011/u],
  ['eu', 'leak-vehicle', 'Directive 2006/40/EC art. 6(3)', /abnormal amount.*before the repair/u],
  // SOR/2022-110, justicecanada/laws-lois-xml, consolidation of 25 July 2025.
  ['canada', 'records-years', 'SOR/2022-110 s. 26', /at least 5 years.*principal place/u],
  ['canada', 'release', 'SOR/2022-110 s. 3', /shorter than 1 m/u],
  ['canada', 'scope-list', 'SOR/2022-110 s. 1, Schedule 1', /CFC, HCFC, HFC, PFC.*HFO is not/u],
  // Regulations 1995, regulations 110 and 141, copy marked in force.
  ['australia', 'records', 'Regulations 1995, reg. 141(1)(a), (b)', /each quarter.*14 days/u],
  ['australia', 'scope-list', 'Regulations 1995, reg. 110', /CFC, HCFC, HFC, PFC or halon; HFO/u],
]

describe('other texts, each at the place named beside it', () => {
  it.each(ELSEWHERE)('%s %s: %s', (law, id, section, text) => {
    const statement = JURISDICTIONS[law].statements[id]
    expect(statement).toMatchObject({ section, mark: 'verified', checked: '2026-11-27' })
    expect(statement?.text).toMatch(text)
  })
})

describe('the equipment for R-1234yf rests on the final rule, 86 FR 15587 of 24 March 2021', () => {
  it.each(['road-vehicle', 'off-road'])('in an answer about a %s', (machine) => {
    const { result, sources } = rules.run({
      law: 'us-federal',
      machine,
      refrigerant: 'R-1234yf',
      action: 'recover',
      forPay: true,
      ...(machine === 'off-road' && { labelCharge: '3 lb', compressorDrive: 'open' }),
    })
    const { statements } = result.equipment
    expect(statements.map(({ section, mark }) => `${section}: ${mark}`)).toEqual(
      expect.arrayContaining(['86 FR 15587: verified', '40 CFR 82.36(a)(8) to (10): secondary']),
    )
    const about = sources.filter(({ title }) => /86 FR|85 FR|propos/iu.test(title))
    expect(about.map(({ title, url }) => `${title.slice(0, 11)} ${url}`)).toEqual(
      about.map(
        () => '86 FR 15587 https://govinfo.gov/content/pkg/FR-2021-03-24/html/2021-05363.htm',
      ),
    )
    expect(about).not.toEqual([])
  })
})
