import { notesOf } from '../../../support/notes.ts'

notesOf('evacuation', [
  {
    input: { refrigerant: 'R-134a', temperature: '50 °F' },
    warns: '',
    assumes: 'temperature target altitude',
    shows: 'Vacuum that water needs to boil',
    restsOn:
      'shop-thermometers micron-practice iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-134a', temperature: '28 °F', vacuum: '300 micron' },
    warns: 'water-is-ice',
    assumes: 'temperature target vacuum altitude',
    shows: 'Vacuum that water needs to boil; Boiling point of water at this vacuum',
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
    warns: 'vacuum-too-near-to-tell',
    assumes: 'barometer temperature target vacuum',
    shows: 'Vacuum that water needs to boil; Boiling point of water at this vacuum',
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
    warns: 'pump-down-is-a-least-time',
    assumes: 'temperature target altitude pumpUltimate',
    shows: 'Vacuum that water needs to boil; Pump-down time; Least drying time',
    restsOn:
      'shop-thermometers micron-practice iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather tube-conductance transition-flow-sum blasius-friction',
  },
  {
    input: { temperature: '70 °F', pumpDisplacement: '5 cfm', volume: '5 L' },
    warns: 'pump-down-is-a-least-time',
    assumes: 'temperature target altitude pumpUltimate vacuumHoses',
    shows: 'Vacuum that water needs to boil; Pump-down time',
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
    warns: '',
    assumes: 'temperature target altitude rise negligibleRise',
    shows: 'Vacuum that water needs to boil; Reading the rise; Hold limit',
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
    warns: 'limit-has-no-time',
    assumes: 'temperature target altitude rise negligibleRise',
    shows: 'Vacuum that water needs to boil; Reading the rise; Hold limit',
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
    warns: 'above-water-settled-by',
    assumes: 'temperature target altitude rise negligibleRise',
    shows: 'Vacuum that water needs to boil; Reading the rise',
    restsOn:
      'shop-thermometers micron-practice iapws-sr1-86 iapws-r14-08 us-standard-atmosphere-1976 weather shop-micron-gauge rise-shapes shape-selection',
  },
])
