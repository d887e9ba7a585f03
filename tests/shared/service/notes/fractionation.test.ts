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
    warns: 'burning-share-rises',
    assumes: 'temperature altitude liquidShare',
    shows: 'Let vapour out; What got out; Topped up; How far the chart is off, topped up',
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
    warns: '',
    assumes: 'temperature altitude liquidShare',
    shows: 'Let liquid out; What got out; Topped up; How far the chart is off, topped up',
    restsOn:
      'equation-r-32 equation-r-1234yf mixing-10.1063/5.0135368 rayleigh-1902 reading-limit fractionation-practice leak-model shop-thermometers us-standard-atmosphere-1976 weather',
  },
])
