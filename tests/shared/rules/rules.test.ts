import { describe, expect, it } from 'vitest'
import { COMPRESSOR_DRIVES, LAWS, MACHINES } from '../../../shared/fields/index.ts'
import { refrigerants } from '../../../shared/refrigerant/index.ts'
import { rules } from '../../../shared/rules/rules.ts'
import { ACTIONS } from '../../../shared/rules/types.ts'

type Input = Record<string, unknown>
const ask = (input: Input) => rules.run({ law: 'us-federal', action: 'recover', ...input })
const ids = (statements: readonly { id: string }[]) => statements.map(({ id }) => id)

const road = { machine: 'road-vehicle', refrigerant: 'R-134a', labelCharge: '1.5 lb' }
const loader = {
  machine: 'off-road',
  compressorDrive: 'open',
  refrigerant: 'R-134a',
  labelCharge: '2.75 lb',
}
const digger = { ...loader, sector: 'construction' }
const split = {
  machine: 'stationary',
  refrigerant: 'R-410A',
  labelCharge: '8 lb',
  factorySealed: false,
}
const window = {
  machine: 'stationary',
  refrigerant: 'R-32',
  labelCharge: '1.2 lb',
  factorySealed: true,
}

describe('the US regime, cell by cell', () => {
  const cells: [string, Input, string][] = [
    ['road vehicle, belt-driven', { ...road, compressorDrive: 'open' }, 'mvac'],
    ['road vehicle, electric', { ...road, compressorDrive: 'electric' }, 'mvac'],
    ['road vehicle, compressorDrive not given', road, 'mvac'],
    ['road vehicle with R-22', { ...road, refrigerant: 'R-22' }, 'mvac'],
    ['bus with R-134a', { ...road, machine: 'bus', labelCharge: '14 lb' }, 'mvac'],
    ['bus with R-22', { ...road, machine: 'bus', refrigerant: 'R-22' }, 'appliance'],
    ['bus with R-407C', { ...road, machine: 'bus', refrigerant: 'R-407C' }, 'mvac'],
    ['refrigerated cargo', { ...road, machine: 'refrigerated-cargo' }, 'appliance'],
    ['off-road, open drive', loader, 'mvac-like'],
    ['off-road, open drive, R-12', { ...loader, refrigerant: 'R-12' }, 'mvac-like'],
    ['off-road, open drive, 20 lb exactly', { ...loader, labelCharge: '20 lb' }, 'mvac-like'],
    ['off-road, open drive, over 20 lb', { ...loader, labelCharge: '20.1 lb' }, 'appliance'],
    ['off-road, open drive, R-22', { ...loader, refrigerant: 'R-22' }, 'appliance'],
    [
      'off-road, electric, lines made on site',
      { ...loader, compressorDrive: 'electric', factorySealed: false },
      'appliance',
    ],
    [
      'off-road, electric roof unit sealed in the factory',
      { ...loader, compressorDrive: 'electric', factorySealed: true },
      'small-appliance',
    ],
    ['building, split', split, 'appliance'],
    ['building, sealed, 5 lb exactly', { ...window, labelCharge: '5 lb' }, 'small-appliance'],
    ['building, sealed, over 5 lb', { ...window, labelCharge: '5.1 lb' }, 'appliance'],
  ]
  it.each(cells)('%s', (_, input, regime) => {
    expect(ask(input).result.regime).toMatchObject({ decided: true, ids: [regime] })
  })

  it('does not guess a missing charge or compressorDrive, and says what would decide', () => {
    const { labelCharge: _, ...noCharge } = loader
    expect(ask(noCharge).result.regime).toMatchObject({
      decided: false,
      ids: ['mvac-like', 'appliance'],
      missing: ['labelCharge'],
    })
    const { compressorDrive: __, ...noDrive } = loader
    const undecided = ask(noDrive)
    expect(undecided.result.regime.missing).toContain('compressorDrive')
    expect(undecided.warnings.map(({ code }) => code)).toContain('regime-undecided')
  })

  it('reads kilograms at the same limit', () => {
    expect(ask({ ...loader, labelCharge: '9.07 kg' }).result.regime.ids).toEqual(['mvac-like'])
    expect(ask({ ...loader, labelCharge: '9.08 kg' }).result.regime.ids).toEqual(['appliance'])
  })

  it('takes an off-road cab above 20 lb for an ordinary appliance, and says by which edition', () => {
    const large = { ...loader, labelCharge: '25 lb' }
    const { result } = ask({ ...large, certificates: ['us-609'] })
    expect(result.certificate.held).toBe('not-enough')
    expect(ask({ ...large, certificates: ['us-608-type-ii'] }).result.certificate.held).toBe(
      'enough',
    )
    const definition = result.regime.statements.find(({ id }) => id === 'mvac-like-definition')
    expect(definition).toMatchObject({
      section: '40 CFR 82.152',
      edition: '2015 edition',
      mark: 'verified',
    })
    expect(result.regime.statements.find(({ id }) => id === 'off-road-608')?.mark).toBe('inferred')
  })
})

