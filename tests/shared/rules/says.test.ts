import { describe, expect, it } from 'vitest'
import { LAWS, type Law } from '../../../shared/fields/index.ts'
import { refrigerant } from '../../../shared/refrigerant/index.ts'
import { type Decision, decide } from '../../../shared/rules/decide.ts'
import { type Facts, refrigerantFacts } from '../../../shared/rules/facts.ts'
import { TOPICS, type Topic } from '../../../shared/rules/types.ts'

/**
 * A regression, not a check against the law: which answer and statements each table gives for the jobs that
 * between them reach every row. A statement lost from a row, or a row moved, shows here; what the
 * statements say is held to the sections in tests/published/law.test.ts.
 */
interface Job extends Omit<Facts, 'refrigerant' | 'to' | 'chargeKg' | 'sector'> {
  readonly sector?: Facts['sector']
  readonly refrigerant: string
  readonly pounds: number
  readonly to?: string
}
type Said = Readonly<Partial<Record<Topic, string>>>

const JOBS: Readonly<Record<Law, readonly (readonly [Job, Said])[]>> = {
  'us-federal': [
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-290',
        pounds: 2,
        action: 'dispose',
        forPay: true,
      },
      {
        regime: 'mvac: vehicle-definition vehicle-drive',
        certificate: 'not-required: disposal-certificate disposal-resale',
        venting: 'prohibited: venting-prohibited venting-vehicles venting-vehicle-hydrocarbon',
        use: 'not-acceptable: flammable-2015 retrofit-no-flammable',
        equipment: 'equipment-other properly-using recover-102',
        reuse:
          'recycle-first: recycle-before-return same-vehicle recover-only recycled-stays sale-needs-reclaim salvage',
        leakRepair: 'no-federal-duty: no-leak-duty cab-below-limits',
        records:
          'records-shop records-proof records-sent-to records-years records-on-site records-equipment-608 records-final-person',
        elsewhere: 'states-differ texts-of-2015 states-hydrocarbon',
      },
    ],
    [
      {
        machine: 'off-road',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 60,
        action: 'buy',
        forPay: true,
      },
      {
        regime: 'appliance: mvac-like-definition off-road-608 appliance-definition',
        certificate:
          'required us-608-type-i us-608-type-ii us-608-type-iii us-608-universal: sales-all sales-r22',
        venting: 'prohibited: venting-prohibited',
        equipment: 'equipment-608 equipment-608-minor',
        reuse: 'same-owner: reuse-608 sale-needs-reclaim',
        leakRepair: 'look-up: leak-15-lb leak-15-lb-rates',
        records:
          'records-certificate records-years-608 records-certificate-years records-equipment-608 records-invoice-50 records-seller',
        elsewhere: 'states-differ texts-of-2015 states-hfc hfc-cylinders-2028 nonroad-2028',
      },
    ],
    [
      {
        machine: 'bus',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 30,
        action: 'retrofit',
        forPay: true,
        to: 'R-134a',
      },
      {
        regime: 'mvac: vehicle-definition bus-r22-excluded',
        certificate: 'required us-609: 609-for-pay barter-is-pay universal-not-609',
        venting: 'prohibited: venting-prohibited venting-vehicles',
        equipment:
          'equipment-r134a equipment-r134a-performance equipment-r134a-older properly-using',
        reuse:
          'recycle-first: recycle-before-return same-vehicle recover-only recycled-stays sale-needs-reclaim',
        leakRepair: 'look-up: no-leak-duty leak-15-lb leak-15-lb-rates leak-15-lb-vehicles',
        retrofit: 'look-up: retrofit-look-up',
        records: 'records-shop records-proof records-sent-to records-years records-on-site',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'off-road',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-12',
        pounds: 2,
        action: 'charge',
        forPay: true,
      },
      {
        regime: 'mvac-like: mvac-like-definition',
        certificate:
          'required us-609 us-608-type-ii us-608-universal: mvac-like-certificate top-off type-ii apprentice',
        venting: 'prohibited: venting-prohibited venting-vehicles',
        equipment: 'equipment-r12 properly-using top-off-equipment',
        reuse:
          'recycle-first: recycle-before-return same-vehicle recover-only recycled-stays sale-needs-reclaim recycled-r12',
        leakRepair: 'no-federal-duty: no-leak-duty cab-below-limits',
        records: 'records-proof records-sent-to records-years records-equipment-608',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-744',
        pounds: 2,
        action: 'retrofit',
        forPay: false,
        to: 'R-1234yf',
      },
      {
        regime: 'mvac: vehicle-definition vehicle-drive',
        certificate: 'not-required: unpaid-not-609 barter-is-pay',
        venting: 'exempt: venting-co2',
        use: 'acceptable-with-conditions: retrofit-r744 r744-use',
        equipment: 'equipment-r744',
        leakRepair: 'no-federal-duty: no-leak-duty cab-below-limits',
        retrofit: 'not-acceptable: retrofit-no-flammable flammable-2015 retrofit-nonroad-yf',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'refrigerated-cargo',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-290',
        pounds: 12,
        action: 'dispose',
        forPay: true,
      },
      {
        regime: 'appliance: bus-r22-excluded not-mvac-608 appliance-definition',
        certificate: 'required us-608-type-ii us-608-universal: type-ii bus-type-ii apprentice',
        venting: 'look-up: venting-prohibited venting-hydrocarbon',
        equipment: 'equipment-608 equipment-608-minor',
        reuse: 'same-owner: reuse-608 sale-needs-reclaim',
        leakRepair: 'no-federal-duty: cab-below-limits',
        records:
          'records-certificate records-years-608 records-certificate-years records-equipment-608 records-disposal records-disposal-years',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-1234yf',
        pounds: 2,
        action: 'charge',
        forPay: true,
      },
      {
        regime: 'mvac: vehicle-definition vehicle-drive',
        certificate: 'required us-609: 609-for-pay top-off barter-is-pay universal-not-609',
        venting: 'prohibited: venting-prohibited venting-vehicles',
        use: 'acceptable-with-conditions: new-systems-only',
        equipment: 'equipment-r1234yf equipment-r1234yf-place properly-using',
        reuse:
          'recycle-first: recycle-before-return same-vehicle recover-only recycled-stays sale-needs-reclaim',
        leakRepair: 'no-federal-duty: no-leak-duty cab-below-limits',
        records: 'records-shop records-proof records-sent-to records-years records-on-site',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'off-road',
        compressorDrive: 'electric',
        factorySealed: true,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'small-appliance: mvac-like-definition off-road-608 small-appliance',
        certificate: 'required us-608-type-i us-608-universal: type-i apprentice',
        venting: 'prohibited: venting-prohibited',
        equipment: 'equipment-small',
        reuse: 'same-owner: reuse-608 sale-needs-reclaim',
        leakRepair: 'no-federal-duty: cab-below-limits',
        records:
          'records-certificate records-years-608 records-certificate-years records-equipment-608',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-12',
        pounds: 2,
        action: 'buy',
        forPay: true,
      },
      {
        regime: 'mvac: vehicle-definition vehicle-drive',
        certificate: 'required us-609: sales-ods-small sales-all',
        venting: 'prohibited: venting-prohibited venting-vehicles',
        equipment: 'equipment-r12 properly-using',
        reuse:
          'recycle-first: recycle-before-return same-vehicle recover-only recycled-stays sale-needs-reclaim recycled-r12',
        leakRepair: 'no-federal-duty: no-leak-duty cab-below-limits',
        records:
          'records-shop records-proof records-sent-to records-years records-on-site records-seller records-small-ods',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'bus',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-744',
        pounds: 2,
        action: 'buy',
        forPay: true,
      },
      {
        regime: 'mvac: vehicle-definition bus-r22-excluded',
        certificate: 'not-required: sales-all venting-co2',
        venting: 'exempt: venting-co2',
        use: 'look-up: retrofit-look-up retrofit-r744',
        equipment: 'equipment-r744 properly-using',
        leakRepair: 'no-federal-duty: no-leak-duty cab-below-limits',
        records:
          'records-shop records-proof records-sent-to records-years records-on-site records-seller',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'buy',
        forPay: true,
      },
      {
        regime: 'mvac: vehicle-definition vehicle-drive',
        certificate:
          'required us-609 us-608-type-i us-608-type-ii us-608-type-iii us-608-universal: sales-all sales-small-can',
        venting: 'prohibited: venting-prohibited venting-vehicles',
        equipment:
          'equipment-r134a equipment-r134a-performance equipment-r134a-older properly-using',
        reuse:
          'recycle-first: recycle-before-return same-vehicle recover-only recycled-stays sale-needs-reclaim',
        leakRepair: 'no-federal-duty: no-leak-duty cab-below-limits',
        records:
          'records-shop records-proof records-sent-to records-years records-on-site records-seller',
        elsewhere: 'states-differ texts-of-2015 states-hfc hfc-cylinders-2028',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'retrofit',
        forPay: true,
        to: 'R-744',
      },
      {
        regime: 'mvac: vehicle-definition vehicle-drive',
        certificate: 'required us-609: 609-for-pay barter-is-pay universal-not-609',
        venting: 'prohibited: venting-prohibited venting-vehicles',
        equipment:
          'equipment-r134a equipment-r134a-performance equipment-r134a-older properly-using',
        reuse:
          'recycle-first: recycle-before-return same-vehicle recover-only recycled-stays sale-needs-reclaim',
        leakRepair: 'no-federal-duty: no-leak-duty cab-below-limits',
        retrofit: 'not-acceptable: retrofit-r744',
        records: 'records-shop records-proof records-sent-to records-years records-on-site',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-12',
        pounds: 2,
        action: 'retrofit',
        forPay: true,
        to: 'R-134a',
      },
      {
        regime: 'mvac: vehicle-definition vehicle-drive',
        certificate: 'required us-609: 609-for-pay barter-is-pay universal-not-609',
        venting: 'prohibited: venting-prohibited venting-vehicles',
        equipment: 'equipment-r12 properly-using',
        reuse:
          'recycle-first: recycle-before-return same-vehicle recover-only recycled-stays sale-needs-reclaim recycled-r12',
        leakRepair: 'no-federal-duty: no-leak-duty cab-below-limits',
        retrofit:
          'acceptable-with-conditions: retrofit-r134a retrofit-label retrofit-fittings retrofit-shut-off',
        records: 'records-shop records-proof records-sent-to records-years records-on-site',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'bus',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-22',
        pounds: 60,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'appliance: bus-r22-excluded not-mvac-608 appliance-definition',
        certificate: 'required us-608-type-ii us-608-universal: type-ii bus-type-ii apprentice',
        venting: 'prohibited: venting-prohibited',
        equipment: 'equipment-608 equipment-608-minor',
        reuse: 'same-owner: reuse-608 sale-needs-reclaim',
        leakRepair: 'duty: leak-50-lb',
        records:
          'records-certificate records-years-608 records-certificate-years records-equipment-608 records-invoice-50',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'off-road',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'mvac-like: mvac-like-definition',
        certificate:
          'required us-609 us-608-type-ii us-608-universal: mvac-like-certificate type-ii apprentice',
        venting: 'prohibited: venting-prohibited venting-vehicles',
        equipment:
          'equipment-r134a equipment-r134a-performance equipment-r134a-older properly-using equipment-at-hand',
        reuse:
          'recycle-first: recycle-before-return same-vehicle recover-only recycled-stays sale-needs-reclaim',
        leakRepair: 'no-federal-duty: no-leak-duty cab-below-limits',
        records: 'records-proof records-sent-to records-years records-equipment-608',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'off-road',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'dispose',
        forPay: true,
      },
      {
        regime: 'mvac-like: mvac-like-definition',
        certificate: 'not-required: disposal-certificate disposal-resale',
        venting: 'prohibited: venting-prohibited venting-vehicles',
        equipment:
          'equipment-r134a equipment-r134a-performance equipment-r134a-older properly-using recover-102 recover-102-old',
        reuse:
          'recycle-first: recycle-before-return same-vehicle recover-only recycled-stays sale-needs-reclaim salvage',
        leakRepair: 'no-federal-duty: no-leak-duty cab-below-limits',
        records:
          'records-proof records-sent-to records-years records-equipment-608 records-final-person',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
    [
      {
        machine: 'stationary',
        compressorDrive: 'open',
        factorySealed: true,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'small-appliance: small-appliance appliance-definition',
        certificate: 'required us-608-type-i us-608-universal: type-i apprentice',
        venting: 'prohibited: venting-prohibited',
        equipment: 'equipment-small',
        reuse: 'same-owner: reuse-608 sale-needs-reclaim',
        leakRepair: 'no-federal-duty: cab-below-limits',
        records:
          'records-certificate records-years-608 records-certificate-years records-equipment-608',
        elsewhere: 'states-differ texts-of-2015',
      },
    ],
  ],
  eu: [
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'retrofit',
        forPay: true,
        to: 'R-134a',
      },
      {
        regime: 'vehicle: scope-vehicles scope-mobile scope-alternatives',
        certificate:
          'required eu-training-attestation: attestation-work attestation-rule attestation-transition attestation-m2 attestation-types',
        venting: 'prohibited: release',
        use: 'acceptable-with-conditions: fill-150',
        leakRepair: 'look-up: leak leak-vehicle',
        retrofit: 'look-up: limit-150 fill-150 retrofit-150',
        records: 'records',
        elsewhere: 'national',
      },
    ],
    [
      {
        machine: 'off-road',
        sector: 'other',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-290',
        pounds: 2,
        action: 'retrofit',
        forPay: true,
        to: 'R-134a',
      },
      {
        regime: 'other-mobile: scope-vehicles scope-mobile scope-other-machines',
        certificate: 'look-up: scope-other-machines national',
        venting: 'look-up: scope-fluorinated',
        leakRepair: 'look-up: scope-fluorinated',
        retrofit: 'look-up: national',
        elsewhere: 'national',
      },
    ],
    [
      {
        machine: 'stationary',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'stationary: scope-fluorinated',
        certificate:
          'look-up eu-stationary-certificate: other-work stationary-certificate stationary-rule',
        venting: 'prohibited: release',
        reuse: 'recover: recover-duty-stationary',
        leakRepair: 'look-up: leak',
        records: 'records',
        elsewhere: 'national',
      },
    ],
    [
      {
        machine: 'bus',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'recover',
        forPay: true,
      },
      {
        regime: 'mobile: scope-mobile scope-bus scope-alternatives',
        certificate:
          'required eu-training-attestation: recover-attestation attestation-rule attestation-transition attestation-m2 attestation-types',
        venting: 'prohibited: release',
        reuse: 'recover: recover-duty-mobile',
        leakRepair: 'look-up: leak',
        records: 'records',
        elsewhere: 'national',
      },
    ],
    [
      {
        machine: 'stationary',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-290',
        pounds: 2,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'no-f-gas: scope-fluorinated stationary-alternatives',
        certificate: 'look-up eu-stationary-certificate: stationary-alternatives stationary-rule',
        venting: 'look-up: scope-fluorinated',
        leakRepair: 'look-up: scope-fluorinated',
        elsewhere: 'national',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'buy',
        forPay: true,
      },
      {
        regime: 'vehicle: scope-vehicles scope-mobile scope-alternatives',
        certificate: 'look-up: buy',
        venting: 'prohibited: release',
        use: 'acceptable-with-conditions: fill-150',
        leakRepair: 'look-up: leak leak-vehicle',
        records: 'records',
        elsewhere: 'national',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-290',
        pounds: 2,
        action: 'recover',
        forPay: true,
      },
      {
        regime: 'vehicle: scope-vehicles scope-mobile scope-alternatives',
        certificate:
          'look-up eu-training-attestation: attestation-recovery-other attestation-work attestation-rule attestation-transition attestation-m2 attestation-types',
        venting: 'look-up: scope-fluorinated',
        leakRepair: 'look-up: scope-fluorinated',
        elsewhere: 'national',
      },
    ],
    [
      {
        machine: 'refrigerated-cargo',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'mobile: scope-mobile',
        certificate: 'look-up: stationary-certificate stationary-rule attestation-rule',
        venting: 'prohibited: release',
        reuse: 'recover: recover-duty-mobile',
        leakRepair: 'look-up: leak',
        records: 'records',
        elsewhere: 'national',
      },
    ],
  ],
  uk: [
    [
      {
        machine: 'bus',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'retrofit',
        forPay: true,
        to: 'R-134a',
      },
      {
        regime: 'mobile: scope off-road',
        certificate: 'look-up: off-road',
        venting: 'look-up: release',
        leakRepair: 'look-up: leak',
        retrofit: 'look-up: nations',
        records: 'records',
        elsewhere: 'nations',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-290',
        pounds: 2,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'no-f-gas: other-gas',
        certificate: 'look-up: other-gas',
        venting: 'look-up: other-gas',
        leakRepair: 'look-up: other-gas',
        records: 'records',
        elsewhere: 'nations',
      },
    ],
    [
      {
        machine: 'stationary',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'stationary: stationary',
        certificate: 'look-up: stationary',
        venting: 'look-up: release',
        leakRepair: 'look-up: leak',
        records: 'records',
        elsewhere: 'nations',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'vehicle: scope',
        certificate: 'look-up uk-training-attestation: recover-attestation no-recovery',
        venting: 'look-up: release',
        leakRepair: 'look-up: leak',
        records: 'records',
        elsewhere: 'nations',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'recover',
        forPay: true,
      },
      {
        regime: 'vehicle: scope',
        certificate: 'required uk-training-attestation: recover-attestation trainee',
        venting: 'look-up: release',
        leakRepair: 'look-up: leak',
        records: 'records',
        elsewhere: 'nations',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'buy',
        forPay: true,
      },
      {
        regime: 'vehicle: scope',
        certificate: 'look-up: purchase-2015 purchase-proof',
        venting: 'look-up: release',
        leakRepair: 'look-up: leak',
        records: 'records',
        elsewhere: 'nations',
      },
    ],
  ],
  canada: [
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-12',
        pounds: 2,
        action: 'charge',
        forPay: true,
      },
      {
        regime: 'halocarbon: scope-list federal-or-province',
        certificate:
          'required ca-certified ca-ontario-odp-card ca-other-province: federal-or-province federal-certified ontario-card',
        venting: 'prohibited: release federal-recover',
        use: 'acceptable-with-conditions: federal-cfc ontario-leak',
        equipment: 'federal-recover federal-container',
        leakRepair: 'look-up: ontario-leak federal-leak federal-no-test-gas federal-container-leak',
        records: 'records records-years ontario-leak',
        elsewhere: 'provinces',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-1234yf',
        pounds: 2,
        action: 'retrofit',
        forPay: true,
        to: 'R-134a',
      },
      {
        regime: 'hfo: scope-list hfo',
        certificate: 'look-up ca-certified ca-ontario-odp-card ca-other-province: hfo ontario-card',
        venting: 'look-up: hfo',
        leakRepair: 'look-up: hfo ontario-leak',
        retrofit: 'look-up: provinces',
        records: 'provinces',
        elsewhere: 'provinces',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-290',
        pounds: 2,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'no-halocarbon: scope-list outside ontario-hydrocarbons',
        certificate: 'look-up: outside',
        venting: 'look-up: outside',
        leakRepair: 'look-up: outside',
        records: 'provinces',
        elsewhere: 'provinces',
      },
    ],
  ],
  australia: [
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'retrofit',
        forPay: true,
        to: 'R-134a',
      },
      {
        regime: 'fluorocarbon: scope-list handling',
        certificate: 'required au-handling-licence: handling licence-kinds',
        venting: 'look-up: release',
        use: 'acceptable-with-conditions: other-charge',
        equipment: 'code containers',
        leakRepair: 'look-up: leak',
        retrofit: 'look-up: states',
        records: 'records',
        elsewhere: 'states',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-1234yf',
        pounds: 2,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'hfo: scope-list hfo',
        certificate: 'look-up au-handling-licence: hfo scope-list',
        venting: 'look-up: hfo',
        leakRepair: 'look-up: hfo',
        records: 'states',
        elsewhere: 'states',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-290',
        pounds: 2,
        action: 'open',
        forPay: true,
      },
      {
        regime: 'no-fluorocarbon: scope-list scope',
        certificate: 'look-up: scope',
        venting: 'look-up: scope',
        leakRepair: 'look-up: scope',
        records: 'states',
        elsewhere: 'states',
      },
    ],
    [
      {
        machine: 'road-vehicle',
        compressorDrive: 'open',
        factorySealed: false,
        refrigerant: 'R-134a',
        pounds: 2,
        action: 'buy',
        forPay: true,
      },
      {
        regime: 'fluorocarbon: scope-list handling',
        certificate: 'required au-trading-authorisation: trading',
        venting: 'look-up: release',
        equipment: 'code containers',
        leakRepair: 'look-up: leak',
        records: 'records',
        elsewhere: 'states',
      },
    ],
  ],
}

const of = (name: string) => refrigerantFacts(refrigerant(name).info)

/** What a topic answers, in the words of its table. */
function answersOf(decision: Decision, topic: Topic): readonly string[] {
  if (topic === 'regime') return decision.regime.ids
  if (topic !== 'certificate') return decision[topic].answers
  return [decision.certificate.needed, ...decision.certificate.anyOf]
}

describe.each(LAWS)('what the tables of %s say', (law) => {
  it.each(JOBS[law])('%j', ({ refrigerant: name, pounds, to, sector, ...job }, said) => {
    const decision = decide(
      law,
      {
        ...job,
        sector,
        refrigerant: of(name),
        chargeKg: pounds * 0.45359237,
        to: to === undefined ? undefined : of(to),
      },
      undefined,
    )
    const found = TOPICS.flatMap((topic) => {
      const ids = decision[topic].statements.map(({ id }) => id).join(' ')
      const parts = [answersOf(decision, topic).join(' '), ids].filter((part) => part !== '')
      return ids === '' ? [] : [[topic, parts.join(': ')]]
    })
    expect(Object.fromEntries(found)).toEqual(said)
  })
})
