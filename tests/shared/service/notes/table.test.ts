import { notesOf } from '../../../support/notes.ts'

notesOf('table', [
  {
    input: { refrigerant: 'R-134a', from: '0 °F', to: '160 °F', step: '10 °F' },
    tells: 'information; from 0 °F; to 160 °F; rows 17; barometer 29.9 ±0.9 inHg; 0 to do',
    warns: '',
    assumes: 'altitude',
    computes: [],
    restsOn: 'equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-407C', from: '0 psig', to: '95 psig', step: '10 psi' },
    tells: 'information; from 0 psig; to 90 psig; rows 10; barometer 29.9 ±0.9 inHg; 0 to do',
    warns: 'end-not-met',
    assumes: 'altitude',
    computes: [],
    restsOn:
      'equation-r-32 equation-r-125 equation-r-134a mixing-10.1063/1.1649997 us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-409A' },
    tells: 'information; from -20 °F; to 160 °F; rows 19; barometer 29.9 ±0.9 inHg; 0 to do',
    warns: 'estimated-mixing',
    assumes: 'from to step altitude',
    computes: [],
    restsOn:
      'equation-r-22 equation-r-124 equation-r-142b mixing-estimated mixing-10.1021/acs.jced.6b00257 us-standard-atmosphere-1976 weather',
  },
])