describe('what is asked and what is said', () => {
  it('names no single certificate where another may do', () => {
    const { factorySealed: _, ...unknown } = {
      ...window,
      refrigerant: 'R-134a',
      labelCharge: '3 lb',
    }
    expect(ask(unknown).result.certificate.says).toMatch(
      /which one depends on factory-sealed or not/,
    )
  })

  it('does not turn a section 608 technician away from a large cylinder of R-12', () => {
    const buy = { ...loader, refrigerant: 'R-12', action: 'buy' }
    expect(ask({ ...buy, certificates: ['us-608-type-ii'] }).result.certificate.held).toBe(
      'cannot-tell',
    )
    expect(ask({ ...buy, certificates: ['us-609'] }).result.certificate.held).toBe('enough')
    expect(ask({ ...buy, certificates: [] }).result.certificate.held).toBe('not-enough')
  })

  it('asks approved equipment of paid work on a vehicle, and of any work on an off-road cab', () => {
    const equipment = (input: Input) => ids(ask(input).result.equipment.statements)
    expect(equipment({ ...road, forPay: true })).toContain('equipment-r134a')
    expect(equipment({ ...road, forPay: false })).toEqual([])
    expect(equipment({ ...loader, forPay: false })).toContain('equipment-r134a')
  })

  it('does not forbid the venting that it calls exempt, and warns of the air instead', () => {
    const { result, cautions } = ask({ ...loader, refrigerant: 'R-744', labelCharge: '1 lb' })
    expect(result.venting.answers).toEqual(['exempt'])
    expect(ids(cautions)).not.toContain('no-venting')
    expect(ids(cautions)).toContain('asphyxiation')
  })

  it('knows that a blend of R-22 with a hydrofluorocarbon may meet both leak rules', () => {
    const blend = { ...split, refrigerant: 'R-401A', labelCharge: '20 lb' }
    expect(ask(blend).result.leakRepair.answers).toEqual(['look-up'])
    expect(ask({ ...blend, labelCharge: '60 lb' }).result.leakRepair.answers).toEqual([
      'duty',
      'look-up',
    ])
    expect(ask({ ...blend, labelCharge: '6 lb' }).result.leakRepair.answers).toEqual([
      'no-federal-duty',
    ])
  })

  it.each([
    [
      'a retrofit target without a retrofit',
      { ...loader, newRefrigerant: 'R-290' },
      'newRefrigerant',
    ],
    ['a charge of nothing', { ...loader, labelCharge: '0 lb' }, 'labelCharge'],
  ])('refuses %s', (_, input, field) => {
    expect(() => ask(input)).toThrow(expect.objectContaining({ code: 'bad-input', path: [field] }))
  })
})

