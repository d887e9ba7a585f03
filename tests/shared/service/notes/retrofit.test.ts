import { notesOf } from '../../../support/notes.ts'

notesOf('retrofit', [
  {
    input: {
      refrigerant: 'R-12',
      newRefrigerant: 'R-134a',
      machine: 'off-road',
      labelCharge: '3 lb',
      accumulatorAge: '12 yr',
      compressorDrive: 'open',
    },
    tells: 'check; startWith 2.4 lb; most 2.75 lb; rise 18.2 ±0.9 psi; accumulator 12 yr; 3 to do',
    warns: 'charge-is-a-band',
    assumes: 'machine altitude condensingTemperature',
    computes: [
      'Charge by mass fraction (common practice): 2.4 lb (1090 g) to 2.7 lb (1220 g)',
      'Charge of the same liquid volume (computed): 2.75 lb',
      'Charge by the fixed-offset formula (common practice): 2.45 lb',
      'Rise of the high side at the same condensing temperature: 18.2 ±0.9 psi',
    ],
    restsOn:
      'snap-app-b fr-87-26276 epa-hydrocarbons snap-app-b-2015 fr-77-33315 retrofit-minimum-1989 bulletin-43-12-07 sae-j1661 snap-app-d retrofit-practice sham-retrofit snap-use-conditions snap-app-h retrofit-high-side-1991 loader-retrofit equation-r-12 equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-12', newRefrigerant: 'R-134a', machine: 'road-vehicle' },
    tells: 'check; rise 18.2 ±0.9 psi; 3 to do',
    warns: 'no-label-charge',
    assumes: 'altitude condensingTemperature',
    computes: ['Rise of the high side at the same condensing temperature: 18.2 ±0.9 psi'],
    restsOn:
      'snap-app-b fr-87-26276 epa-hydrocarbons snap-app-b-2015 fr-77-33315 retrofit-minimum-1989 bulletin-43-12-07 sae-j1661 snap-app-d retrofit-practice sham-retrofit snap-use-conditions snap-app-h retrofit-high-side-1991 loader-retrofit us-standard-atmosphere-1976 weather equation-r-12 equation-r-134a',
  },
  {
    input: {
      refrigerant: 'R-12',
      newRefrigerant: 'R-416A',
      machine: 'road-vehicle',
      labelCharge: '8 lb',
    },
    tells: 'check; rise -3.89 ±4.67 psi; 3 to do',
    warns: 'estimated-mixing',
    assumes: 'altitude condensingTemperature',
    computes: ['Rise of the high side at the same condensing temperature: -3.89 ±4.67 psi'],
    restsOn:
      'snap-app-b fr-87-26276 epa-hydrocarbons snap-app-b-2015 fr-77-33315 retrofit-minimum-1989 snap-app-d sham-retrofit snap-use-conditions snap-app-h us-standard-atmosphere-1976 weather equation-r-12 equation-r-134a equation-r-124 equation-r-600 mixing-10.1021/acs.jced.6b00257 mixing-estimated',
  },
])
