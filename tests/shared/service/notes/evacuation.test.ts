import { notesOf } from '../../../support/notes.ts'

notesOf('evacuation', [
  {
    input: { refrigerant: 'R-134a', temperature: '50 °F' },
    tells:
      'check; target 500 micron; holdFor 10 min; holdBelow 1000 micron; water 9210 micron; 2 to do',
    warns: '',
    assumes: 'temperature target altitude',
    computes: ['Vacuum that water needs to boil: 9210 ±687 micron'],
    restsOn:
      'shop-thermometers micron-practice iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-134a', temperature: '28 °F', vacuum: '300 micron' },
    tells:
      'check; vacuum 300 ±30 micron; target 500 micron; holdFor 10 min; holdBelow 1000 micron; water 3810 micron; 3 to do',
    warns: 'water-is-ice',
    assumes: 'temperature target vacuum altitude',
    computes: [
      'Vacuum that water needs to boil: 3810 ±355 micron',
      'Boiling point of water at this vacuum: -21.1 ±1.8 °F',
    ],
    restsOn:
      'shop-thermometers micron-practice shop-micron-gauge iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      temperature: '75 °F',
      vacuum: '24.5 inHg vac',
      altitude: '5000 ft',
    },
    tells:
      'check; vacuum 24.5 ±2.1 inHg vac; target 500 micron; holdFor 10 min; holdBelow 1000 micron; water 22200 micron; 2 to do',
    warns: 'vacuum-too-near-to-tell',
    assumes: 'barometer temperature target vacuum',
    computes: [
      'Vacuum that water needs to boil: 22200 ±1490 micron',
      'Boiling point of water at this vacuum: 52 ±58 °F',
    ],
    restsOn:
      'us-standard-atmosphere-1976 weather shop-thermometers micron-practice shop-gauges iapws-sr1-86 iapws-r14-08',
  },
  {
    input: {
      temperature: '70 °F',
      pumpDisplacement: '5 cfm',
      volume: '5 L',
      vacuumHoseBore: '1/4 in',
      vacuumHoseLength: '6 ft',
      waterMass: '5 g',
    },
    tells:
      'check; target 500 micron; holdFor 10 min; holdBelow 1000 micron; time 114 s; water 18800 micron; 2 to do',
    warns: 'pump-down-is-a-least-time',
    assumes: 'temperature target altitude pumpUltimate',
    computes: [
      'Vacuum that water needs to boil: 18800 ±1280 micron',
      'Pump-down time: 114 s',
      'Least drying time: 2.86 min',
    ],
    restsOn:
      'shop-thermometers micron-practice iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather tube-conductance transition-flow-sum blasius-friction',
  },
  {
    input: { temperature: '70 °F', pumpDisplacement: '5 cfm', volume: '5 L' },
    tells:
      'check; target 500 micron; holdFor 10 min; holdBelow 1000 micron; time 15.5 s; water 18800 micron; 2 to do',
    warns: 'pump-down-is-a-least-time',
    assumes: 'temperature target altitude pumpUltimate vacuumHoses',
    computes: ['Vacuum that water needs to boil: 18800 ±1280 micron', 'Pump-down time: 15.5 s'],
    restsOn:
      'shop-thermometers micron-practice iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather tube-conductance transition-flow-sum blasius-friction',
  },
  {
    input: {
      refrigerant: 'R-134a',
      temperature: '70 °F',
      volume: '5 L',
      limit: 'rise-500-micron-in-10-min',
      rise: [
        { time: '0 min', pressure: '420 micron' },
        { time: '5 min', pressure: '500 micron' },
        { time: '10 min', pressure: '590 micron' },
        { time: '15 min', pressure: '675 micron' },
        { time: '20 min', pressure: '765 micron' },
      ],
    },
    tells:
      'check; watchFor 30 min; level 765 ±77 micron; rise 17.3 ±1.9 micron; water 18800 micron; holdFor 10 min; holdBelow 1000 micron; 2 to do',
    warns: '',
    assumes: 'temperature target altitude rise negligibleRise',
    computes: [
      'Vacuum that water needs to boil: 18800 ±1280 micron',
      'Reading the rise: too-short-to-tell',
      'Hold limit: kept',
    ],
    restsOn:
      'shop-thermometers micron-practice iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather shop-micron-gauge rise-shapes shape-selection',
  },
  {
    input: {
      temperature: '70 °F',
      limit: 'settles-at-10-mbar',
      rise: [
        { time: '0 min', pressure: '420 micron' },
        { time: '30 min', pressure: '420 micron' },
      ],
    },
    tells:
      'check; level 420 ±42 micron; rise 0 ±0.072 micron; water 18800 micron; holdFor 10 min; holdBelow 1000 micron; 2 to do',
    warns: 'limit-has-no-time',
    assumes: 'temperature target altitude rise negligibleRise',
    computes: [
      'Vacuum that water needs to boil: 18800 ±1280 micron',
      'Reading the rise: too-short-to-tell',
      'Hold limit: cannot-tell',
    ],
    restsOn:
      'shop-thermometers micron-practice iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather shop-micron-gauge rise-shapes shape-selection articulated-truck-vacuum',
  },
  {
    input: {
      refrigerant: 'R-134a',
      temperature: '77 °F',
      volume: '5 L',
      rise: [
        { time: '0 min', pressure: '500 micron' },
        { time: '5 min', pressure: '19000 micron' },
        { time: '10 min', pressure: '29000 micron' },
        { time: '20 min', pressure: '37000 micron' },
        { time: '30 min', pressure: '39500 micron' },
        { time: '45 min', pressure: '40400 micron' },
        { time: '60 min', pressure: '40500 micron' },
        { time: '90 min', pressure: '40500 micron' },
      ],
    },
    tells:
      'check; level 40500 micron; water 23800 micron; inside 0.0387 oz; holdBelow 1000 micron; target 500 micron; 2 to do',
    warns: 'above-water-settled-by',
    assumes: 'temperature target altitude rise negligibleRise',
    computes: [
      'Vacuum that water needs to boil: 0.46 ±0.031 psia',
      'Reading the rise: levels-off-above-water',
    ],
    restsOn:
      'shop-thermometers micron-practice iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather shop-micron-gauge rise-shapes shape-selection',
  },
  {
    input: { refrigerant: 'R-134a', temperature: '75 °F', vacuum: '300 micron' },
    tells:
      'check; vacuum 300 ±30 micron; target 500 micron; holdFor 10 min; holdBelow 1000 micron; water 22200 micron; 2 to do',
    warns: '',
    assumes: 'temperature target vacuum altitude',
    computes: [
      'Vacuum that water needs to boil: 22200 ±1490 micron',
      'Boiling point of water at this vacuum: -21.1 ±1.8 °F',
    ],
    restsOn:
      'shop-thermometers micron-practice shop-micron-gauge iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-134a', temperature: '75 °F', vacuum: '800 micron' },
    tells:
      'check; vacuum 800 ±80 micron; target 500 micron; holdFor 10 min; holdBelow 1000 micron; water 22200 micron; sure 455 micron; 2 to do',
    warns: '',
    assumes: 'temperature target vacuum altitude',
    computes: [
      'Vacuum that water needs to boil: 22200 ±1490 micron',
      'Boiling point of water at this vacuum: -3.4 ±1.9 °F',
    ],
    restsOn:
      'shop-thermometers micron-practice shop-micron-gauge iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      temperature: '70 °F',
      rise: [
        { time: '0 min', pressure: '500 micron' },
        { time: '5 min', pressure: '12000 micron' },
        { time: '10 min', pressure: '16000 micron' },
        { time: '20 min', pressure: '18500 micron' },
        { time: '40 min', pressure: '18900 micron' },
      ],
    },
    tells:
      'check; level 18900 micron; water 18800 micron; holdBelow 1000 micron; target 500 micron; 3 to do',
    warns: 'dry-and-test-again',
    assumes: 'temperature target altitude rise negligibleRise',
    computes: ['Vacuum that water needs to boil: 18800 ±1280 micron', 'Reading the rise: wet'],
    restsOn:
      'shop-thermometers micron-practice iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather shop-micron-gauge rise-shapes shape-selection',
  },
  {
    input: {
      temperature: '70 °F',
      volume: '5 L',
      rise: [
        { time: '0 min', pressure: '500 micron' },
        { time: '5 min', pressure: '5500 micron' },
        { time: '10 min', pressure: '10500 micron' },
        { time: '20 min', pressure: '20500 micron' },
        { time: '40 min', pressure: '40500 micron' },
      ],
    },
    tells:
      'check; rise 1000 ±58 micron; level 40500 ±4050 micron; water 18800 micron; holdBelow 1000 micron; 2 to do',
    warns: 'water-may-hide-under-a-leak',
    assumes: 'temperature target altitude rise negligibleRise',
    computes: [
      'Vacuum that water needs to boil: 18800 ±1280 micron',
      'Reading the rise: leaking',
      'Inflow of air: 0.0111 ±0.0007 Pa m3/s',
    ],
    restsOn:
      'shop-thermometers micron-practice iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather shop-micron-gauge rise-shapes shape-selection',
  },
  {
    input: {
      temperature: '70 °F',
      rise: [
        { time: '0 min', pressure: '300 micron' },
        { time: '1 min', pressure: '310 micron' },
      ],
    },
    tells:
      'check; level 310 ±31 micron; rise 10 ±5 micron; water 18800 micron; holdFor 10 min; holdBelow 1000 micron; 2 to do',
    warns: '',
    assumes: 'temperature target altitude rise negligibleRise',
    computes: [
      'Vacuum that water needs to boil: 18800 ±1280 micron',
      'Reading the rise: too-short-to-tell',
    ],
    restsOn:
      'shop-thermometers micron-practice iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather shop-micron-gauge rise-shapes shape-selection',
  },
])