describe('the US certificate, cell by cell', () => {
  const all = ['us-608-type-i', 'us-608-type-ii', 'us-608-type-iii', 'us-608-universal']
  const cells: [string, Input, string, string[]][] = [
    ['vehicle for pay', { ...road, forPay: true }, 'required', ['us-609']],
    ['vehicle unpaid', { ...road, forPay: false }, 'not-required', []],
    ['own vehicle', { ...road, ownMachine: true }, 'not-required', []],
    [
      'loader for pay',
      { ...loader, forPay: true },
      'required',
      ['us-609', 'us-608-type-ii', 'us-608-universal'],
    ],
    [
      'own loader',
      { ...loader, ownMachine: true },
      'required',
      ['us-609', 'us-608-type-ii', 'us-608-universal'],
    ],
    ['split', split, 'required', ['us-608-type-ii', 'us-608-universal']],
    ['small appliance', window, 'required', ['us-608-type-i', 'us-608-universal']],
    [
      'R-22 bus',
      { ...road, machine: 'bus', refrigerant: 'R-22' },
      'required',
      ['us-608-type-ii', 'us-608-universal'],
    ],
    ['buy R-134a for a loader', { ...loader, action: 'buy' }, 'required', ['us-609', ...all]],
    [
      'buy R-12 for a vehicle',
      { ...road, refrigerant: 'R-12', action: 'buy' },
      'required',
      ['us-609'],
    ],
    ['buy R-22', { ...loader, refrigerant: 'R-22', action: 'buy' }, 'required', all],
    ['buy R-410A for a building', { ...split, action: 'buy' }, 'required', all],
    ['buy R-744', { ...road, refrigerant: 'R-744', action: 'buy' }, 'not-required', []],
    ['buy R-290', { ...split, refrigerant: 'R-290', action: 'buy' }, 'look-up', []],
    ['dispose of a vehicle', { ...road, action: 'dispose' }, 'not-required', []],
    ['dispose of a loader', { ...loader, action: 'dispose' }, 'not-required', []],
    ['dispose of a window unit', { ...window, action: 'dispose' }, 'not-required', []],
    [
      'top up a vehicle for pay',
      { ...road, action: 'charge', forPay: true },
      'required',
      ['us-609'],
    ],
    [
      'top up an own loader',
      { ...loader, action: 'charge', ownMachine: true },
      'required',
      ['us-609', 'us-608-type-ii', 'us-608-universal'],
    ],
    [
      'dispose of a split',
      { ...split, action: 'dispose' },
      'required',
      ['us-608-type-ii', 'us-608-universal'],
    ],
  ]
  it.each(cells)('%s', (_, input, needed, anyOf) => {
    const { certificate } = ask(input).result
    expect(certificate.needed).toBe(needed)
    expect(certificate.anyOf.map(({ id }) => id)).toEqual(anyOf)
  })

  const held: [string, Input, string[], string][] = [
    ['609 for a paid vehicle', { ...road, forPay: true }, ['us-609'], 'enough'],
    ['Universal for a paid vehicle', { ...road, forPay: true }, ['us-608-universal'], 'not-enough'],
    ['Type I for a loader', loader, ['us-608-type-i'], 'not-enough'],
    ['609 for a loader', loader, ['us-609'], 'enough'],
    ['609 for a split', split, ['us-609'], 'not-enough'],
    ['Type II for a window unit', window, ['us-608-type-ii'], 'not-enough'],
    ['609 to buy for a split', { ...split, action: 'buy' }, ['us-609'], 'not-enough'],
    ['nothing for an unpaid vehicle', { ...road, forPay: false }, [], 'not-needed'],
    ['nothing, pay not given', road, [], 'cannot-tell'],
    ['609, pay not given', road, ['us-609'], 'enough'],
    ['nothing for disposal of a vehicle', { ...road, action: 'dispose' }, [], 'not-needed'],
  ]
  it.each(held)('%s', (_, input, certificates, verdict) => {
    expect(ask({ ...input, certificates }).result.certificate.held).toBe(verdict)
  })

  it('asks which certificates are held when nobody said', () => {
    expect(ask(loader).result.certificate).toMatchObject({ held: 'not-given' })
  })

  it('finds a certificate that suffices whichever regime a missing charge decides', () => {
    const { labelCharge: _, ...unknown } = loader
    expect(ask({ ...unknown, certificates: ['us-608-type-ii'] }).result.certificate.held).toBe(
      'enough',
    )
    expect(ask({ ...unknown, certificates: ['us-609'] }).result.certificate.held).toBe(
      'cannot-tell',
    )
  })

  it('warns when what is held does not cover the work', () => {
    const answer = ask({ ...loader, certificates: [] })
    expect(answer.result.certificate.says).toContain('do not do this work')
    expect(answer.warnings.map(({ code }) => code)).toContain('certificate-not-enough')
  })

  it('takes unpaid from an own machine as an assumption, but never over what was said', () => {
    expect(ask({ ...road, ownMachine: true }).assumptions).toMatchObject([{ field: 'forPay' }])
    const paid = ask({ ...road, ownMachine: true, forPay: true })
    expect(paid.result.certificate.needed).toBe('required')
    expect(paid.assumptions).toEqual([])
  })
})

