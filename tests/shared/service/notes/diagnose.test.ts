import { notesOf } from '../../../support/notes.ts'

notesOf('diagnose', [
  {
    input: {
      refrigerant: 'R-134a',
      meteringDevice: 'orifice-tube',
      machine: 'off-road',
      suctionPressure: '8 psig',
      liquidPressure: '120 psig',
      ambient: '95 °F',
    },
    tells:
      'check; first 8 of 10; second 1 of 10; evaporating 3 ±2.1 °F; condensing 98 ±2 °F; overAmbient 3 ±2.21 °F; ratio 5.93; 3 to do',
    warns: '',
    assumes:
      'modelMachine priors baseline returnAir relativeHumidity compressorRpm ambient liquidPressure suctionPressure altitude',
    computes: [
      'Absolute pressure of the low side: 22.7 ±1.1 psia',
      'Saturation temperature of the low side: 3 ±2.1 °F',
      'Absolute pressure of the high side: 135 ±4 psia',
      'Saturation temperature of the high side: 98 ±2 °F',
      'Condensing over ambient: 3 ±2.21 °F',
      'Compression ratio: 5.93',
    ],
    restsOn:
      'machine-model-card diagnosis-priors-memory diagnosis-severity-memory diagnosis-costs-memory diagnosis-spread-memory diagnosis-discrepancy-memory diagnosis-mistakes-memory diagnosis-kinds-memory diagnosis-evidence-memory sign-practice published-performance shop-thermometers shop-gauges equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      machine: 'off-road',
      meteringDevice: 'expansion-valve',
      suctionPressure: '45 psig',
      suctionTemperature: '62 °F',
      liquidPressure: '330 psig',
      liquidTemperature: '108 °F',
      ambient: '90 °F',
    },
    tells:
      'check; first 9 of 10; second 1 of 10; superheat 12.4 ±2.3 °F; subcooling 59.4 ±2.3 °F; evaporating 49.6 ±1 °F; condensing 167 ±1 °F; 3 to do',
    warns: '',
    assumes:
      'modelMachine priors architecture returnAir relativeHumidity compressorRpm ambient liquidPressure suctionPressure suctionTemperature liquidTemperature altitude',
    computes: [
      'Absolute pressure of the low side: 59.7 ±1.1 psia',
      'Saturation temperature of the low side: 49.6 ±1 °F',
      'Superheat: 12.4 ±2.3 °F',
      'Absolute pressure of the high side: 345 ±4 psia',
      'Saturation temperature of the high side: 167 ±1 °F',
      'Subcooling: 59.4 ±2.3 °F',
      'Condensing over ambient: 77.4 ±1.5 °F',
      'Compression ratio: 5.77',
    ],
    restsOn:
      'machine-model-card diagnosis-priors-memory diagnosis-severity-memory diagnosis-costs-memory diagnosis-spread-memory diagnosis-discrepancy-memory diagnosis-mistakes-memory diagnosis-kinds-memory diagnosis-evidence-memory sign-practice published-performance shop-thermometers shop-gauges equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      suctionPressure: '70 psig',
      dischargePressure: '120 psig',
      ambient: '95 °F',
      priors: 'equal',
      law: 'us',
    },
    tells:
      'check; first 8 of 10; second 2 of 10; evaporating 69.2 ±0.8 °F; condensing 98 ±2 °F; overAmbient 3 ±2.21 °F; ratio 1.59; 3 to do',
    warns: '',
    assumes:
      'modelMachine architecture returnAir relativeHumidity compressorRpm ambient dischargePressure suctionPressure altitude',
    computes: [
      'Absolute pressure of the low side: 84.7 ±1.1 psia',
      'Saturation temperature of the low side: 69.2 ±0.8 °F',
      'Absolute pressure of the high side: 135 ±4 psia',
      'Saturation temperature of the high side: 98 ±2 °F',
      'Condensing over ambient: 3 ±2.21 °F',
      'Compression ratio: 1.59',
    ],
    restsOn:
      'machine-model-card diagnosis-priors-memory diagnosis-severity-memory diagnosis-costs-memory diagnosis-spread-memory diagnosis-discrepancy-memory diagnosis-mistakes-memory diagnosis-kinds-memory diagnosis-evidence-memory gauge-chart-2005 published-performance sign-practice shop-thermometers shop-gauges equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      machine: 'off-road',
      meteringDevice: 'expansion-valve',
      suctionPressure: '12 inHg vac',
      liquidPressure: '120 psig',
      ambient: '80 °F',
    },
    tells:
      'check; first over 9 of 10; evaporating -34 ±5 °F; condensing 98 ±2 °F; overAmbient 18 ±2.3 °F; ratio 15.3; lowSide 12 ±2.1 inHg vac; 3 to do',
    warns: '',
    assumes:
      'modelMachine priors architecture returnAir relativeHumidity compressorRpm ambient liquidPressure suctionPressure altitude',
    computes: [
      'Absolute pressure of the low side: 8.8 ±1.1 psia',
      'Saturation temperature of the low side: -34 ±5 °F',
      'Absolute pressure of the high side: 135 ±4 psia',
      'Saturation temperature of the high side: 98 ±2 °F',
      'Condensing over ambient: 18 ±2.3 °F',
      'Compression ratio: 15.3',
    ],
    restsOn:
      'machine-model-card diagnosis-priors-memory diagnosis-severity-memory diagnosis-costs-memory diagnosis-spread-memory diagnosis-discrepancy-memory diagnosis-mistakes-memory diagnosis-kinds-memory diagnosis-evidence-memory sign-of-a-restriction sign-practice phase-equilibrium trade-practice shop-thermometers shop-gauges equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      suctionPressure: '60 psig',
      dischargePressure: '450 psig',
      ambient: '95 °F',
    },
    tells:
      'stop; danger 450 ±4 psig; cutOut 435 psig; evaporating 62 ±0.9 °F; condensing 193 ±0.8 °F; overAmbient 97.9 ±1.3 °F; ratio 6.22; 3 to do',
    warns: '',
    assumes: 'ambient dischargePressure suctionPressure altitude',
    computes: [
      'Absolute pressure of the low side: 74.7 ±1.1 psia',
      'Saturation temperature of the low side: 62 ±0.9 °F',
      'Absolute pressure of the high side: 465 ±4 psia',
      'Saturation temperature of the high side: 193 ±0.8 °F',
      'Condensing over ambient: 97.9 ±1.3 °F',
      'Compression ratio: 6.22',
    ],
    restsOn:
      'machine-model-card diagnosis-priors-memory diagnosis-severity-memory diagnosis-costs-memory diagnosis-spread-memory diagnosis-discrepancy-memory diagnosis-mistakes-memory diagnosis-kinds-memory diagnosis-evidence-memory trade-practice pressure-switch-1994 pressure-switch-2000 high-cut-out-1996 shop-thermometers shop-gauges equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      suctionPressure: '79 psig',
      dischargePressure: '79 psig',
      ambient: '75 °F',
    },
    tells:
      'information; rest 79 ±1 psig; air 75 ±1 °F; saturation 78.7 ±1.7 psig; off 0.35 ±1.93 psi; 1 to do',
    warns: '',
    assumes: 'ambient dischargePressure suctionPressure altitude',
    computes: [
      'Absolute pressure of the low side: 93.7 ±1.1 psia',
      'Saturation temperature of the low side: 75.2 ±0.8 °F',
    ],
    restsOn:
      'machine-model-card diagnosis-priors-memory diagnosis-severity-memory diagnosis-costs-memory diagnosis-spread-memory diagnosis-discrepancy-memory diagnosis-mistakes-memory diagnosis-kinds-memory diagnosis-evidence-memory phase-equilibrium trade-practice shop-thermometers shop-gauges equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      suctionPressure: '20 psig',
      dischargePressure: '90 psig',
      ambient: '30 °F',
    },
    tells:
      'check; evaporating 22.2 ±1.5 °F; condensing 82 ±2.4 °F; overAmbient 52 ±2.6 °F; ratio 3.02; 1 to do',
    warns: '',
    assumes: 'ambient dischargePressure suctionPressure altitude',
    computes: [
      'Absolute pressure of the low side: 34.7 ±1.1 psia',
      'Saturation temperature of the low side: 22.2 ±1.5 °F',
      'Absolute pressure of the high side: 105 ±4 psia',
      'Saturation temperature of the high side: 82 ±2.4 °F',
      'Condensing over ambient: 52 ±2.6 °F',
      'Compression ratio: 3.02',
    ],
    restsOn:
      'machine-model-card diagnosis-priors-memory diagnosis-severity-memory diagnosis-costs-memory diagnosis-spread-memory diagnosis-discrepancy-memory diagnosis-mistakes-memory diagnosis-kinds-memory diagnosis-evidence-memory shop-thermometers shop-gauges equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-1234yf',
      architecture: 'valve',
      suctionPressure: '40 psig',
      liquidPressure: '290 psig',
      ambient: '90 °F',
      systemPressure: '95 psig',
      systemTemperature: '75 °F',
      ruledOut: ['condenser-air'],
    },
    tells:
      'check; first 9 of 10; evaporating 41.6 ±1.2 °F; condensing 160 ±1.2 °F; overAmbient 70.3 ±1.6 °F; ratio 5.57; lowSide 40 ±1 psig; 3 to do',
    warns: '',
    assumes:
      'modelMachine priors baseline returnAir relativeHumidity compressorRpm ambient liquidPressure suctionPressure systemPressure systemTemperature altitude',
    computes: [
      'Absolute pressure of the low side: 54.7 ±1.1 psia',
      'Saturation temperature of the low side: 41.6 ±1.2 °F',
      'Absolute pressure of the high side: 305 ±4 psia',
      'Saturation temperature of the high side: 160 ±1.2 °F',
      'Condensing over ambient: 70.3 ±1.6 °F',
      'Compression ratio: 5.57',
    ],
    restsOn:
      'machine-model-card diagnosis-priors-memory diagnosis-severity-memory diagnosis-costs-memory diagnosis-spread-memory diagnosis-discrepancy-memory diagnosis-mistakes-memory diagnosis-kinds-memory diagnosis-evidence-memory shop-thermometers shop-gauges equation-r-1234yf us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      modelMachine: 'loader',
      suctionPressure: '35 psig',
      liquidPressure: '200 psig',
      ambient: '86 °F',
      recovered: '0.71 kg',
      labelCharge: '0.919 kg',
    },
    tells:
      'check; first over 9 of 10; evaporating 40 ±1.2 °F; condensing 130 ±1.4 °F; overAmbient 44.4 ±1.8 °F; ratio 4.32; lowSide 35 ±1 psig; 1 to do',
    warns: '',
    assumes:
      'modelMachine priors returnAir relativeHumidity compressorRpm ambient liquidPressure suctionPressure recovered altitude',
    computes: [
      'Absolute pressure of the low side: 49.7 ±1.1 psia',
      'Saturation temperature of the low side: 40 ±1.2 °F',
      'Absolute pressure of the high side: 215 ±4 psia',
      'Saturation temperature of the high side: 130 ±1.4 °F',
      'Condensing over ambient: 44.4 ±1.8 °F',
      'Compression ratio: 4.32',
    ],
    restsOn:
      'machine-model-card diagnosis-priors-memory diagnosis-severity-memory diagnosis-costs-memory diagnosis-spread-memory diagnosis-discrepancy-memory diagnosis-mistakes-memory diagnosis-kinds-memory diagnosis-evidence-memory shop-thermometers shop-gauges shop-scale equation-r-134a us-standard-atmosphere-1976 weather',
  },
])
