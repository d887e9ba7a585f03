import { notesOf } from '../../../support/notes.ts'

notesOf('air-check', [
  {
    input: {
      refrigerant: 'R-134a',
      pressure: '104 psig',
      temperature: '80 °F',
      recycled: true,
      rested: '16 h',
      inSun: false,
      volume: '21.6 L',
      contents: '18 lb',
    },
    warns: 'limit-computed',
    assumes: 'pressure temperature contents altitude altitude',
    shows: 'Pressure above that of the refrigerant alone; Mass of air',
    restsOn:
      'shop-gauges shop-thermometers shop-scale equation-r-134a us-standard-atmosphere-1976 weather partial-pressures pure-equation-uncertainty curve-fit cfr-82b-app-a sae-j2211 compressor-manual tm-5-3810-307 new-refrigerant-air recycled-purity',
  },
  {
    input: { refrigerant: 'R-134a', pressure: '79 psig', temperature: '75 °F' },
    warns: 'limit-computed',
    assumes: 'pressure temperature altitude altitude',
    shows: 'Pressure above that of the refrigerant alone',
    restsOn:
      'shop-gauges shop-thermometers equation-r-134a us-standard-atmosphere-1976 weather partial-pressures pure-equation-uncertainty curve-fit cfr-82b-app-a sae-j2211 compressor-manual new-refrigerant-air',
  },
  {
    input: {
      refrigerant: 'R-12',
      pressure: '90 psig',
      temperature: '78.4 °F',
      recycled: true,
      rested: '2 h',
      inSun: true,
    },
    warns: 'between-cells conditions-not-met',
    assumes: 'pressure temperature altitude altitude',
    shows: 'Pressure above that of the refrigerant alone',
    restsOn:
      'shop-gauges shop-thermometers equation-r-12 us-standard-atmosphere-1976 weather partial-pressures pure-equation-uncertainty curve-fit cfr-82b-app-a',
  },
  {
    input: { refrigerant: 'R-407C', pressure: '157 psig', temperature: '77 °F' },
    warns: 'composition-may-have-shifted give-contents',
    assumes: 'pressure temperature altitude',
    shows: 'Pressure above that of the refrigerant alone',
    restsOn:
      'shop-gauges shop-thermometers equation-r-32 equation-r-125 equation-r-134a mixing-10.1063/1.1649997 us-standard-atmosphere-1976 weather partial-pressures lemmon-jacobsen-2004-uncertainty curve-fit cfr-82b-app-a trade-practice-air',
  },
  {
    input: {
      refrigerant: 'R-134a',
      pressure: '60 psig',
      temperature: '75 °F',
      container: 'system',
    },
    warns: 'limit-computed below-saturation',
    assumes: 'pressure temperature altitude altitude',
    shows: 'Pressure above that of the refrigerant alone',
    restsOn:
      'shop-gauges shop-thermometers equation-r-134a us-standard-atmosphere-1976 weather partial-pressures pure-equation-uncertainty curve-fit cfr-82b-app-a sae-j2211 compressor-manual new-refrigerant-air',
  },
])
