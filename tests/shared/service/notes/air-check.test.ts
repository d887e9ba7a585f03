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
    tells:
      'check; pressure 104 ±1 psig; temperature 80 ±1 °F; saturation 86.7 psig; limit 93 psig; above 17.3 ±2.1 psi; share 14.6 ±1.7 %; 3 to do',
    warns: 'limit-computed',
    assumes: 'pressure temperature contents altitude altitude',
    computes: [
      'Pressure above that of the refrigerant alone: 17.3 ±2.1 psi',
      'Mass of air: 0.745 ±0.087 oz',
    ],
    restsOn:
      'shop-gauges shop-thermometers shop-scale equation-r-134a us-standard-atmosphere-1976 weather partial-pressures pure-equation-uncertainty curve-fit cfr-82b-app-a sae-j2211 compressor-manual tm-5-3810-307 new-refrigerant-air recycled-purity',
  },
  {
    input: { refrigerant: 'R-134a', pressure: '79 psig', temperature: '75 °F' },
    tells:
      'fine; pressure 79 ±1 psig; temperature 75 ±1 °F; saturation 78.7 psig; limit 82 psig; above 0.35 ±1.93 psi; 2 to do',
    warns: 'limit-computed',
    assumes: 'pressure temperature altitude altitude',
    computes: ['Pressure above that of the refrigerant alone: 0.35 ±1.93 psi'],
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
    tells:
      'check; pressure 90 ±1 psig; temperature 78.4 ±1 °F; saturation 81.7 psig; above 8.33 ±1.84 psi; 1 to do',
    warns: 'between-cells conditions-not-met',
    assumes: 'pressure temperature altitude altitude',
    computes: ['Pressure above that of the refrigerant alone: 8.33 ±1.84 psi'],
    restsOn:
      'shop-gauges shop-thermometers equation-r-12 us-standard-atmosphere-1976 weather partial-pressures pure-equation-uncertainty curve-fit cfr-82b-app-a',
  },
  {
    input: { refrigerant: 'R-407C', pressure: '157 psig', temperature: '77 °F' },
    tells:
      'check; pressure 157 ±1 psig; temperature 77 ±1 °F; saturation 158 psig; above -0.95 ±2.94 psi; 1 to do',
    warns: 'composition-may-have-shifted give-contents',
    assumes: 'pressure temperature altitude',
    computes: ['Pressure above that of the refrigerant alone: -0.95 ±2.94 psi'],
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
    tells:
      'check; pressure 60 ±1 psig; temperature 75 ±1 °F; saturation 78.7 psig; above -18.7 ±2 psi; 3 to do',
    warns: 'limit-computed below-saturation',
    assumes: 'pressure temperature altitude altitude',
    computes: ['Pressure above that of the refrigerant alone: -18.7 ±2 psi'],
    restsOn:
      'shop-gauges shop-thermometers equation-r-134a us-standard-atmosphere-1976 weather partial-pressures pure-equation-uncertainty curve-fit cfr-82b-app-a sae-j2211 compressor-manual new-refrigerant-air',
  },
  {
    input: { refrigerant: 'R-134a', pressure: '110 psig', temperature: '75 °F', recycled: false },
    tells:
      'check; pressure 110 ±1 psig; temperature 75 ±1 °F; saturation 78.7 psig; limit 85 psig; above 31.3 ±2 psi; share 25.1 ±1.5 %; 1 to do',
    warns: 'limit-computed',
    assumes: 'pressure temperature altitude altitude',
    computes: ['Pressure above that of the refrigerant alone: 31.3 ±2 psi'],
    restsOn:
      'shop-gauges shop-thermometers equation-r-134a us-standard-atmosphere-1976 weather partial-pressures pure-equation-uncertainty curve-fit cfr-82b-app-a sae-j2211 compressor-manual new-refrigerant-air',
  },
  {
    input: {
      refrigerant: 'R-407C',
      pressure: '157 psig',
      temperature: '77 °F',
      volume: '21.6 L',
      contents: '8 lb',
    },
    tells:
      'check; pressure 157 ±1 psig; temperature 77 ±1 °F; saturation 152 psig; above 5.39 ±2.8 psi; share 3.14 ±1.62 %; air 0.295 ±0.153 oz; 2 to do',
    warns: 'composition-may-have-shifted',
    assumes: 'pressure temperature contents altitude',
    computes: [
      'Pressure above that of the refrigerant alone: 5.39 ±2.8 psi',
      'Mass of air: 0.295 ±0.153 oz',
    ],
    restsOn:
      'shop-gauges shop-thermometers shop-scale equation-r-32 equation-r-125 equation-r-134a mixing-10.1063/1.1649997 us-standard-atmosphere-1976 weather partial-pressures lemmon-jacobsen-2004-uncertainty curve-fit cfr-82b-app-a trade-practice-air',
  },
])
