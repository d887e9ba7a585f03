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
    warns: '',
    assumes: 'ambient barometer',
    shows:
      'Absolute pressure of the low side; Saturation temperature of the low side; Superheat; Absolute pressure of the high side; Saturation temperature of the high side; Subcooling; Condensing over ambient; Compression ratio',
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
    warns: '',
    assumes: 'suctionPressure liquidPressure suctionTemperature liquidTemperature altitude',
    shows:
      'Absolute pressure of the low side; Saturation temperature of the low side; Superheat; Absolute pressure of the high side; Saturation temperature of the high side; Subcooling; Compression ratio',
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
    warns: '',
    assumes: 'suctionPressure suctionTemperature ambient returnWetBulb altitude',
    shows: 'Absolute pressure of the low side; Saturation temperature of the low side; Superheat',
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
    warns: 'too-cold-for-charge-test',
    assumes: 'suctionPressure suctionTemperature ambient returnWetBulb altitude',
    shows: 'Absolute pressure of the low side; Saturation temperature of the low side; Superheat',
    restsOn:
      'superheat-table-r410a superheat-table-r22 ra3.2-2008 rossi-braun ra3.2-2013 trade-practice shop-gauges shop-thermometers equation-r-22 us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-134a', suctionPressure: '79 psig', dischargePressure: '79 psig' },
    warns: '',
    assumes: 'dischargePressure suctionPressure altitude',
    shows: 'Absolute pressure of the low side; Saturation temperature of the low side',
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
    warns: 'estimated-mixing',
    assumes: 'dischargePressure suctionPressure suctionTemperature liquidTemperature altitude',
    shows:
      'Absolute pressure of the low side; Saturation temperature of the low side; Superheat; Absolute pressure of the high side; Saturation temperature of the high side; Subcooling; Compression ratio',
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
    warns: '',
    assumes: 'suctionPressure liquidPressure suctionTemperature liquidTemperature ambient altitude',
    shows:
      'Absolute pressure of the low side; Saturation temperature of the low side; Superheat; Absolute pressure of the high side; Saturation temperature of the high side; Subcooling; Condensing over ambient; Compression ratio',
    restsOn:
      'trade-practice pressure-switch-1994 pressure-switch-2000 high-cut-out-1996 phase-equilibrium tm-5-3805-290 shop-gauges shop-thermometers equation-r-134a us-standard-atmosphere-1976 weather',
  },
])