describe('US venting, equipment and reuse', () => {
  const venting: [string, Input, string][] = [
    ['R-134a loader', loader, 'prohibited'],
    ['R-1234yf vehicle', { ...road, refrigerant: 'R-1234yf' }, 'prohibited'],
    ['R-744 vehicle', { ...road, refrigerant: 'R-744' }, 'exempt'],
    ['R-744 building', { ...split, refrigerant: 'R-744' }, 'exempt'],
    ['propane found in a vehicle', { ...road, refrigerant: 'propane' }, 'prohibited'],
    ['propane in a building unit', { ...window, refrigerant: 'R-290' }, 'look-up'],
    [
      'blend with some hydrocarbon in a building',
      { ...split, refrigerant: 'R-422B' },
      'prohibited',
    ],
  ]
  it.each(venting)('%s: %s', (_, input, answer) => {
    expect(ask(input).result.venting.answers).toEqual([answer])
  })

  const equipment: [string, Input, string[]][] = [
    ['R-12', { ...loader, refrigerant: 'R-12' }, ['equipment-r12', 'properly-using']],
    [
      'R-134a',
      loader,
      ['equipment-r134a', 'equipment-r134a-performance', 'equipment-r134a-older', 'properly-using'],
    ],
    [
      'R-1234yf',
      { ...loader, refrigerant: 'R-1234yf' },
      ['equipment-r1234yf', 'equipment-r1234yf-place', 'properly-using'],
    ],
    ['R-744', { ...road, refrigerant: 'R-744' }, ['equipment-r744', 'properly-using']],
    [
      'another in a vehicle',
      { ...road, refrigerant: 'R-152a' },
      ['equipment-other', 'properly-using'],
    ],
    [
      'scrapped loader',
      { ...loader, action: 'dispose' },
      [
        'equipment-r134a',
        'equipment-r134a-performance',
        'equipment-r134a-older',
        'properly-using',
        'recover-102',
        'recover-102-old',
      ],
    ],
    ['split', split, ['equipment-608', 'equipment-608-minor']],
    ['window unit', window, ['equipment-small']],
  ]
  it.each(equipment)('equipment for %s', (_, input, statements) => {
    expect(ids(ask(input).result.equipment.statements)).toEqual(statements)
  })

  it('asks recycling before return, and more for scrapped machines', () => {
    expect(ask(loader).result.reuse.answers).toEqual(['recycle-first'])
    expect(ids(ask(loader).result.reuse.statements)).not.toContain('salvage')
    expect(ids(ask({ ...loader, action: 'dispose' }).result.reuse.statements)).toContain('salvage')
    expect(ask(split).result.reuse.answers).toEqual(['same-owner'])
    expect(ids(ask(split).result.reuse.statements)).toEqual(['reuse-608', 'sale-needs-reclaim'])
    expect(ask({ ...road, refrigerant: 'R-744' }).result.reuse.answers).toEqual([])
  })
})

