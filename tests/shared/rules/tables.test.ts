import { describe, expect, it } from 'vitest'
import { LAWS, type Law } from '../../../shared/fields/index.ts'
import { JURISDICTIONS } from '../../../shared/rules/library.ts'
import { type Row, TOPICS } from '../../../shared/rules/types.ts'

/** `machine bus|off-road, forPay true → answer [what is enough]: statements`. */
function lineOf(row: Row): string {
  const { when, answer, anyOf, perhaps, unsettled, placeDecides, statements, cite } = row
  const conditions = Object.entries(when).map(([name, value]) => `${name} ${inWords(value)}`)
  const enough = anyOf ? ` [${anyOf.join('|')}]` : ''
  const cited = cite ? ` cites ${cite.join('|')}` : ''
  const open = [
    perhaps && `perhaps ${perhaps.join('|')}`,
    unsettled && 'unsettled',
    placeDecides && 'by place',
  ]
  const marks = open.flatMap((mark) => (mark ? ` ${mark}` : [])).join('')
  const head = `${conditions.join(', ') || 'else'} → ${answer ?? '-'}${enough}${marks}`
  return `${head}: ${statements.join(' ')}${cited}`
}

function inWords(value: unknown): string {
  if (Array.isArray(value)) return value.map(inWords).join('|')
  if (typeof value !== 'object' || value === null) return String(value)
  const rows = Object.entries(value).map(([name, each]) => `${name} ${inWords(each)}`)
  return `(${rows.join(', ')})`
}

/**
 * The decision tables a second time, a row a line: a row, a condition or an answer that is lost or
 * turned shows here; what certificates permit is derived from the sections in `closed.test.ts`.
 */
