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
    warns: 'standing-test-is-coarse',
    assumes: 'altitude endBarometer',
    shows: 'Change by temperature alone; Change that temperature does not explain',
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
    warns: 'no-rating no-volume-or-time',
    assumes: 'altitude startPressure endPressure startTemperature endTemperature endBarometer',
    shows: 'Change by temperature alone; Change that temperature does not explain',
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
    warns: 'too-cold-or-too-little-pressure',
    assumes: 'systemPressure ambient',
    shows: '',
    restsOn:
      'shop-gauges shop-thermometers sae-detector-use sae-j2791 astm-e515 small-tractor-leak-test',
  },
  {
    input: { refrigerant: 'R-134a', method: 'soap-film' },
    warns: '',
    assumes: '',
    shows: '',
    restsOn: 'sae-detector-use astm-e515 small-tractor-leak-test',
  },
  {
    input: { refrigerant: 'R-134a', chargeThen: '2 lb 6 oz', chargeNow: '2 lb', between: '1 yr' },
    warns: '',
    assumes: 'chargeThen chargeNow',
    shows: 'Loss a year',
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
    warns: 'formulas-of-2015',
    assumes: '',
    shows: 'Leak rate, annualizing (2015 edition); Leak rate, rolling average (2015 edition)',
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
    warns: '',
    assumes: '',
    shows: '',
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
    warns: '',
    assumes: 'altitude startPressure endPressure startTemperature endTemperature',
    shows:
      'Change by temperature alone; Change that temperature does not explain; Leak rate; Refrigerant through the same hole',
    restsOn:
      'us-standard-atmosphere-1976 weather shop-micron-gauge shop-thermometers achr-gas-law equation-r-134a ideal-gas-leak leak-scaling vapour-viscosities',
  },
])