describe('US leak repair, retrofit and records', () => {
  const leak: [string, Input, string[]][] = [
    ['cab', loader, ['no-federal-duty']],
    [
      'coach with 14.9 lb of R-134a',
      { ...road, machine: 'bus', labelCharge: '14.9 lb' },
      ['no-federal-duty'],
    ],
    ['coach with 15 lb of R-134a', { ...road, machine: 'bus', labelCharge: '15 lb' }, ['look-up']],
    ['R-410A, 14 lb', { ...split, labelCharge: '14 lb' }, ['no-federal-duty']],
    ['R-410A, 15 lb', { ...split, labelCharge: '15 lb' }, ['look-up']],
    ['R-22, 49 lb', { ...split, refrigerant: 'R-22', labelCharge: '49 lb' }, ['no-federal-duty']],
    ['R-22, 50 lb', { ...split, refrigerant: 'R-22', labelCharge: '50 lb' }, ['duty']],
    ['R-290', { ...split, refrigerant: 'R-290' }, ['no-federal-duty']],
    ['window unit', window, ['no-federal-duty']],
  ]
  it.each(leak)('%s', (_, input, answers) => {
    expect(ask(input).result.leakRepair.answers).toEqual(answers)
  })

  it('leaves both possibilities when the charge of an appliance is not given', () => {
    const { labelCharge: _, ...unknown } = split
    const { leakRepair } = ask(unknown).result
    expect(leakRepair.answers).toEqual(['look-up', 'no-federal-duty'])
    expect(
      leakRepair.statements.every(
        ({ applies, dependsOn }) => applies === 'depends' && dependsOn.includes('labelCharge'),
      ),
    ).toBe(true)
  })

  const retrofit: [string, string, string, string][] = [
    ['road-vehicle', 'R-12', 'R-134a', 'acceptable-with-conditions'],
    ['off-road', 'R-12', 'R-134a', 'acceptable-with-conditions'],
    ['road-vehicle', 'R-134a', 'R-1234yf', 'not-acceptable'],
    ['off-road', 'R-134a', 'R-1234yf', 'not-acceptable'],
    ['road-vehicle', 'R-134a', 'R-152a', 'not-acceptable'],
    ['road-vehicle', 'R-12', 'R-290', 'not-acceptable'],
    ['road-vehicle', 'R-134a', 'R-744', 'not-acceptable'],
    ['road-vehicle', 'R-12', 'R-416A', 'acceptable-with-conditions'],
    ['road-vehicle', 'R-12', 'R-409A', 'look-up'],
    ['stationary', 'R-22', 'R-407C', 'look-up'],
  ]
  it.each(retrofit)('%s from %s to %s is %s', (machine, from, to, answer) => {
    const input = { ...loader, machine, refrigerant: from, newRefrigerant: to, action: 'retrofit' }
    expect(ask(input).result.retrofit.answers).toEqual([answer])
  })

  it('speaks of retrofit only when asked, and then wants to know to what', () => {
    expect(ask(loader).result.retrofit).toEqual({ answers: [], statements: [] })
    expect(() => ask({ ...loader, action: 'retrofit' })).toThrow(
      expect.objectContaining({ code: 'missing-input', path: ['newRefrigerant'] }),
    )
  })

  // 82.42(a) binds paid motor-vehicle service alone; (b) binds whoever owns approved equipment.
  const ownersOfEquipment = [
    'records-proof',
    'records-sent-to',
    'records-years',
    'records-equipment-608',
  ]
  const technicians = [
    'records-certificate',
    'records-years-608',
    'records-certificate-years',
    'records-equipment-608',
  ]
  const records: [string, Input, string[]][] = [
    [
      'paid vehicle work',
      { ...road, forPay: true },
      ['records-shop', 'records-proof', 'records-sent-to', 'records-years', 'records-on-site'],
    ],
    ['unpaid vehicle work', { ...road, forPay: false }, []],
    ['a loader, paid', { ...loader, forPay: true }, ownersOfEquipment],
    ['a loader, own and unpaid', { ...loader, ownMachine: true }, ownersOfEquipment],
    ['split', split, technicians],
    ['large appliance', { ...split, labelCharge: '60 lb' }, [...technicians, 'records-invoice-50']],
    [
      'disposal of a split',
      { ...split, action: 'dispose' },
      [...technicians, 'records-disposal', 'records-disposal-years'],
    ],
    [
      'disposal of a loader',
      { ...loader, action: 'dispose' },
      [...ownersOfEquipment, 'records-final-person'],
    ],
    [
      'disposal of a vehicle, unpaid',
      { ...road, forPay: false, action: 'dispose' },
      ['records-equipment-608', 'records-final-person'],
    ],
    ['buying', { ...split, action: 'buy' }, [...technicians, 'records-seller']],
    [
      'buying R-12',
      { ...road, forPay: false, refrigerant: 'R-12', action: 'buy' },
      ['records-seller', 'records-small-ods'],
    ],
  ]
  it.each(records)('records of %s', (_, input, statements) => {
    expect(ids(ask(input).result.records.statements)).toEqual(statements)
  })

  it('always says that states may ask for more', () => {
    for (const input of [road, loader, split, window]) {
      expect(ids(ask(input).result.elsewhere.statements)).toContain('states-differ')
      expect(ids(ask(input).result.elsewhere.statements)).toContain('texts-of-2015')
    }
    expect(ids(ask({ ...road, refrigerant: 'R-290' }).result.elsewhere.statements)).toContain(
      'states-hydrocarbon',
    )
    expect(ids(ask({ ...loader, action: 'buy' }).result.elsewhere.statements)).toContain(
      'states-hfc',
    )
  })
})

