import { notesOf } from '../../../support/notes.ts'

notesOf('leak-test', [
  {
    input: {
      refrigerant: 'R-134a',
      startPressure: '150 ±0.5 psig',
      endPressure: '146.9 ±0.5 psig',
      startTemperature: '80 ±1 °F',
      endTemperature: '70 ±1 °F',
      elapsed: '12 h',
      volume: '5 L',
      lowSideRating: '200 psig',
    },
    tells:
      'fine; change -3.1 ±0.71 psi; byTemperature -3.05 ±0.43 psi; unexplained 0.048 ±0.84 psi; smallest 31.1 oz/yr; weakestRating 200 psig; 2 to do',
    warns: 'standing-test-is-coarse',
    assumes: 'altitude endBarometer',
    computes: [
      'Change by temperature alone: -3.05 ±0.43 psi',
      'Change that temperature does not explain: -0.048 ±0.84 psi',
    ],
    restsOn:
      'us-standard-atmosphere-1976 weather barometer-change achr-gas-law equation-r-134a articulated-truck-pressure-test loader-pressure-test test-pressure-per-degree',
  },
  {
    input: {
      refrigerant: 'R-134a',
      startPressure: '150 psig',
      endPressure: '120 psig',
      startTemperature: '80 °F',
      endTemperature: '80 °F',
    },
    tells:
      'check; change -30 ±1.5 psi; byTemperature 0 ±0.432 psi; unexplained 30 ±1.6 psi; 3 to do',
    warns: 'no-rating no-volume-or-time',
    assumes: 'altitude startPressure endPressure startTemperature endTemperature endBarometer',
    computes: [
      'Change by temperature alone: 0 ±0.432 psi',
      'Change that temperature does not explain: -30 ±1.6 psi',
    ],
    restsOn:
      'us-standard-atmosphere-1976 weather shop-gauges shop-thermometers barometer-change achr-gas-law articulated-truck-pressure-test loader-pressure-test test-pressure-per-degree',
  },
  {
    input: {
      refrigerant: 'R-134a',
      method: 'electronic-7',
      systemPressure: '30 psig',
      ambient: '50 °F',
    },
    tells: 'check; leastPressure 49.3 psig; leastAir 59 °F; smallestLeak 0.247 oz/yr; 3 to do',
    warns: 'too-cold-or-too-little-pressure',
    assumes: 'systemPressure ambient',
    computes: [],
    restsOn:
      'shop-gauges shop-thermometers sae-detector-use sae-j2791 astm-e515 small-tractor-leak-test',
  },
  {
    input: { refrigerant: 'R-134a', method: 'soap-film' },
    tells: 'check; leastPressure 49.3 psig; leastAir 59 °F; smallestLeak 0.0511 oz/yr; 2 to do',
    warns: '',
    assumes: '',
    computes: [],
    restsOn: 'sae-detector-use astm-e515 small-tractor-leak-test',
  },
  {
    input: { refrigerant: 'R-134a', chargeThen: '2 lb 6 oz', chargeNow: '2 lb', between: '1 yr' },
    tells:
      'check; perYear 6 ±1.19 oz/yr; lost 6 ±1.19 oz; share 15.8 ±3.1 %; normal 7.05 oz/yr; 2 to do',
    warns: '',
    assumes: 'chargeThen chargeNow',
    computes: ['Loss a year: 6 ±1.19 oz/yr'],
    restsOn: 'shop-scale j2788-accuracy tm-5-2420-230-24-1 mining-shovel-loss',
  },
  {
    input: {
      refrigerant: 'R-410A',
      labelCharge: '60 lb',
      added: '10 lb',
      sinceLastAddition: '100 d',
      addedInYear: '12 lb',
      appliance: 'comfort-cooling',
      law: 'us-federal',
    },
    tells: 'check; rate 60.8 %; threshold 10 %; applies look up; 2 to do',
    warns: 'formulas-of-2015',
    assumes: '',
    computes: [
      'Leak rate, annualizing (2015 edition): 60.8 %',
      'Leak rate, rolling average (2015 edition): 20 %',
    ],
    restsOn:
      'cfr-82-152-leak-rate us-federal/leak-15-lb us-federal/leak-15-lb-rates us-federal/leak-15-lb-vehicles us-federal/states-differ',
  },
  {
    input: {
      refrigerant: 'R-134a',
      testPressure: '150 psig',
      lowSideRating: '200 psig',
      highSideRating: '450 psig',
      testGas: 'nitrogen',
    },
    tells:
      'check; part low side; weakestRating 200 psig; highest 150 psig; margin 50 psi; gas nitrogen; 3 to do',
    warns: '',
    assumes: '',
    computes: [],
    restsOn: 'articulated-truck-pressure-test loader-pressure-test',
  },
  {
    input: {
      refrigerant: 'R-134a',
      startPressure: '1000 micron',
      endPressure: '3000 micron',
      startTemperature: '70 °F',
      endTemperature: '70 °F',
      elapsed: '10 min',
      volume: '5 L',
    },
    tells:
      'check; change 2000 ±317 micron; byTemperature 0 ±2.67 micron; unexplained 2000 ±317 micron; smallest 16.3 oz/yr; loss 9880 oz/yr; 2 to do',
    warns: '',
    assumes: 'altitude startPressure endPressure startTemperature endTemperature',
    computes: [
      'Change by temperature alone: 0 ±2.67 micron',
      'Change that temperature does not explain: 2000 ±317 micron',
      'Leak rate: 0.00222 ±0.00036 Pa m3/s',
      'Refrigerant through the same hole: 9880 oz/yr',
    ],
    restsOn:
      'us-standard-atmosphere-1976 weather shop-micron-gauge shop-thermometers achr-gas-law equation-r-134a ideal-gas-leak leak-scaling vapour-viscosities',
  },
  {
    input: {
      refrigerant: 'R-134a',
      startPressure: '28 inHg vac',
      endPressure: '27 inHg vac',
      startTemperature: '70 °F',
      endTemperature: '75 °F',
      elapsed: '1 h',
      volume: '5 L',
    },
    tells:
      'check; change 1 ±2.88 inHg; byTemperature 0.0181 ±0.0216 inHg; unexplained 0.98 ±2.9 inHg; smallest 626 oz/yr; 2 to do',
    warns: 'standing-test-is-coarse',
    assumes: 'altitude startPressure endPressure startTemperature endTemperature endBarometer',
    computes: [
      'Change by temperature alone: 0.0181 ±0.0216 inHg',
      'Change that temperature does not explain: 0.98 ±2.9 inHg',
    ],
    restsOn:
      'us-standard-atmosphere-1976 weather shop-gauges shop-thermometers barometer-change achr-gas-law equation-r-134a',
  },
  {
    input: {
      refrigerant: 'R-134a',
      startPressure: '150 psig',
      endPressure: '155 psig',
      startTemperature: '70 °F',
      endTemperature: '70 °F',
      elapsed: '1 h',
    },
    tells: 'check; change 5 ±1.42 psi; byTemperature 0 ±0.44 psi; unexplained 5 ±1.49 psi; 2 to do',
    warns: 'no-rating readings-disagree',
    assumes: 'altitude startPressure endPressure startTemperature endTemperature endBarometer',
    computes: [
      'Change by temperature alone: 0 ±0.44 psi',
      'Change that temperature does not explain: 5 ±1.49 psi',
    ],
    restsOn:
      'us-standard-atmosphere-1976 weather shop-gauges shop-thermometers barometer-change achr-gas-law articulated-truck-pressure-test loader-pressure-test test-pressure-per-degree',
  },
  {
    input: {
      refrigerant: 'R-134a',
      testPressure: '100 psig',
      ratings: [
        { part: 'hose', pressure: '150 psig' },
        { part: 'evaporator', pressure: '120 psig' },
      ],
      testGas: 'helium',
    },
    tells:
      'check; part evaporator; weakestRating 120 psig; highest 100 psig; margin 20 psi; gas helium; 3 to do',
    warns: '',
    assumes: '',
    computes: [],
    restsOn: 'articulated-truck-pressure-test loader-pressure-test',
  },
])
