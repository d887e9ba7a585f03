import { notesOf } from '../../../support/notes.ts'

notesOf('saturation', [
  {
    input: { refrigerant: 'R-134a', pressure: '32 psig', altitude: '2500 ft' },
    warns: '',
    assumes: 'pressure barometer',
    shows: 'Absolute pressure; Saturation temperature',
    restsOn:
      'equation-r-134a pure-equation-uncertainty curve-fit shop-gauges us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-407C', temperature: '75 °F' },
    warns: '',
    assumes: 'temperature altitude',
    shows: 'Saturation pressure; Saturation pressure',
    restsOn:
      'equation-r-32 equation-r-125 equation-r-134a mixing-10.1063/1.1649997 lemmon-jacobsen-2004-uncertainty curve-fit shop-thermometers us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-409A', pressure: '100 psig' },
    warns: 'estimated-mixing',
    assumes: 'pressure altitude',
    shows: 'Absolute pressure; Saturation temperature; Saturation temperature',
    restsOn:
      'equation-r-22 equation-r-124 equation-r-142b mixing-estimated mixing-10.1021/acs.jced.6b00257 handbook-boiling-points curve-fit shop-gauges us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      pressure: '32 psig',
      altitude: '2500 ft',
      barometer: '101 kPa',
    },
    warns: 'barometer-contradicts-altitude',
    assumes: 'pressure barometer',
    shows: 'Absolute pressure; Saturation temperature',
    restsOn:
      'equation-r-134a pure-equation-uncertainty curve-fit shop-gauges shop-barometer us-standard-atmosphere-1976',
  },
])