describe('the other jurisdictions', () => {
  const cells: [string, Input, string, string, string[]][] = [
    ['eu', { ...road }, 'vehicle', 'required', ['eu-training-attestation']],
    ['eu', { ...digger }, 'mobile', 'required', ['eu-training-attestation']],
    ['eu', { ...digger, action: 'charge' }, 'mobile', 'required', ['eu-training-attestation']],
    ['eu', { ...digger, sector: 'mining' }, 'mobile', 'required', ['eu-training-attestation']],
    ['eu', { ...digger, sector: 'agriculture' }, 'mobile', 'required', ['eu-training-attestation']],
    ['eu', { ...digger, sector: 'other' }, 'other-mobile', 'look-up', []],
    ['eu', { ...split }, 'stationary', 'required', ['eu-stationary-certificate']],
    [
      'eu',
      { ...road, refrigerant: 'R-744', action: 'open' },
      'vehicle',
      'required',
      ['eu-training-attestation'],
    ],
    [
      'eu',
      { ...digger, refrigerant: 'R-290', action: 'charge' },
      'mobile',
      'required',
      ['eu-training-attestation'],
    ],
    ['eu', { ...road, refrigerant: 'R-744' }, 'vehicle', 'look-up', ['eu-training-attestation']],
    [
      'eu',
      { ...split, refrigerant: 'R-290' },
      'no-f-gas',
      'look-up',
      ['eu-stationary-certificate'],
    ],
    ['eu', { ...road, action: 'buy' }, 'vehicle', 'look-up', []],
    ['uk', { ...road }, 'vehicle', 'required', ['uk-training-attestation']],
    ['uk', { ...road, action: 'charge' }, 'vehicle', 'look-up', ['uk-training-attestation']],
    ['uk', { ...loader }, 'mobile', 'look-up', []],
    ['uk', { ...split }, 'stationary', 'look-up', []],
    [
      'canada',
      { ...loader },
      'halocarbon',
      'required',
      ['ca-certified', 'ca-ontario-odp-card', 'ca-other-province'],
    ],
    [
      'canada',
      { ...loader, action: 'buy' },
      'halocarbon',
      'look-up',
      ['ca-certified', 'ca-ontario-odp-card', 'ca-other-province'],
    ],
    ['canada', { ...loader, refrigerant: 'R-290' }, 'no-halocarbon', 'look-up', []],
    ['uk', { ...loader, refrigerant: 'R-290' }, 'no-f-gas', 'look-up', []],
    ['uk', { ...road, action: 'buy' }, 'vehicle', 'look-up', []],
    ['eu', { ...road, refrigerant: 'R-290', action: 'buy' }, 'vehicle', 'look-up', []],
    ['eu', { ...road, machine: 'refrigerated-cargo' }, 'mobile', 'look-up', []],
    [
      'australia',
      { ...loader, refrigerant: 'R-1234yf', action: 'buy' },
      'hfo',
      'look-up',
      ['au-handling-licence'],
    ],
    [
      'canada',
      { ...loader, refrigerant: 'R-1234yf' },
      'hfo',
      'look-up',
      ['ca-certified', 'ca-ontario-odp-card', 'ca-other-province'],
    ],
    ['australia', { ...loader }, 'fluorocarbon', 'required', ['au-handling-licence']],
    [
      'australia',
      { ...loader, action: 'buy' },
      'fluorocarbon',
      'required',
      ['au-trading-authorisation'],
    ],
    ['australia', { ...loader, refrigerant: 'R-600a' }, 'no-fluorocarbon', 'look-up', []],
    [
      'australia',
      { ...loader, refrigerant: 'R-1234yf' },
      'hfo',
      'look-up',
      ['au-handling-licence'],
    ],
    [
      'australia',
      { ...loader, refrigerant: 'R-513A' },
      'fluorocarbon',
      'required',
      ['au-handling-licence'],
    ],
  ]
  it.each(cells)('%s %o: %s, %s', (law, input, regime, needed, anyOf) => {
    const { result } = ask({ ...input, law })
    expect(result.regime.ids).toEqual([regime])
    expect(result.certificate.needed).toBe(needed)
    expect(result.certificate.anyOf.map(({ id }) => id)).toEqual(anyOf)
  })

  it('leaves open in the EU what an off-road machine of unknown work is, and asks for it', () => {
    const crane = { ...loader, law: 'eu', certificates: ['eu-training-attestation'] }
    const { result, warnings } = ask(crane)
    expect(result.regime).toMatchObject({ decided: false, missing: ['sector'] })
    expect(result.certificate.held).toBe('cannot-tell')
    expect(warnings.map(({ code }) => code)).toContain('regime-undecided')
    expect(ask({ ...crane, sector: 'other' }).result.certificate.held).toBe('cannot-tell')
    expect(ask({ ...crane, sector: 'mining' }).result.certificate.held).toBe('enough')
  })

  it('cannot tell in the EU whether a stationary certificate reaches mobile work', () => {
    const held = (certificates: string[]) =>
      ask({ ...digger, law: 'eu', certificates }).result.certificate.held
    expect(held(['eu-stationary-certificate'])).toBe('cannot-tell')
    expect(held(['eu-stationary-certificate', 'eu-training-attestation'])).toBe('enough')
    expect(held(['us-609'])).toBe('not-enough')
    expect(held([])).toBe('not-enough')
  })

  it('dates in the UK what was said of buying, and says that guidance since was not seen', () => {
    const { certificate } = ask({ ...road, law: 'uk', action: 'buy' }).result
    expect(ids(certificate.statements)).toEqual(['purchase-2015', 'purchase-proof'])
    const [first, second] = certificate.statements
    expect(first?.text).toMatch(/^In June 2015/u)
    expect(second?.text).toMatch(/^On 30 September 2015.*look it up/u)
    expect(second).toMatchObject({ mark: 'secondary', edition: '2015' })
  })

  it('binds release in the EU by the gas, whatever regime the attestation makes of the machine', () => {
    const venting = (refrigerant: string) =>
      ask({ ...road, law: 'eu', refrigerant }).result.venting.answers
    expect(venting('R-1234yf')).toEqual(['prohibited'])
    expect(venting('R-744')).toEqual(['look-up'])
  })

  it('cannot tell in Canada which card the place asks for, but knows that none is not enough', () => {
    const canada = { ...loader, law: 'canada' }
    expect(ask({ ...canada, certificates: ['ca-ontario-odp-card'] }).result.certificate.held).toBe(
      'cannot-tell',
    )
    expect(ask({ ...canada, certificates: ['us-609'] }).result.certificate.held).toBe('not-enough')
  })
})

