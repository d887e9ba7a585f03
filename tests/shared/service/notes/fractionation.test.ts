import { notesOf } from '../../../support/notes.ts'

notesOf('fractionation', [
  {
    input: {
      refrigerant: 'R-407C',
      escapes: 'vapour',
      temperature: '77 °F',
      lost: '40 %',
      startMass: '6 lb',
    },
    tells: 'check; lost 40 %; shift 2.96 ±0.34 °F; pressureNow 144 ±2.6 psig; 3 to do',
    warns: 'burning-share-rises',
    assumes: 'temperature altitude liquidShare',
    computes: [
      'Let vapour out: R-32 18.3 %, R-125 21.5 %, R-134a 60.2 %',
      'What got out: R-32 30.1 %, R-125 30.2 %, R-134a 39.7 %',
      'Topped up: R-32 20.2 %, R-125 22.9 %, R-134a 56.9 %',
      'How far the chart is off, topped up: does not read like the fresh blend',
    ],
    restsOn:
      'equation-r-32 equation-r-125 equation-r-134a mixing-10.1063/1.1649997 rayleigh-1902 reading-limit fractionation-practice leak-model ashrae-34-flammable shop-thermometers us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-454B',
      escapes: 'liquid',
      temperature: '77 °F',
      lost: '20 %',
      startMass: '2 kg',
    },
    tells: 'check; lost 20 %; shift 0.011 ±0.68 °F; pressureNow 215 ±5 psig; add 14.1 oz; 3 to do',
    warns: '',
    assumes: 'temperature altitude liquidShare',
    computes: [
      'Let liquid out: R-32 68.9 %, R-1234yf 31.1 %',
      'What got out: R-32 68.7 %, R-1234yf 31.3 %',
      'Topped up: R-32 68.9 %, R-1234yf 31.1 %',
      'How far the chart is off, topped up: reads close to the fresh blend',
    ],
    restsOn:
      'equation-r-32 equation-r-1234yf mixing-10.1063/5.0135368 rayleigh-1902 reading-limit fractionation-practice leak-model shop-thermometers us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-407C',
      escapes: 'vapour',
      temperature: '77 °F',
      lost: '10 %',
      startMass: '2 kg',
      liquidShare: '50 %',
    },
    tells: 'check; lost 10 %; shift 0.881 ±0.334 °F; pressureNow 154 ±2.7 psig; 3 to do',
    warns: 'burning-share-rises',
    assumes: 'temperature altitude',
    computes: [
      'Let vapour out: R-32 22.0 %, R-125 24.3 %, R-134a 53.6 %',
      'What got out: R-32 31.7 %, R-125 31.1 %, R-134a 37.2 %',
      'Topped up: R-32 22.1 %, R-125 24.4 %, R-134a 53.5 %',
      'How far the chart is off, topped up: cannot tell whether it reads like the fresh blend',
    ],
    restsOn:
      'equation-r-32 equation-r-125 equation-r-134a mixing-10.1063/1.1649997 rayleigh-1902 reading-limit fractionation-practice leak-model ashrae-34-flammable shop-thermometers us-standard-atmosphere-1976 weather',
  },
])
