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
    warns: '',
    assumes: 'grossNow',
    shows:
      'Expected mass; Pressure in the cylinder at its hottest; Most the cylinder may hold by the 80 % rule; What still fits',
    restsOn:
      'epa-farm mvac-like-20-lb cfr-82b-app-a-recovery sae-j2788 mvac-102-mm cfr-173-301-a8 ahri-guideline-k cfr-173-304b filling-density-definition equation-r-134a shop-scale cfr-180-209 five-year-stamp cfr-173-304a cfr-82-32 cfr-180-205 phmsa-19-0021',
  },
  {
    input: { refrigerant: 'R-134a', labelCharge: '3 lb 8 oz' },
    warns: '',
    assumes: '',
    shows: 'Expected mass',
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
    warns: 'gross-rating-missing',
    assumes: 'law labelCharge grossNow',
    shows: 'Expected mass; Most the cylinder may hold by the 80 % rule; What still fits',
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
    warns: '',
    assumes: 'labelCharge',
    shows: 'Expected mass',
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
    warns: 'pressure-does-not-tell-mass less-than-label',
    assumes: 'equipmentMade altitude systemPressure systemTemperature labelCharge recovered',
    shows: 'Level of evacuation; Mass at rest; Expected mass',
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
    warns: 'level-of-another-law',
    assumes: 'labelCharge grossNow',
    shows: 'Expected mass; Most the cylinder may hold by the 80 % rule; What still fits',
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
    warns: '',
    assumes: 'labelCharge',
    shows: 'Expected mass',
    restsOn: 'cfr-82-154 sae-j2788',
  },
])
