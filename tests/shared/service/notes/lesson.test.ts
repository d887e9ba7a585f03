import { notesOf } from '../../../support/notes.ts'

notesOf('lesson', [
  {
    input: { seed: 1 },
    tells:
      'information; machine Van, R-1234yf; supposed 90.3 %; weather 91.1 °F; cab 83.6 °F; seen clutch stays in; 1 to do',
    warns: 'invented-machine',
    assumes: '',
    computes: [],
    restsOn:
      'misconceptions-model lesson-steps machine-model invented-machines fitted-machines control-settings-memory equation-r-1234yf',
  },
  {
    input: {
      seed: 5,
      topic: 'vent',
      knowledge: 'roughly',
      predictions: {
        lowSide: 'down',
        highSide: 'up',
        superheat: 'same',
        subcooling: 'up',
        vent: 'up',
      },
    },
    tells: 'information; spent 0 min; seen clutch stays in; 1 to do',
    warns: 'invented-machine spread',
    assumes: '',
    computes: [],
    restsOn:
      'vent-and-humidity-1998 lesson-steps machine-model invented-machines fitted-machines control-settings-memory equation-r-134a',
  },
  {
    input: {
      seed: 2,
      topic: 'both-low',
      predictions: {
        lowSide: 'down',
        highSide: 'up',
        superheat: 'same',
        subcooling: 'up',
        vent: 'up',
      },
      bought: ['low-side', 'high-side', 'suction-line', 'liquid-line'],
    },
    tells:
      'information; spent 10 min; superheat 66.6 ±4.9 °F; subcooling 2.02 ±4.73 °F; seen sight glass clear, clutch stays in; 1 to do',
    warns: 'invented-machine spread',
    assumes: '',
    computes: [],
    restsOn:
      'misconceptions-model lesson-steps machine-model invented-machines fitted-machines control-settings-memory equation-r-134a',
  },
  {
    input: {
      seed: 3,
      topic: 'high-head',
      predictions: {
        lowSide: 'down',
        highSide: 'up',
        superheat: 'same',
        subcooling: 'up',
        vent: 'up',
      },
      bought: ['high-side', 'vent'],
      named: 'overcharge',
    },
    tells:
      'information; spent 4 min; cause 55.7 %; capacity 16200 Btu/h; predicted 3 of 5; claim A high high side means overcharge.; parts liquid line behind condenser or receiver; 2 to do',
    warns: 'invented-machine',
    assumes: '',
    computes: [],
    restsOn:
      'misconceptions-model lesson-steps machine-model invented-machines fitted-machines control-settings-memory equation-r-134a',
  },
  {
    input: {
      seed: 4,
      topic: 'sight-glass',
      predictions: {
        lowSide: 'down',
        highSide: 'up',
        superheat: 'same',
        subcooling: 'up',
        vent: 'up',
      },
      bought: ['low-side', 'weighed-charge'],
      named: 'none',
    },
    tells:
      'information; spent 48 min; cause 81.5 %; capacity 18200 Btu/h; predicted 1 of 5; claim A clear sight glass means the charge is right.; parts recovered and weighed; 2 to do',
    warns: 'invented-machine',
    assumes: '',
    computes: [],
    restsOn:
      'misconceptions-trade lesson-steps machine-model invented-machines fitted-machines control-settings-memory equation-r-134a',
  },
  {
    input: {
      seed: 6,
      topic: 'suction-normal',
      predictions: {
        lowSide: 'down',
        highSide: 'up',
        superheat: 'same',
        subcooling: 'up',
        vent: 'up',
      },
      named: 'compressor-leak',
    },
    tells:
      'information; spent 0 min; cause 24.8 %; capacity 12200 Btu/h; predicted 1 of 5; claim The suction is normal, so the compressor is good.; parts discharge line; 2 to do',
    warns: 'invented-machine',
    assumes: '',
    computes: [],
    restsOn:
      'misconceptions-model lesson-steps machine-model invented-machines fitted-machines control-settings-memory equation-r-1234yf',
  },
])
