import { notesOf } from '../../../support/notes.ts'

notesOf('charging', [
  {
    input: {
      refrigerant: 'R-134a',
      labelCharge: '2 lb 6 oz',
      scaleStart: '24.50 lb',
      scaleDivision: '0.2 oz',
      serviceHoseBore: '1/4 in',
      serviceHoseLength: '72 in',
      serviceHoseStarts: 'empty',
      serviceHoseHolds: 'liquid',
      sourceTemperature: '77 °F',
      engine: 'off',
      side: 'high',
      phase: 'liquid',
    },
    tells:
      'check; stop 22 lb; toAdd 2.38 lb; leaves 2.53 ±0.00027 lb; latest 21.9 lb; tolerance 1 oz; 2 to do',
    warns: '',
    assumes: 'sourceTemperature altitude chargeTolerance alreadyIn',
    computes: [
      'Mass to add: 2.38 lb',
      'Hold-up of the hose: 2.46 ±0.005 oz',
      'Scale reading to stop at: 22 lb',
    ],
    restsOn:
      'shop-thermometers us-standard-atmosphere-1976 weather can-label-120-f loader-charge trade-practice-charging tm-5-3805-290 tm-5-2420-230 hose-clear container-50-c cylinder-125-f equation-r-134a',
  },
  {
    input: {
      refrigerant: 'R-134a',
      labelCharge: '40 oz',
      canNet: '12 oz',
      ambient: '60 °F',
      machine: 'off-road',
      judgeBy: 'superheat',
    },
    tells: 'check; toAdd 2.5 lb; tolerance 1 oz; 3 to do',
    warns: 'weather-air-70f',
    assumes: 'ambient chargeTolerance alreadyIn serviceHoseBore scaleTolerance',
    computes: ['Mass to add: 2.5 lb'],
    restsOn:
      'shop-thermometers loader-charge trade-practice-charging tm-5-3805-290 tm-5-2420-230 hose-clear container-50-c cylinder-125-f equation-r-134a shop-scale ra3-2-2013',
  },
  {
    input: {
      refrigerant: 'R-134a',
      labelCharge: '40 oz',
      systemPressure: '120 psig',
      sourceTemperature: '75 °F',
      waterTemperature: '120 °F',
    },
    tells: 'stop; toAdd 2.5 lb; tolerance 1 oz; 2 to do',
    warns: 'container-may-be-too-warm flows-back',
    assumes:
      'sourceTemperature waterTemperature systemPressure altitude chargeTolerance alreadyIn serviceHoseBore scaleTolerance',
    computes: ['Mass to add: 2.5 lb'],
    restsOn:
      'shop-thermometers shop-gauges us-standard-atmosphere-1976 weather can-label-120-f loader-charge trade-practice-charging tm-5-3805-290 tm-5-2420-230 hose-clear container-50-c cylinder-125-f equation-r-134a shop-scale',
  },
  {
    input: {
      refrigerant: 'R-134a',
      labelCharge: '20 oz',
      alreadyIn: '20 oz',
      scaleDivision: '50 g',
    },
    tells: 'fine; tolerance 0.625 oz; 2 to do',
    warns: 'within-tolerance scale-too-coarse',
    assumes: 'alreadyIn chargeTolerance serviceHoseBore',
    computes: ['Mass to add: 0 ±0.53 oz'],
    restsOn:
      'shop-scale loader-charge tolerance-by-size trade-practice-charging tm-5-3805-290 tm-5-2420-230 hose-clear container-50-c cylinder-125-f equation-r-134a',
  },
  {
    input: {
      refrigerant: 'R-134a',
      labelCharge: '40 oz',
      scaleStart: '10 lb',
      serviceHoseBore: '1/4 in',
      serviceHoseLength: '120 in',
      sourceContents: '30 oz',
    },
    tells:
      'check; stop 7.24 lb; toAdd 2.5 lb; leaves 2.76 lb; latest 7.18 lb; tolerance 1 oz; 2 to do',
    warns: 'hose-state-matters source-too-empty',
    assumes: 'chargeTolerance alreadyIn sourceTemperature serviceHoseHolds scaleTolerance',
    computes: [
      'Mass to add: 2.5 lb',
      'Hold-up of the hose: 4.11 oz',
      'Scale reading to stop at: 7.24 lb',
    ],
    restsOn:
      'loader-charge trade-practice-charging tm-5-3805-290 tm-5-2420-230 hose-clear container-50-c cylinder-125-f equation-r-134a shop-scale',
  },
  {
    input: {
      refrigerant: 'R-407C',
      labelCharge: '2 kg',
      scaleStart: '12 kg',
      serviceHoseBore: '1/4 in',
      serviceHoseLength: '6 ft',
      sourceTemperature: '70 °F',
    },
    tells:
      'check; stop 21.9 lb; toAdd 4.41 lb; leaves 4.56 ±0.0003 lb; latest 21.8 lb; tolerance 1.1 oz; 2 to do',
    warns: 'hose-state-matters',
    assumes: 'sourceTemperature altitude chargeTolerance alreadyIn serviceHoseHolds scaleTolerance',
    computes: [
      'Mass to add: 4.41 lb',
      'Hold-up of the hose: 2.36 ±0.005 oz',
      'Scale reading to stop at: 21.9 lb',
    ],
    restsOn:
      'shop-thermometers us-standard-atmosphere-1976 weather can-label-120-f loader-charge tolerance-by-size trade-practice-charging tm-5-3805-290 tm-5-2420-230 hose-clear container-50-c cylinder-125-f equation-r-32 equation-r-125 equation-r-134a mixing-10.1063/1.1649997 shop-scale',
  },
  {
    input: {
      refrigerant: 'R-744',
      labelCharge: '400 g',
      phase: 'vapour',
      side: 'high',
      engine: 'off',
    },
    tells: 'check; toAdd 14.1 oz; tolerance 0.441 oz; 2 to do',
    warns: 'scale-too-coarse',
    assumes: 'chargeTolerance alreadyIn serviceHoseBore scaleTolerance',
    computes: ['Mass to add: 14.1 oz'],
    restsOn:
      'loader-charge tolerance-by-size co2-triple tm-5-3805-290 trade-practice-charging tm-5-2420-230 hose-clear container-50-c cylinder-125-f equation-r-744 shop-scale',
  },
])
