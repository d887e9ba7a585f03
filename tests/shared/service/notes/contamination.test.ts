import { notesOf } from '../../../support/notes.ts'

notesOf('contamination', [
  {
    input: { refrigerant: 'R-134a', pressure: '108 psig', temperature: '80 °F' },
    tells:
      'check; pressure 108 ±1 psig; temperature 80 ±1 °F; saturation 86.7 psig; off 21.3 ±2.1 psi; air 17.4 ±1.6 %; other1 2.55 %; 3 to do',
    warns: '',
    assumes: 'altitude pressure pressure temperature',
    computes: [
      'Distance from saturation: 21.3 ±2.1 psi',
      'Share of R-290 that reads so: 2.55 ±0.3 %',
    ],
    restsOn:
      'equation-r-134a mixing-10.1021/acs.jced.6b00257 mixing-10.1063/1.1649997 usual-suspects mixture-reading partial-pressures contamination-practice tm-5-3810-307 j2099-identifier shop-gauges shop-thermometers pure-equation-uncertainty curve-fit us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      pressure: '100 psig',
      temperature: '80 °F',
      suspects: ['R-12'],
    },
    tells:
      'check; pressure 100 ±1 psig; temperature 80 ±1 °F; saturation 86.7 psig; off 13.3 ±2.1 psi; air 11.6 ±1.7 %; other1 18.1 %; 3 to do',
    warns: 'several-shares-fit',
    assumes: 'altitude pressure pressure temperature',
    computes: [
      'Distance from saturation: 13.3 ±2.1 psi',
      'Share of R-12 that reads so: 18.1 ±6.7 %',
    ],
    restsOn:
      'equation-r-134a mixing-10.1021/acs.jced.6b00257 usual-suspects mixture-reading partial-pressures contamination-practice tm-5-3810-307 j2099-identifier shop-gauges shop-thermometers pure-equation-uncertainty curve-fit us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-134a', pressure: '60 psig', temperature: '75 °F' },
    tells:
      'check; pressure 60 ±1 psig; temperature 75 ±1 °F; saturation 78.7 psig; off -18.7 ±2 psi; other1 82.5 %; 3 to do',
    warns: '',
    assumes: 'altitude pressure pressure temperature',
    computes: [
      'Distance from saturation: -18.7 ±2 psi',
      'Share of R-600a that reads so: 82.5 ±2.1 %',
    ],
    restsOn:
      'equation-r-134a mixing-10.1021/acs.jced.6b00257 usual-suspects mixture-reading contamination-practice j2099-identifier shop-gauges shop-thermometers pure-equation-uncertainty curve-fit us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-407C', pressure: '150 psig', temperature: '77 °F' },
    tells:
      'fine; pressure 150 ±1 psig; temperature 77 ±1 °F; saturation 158 psig; off -7.95 ±2.94 psi; 1 to do',
    warns: '',
    assumes: 'altitude pressure pressure temperature',
    computes: ['Distance from saturation: -7.95 ±2.94 psi'],
    restsOn:
      'equation-r-32 equation-r-125 equation-r-134a mixing-10.1063/1.1649997 usual-suspects mixture-reading j2099-identifier shop-gauges shop-thermometers lemmon-jacobsen-2004-uncertainty curve-fit us-standard-atmosphere-1976 weather',
  },
])