describe('any question', () => {
  it('is answered for every machine, drive, refrigerant, charge and action, with statements', () => {
    let asked = 0
    for (const law of LAWS) {
      for (const machine of MACHINES) {
        for (const compressorDrive of [undefined, ...COMPRESSOR_DRIVES]) {
          for (const { id } of refrigerants()) {
            for (const charge of [undefined, '2 lb', '30 lb']) {
              for (const action of ACTIONS) {
                const { result } = rules.compute({
                  law,
                  machine,
                  compressorDrive,
                  refrigerant: id,
                  labelCharge:
                    charge === undefined ? undefined : rules.fields.labelCharge.parse(charge),
                  action,
                  newRefrigerant: action === 'retrofit' ? 'R-134a' : undefined,
                })
                asked += 1
                if (
                  result.regime.ids.length === 0 ||
                  result.certificate.statements.length === 0 ||
                  result.venting.answers.length === 0 ||
                  result.leakRepair.answers.length === 0 ||
                  result.elsewhere.statements.length === 0
                ) {
                  expect.fail(`${law} ${machine} ${compressorDrive} ${id} ${charge} ${action}`)
                }
              }
            }
          }
        }
      }
    }
    expect(asked).toBe(
      LAWS.length * MACHINES.length * 3 * refrigerants().length * 3 * ACTIONS.length,
    )
  })

  it('has an answer that fits the schema, and every statement among the sources', () => {
    for (const law of LAWS) {
      for (const input of [road, loader, split, window]) {
        for (const action of ACTIONS) {
          const answer = rules.run({
            ...input,
            law,
            action,
            ...(action === 'retrofit' ? { newRefrigerant: 'R-134a' } : {}),
          })
          rules.output.parse(answer)
          const cited = new Set(answer.sources.map(({ id }) => id))
          for (const id of ids(answer.result.certificate.statements)) {
            expect(cited).toContain(`${law}/${id}`)
          }
        }
      }
    }
  })

  it('is refused with the path when the refrigerant or a certificate is unknown', () => {
    expect(() => ask({ ...loader, refrigerant: 'R-1234zz' })).toThrow(
      expect.objectContaining({ code: 'unknown-refrigerant', path: ['refrigerant'] }),
    )
    expect(() => ask({ ...loader, certificates: ['us-607'] })).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    )
    expect(() => ask({ ...loader, labelCharge: '2.75' })).toThrow(
      expect.objectContaining({ code: 'ambiguous-quantity' }),
    )
  })

  it('carries the danger of a flammable refrigerant, also when it is only the retrofit target', () => {
    const flammable = ask({ ...road, refrigerant: 'R-1234yf' })
    expect(flammable.cautions.map(({ id }) => id)).toContain('flammable')
    const target = ask({ ...road, action: 'retrofit', newRefrigerant: 'R-152a' })
    expect(target.cautions.map(({ id }) => id)).toContain('flammable')
    expect(target.warnings.map(({ code }) => code)).toContain('flammable-retrofit')
  })
})