const TABLES: Readonly<Record<Law, Readonly<Record<string, readonly string[]>>>> = {
  'us-federal': {
    regime: [
      'machine road-vehicle → mvac: vehicle-definition vehicle-drive',
      'machine bus, refrigerant R-22 → appliance: bus-r22-excluded not-mvac-608 appliance-definition',
      'machine bus → mvac: vehicle-definition bus-r22-excluded',
      'machine refrigerated-cargo → appliance: bus-r22-excluded not-mvac-608 appliance-definition',
      'machine off-road, compressorDrive electric, factorySealed true, chargeLb (atMost 5) → small-appliance: mvac-like-definition off-road-608 small-appliance',
      'machine off-road, compressorDrive electric → appliance: mvac-like-definition off-road-608 appliance-definition',
      'machine off-road, refrigerant R-22 → appliance: mvac-like-definition off-road-608 appliance-definition',
      'machine off-road, compressorDrive open, chargeLb (atMost 20) → mvac-like: mvac-like-definition',
      'machine off-road, compressorDrive open, chargeLb (above 20) → appliance: mvac-like-definition off-road-608 appliance-definition',
      'machine stationary, factorySealed true, chargeLb (atMost 5) → small-appliance: small-appliance appliance-definition',
      'machine stationary → appliance: appliance-definition',
    ],
    certificate: [
      'action buy, refrigerant R-744 → not-required: sales-all venting-co2',
      'action buy, regime mvac|mvac-like, refrigerant R-12 → required [us-609] unsettled: sales-ods-small',
      'action buy, regime mvac|mvac-like, refrigerant R-12 → required [us-609|us-608-type-i|us-608-type-ii|us-608-type-iii|us-608-universal]: sales-all',
      'action buy, regime mvac|mvac-like, refrigerant R-134a|R-1234yf|R-152a → required [us-609|us-608-type-i|us-608-type-ii|us-608-type-iii|us-608-universal]: sales-all sales-small-can',
      'action buy, family cfc|hcfc|hfc|hfo → required [us-608-type-i|us-608-type-ii|us-608-type-iii|us-608-universal]: sales-all sales-r22',
      'action buy → look-up: sales-all',
      'action dispose, regime mvac|mvac-like → not-required: disposal-certificate disposal-resale',
      'action dispose, regime small-appliance → not-required: disposal-certificate',
      'regime mvac, action charge, forPay true → required [us-609]: 609-for-pay top-off barter-is-pay universal-not-609',
      'regime mvac, forPay true → required [us-609]: 609-for-pay barter-is-pay universal-not-609',
      'regime mvac, forPay false → not-required: unpaid-not-609 barter-is-pay',
      'regime mvac-like, action charge → required [us-609|us-608-type-ii|us-608-universal]: mvac-like-certificate top-off type-ii apprentice cites mvac-like-certificate|type-ii',
      'regime mvac-like → required [us-609|us-608-type-ii|us-608-universal]: mvac-like-certificate type-ii apprentice cites mvac-like-certificate|type-ii',
      'regime small-appliance → required [us-608-type-i|us-608-universal]: type-i apprentice',
      'regime appliance, machine bus|refrigerated-cargo → required [us-608-type-ii|us-608-universal]: type-ii bus-type-ii apprentice',
      'regime appliance → required [us-608-type-ii|us-608-universal]: type-ii apprentice',
    ],
    venting: [
      'refrigerant R-744 → exempt: venting-co2',
      'regime mvac|mvac-like, family hydrocarbon → prohibited: venting-prohibited venting-vehicles venting-vehicle-hydrocarbon',
      'regime mvac|mvac-like → prohibited: venting-prohibited venting-vehicles',
      'onlyFamily hydrocarbon → look-up: venting-prohibited venting-hydrocarbon',
      'else → prohibited: venting-prohibited',
    ],
    use: [
      'regime mvac|mvac-like, family flammable, notRefrigerant R-152a|R-1234yf → not-acceptable: flammable-2015 retrofit-no-flammable',
      'regime mvac|mvac-like, refrigerant R-152a|R-1234yf → acceptable-with-conditions: new-systems-only',
      'machine bus, refrigerant R-744 → look-up: retrofit-look-up retrofit-r744',
      'regime mvac|mvac-like, refrigerant R-744 → acceptable-with-conditions: retrofit-r744 r744-use',
    ],
    equipment: [
      'regime mvac, refrigerant R-12, forPay true → -: equipment-r12',
      'regime mvac-like, refrigerant R-12 → -: equipment-r12',
      'regime mvac, refrigerant R-134a, forPay true → -: equipment-r134a equipment-r134a-performance equipment-r134a-older',
      'regime mvac-like, refrigerant R-134a → -: equipment-r134a equipment-r134a-performance equipment-r134a-older',
      'regime mvac, refrigerant R-1234yf, forPay true → -: equipment-r1234yf equipment-r1234yf-place',
      'regime mvac-like, refrigerant R-1234yf → -: equipment-r1234yf equipment-r1234yf-place',
      'regime mvac, notRefrigerant R-12|R-134a|R-1234yf|R-744, forPay true → -: equipment-other',
      'regime mvac-like, notRefrigerant R-12|R-134a|R-1234yf|R-744 → -: equipment-other',
      'regime mvac|mvac-like, refrigerant R-744 → -: equipment-r744',
      'regime mvac, forPay true → -: properly-using',
      'regime mvac-like → -: properly-using',
      'regime mvac-like, action open → -: equipment-at-hand',
      'regime mvac-like, action charge → -: top-off-equipment',
      'regime mvac|mvac-like, action dispose, notRefrigerant R-744 → -: recover-102',
      'regime mvac-like, action dispose, notRefrigerant R-744 → -: recover-102-old',
      'regime appliance, notRefrigerant R-744 → -: equipment-608 equipment-608-minor',
      'regime small-appliance, notRefrigerant R-744 → -: equipment-small',
    ],
    reuse: [
      'regime mvac, notRefrigerant R-744, forPay true → recycle-first: recycle-before-return same-vehicle recover-only recycled-stays sale-needs-reclaim',
      'regime mvac-like, notRefrigerant R-744 → recycle-first: recycle-before-return same-vehicle recover-only recycled-stays sale-needs-reclaim',
      'regime mvac|mvac-like, action dispose, notRefrigerant R-744 → recycle-first: salvage',
      'regime appliance|small-appliance, notRefrigerant R-744 → same-owner: reuse-608 sale-needs-reclaim',
      'regime mvac|mvac-like, refrigerant R-12 → recycle-first: recycled-r12',
    ],
    leakRepair: [
      'regime mvac|mvac-like, family hfc, chargeLb (atLeast 15) → look-up: no-leak-duty leak-15-lb leak-15-lb-rates leak-15-lb-vehicles',
      'regime mvac|mvac-like, family hfc, chargeLb (below 15) → no-federal-duty: no-leak-duty cab-below-limits',
      'regime mvac|mvac-like, notFamily hfc → no-federal-duty: no-leak-duty cab-below-limits',
      'regime appliance, family ods, chargeLb (atLeast 50) → duty: leak-50-lb',
      'regime appliance, family ods, chargeLb (below 50), notFamily hfc → no-federal-duty: cab-below-limits',
      'regime appliance, family hfc, chargeLb (atLeast 15) → look-up: leak-15-lb leak-15-lb-rates',
      'regime appliance, family hfc, chargeLb (below 15) → no-federal-duty: cab-below-limits',
      'regime appliance, notFamily ods|hfc → no-federal-duty: cab-below-limits',
      'regime small-appliance → no-federal-duty: cab-below-limits',
    ],
    retrofit: [
      'regime appliance|small-appliance → look-up: retrofit-look-up',
      'regime mvac|mvac-like, to (family flammable) → not-acceptable: retrofit-no-flammable flammable-2015 retrofit-nonroad-yf',
      'regime mvac|mvac-like, to (refrigerant R-744) → not-acceptable: retrofit-r744',
      'regime mvac|mvac-like, refrigerant R-12, to (refrigerant R-134a|R-416A) → acceptable-with-conditions: retrofit-r134a retrofit-label retrofit-fittings retrofit-shut-off',
      'else → look-up: retrofit-look-up',
    ],
    records: [
      'regime mvac, forPay true → -: records-shop records-proof records-sent-to records-years records-on-site',
      'regime mvac-like → -: records-proof records-sent-to records-years records-equipment-608',
      'regime appliance|small-appliance → -: records-certificate records-years-608 records-certificate-years records-equipment-608',
      'regime mvac, action dispose → -: records-equipment-608',
      'regime appliance, chargeLb (atLeast 50) → -: records-invoice-50',
      'regime appliance, action dispose, chargeLb (above 5, below 50) → -: records-disposal records-disposal-years',
      'action dispose, regime mvac|mvac-like|small-appliance → -: records-final-person',
      'action buy → -: records-seller',
      'action buy, family ods → -: records-small-ods',
    ],
    elsewhere: [
      'else → -: states-differ texts-of-2015',
      'regime mvac|mvac-like, family hydrocarbon → -: states-hydrocarbon',
      'action buy, family hfc → -: states-hfc',
      'action buy|charge, family hfc → -: hfc-cylinders-2028',
      'machine off-road, family hfc, action buy|retrofit → -: nonroad-2028',
    ],
  },
  eu: {
    regime: [
      'machine road-vehicle → vehicle: scope-vehicles scope-mobile scope-alternatives',
      'machine bus → mobile: scope-mobile scope-bus scope-alternatives',
      'machine off-road, sector agriculture|mining|construction → mobile: scope-vehicles scope-mobile scope-alternatives',
      'machine off-road → other-mobile: scope-vehicles scope-mobile scope-other-machines',
      'machine refrigerated-cargo → mobile: scope-mobile',
      'machine stationary, family hfc|hfo|cfc|hcfc|pfc → stationary: scope-fluorinated',
      'machine stationary → no-f-gas: scope-fluorinated stationary-alternatives',
    ],
    certificate: [
      'action buy, family hfc|hfo|cfc|hcfc|pfc → look-up: buy',
      'action buy → look-up: national',
      'machine refrigerated-cargo → look-up: stationary-certificate stationary-rule attestation-rule',
      'regime vehicle|mobile, action recover|dispose, family hfc|hfo|cfc|hcfc|pfc → required [eu-training-attestation] perhaps eu-stationary-certificate: recover-attestation attestation-rule attestation-transition attestation-m2 attestation-types',
      'regime vehicle|mobile, action recover|dispose → look-up [eu-training-attestation]: attestation-recovery-other attestation-work attestation-rule attestation-transition attestation-m2 attestation-types',
      'regime vehicle|mobile → required [eu-training-attestation] perhaps eu-stationary-certificate: attestation-work attestation-rule attestation-transition attestation-m2 attestation-types',
      'regime other-mobile → look-up: scope-other-machines national',
      'regime stationary, action recover|dispose → required [eu-stationary-certificate]: stationary-certificate stationary-rule',
      'regime stationary → look-up [eu-stationary-certificate]: other-work stationary-certificate stationary-rule',
      'regime no-f-gas → look-up [eu-stationary-certificate]: stationary-alternatives stationary-rule',
    ],
    venting: [
      'family hfc|hfo|cfc|hcfc|pfc → prohibited: release',
      'else → look-up: scope-fluorinated',
    ],
    use: [
      'regime vehicle, family hfc, notRefrigerant R-152a → acceptable-with-conditions: fill-150',
    ],
    equipment: [],
    reuse: [
      'regime stationary → recover: recover-duty-stationary',
      'regime mobile, family hfc|hfo|cfc|hcfc|pfc → recover: recover-duty-mobile',
    ],
    leakRepair: [
      'regime vehicle, family hfc|hfo|cfc|hcfc|pfc → look-up: leak leak-vehicle',
      'regime mobile|other-mobile|stationary, family hfc|hfo|cfc|hcfc|pfc → look-up: leak',
      'notFamily hfc|hfo|cfc|hcfc|pfc → look-up: scope-fluorinated',
    ],
    retrofit: [
      'regime vehicle → look-up: limit-150 fill-150 retrofit-150',
      'else → look-up: national',
    ],
    records: ['family hfc|hfo|cfc|hcfc|pfc → -: records'],
    elsewhere: ['else → -: national'],
  },
  uk: {
    regime: [
      'notFamily hfc|hfo|cfc|hcfc|pfc → no-f-gas: other-gas',
      'machine road-vehicle → vehicle: scope',
      'machine bus|off-road|refrigerated-cargo → mobile: scope off-road',
      'machine stationary → stationary: stationary',
    ],
    certificate: [
      'regime no-f-gas → look-up: other-gas',
      'action buy → look-up: purchase-2015 purchase-proof',
      'regime vehicle, action recover|dispose → required [uk-training-attestation]: recover-attestation trainee',
      'regime vehicle → look-up [uk-training-attestation]: recover-attestation no-recovery',
      'regime mobile → look-up: off-road',
      'regime stationary → look-up: stationary',
    ],
    venting: ['regime no-f-gas → look-up: other-gas', 'else → look-up: release'],
    use: [],
    equipment: [],
    reuse: [],
    leakRepair: [
      'regime vehicle|mobile|stationary → look-up: leak',
      'regime no-f-gas → look-up: other-gas',
    ],
    retrofit: ['else → look-up: nations'],
    records: ['else → -: records'],
    elsewhere: ['else → -: nations'],
  },
  canada: {
    regime: [
      'family hfc|cfc|hcfc|pfc → halocarbon: scope-list federal-or-province',
      'family hfo → hfo: scope-list hfo',
      'else → no-halocarbon: scope-list outside ontario-hydrocarbons',
    ],
    certificate: [
      'regime no-halocarbon → look-up: outside',
      'regime hfo → look-up [ca-certified|ca-ontario-odp-card|ca-other-province]: hfo ontario-card',
      'action buy → look-up [ca-certified|ca-ontario-odp-card|ca-other-province]: federal-or-province ontario-card',
      'else → required [ca-certified|ca-ontario-odp-card|ca-other-province] by place: federal-or-province federal-certified ontario-card',
    ],
    venting: [
      'regime no-halocarbon → look-up: outside',
      'regime hfo → look-up: hfo',
      'else → prohibited: release federal-recover',
    ],
    use: ['family cfc, action charge → acceptable-with-conditions: federal-cfc ontario-leak'],
    equipment: ['regime halocarbon → -: federal-recover federal-container'],
    reuse: [],
    leakRepair: [
      'regime halocarbon → look-up: ontario-leak federal-leak federal-no-test-gas federal-container-leak',
      'regime hfo → look-up: hfo ontario-leak',
      'regime no-halocarbon → look-up: outside',
    ],
    retrofit: ['else → look-up: provinces'],
    records: [
      'regime halocarbon → -: records records-years',
      'regime hfo|no-halocarbon → -: provinces',
      'regime halocarbon, action charge → -: ontario-leak',
    ],
    elsewhere: ['else → -: provinces'],
  },
  australia: {
    regime: [
      'family cfc|hcfc|hfc|pfc → fluorocarbon: scope-list handling',
      'family hfo → hfo: scope-list hfo',
      'else → no-fluorocarbon: scope-list scope',
    ],
    certificate: [
      'regime no-fluorocarbon → look-up: scope',
      'regime hfo → look-up [au-handling-licence]: hfo scope-list',
      'action buy → required [au-trading-authorisation]: trading',
      'else → required [au-handling-licence]: handling licence-kinds',
    ],
    venting: [
      'regime no-fluorocarbon → look-up: scope',
      'regime hfo → look-up: hfo',
      'else → look-up: release',
    ],
    use: [
      'action charge|retrofit, family cfc|hcfc|hfc|pfc → acceptable-with-conditions: other-charge',
    ],
    equipment: ['regime fluorocarbon → -: code containers'],
    reuse: [],
    leakRepair: [
      'regime fluorocarbon → look-up: leak',
      'regime hfo → look-up: hfo',
      'regime no-fluorocarbon → look-up: scope',
    ],
    retrofit: ['else → look-up: states'],
    records: ['regime fluorocarbon → -: records', 'regime hfo|no-fluorocarbon → -: states'],
    elsewhere: ['else → -: states'],
  },
}

describe.each(LAWS)('the decision tables of %s', (law) => {
  it.each(TOPICS)('%s', (topic) => {
    expect(JURISDICTIONS[law].tables[topic].map(lineOf)).toEqual(TABLES[law][topic] ?? [])
  })
})
