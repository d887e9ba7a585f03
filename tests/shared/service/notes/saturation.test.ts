import { notesOf } from '../../../support/notes.ts'

notesOf('saturation', [
  {
    input: { refrigerant: 'R-134a', pressure: '32 psig', altitude: '2500 ft' },
    tells:
      'information; pressure 32 ±1 psig; temperature 35.4 ±1.3 °F; barometer 27.3 ±0.9 inHg; 0 to do',
    warns: '',
    assumes: 'pressure barometer',
    computes: ['Absolute pressure: 45.4 ±1.1 psia', 'Saturation temperature: 35.4 ±1.3 °F'],
    restsOn:
      'equation-r-134a pure-equation-uncertainty curve-fit shop-gauges us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-407C', temperature: '75 °F' },
    tells:
      'information; temperature 75 ±1 °F; bubble 153 ±2.7 psig; dew 129 ±2.5 psig; barometer 29.9 ±0.9 inHg; 0 to do',
    warns: '',
    assumes: 'temperature altitude',
    computes: ['Saturation pressure: 168 ±2.7 psia', 'Saturation pressure: 143 ±2.5 psia'],
    restsOn:
      'equation-r-32 equation-r-125 equation-r-134a mixing-10.1063/1.1649997 lemmon-jacobsen-2004-uncertainty curve-fit shop-thermometers us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-409A', pressure: '100 psig' },
    tells:
      'information; pressure 100 ±1 psig; bubble 76.1 ±3 °F; dew 89.3 ±3 °F; barometer 29.9 ±0.9 inHg; 0 to do',
    warns: 'estimated-mixing',
    assumes: 'pressure altitude',
    computes: [
      'Absolute pressure: 115 ±1.1 psia',
      'Saturation temperature: 76.1 ±3 °F',
      'Saturation temperature: 89.3 ±3 °F',
    ],
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
    tells:
      'information; pressure 32 ±1 psig; temperature 36.7 ±1.1 °F; barometer 29.8 ±0.03 inHg; 0 to do',
    warns: 'barometer-contradicts-altitude',
    assumes: 'pressure barometer',
    computes: ['Absolute pressure: 46.6 ±1 psia', 'Saturation temperature: 36.7 ±1.1 °F'],
    restsOn:
      'equation-r-134a pure-equation-uncertainty curve-fit shop-gauges shop-barometer us-standard-atmosphere-1976',
  },
])