describe('whether a refrigerant may be in a machine', () => {
  const cells: [string, string, string, string[]][] = [
    ['us-federal', 'road-vehicle', 'R-290', ['not-acceptable']],
    ['us-federal', 'off-road', 'R-290', ['not-acceptable']],
    ['us-federal', 'off-road', 'R-600a', ['not-acceptable']],
    ['us-federal', 'off-road', 'R-454B', ['not-acceptable']],
    ['us-federal', 'off-road', 'R-1234yf', ['acceptable-with-conditions']],
    ['us-federal', 'road-vehicle', 'R-152a', ['acceptable-with-conditions']],
    ['us-federal', 'road-vehicle', 'R-744', ['acceptable-with-conditions']],
    ['us-federal', 'bus', 'R-744', ['look-up']],
    ['us-federal', 'off-road', 'R-134a', []],
    ['us-federal', 'stationary', 'R-290', []],
    ['eu', 'road-vehicle', 'R-134a', ['acceptable-with-conditions']],
    ['eu', 'off-road', 'R-134a', []],
    ['canada', 'off-road', 'R-12', ['acceptable-with-conditions']],
    ['australia', 'off-road', 'R-134a', ['acceptable-with-conditions']],
  ]
  it.each(cells)('%s, %s, %s: %j', (law, machine, refrigerant, answers) => {
    expect(
      ask({ ...loader, law, machine, refrigerant, action: 'charge' }).result.use.answers,
    ).toEqual(answers)
  })

  it('stops propane on its way into a vehicle, before anything else is asked', () => {
    const { warnings, cautions } = ask({ ...road, refrigerant: 'R-290', action: 'charge' })
    expect(warnings.map(({ code }) => code)).toContain('refrigerant-not-acceptable')
    expect(ids(cautions)).toContain('no-flammable-retrofit')
    const building = ask({ ...window, refrigerant: 'R-290', action: 'charge' })
    expect(building.warnings.map(({ code }) => code)).not.toContain('refrigerant-not-acceptable')
    const out = ask({ ...road, refrigerant: 'R-290', action: 'recover' })
    expect(out.warnings.map(({ code }) => code)).not.toContain('refrigerant-not-acceptable')
    expect(ids(out.cautions)).toContain('hydrocarbons-rated-machine')
  })
})

describe('cautions follow from machine, refrigerant and action', () => {
  const always = ['local-rules']
  const handled = ['pressure', 'cold-burns', 'asphyxiation']
  const opening = [
    ...handled,
    'goggles-even-empty',
    'trapped-liquid',
    'first-aid-eyes',
    'first-aid-frostbite',
    'first-aid-inhalation',
  ]
  const recovering = [...handled, 'full-cylinder', 'no-disposable-refill', 'do-not-mix']
  const charging = [
    ...handled,
    'no-high-side-running',
    'warm-water-only',
    'no-liquid-to-suction',
    'weigh-the-charge',
  ]
  const fumes = ['decomposition', 'first-aid-hydrogen-fluoride']
  const cells: [string, Input, string[]][] = [
    ['opening a loader', { ...loader, action: 'open' }, [...opening, ...fumes, 'no-venting']],
    [
      'charging R-1234yf',
      { ...loader, refrigerant: 'R-1234yf', action: 'charge' },
      [...charging, 'no-venting', 'flammable'],
    ],
    ['recovering R-134a', loader, [...recovering, ...fumes, 'no-venting']],
    [
      'recovering propane',
      { ...loader, refrigerant: 'R-290' },
      [...recovering, 'no-venting', 'flammable', 'hydrocarbons-rated-machine'],
    ],
    [
      'opening R-744',
      { ...loader, refrigerant: 'R-744', action: 'open' },
      [...opening, 'carbon-dioxide', 'carbon-dioxide-release'],
    ],
    [
      'charging R-744 in the EU',
      { ...digger, law: 'eu', refrigerant: 'R-744', action: 'charge' },
      [...charging, 'no-venting', 'carbon-dioxide', 'dry-ice'],
    ],
    [
      'opening an electric compressor',
      { ...loader, compressorDrive: 'electric', action: 'open' },
      [...opening, ...fumes, 'no-venting', 'high-voltage', 'electric-compressor-oil'],
    ],
    [
      'scrapping a loader',
      { ...loader, action: 'dispose' },
      [...opening, ...recovering, ...fumes, 'no-venting'],
    ],
    ['buying', { ...loader, action: 'buy' }, ['no-venting']],
  ]
  it.each(cells)('%s', (_, input, expected) => {
    expect(new Set(ids(ask(input).cautions))).toEqual(new Set([...always, ...expected]))
  })
})
