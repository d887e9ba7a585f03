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
    warns: '',
    assumes: 'sourceTemperature altitude chargeTolerance alreadyIn',
    shows: 'Mass to add; Hold-up of the hose; Scale reading to stop at',
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
    warns: 'weather-air-70f',
    assumes: 'ambient chargeTolerance alreadyIn serviceHoseBore scaleTolerance',
    shows: 'Mass to add',
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
    warns: 'container-may-be-too-warm flows-back',
    assumes:
      'sourceTemperature waterTemperature systemPressure altitude chargeTolerance alreadyIn serviceHoseBore scaleTolerance',
    shows: 'Mass to add',
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
    warns: 'within-tolerance scale-too-coarse',
    assumes: 'alreadyIn chargeTolerance serviceHoseBore',
    shows: 'Mass to add',
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
    warns: 'hose-state-matters source-too-empty',
    assumes: 'chargeTolerance alreadyIn sourceTemperature serviceHoseHolds scaleTolerance',
    shows: 'Mass to add; Hold-up of the hose; Scale reading to stop at',
    restsOn:
      'loader-charge trade-practice-charging tm-5-3805-290 tm-5-2420-230 hose-clear container-50-c cylinder-125-f equation-r-134a shop-scale',
  },
])
