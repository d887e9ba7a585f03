import { notesOf } from '../../../support/notes.ts'

notesOf('readings', [
  {
    input: {
      refrigerant: 'R-134a',
      machine: 'off-road',
      meteringDevice: 'expansion-valve',
      suctionPressure: '32 ±1 psig',
      suctionTemperature: '48 ±2 °F',
      liquidPressure: '185 ±4 psig',
      liquidTemperature: '115 ±2 °F',
      ambient: '90 °F',
      altitude: '1200 ft',
    },
    tells:
      'fine; superheat 11.9 ±2.4 °F; subcooling 9.92 ±2.49 °F; evaporating 36.1 ±1.3 °F; condensing 125 ±1.5 °F; overAmbient 34.9 ±1.8 °F; ratio 4.32; 1 to do',
    warns: '',
    assumes: 'ambient barometer',
    computes: [
      'Absolute pressure of the low side: 46.1 ±1.1 psia',
      'Saturation temperature of the low side: 36.1 ±1.3 °F',
      'Superheat: 11.9 ±2.4 °F',
      'Absolute pressure of the high side: 199 ±4 psia',
      'Saturation temperature of the high side: 125 ±1.5 °F',
      'Subcooling: 9.92 ±2.49 °F',
      'Condensing over ambient: 34.9 ±1.8 °F',
      'Compression ratio: 4.32',
    ],
    restsOn:
      'sae-j3023 tm-5-3805-290 ra3.2-2008 rp-1173 rossi-braun shop-thermometers equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-410A',
      machine: 'stationary',
      meteringDevice: 'expansion-valve',
      suctionPressure: '118 psig',
      suctionTemperature: '52 °F',
      liquidPressure: '340 psig',
      liquidTemperature: '95 °F',
    },
    tells:
      'information; superheat 12.2 ±2.1 °F; subcooling 9.61 ±2.21 °F; evaporating 39.8 ±0.6 °F; condensing 105 ±1 °F; ratio 2.67; 1 to do',
    warns: '',
    assumes: 'suctionPressure liquidPressure suctionTemperature liquidTemperature altitude',
    computes: [
      'Absolute pressure of the low side: 133 ±1.1 psia',
      'Saturation temperature of the low side: 39.8 ±0.6 °F',
      'Superheat: 12.2 ±2.1 °F',
      'Absolute pressure of the high side: 355 ±4 psia',
      'Saturation temperature of the high side: 105 ±1 °F',
      'Subcooling: 9.61 ±2.21 °F',
      'Compression ratio: 2.67',
    ],
    restsOn:
      'ra3.2-2008 rp-1173 rossi-braun trade-practice shop-gauges shop-thermometers equation-r-32 equation-r-125 mixing-10.1063/1.1649997 us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-410A',
      machine: 'stationary',
      meteringDevice: 'orifice',
      suctionPressure: '118 psig',
      suctionTemperature: '60 °F',
      ambient: '85 °F',
      returnWetBulb: '65 °F',
    },
    tells: 'check; superheat 20.2 ±2.1 °F; evaporating 39.8 ±0.6 °F; lowSide 118 ±1 psig; 2 to do',
    warns: '',
    assumes: 'suctionPressure suctionTemperature ambient returnWetBulb altitude',
    computes: [
      'Absolute pressure of the low side: 133 ±1.1 psia',
      'Saturation temperature of the low side: 39.8 ±0.6 °F',
      'Superheat: 20.2 ±2.1 °F',
    ],
    restsOn:
      'superheat-table-r22 superheat-table-r410a ra3.2-2008 rossi-braun trade-practice shop-gauges shop-thermometers equation-r-32 equation-r-125 mixing-10.1063/1.1649997 us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-22',
      machine: 'stationary',
      meteringDevice: 'orifice',
      suctionPressure: '60 psig',
      suctionTemperature: '60 °F',
      ambient: '53 °F',
      returnWetBulb: '55.5 °F',
    },
    tells: 'check; superheat 26.1 ±2.2 °F; evaporating 33.9 ±0.9 °F; lowSide 60 ±1 psig; 2 to do',
    warns: 'too-cold-for-charge-test',
    assumes: 'suctionPressure suctionTemperature ambient returnWetBulb altitude',
    computes: [
      'Absolute pressure of the low side: 74.7 ±1.1 psia',
      'Saturation temperature of the low side: 33.9 ±0.9 °F',
      'Superheat: 26.1 ±2.2 °F',
    ],
    restsOn:
      'superheat-table-r410a superheat-table-r22 ra3.2-2008 rossi-braun ra3.2-2013 trade-practice shop-gauges shop-thermometers equation-r-22 us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-134a', suctionPressure: '79 psig', dischargePressure: '79 psig' },
    tells: 'check; rest 79 ±1 psig; 3 to do',
    warns: '',
    assumes: 'dischargePressure suctionPressure altitude',
    computes: [
      'Absolute pressure of the low side: 93.7 ±1.1 psia',
      'Saturation temperature of the low side: 75.2 ±0.8 °F',
    ],
    restsOn:
      'phase-equilibrium trade-practice tm-5-3805-290 shop-gauges equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-409A',
      machine: 'stationary',
      suctionPressure: '40 psig',
      suctionTemperature: '60 °F',
      dischargePressure: '200 psig',
      liquidTemperature: '100 °F',
    },
    tells:
      'information; superheat 14.1 ±3.7 °F; subcooling 21.1 ±3.8 °F; evaporating 46 ±4 °F; condensing 127 ±4 °F; ratio 3.93; 1 to do',
    warns: 'estimated-mixing',
    assumes: 'dischargePressure suctionPressure suctionTemperature liquidTemperature altitude',
    computes: [
      'Absolute pressure of the low side: 54.7 ±1.1 psia',
      'Saturation temperature of the low side: 46 ±4 °F',
      'Superheat: 14.1 ±3.7 °F',
      'Absolute pressure of the high side: 215 ±4 psia',
      'Saturation temperature of the high side: 121 ±4 °F',
      'Subcooling: 21.1 ±3.8 °F',
      'Compression ratio: 3.93',
    ],
    restsOn:
      'phase-equilibrium trade-practice shop-gauges shop-thermometers equation-r-22 equation-r-124 equation-r-142b mixing-estimated mixing-10.1021/acs.jced.6b00257 us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      machine: 'off-road',
      suctionPressure: '32 psig',
      suctionTemperature: '20 °F',
      liquidPressure: '470 psig',
      liquidTemperature: '60 °F',
      ambient: '90 °F',
    },
    tells:
      'stop; danger 470 ±4 psig; cutOut 435 psig; superheat -16.8 ±2.4 °F; subcooling 137 ±2.2 °F; evaporating 36.8 ±1.2 °F; condensing 197 ±0.8 °F; 3 to do',
    warns: '',
    assumes: 'suctionPressure liquidPressure suctionTemperature liquidTemperature ambient altitude',
    computes: [
      'Absolute pressure of the low side: 46.7 ±1.1 psia',
      'Saturation temperature of the low side: 36.8 ±1.2 °F',
      'Superheat: -16.8 ±2.4 °F',
      'Absolute pressure of the high side: 485 ±4 psia',
      'Saturation temperature of the high side: 197 ±0.8 °F',
      'Subcooling: 137 ±2.2 °F',
      'Condensing over ambient: 107 ±1.3 °F',
      'Compression ratio: 10.4',
    ],
    restsOn:
      'trade-practice pressure-switch-1994 pressure-switch-2000 high-cut-out-1996 phase-equilibrium tm-5-3805-290 shop-gauges shop-thermometers equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-744',
      machine: 'road-vehicle',
      suctionPressure: '35 bar g',
      suctionTemperature: '5 °C',
    },
    tells:
      'information; superheat 6.76 ±2.08 °F; evaporating 34.2 ±0.6 °F; lowSide 508 ±4 psig; 1 to do',
    warns: '',
    assumes: 'suctionPressure suctionTemperature altitude',
    computes: [
      'Absolute pressure of the low side: 522 ±4 psia',
      'Saturation temperature of the low side: 34.2 ±0.6 °F',
      'Superheat: 6.76 ±2.08 °F',
    ],
    restsOn:
      'tm-5-3805-290 shop-gauges shop-thermometers equation-r-744 us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      machine: 'road-vehicle',
      meteringDevice: 'orifice',
      suctionPressure: '8 psig',
      dischargePressure: '120 psig',
      ambient: '95 °F',
    },
    tells:
      'check; evaporating 3 ±2.1 °F; condensing 98 ±2 °F; overAmbient 3 ±2.21 °F; ratio 5.93; 3 to do',
    warns: '',
    assumes: 'dischargePressure suctionPressure ambient altitude',
    computes: [
      'Absolute pressure of the low side: 22.7 ±1.1 psia',
      'Saturation temperature of the low side: 3 ±2.1 °F',
      'Absolute pressure of the high side: 135 ±4 psia',
      'Saturation temperature of the high side: 98 ±2 °F',
      'Condensing over ambient: 3 ±2.21 °F',
      'Compression ratio: 5.93',
    ],
    restsOn:
      'sign-practice published-performance tm-5-3805-290 shop-gauges shop-thermometers equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-410A',
      machine: 'stationary',
      meteringDevice: 'orifice',
      suctionPressure: '118 ±2 psig',
      suctionTemperature: '52 ±1 °F',
      superheatLow: '8 °F',
      superheatHigh: '12 °F',
    },
    tells: 'check; superheat 12.2 ±1.4 °F; evaporating 39.8 ±1 °F; lowSide 118 ±2 psig; 2 to do',
    warns: '',
    assumes: 'altitude',
    computes: [
      'Absolute pressure of the low side: 133 ±2.1 psia',
      'Saturation temperature of the low side: 39.8 ±1 °F',
      'Superheat: 12.2 ±1.4 °F',
    ],
    restsOn:
      'trade-practice equation-r-32 equation-r-125 mixing-10.1063/1.1649997 us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-410A',
      machine: 'stationary',
      meteringDevice: 'expansion-valve',
      suctionPressure: '118 psig',
      suctionTemperature: '52 °F',
      liquidPressure: '340 psig',
      liquidTemperature: '95 °F',
      subcoolingTarget: '10 °F',
      dischargePressure: '350 psig',
      dischargeTemperature: '160 °F',
    },
    tells:
      'fine; superheat 12.2 ±2.1 °F; subcooling 9.61 ±2.21 °F; evaporating 39.8 ±0.6 °F; condensing 105 ±1 °F; ratio 2.75; 1 to do',
    warns: '',
    assumes:
      'dischargePressure suctionPressure liquidPressure suctionTemperature liquidTemperature dischargeTemperature altitude',
    computes: [
      'Absolute pressure of the low side: 133 ±1.1 psia',
      'Saturation temperature of the low side: 39.8 ±0.6 °F',
      'Superheat: 12.2 ±2.1 °F',
      'Absolute pressure of the high side: 355 ±4 psia',
      'Saturation temperature of the high side: 105 ±1 °F',
      'Subcooling: 9.61 ±2.21 °F',
      'Compression ratio: 2.75',
    ],
    restsOn:
      'ra3.2-2008 subcooling-within-3-f rp-1173 rossi-braun trade-practice shop-gauges shop-thermometers equation-r-32 equation-r-125 mixing-10.1063/1.1649997 us-standard-atmosphere-1976 weather',
  },
])
