import { notesOf } from '../../../support/notes.ts'

notesOf('recovery', [
  {
    input: {
      refrigerant: 'R-134a',
      law: 'us-federal',
      machine: 'off-road',
      compressorDrive: 'open',
      labelCharge: '2 lb 6 oz',
      cylinder: 'refillable',
      waterCapacity: '47.7 lb',
      tare: '28.0 lb',
      grossNow: '41.5 lb',
      servicePressure: '400 psi',
      cylinderHolds: 'R-134a',
      requalified: '2023-04',
      date: '2026-11-25',
    },
    tells:
      'fine; stopAt 74.1 lb; room 32.6 lb; least 2.26 lb; most 2.38 lb; maximum 46.1 lb; full 167 °F; 3 to do',
    warns: '',
    assumes: 'grossNow',
    computes: [
      'Expected mass: 2.26 lb',
      'Pressure in the cylinder at its hottest: 202 ±0.7 psig',
      'Most the cylinder may hold by the 80 % rule: 46.1 lb',
      'What still fits: 32.6 lb',
    ],
    restsOn:
      'epa-farm mvac-like-20-lb cfr-82b-app-a-recovery sae-j2788 mvac-102-mm cfr-173-301-a8 ahri-guideline-k cfr-173-304b filling-density-definition equation-r-134a shop-scale cfr-180-209 five-year-stamp cfr-173-304a cfr-82-32 cfr-180-205 phmsa-19-0021',
  },
  {
    input: { refrigerant: 'R-134a', labelCharge: '3 lb 8 oz' },
    tells: 'information; least 3.33 lb; most 3.5 lb; 3 to do',
    warns: '',
    assumes: '',
    computes: ['Expected mass: 3.33 lb'],
    restsOn: 'sae-j2788 cfr-173-304a cfr-82-32 cfr-180-205 phmsa-19-0021',
  },
  {
    input: {
      refrigerant: 'R-12',
      labelCharge: '3 lb',
      cylinder: 'refillable',
      waterCapacity: '47.7 lb',
      tare: '28 lb',
      grossNow: '30 lb',
      machine: 'road-vehicle',
    },
    tells:
      'check; stopAt 78 lb; room 48 lb; least 2.85 lb; most 3 lb; maximum 50.1 lb; full 180 °F; 2 to do',
    warns: 'gross-rating-missing',
    assumes: 'law labelCharge grossNow',
    computes: [
      'Expected mass: 2.85 lb',
      'Most the cylinder may hold by the 80 % rule: 50.1 lb',
      'What still fits: 48 lb',
    ],
    restsOn:
      'cfr-82-32 cfr-82b-app-a-recovery mvac-102-mm sae-j2788 ahri-guideline-k cfr-173-304a cfr-173-304b filling-density-definition equation-r-12 shop-scale cfr-180-205 phmsa-19-0021 cfr-173-301-a8',
  },
  {
    input: {
      refrigerant: 'R-290',
      labelCharge: '300 g',
      flammableRated: true,
      machine: 'stationary',
      compressorDrive: 'electric',
      factorySealed: true,
      law: 'us-federal',
    },
    tells: 'information; least 10.1 oz; most 10.6 oz; 3 to do',
    warns: '',
    assumes: 'labelCharge',
    computes: ['Expected mass: 10.1 oz'],
    restsOn:
      'cfr-82-156-a4 small-appliance-definition sae-j2788 cfr-173-304a cfr-82-32 cfr-180-205 phmsa-19-0021 flammable-cylinder ahri-guideline-k',
  },
  {
    input: {
      refrigerant: 'R-22',
      machine: 'stationary',
      labelCharge: '6 lb',
      systemPressure: '121 psig',
      systemTemperature: '70 °F',
      volume: '10 L',
      recovered: '5 lb',
      law: 'us-federal',
    },
    tells:
      'check; recovered 5 ±0.04 lb; label 6 lb; missing 16 ±0.6 oz; least 5.7 lb; most 6 lb; gauge 0 psig; 2 to do',
    warns: 'pressure-does-not-tell-mass less-than-label',
    assumes: 'equipmentMade altitude systemPressure systemTemperature labelCharge recovered',
    computes: [
      'Level of evacuation: 29.9 inHg abs',
      'Mass at rest: 26.6 lb',
      'Expected mass: 5.7 lb',
    ],
    restsOn:
      'cfr-82-156 cfr-82-156-a2 cfr-82-152-classes equation-r-22 us-standard-atmosphere-1976 weather shop-gauges shop-thermometers sae-j2788 shop-scale cfr-173-304a cfr-82-32 cfr-180-205 phmsa-19-0021',
  },
  {
    input: {
      refrigerant: 'R-410A',
      machine: 'stationary',
      labelCharge: '10 lb',
      cylinder: 'refillable',
      waterCapacity: '47.7 lb',
      tare: '28 lb',
      grossNow: '29 lb',
      law: 'eu',
    },
    tells:
      'check; stopAt 68.4 lb; room 39.4 lb; least 9.5 lb; most 10 lb; maximum 40.4 lb; full 135 °F; 2 to do',
    warns: 'level-of-another-law',
    assumes: 'labelCharge grossNow',
    computes: [
      'Expected mass: 9.5 lb',
      'Most the cylinder may hold by the 80 % rule: 40.4 lb',
      'What still fits: 39.4 lb',
    ],
    restsOn:
      'sae-j2788 cfr-173-301-a8 common-cylinders ahri-guideline-k cfr-173-304b filling-density-definition equation-r-32 equation-r-125 mixing-10.1063/1.1649997 shop-scale cfr-173-304a cfr-82-32 cfr-180-205 phmsa-19-0021',
  },
  {
    input: {
      refrigerant: 'R-744',
      machine: 'road-vehicle',
      labelCharge: '400 g',
      law: 'us-federal',
    },
    tells: 'check; least 13.4 oz; most 14.1 oz; 2 to do',
    warns: '',
    assumes: 'labelCharge',
    computes: ['Expected mass: 13.4 oz'],
    restsOn: 'cfr-82-154 sae-j2788',
  },
  {
    input: {
      refrigerant: 'R-134a',
      machine: 'road-vehicle',
      labelCharge: '2 lb',
      recovered: '2 lb 3 oz',
      recoveredBy: 'scale',
    },
    tells:
      'check; recovered 2.19 ±0.04 lb; label 2 lb; missing -3 ±0.53 oz; least 30.4 oz; most 2 lb; 2 to do',
    warns: 'more-than-label',
    assumes: 'law recovered',
    computes: ['Expected mass: 30.4 oz'],
    restsOn:
      'cfr-82-32 cfr-82b-app-a-recovery sae-j2788 mvac-102-mm shop-scale cfr-173-304a cfr-180-205 phmsa-19-0021',
  },
  {
    input: {
      refrigerant: 'R-134a',
      machine: 'off-road',
      compressorDrive: 'open',
      law: 'us-federal',
      labelCharge: '2 lb 6 oz',
      recovered: '1 lb',
    },
    tells:
      'check; recovered 16 ±0.6 oz; label 2.38 lb; missing 22 ±0.6 oz; least 2.26 lb; most 2.38 lb; 2 to do',
    warns: 'less-than-label',
    assumes: 'recovered',
    computes: ['Expected mass: 2.26 lb'],
    restsOn:
      'epa-farm mvac-like-20-lb cfr-82b-app-a-recovery sae-j2788 mvac-102-mm shop-scale cfr-173-304a cfr-82-32 cfr-180-205 phmsa-19-0021',
  },
])
