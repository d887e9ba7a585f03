import { notesOf } from '../../../support/notes.ts'

notesOf('simulate', [
  {
    input: { modelMachine: 'loader' },
    tells:
      'information; low 27.2 psig; high 190 psig; superheat 12.8 °F; subcooling 1.54 °F; vent 49.5 °F; capacity 18300 Btu/h; 2 to do',
    warns: 'invented-machine',
    assumes: 'altitude ambient returnAir compressorRpm relativeHumidity condenserFan blower',
    computes: [
      'Heat that the condenser gives to the air: 25600 Btu/h',
      'Superheat as a mechanic works it out: 12.8 °F',
      'Subcooling as a mechanic works it out: 1.54 °F',
    ],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: { modelMachine: 'loader', fault: 'undercharge', severity: '80 %' },
    tells:
      'check; low 14.9 psig; high 160 psig; superheat 62.4 °F; subcooling 0.903 °F; vent 58.5 °F; capacity 12400 Btu/h; 2 to do',
    warns: 'invented-machine',
    assumes:
      'altitude ambient returnAir compressorRpm relativeHumidity condenserFan blower chargeNow',
    computes: [
      'Heat that the condenser gives to the air: 18200 Btu/h',
      'Superheat as a mechanic works it out: 62.4 °F',
      'Subcooling as a mechanic works it out: 0.903 °F',
    ],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory fault-sizes-assumed equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: { modelMachine: 'van', fault: 'condenser', ambient: '95 °F' },
    tells:
      'information; low 28.6 psig; high 232 psig; superheat 12.2 °F; subcooling 12 °F; vent 50.5 °F; capacity 17700 Btu/h; 2 to do',
    warns: 'invented-machine',
    assumes:
      'altitude returnAir compressorRpm relativeHumidity condenserFan blower severity condenserAir',
    computes: [
      'Heat that the condenser gives to the air: 25700 Btu/h',
      'Superheat as a mechanic works it out: 12.2 °F',
      'Subcooling as a mechanic works it out: 12 °F',
    ],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory fault-sizes-assumed equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      modelMachine: 'tractor',
      refrigerant: 'R-1234yf',
      fault: 'stroke-stuck-low',
      severity: '40 %',
      altitude: '5000 ft',
    },
    tells:
      'information; low 44.6 psig; high 169 psig; superheat 9.69 °F; subcooling 1.04 °F; vent 55.7 °F; capacity 12700 Btu/h; 2 to do',
    warns: 'invented-machine',
    assumes:
      'barometer ambient returnAir compressorRpm relativeHumidity condenserFan blower stroke',
    computes: [
      'Heat that the condenser gives to the air: 16400 Btu/h',
      'Superheat as a mechanic works it out: 9.69 °F',
      'Subcooling as a mechanic works it out: 1.04 °F',
    ],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory fault-sizes-assumed equation-r-1234yf us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      modelMachine: 'pickup',
      fault: 'leak',
      severity: '60 %',
      returnAir: '80 °F',
      relativeHumidity: '40 %',
    },
    tells:
      'information; low 32.8 psig; high 167 psig; superheat 0 °F; subcooling 1.02 °F; vent 51.6 °F; capacity 12900 Btu/h; 2 to do',
    warns: 'invented-machine',
    assumes: 'altitude ambient compressorRpm condenserFan blower compressorLeak',
    computes: [
      'Heat that the condenser gives to the air: 20000 Btu/h',
      'Superheat as a mechanic works it out: 0 °F',
      'Subcooling as a mechanic works it out: 1.02 °F',
    ],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory fault-sizes-assumed equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: { modelMachine: 'pickup', ambient: '17 °C', returnAir: '17 °C' },
    tells:
      'check; duty 18.4 %; low 25 psig; high 111 psig; subcooling 0 °F; vent 44.2 °F; capacity 3860 Btu/h; 2 to do',
    warns: 'invented-machine shown-before-opening',
    assumes: 'altitude compressorRpm relativeHumidity condenserFan blower',
    computes: [
      'Heat that the condenser gives to the air: 25800 Btu/h',
      'Superheat as a mechanic works it out: 0 °F',
      'Subcooling as a mechanic works it out: 0 °F',
    ],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: { modelMachine: 'cooler-valve', valveOpening: '2 %' },
    tells:
      'check; limit 7.06 psig; low 21.9 inHg vac; high 122 psig; superheat 141 °F; subcooling 3.72 °F; vent 80 °F; 2 to do',
    warns: 'invented-machine shown-on-the-way',
    assumes: 'altitude ambient returnAir compressorRpm relativeHumidity condenserFan blower',
    computes: [
      'Heat that the condenser gives to the air: 1170 Btu/h',
      'Superheat as a mechanic works it out: 141 °F',
      'Subcooling as a mechanic works it out: 3.72 °F',
    ],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: { modelMachine: 'loader', ambient: '50 °C', condenserAir: '20 %' },
    tells: 'check; limit 431 psig; capacity 0 Btu/h; 2 to do',
    warns: 'invented-machine',
    assumes: 'altitude returnAir compressorRpm relativeHumidity condenserFan blower',
    computes: [],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: { modelMachine: 'tractor', evaporatorAir: '10 %', blower: '50 %' },
    tells:
      'check; low 23.6 psig; high 122 psig; superheat 5.95 °F; subcooling 0.0145 °F; vent 30.2 °F; capacity 0 Btu/h; 2 to do',
    warns: 'invented-machine',
    assumes: 'altitude ambient returnAir compressorRpm relativeHumidity condenserFan',
    computes: [
      'Heat that the condenser gives to the air: 1830 Btu/h',
      'Superheat as a mechanic works it out: 5.95 °F',
      'Subcooling as a mechanic works it out: 0.0145 °F',
    ],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      modelMachine: 'van',
      fault: 'air',
      returnWetBulb: '68 °F',
      returnAir: '80 °F',
      compressorRpm: 1500,
    },
    tells:
      'information; low 26.3 psig; high 214 psig; superheat 12.2 °F; subcooling 19.4 °F; vent 48.3 °F; capacity 18400 Btu/h; 2 to do',
    warns: 'invented-machine',
    assumes: 'altitude ambient condenserFan blower severity airInside',
    computes: [
      'Heat that the condenser gives to the air: 25900 Btu/h',
      'Superheat as a mechanic works it out: 12.2 °F',
      'Subcooling as a mechanic works it out: 19.4 °F',
    ],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory fault-sizes-assumed equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: { modelMachine: 'split-valve', airInside: '5 psi', restriction: '20 psi' },
    tells:
      'information; low 128 psig; high 415 psig; superheat 9.51 °F; subcooling 12.4 °F; vent 59.4 °F; capacity 12300 Btu/h; 2 to do',
    warns: 'invented-machine',
    assumes: 'altitude ambient returnAir compressorRpm relativeHumidity condenserFan blower',
    computes: [
      'Heat that the condenser gives to the air: 15600 Btu/h',
      'Superheat as a mechanic works it out: 9.51 °F',
      'Subcooling as a mechanic works it out: 12.4 °F',
    ],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory equation-r-32 equation-r-125 mixing-10.1063/1.1649997 us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      modelMachine: 'loader',
      sweep: 'charge',
      sweepFrom: '60 %',
      sweepTo: '140 %',
      sweepPoints: 5,
    },
    tells: 'information; from 80 %; to 120 %; 2 to do',
    warns: 'invented-machine',
    assumes: 'altitude ambient returnAir compressorRpm relativeHumidity condenserFan blower',
    computes: [
      'Heat that the condenser gives to the air: 25600 Btu/h',
      'Superheat as a mechanic works it out: 12.8 °F',
      'Subcooling as a mechanic works it out: 1.54 °F',
    ],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory equation-r-134a us-standard-atmosphere-1976 weather',
  },
  {
    input: { modelMachine: 'van', sweep: 'condenser-air' },
    tells: 'information; from 25 %; to 100 %; 1 to do',
    warns: 'invented-machine',
    assumes: 'altitude ambient returnAir compressorRpm relativeHumidity condenserFan blower',
    computes: [
      'Heat that the condenser gives to the air: 26000 Btu/h',
      'Superheat as a mechanic works it out: 12.7 °F',
      'Subcooling as a mechanic works it out: 12.4 °F',
    ],
    restsOn:
      'machine-model invented-machines fitted-machines control-settings-memory equation-r-134a us-standard-atmosphere-1976 weather',
  },
])
