import { describe, expect, it } from 'vitest'
import { operation } from '../../../../shared/operations.ts'
import { workingOf } from '../../../support/shown.ts'

// The lines of a calculation as the sheet prints them: a value lost or swapped on the way shows here.

interface Case {
  readonly name: string
  /** Without it the example of the step. */
  readonly input?: Readonly<Record<string, unknown>>
  readonly computes: readonly string[]
}

const CASES: readonly Case[] = [
  {
    name: 'saturation',
    computes: [
      'Absolute pressure: gauge reading 32 ±1 psig, barometric pressure 27.3 ±0.9 inHg → 45.4 ±1.1 psia',
      'Saturation temperature: absolute pressure 45.4 ±1.1 psia → 35.4 ±1.3 °F',
    ],
  },
  {
    name: 'readings',
    computes: [
      'Absolute pressure of the low side: gauge reading 32 ±1 psig, barometric pressure 28.6 ±0.9 inHg → 46.1 ±1.1 psia',
      'Saturation temperature of the low side: absolute pressure 46.1 ±1.1 psia → 36.1 ±1.3 °F',
      'Superheat: suction-line temperature 48 ±2 °F, dew temperature 36.1 ±1.3 °F → 11.9 ±2.4 °F',
      'Absolute pressure of the high side: gauge reading 185 ±4 psig, barometric pressure 28.6 ±0.9 inHg → 199 ±4 psia',
      'Saturation temperature of the high side: absolute pressure 199 ±4 psia → 125 ±1.5 °F',
      'Subcooling: bubble temperature 125 ±1.5 °F, liquid-line temperature 115 ±2 °F → 9.92 ±2.49 °F',
      'Condensing over ambient: condensing temperature 125 ±1.5 °F, air entering the condenser 90 ±1 °F → 34.9 ±1.8 °F',
      'Compression ratio: high side 199 psia, low side 46.1 psia → 4.32',
    ],
  },
  {
    name: 'charge',
    computes: [
      'Refrigerant in the section: volume 7.76 ±0.44 fl oz, how hose #8, bore 13/32 in nominal, contents saturated liquid at its temperature, density 70.7 ±0.8 lb/ft3 → 9.16 ±0.52 oz',
      'Mass to add: 1 section 9.16 ±0.52 oz → 9.16 ±0.52 oz',
      'Refrigerant that stays in the service hose: bore 0.25 in, length 6 ft, volume 1.96 fl oz, at the end saturated liquid at ambient, at the start empty → 2.47 ±0.005 oz',
      'Mass to set on the scale: mass to add 9.16 ±0.52 oz, in the hose 2.47 ±0.005 oz → 11.6 ±0.6 oz',
    ],
  },
  {
    name: 'oil',
    computes: [
      'Oil for the condenser: least 0 fl oz, most 1.35 fl oz → 1 fl oz',
      'Oil for the drier: least 0 fl oz, most 3.5 fl oz → 1 fl oz',
      'Oil for the sudden leak: least 1 fl oz, most 3 fl oz → 2.5 fl oz',
      "Oil that must go in, with what the new compressor holds of it: system's total 8 fl oz → 4.5 fl oz",
    ],
  },
  {
    name: 'recovery',
    computes: [
      'Expected mass: labelCharge 2.38 lb, share 0.95 → 2.26 lb',
      'Pressure in the cylinder at its hottest: hottest 131 °F, servicePressure 400 psi, allowed 500 psi → 202 ±0.7 psig',
      'Most the cylinder may hold by the 80 % rule: waterCapacity 47.7 lb, specificGravity 1.21 → 46.1 lb',
      'What still fits: highestContents 46.1 lb, grossNow 41.5 ±0.04 lb, tare 28 lb, uncertainty 0.529 oz → 32.6 lb',
    ],
  },
  {
    name: 'air-check',
    computes: [
      'Pressure above that of the refrigerant alone: pressure 119 ±1.1 psia, refrigerant 101 psia, temperature 80 ±1 °F → 17.3 ±2.1 psi',
      'Mass of air: partialPressure 17.3 ±2.1 psi, vapourSpace 4.02 gal → 0.745 ±0.087 oz',
    ],
  },
  {
    name: 'contamination',
    computes: [
      'Distance from saturation: measured 123 ±1.1 psia, bubble 101 psia, dew 101 psia → 21.3 ±2.1 psi',
      'Share of R-290 that reads so: measured 123 ±1.1 psia, pure expected 101 psia, pure other 144 psia → 2.55 ±0.3 %',
    ],
  },
  {
    name: 'rules',
    computes: [
      'Which regime binds: machine off-road, compressorDrive open, refrigerant R-134a, labelCharge 2.75 lb → Off-road cab treated like a motor vehicle: section 608 as set out in 40 CFR part 82 subpart B',
    ],
  },
  {
    name: 'leak-test',
    computes: [
      'Change by temperature alone: start 165 ±0.5 psia, startTemperature 80 ±1 °F, endTemperature 70 ±1 °F → -3.05 ±0.43 psi',
      'Change that temperature does not explain: start 165 ±0.5 psia, end 162 ±0.5 psia, ± of end pressure 0.5 psi, ± of start pressure 0.491 psi, ± of end temperature 0.305 psi, ± of start temperature 0.3 psi, ± of change of the barometer 0.174 psi, ± of barometer 417 micron → -0.048 ±0.84 psi',
    ],
  },
  {
    name: 'fractionation',
    computes: [
      'Let vapour out: fresh blend R-32 23.0 %, R-125 25.0 %, R-134a 52.0 %, temperature 77 ±1 °F, liquid share at the start 80 %, mass let out 40 % → R-32 18.3 %, R-125 21.5 %, R-134a 60.2 %',
      'What got out: lost 40 % → R-32 30.1 %, R-125 30.2 %, R-134a 39.7 %',
      'Topped up: lost 40 % → R-32 20.2 %, R-125 22.9 %, R-134a 56.9 %',
      'How far the chart is off, topped up: bubble 2.96 °F, dew 2.92 °F, counts as close below 0.9 °F → does not read like the fresh blend',
    ],
  },
  {
    name: 'evacuation',
    computes: [
      'Vacuum that water needs to boil: temperature 70 ±2 °F, barometer 13.4 psia → 18800 ±1280 micron',
      'Reading the rise: readings 11, vapourPressure 18800 micron, flat 81.6, steady 0, slowing-toward-air 206, levelling-at-water 15.3, levelling-at-water-and-steady 999, levelling 45.9, levelling-and-steady 999 → leaking',
      'Inflow of air: volume 1.32 gal, risePerMinute 17.1 micron → 0.00019 ±0.000005 Pa m3/s',
      'Refrigerant through the same hole: leakRate 0.00019 ±0.000005 Pa m3/s, restPressure 85.8 psia, molarMass 0.102, atSameFlow 8.84 oz/yr → 903 oz/yr',
      'Hold limit: rise 170 micron, after 10 min → kept',
    ],
  },
  {
    name: 'charging',
    computes: [
      'Mass to add: charge 2.38 lb, alreadyIn 0 oz → 2.38 lb',
      'Hold-up of the hose: bore 0.25 in, length 6 ft, starts empty, holds liquid, volume 1.96 fl oz → 2.46 ±0.005 oz',
      'Scale reading to stop at: start 24.5 lb, toAdd 2.38 lb, holdUp 2.46 ±0.005 oz → 22 lb',
    ],
  },
  {
    name: 'cooling-check',
    computes: [
      'Published band, high side: ambient 88 ±1 °F, tables loader-1000-rpm, compact-loader-any-ambient → 150 psig (1030 kPa g) to 280 psig (1930 kPa g)',
      'Published band, low side: ambient 88 ±1 °F, tables loader-1000-rpm, compact-loader-any-ambient → 14 psig (96.5 kPa g) to 30 psig (207 kPa g)',
      'Condensing above ambient: condensing 132 ±1.4 °F, ambient 88 ±1 °F → 44.1 ±1.7 °F',
      'Dew point of the air going in: returnAir 88 ±1 °F, relativeHumidity 45 ±5 % → 64 ±4 °F',
      'Heat taken from the air: returnAir 88 ±1 °F, vent 52 ±1 °F → 13.8 ±1.9 Btu/lb',
    ],
  },
  {
    name: 'retrofit',
    computes: [
      'Charge by mass fraction (common practice): labelCharge 3 lb → 2.4 lb (1090 g) to 2.7 lb (1220 g)',
      'Charge of the same liquid volume (computed): labelCharge 3 lb, densityRatio 0.915 → 2.75 lb',
      'Charge by the fixed-offset formula (common practice): labelCharge 3 lb → 2.45 lb',
      'Rise of the high side at the same condensing temperature: condensingTemperature 130 °F → 18.2 ±0.9 psi',
    ],
  },
  {
    name: 'saturation',
    input: { refrigerant: 'R-407C', pressure: '60 psig', altitude: '5000 ft' },
    computes: [
      'Absolute pressure: gauge reading 60 ±1 psig, barometric pressure 24.9 ±0.9 inHg → 72.2 ±1.1 psia',
      'Saturation temperature: absolute pressure 72.2 ±1.1 psia → 24.8 ±0.9 °F',
      'Saturation temperature: absolute pressure 72.2 ±1.1 psia → 36 ±0.9 °F',
    ],
  },
  {
    name: 'saturation',
    input: { refrigerant: 'R-134a', temperature: '50 ±2 °F' },
    computes: ['Saturation pressure: temperature 50 ±2 °F → 60.1 ±2.3 psia'],
  },
  {
    name: 'contamination',
    input: {
      refrigerant: 'R-134a',
      pressure: '110 psig',
      temperature: '75 °F',
      suspects: ['R-744', 'R-12'],
    },
    computes: [
      'Distance from saturation: measured 125 ±1.1 psia, bubble 93.4 psia, dew 93.4 psia → 31.3 ±2 psi',
      'Share of R-744 that reads so: measured 125 ±1.1 psia, pure expected 93.4 psia, pure other 910 psia → 2.65 ±0.17 %',
    ],
  },
  {
    name: 'contamination',
    input: {
      refrigerant: 'R-134a',
      pressure: '100 psig',
      temperature: '80 °F',
      suspects: ['R-12'],
      altitude: '3000 ft',
    },
    computes: [
      'Distance from saturation: measured 113 ±1.1 psia, bubble 101 psia, dew 101 psia → 11.8 ±2.1 psi',
      'Share of R-12 that reads so: measured 113 ±1.1 psia, pure expected 101 psia, pure other 98.7 psia → 15.5 ±5.6 %',
    ],
  },
  {
    name: 'air-check',
    input: {
      refrigerant: 'R-134a',
      pressure: '110 psig',
      temperature: '75 °F',
      altitude: '4000 ft',
    },
    computes: [
      'Pressure above that of the refrigerant alone: pressure 123 ±1.1 psia, refrigerant 93.4 psia, temperature 75 ±1 °F → 29.3 ±2 psi',
    ],
  },
  {
    name: 'evacuation',
    input: { temperature: '50 °F', vacuum: '24.5 inHg vac', altitude: '5000 ft' },
    computes: [
      'Vacuum that water needs to boil: temperature 50 ±2 °F, barometer 12.2 psia → 9210 ±687 micron',
      'Boiling point of water at this vacuum: absolutePressure 0.19 ±1.1 psia → 52 ±58 °F',
    ],
  },
  {
    name: 'evacuation',
    input: {
      temperature: '77 °F',
      volume: '5 L',
      pumpDisplacement: '6 cfm',
      pumpUltimate: '20 micron',
      vacuumHoseLength: '6 ft',
      vacuumHoseBore: '1/4 in',
      waterMass: '1 g',
      target: '500 micron',
    },
    computes: [
      'Vacuum that water needs to boil: temperature 77 ±2 °F, barometer 14.7 psia → 0.46 ±0.031 psia',
      'Pump-down time: volume 1.32 gal, displacement 6 cfm, start 14.7 psia, target 500 micron, hoses 1 → 113 s',
      'Least drying time: water 0.0353 oz, temperature 77 °F, vapourPressure 0.46 psia → 22.5 s',
    ],
  },
  {
    name: 'evacuation',
    input: {
      temperature: '77 °F',
      volume: '5 L',
      refrigerant: 'R-134a',
      rise: [
        { time: '0 min', pressure: '500 micron' },
        { time: '5 min', pressure: '900 micron' },
        { time: '10 min', pressure: '1300 micron' },
        { time: '20 min', pressure: '2100 micron' },
      ],
    },
    computes: [
      'Vacuum that water needs to boil: temperature 77 ±2 °F, barometer 14.7 psia → 0.46 ±0.031 psia',
      'Reading the rise: readings 4, vapourPressure 0.46 psia, flat 22.5, steady 0, slowing-toward-air 62.6, levelling-at-water 2.1, levelling-at-water-and-steady 2.8, levelling 9.2, levelling-and-steady 2.8 → too-short-to-tell',
    ],
  },
  {
    name: 'leak-test',
    input: {
      refrigerant: 'R-134a',
      startPressure: '150 psig',
      endPressure: '120 psig',
      startTemperature: '80 °F',
      endTemperature: '75 °F',
      elapsed: '12 h',
      volume: '5 L',
      testGas: 'nitrogen',
    },
    computes: [
      'Change by temperature alone: start 165 ±1 psia, startTemperature 80 ±1 °F, endTemperature 75 ±1 °F → -1.53 ±0.43 psi',
      'Change that temperature does not explain: start 165 ±1 psia, end 135 ±1 psia, ± of end pressure 1 psi, ± of start pressure 0.991 psi, ± of end temperature 0.305 psi, ± of start temperature 0.302 psi, ± of change of the barometer 0.174 psi, ± of barometer 208 micron → -28.5 ±1.5 psi',
      'Leak rate: volume 1.32 gal, unexplained -28.5 ±1.5 psi, elapsed 12 h → 0.0227 ±0.0012 Pa m3/s',
      'Refrigerant through the same hole: leakRate 0.0227 ±0.0012 Pa m3/s, restPressure 93.4 psia, molarMass 0.102, atSameFlow 1050 oz/yr → 1050 oz/yr',
    ],
  },
  {
    name: 'leak-test',
    input: {
      startPressure: '800 ±20 micron',
      endPressure: '500 ±20 micron',
      startTemperature: '75 °F',
      endTemperature: '75 °F',
    },
    computes: [
      'Change by temperature alone: start 800 ±20 micron, startTemperature 75 ±1 °F, endTemperature 75 ±1 °F → 0 ±2.12 micron',
      'Change that temperature does not explain: start 800 ±20 micron, end 500 ±20 micron, ± of start pressure 20 micron, ± of end pressure 20 micron, ± of start temperature 1.5 micron, ± of end temperature 1.5 micron, ± of barometer 0 micron, ± of change of the barometer 0 micron → -300 ±29 micron',
    ],
  },
  {
    name: 'leak-test',
    input: { refrigerant: 'R-134a', chargeThen: '1 kg', chargeNow: '0.8 kg', between: '2 yr' },
    computes: [
      'Loss a year: chargeThen 2.2 ±0.04 lb, chargeNow 28.2 ±1.1 oz, between 731 d → 3.53 ±0.6 oz/yr',
    ],
  },
  {
    name: 'leak-test',
    input: { refrigerant: 'R-22', labelCharge: '60 lb', added: '3 lb', sinceLastAddition: '60 d' },
    computes: [
      'Leak rate, annualizing (2015 edition): added 3 lb, labelCharge 60 lb, days 60 → 30.4 %',
    ],
  },
  {
    name: 'readings',
    input: {
      refrigerant: 'R-407C',
      suctionPressure: '60 psig',
      suctionTemperature: '55 °F',
      liquidPressure: '230 psig',
      liquidTemperature: '95 °F',
      ambient: '85 °F',
      altitude: '2000 ft',
      machine: 'stationary',
      meteringDevice: 'fixed-orifice',
      returnWetBulb: '65 °F',
    },
    computes: [
      'Absolute pressure of the low side: gauge reading 60 ±1 psig, barometric pressure 27.8 ±0.9 inHg → 73.7 ±1.1 psia',
      'Saturation temperature of the low side: absolute pressure 73.7 ±1.1 psia → 37.1 ±0.9 °F',
      'Superheat: suction-line temperature 55 ±2 °F, dew temperature 37.1 ±0.9 °F → 17.9 ±2.2 °F',
      'Absolute pressure of the high side: gauge reading 230 ±4 psig, barometric pressure 27.8 ±0.9 inHg → 244 ±4 psia',
      'Saturation temperature of the high side: absolute pressure 244 ±4 psia → 101 ±1.3 °F',
      'Subcooling: bubble temperature 101 ±1.3 °F, liquid-line temperature 95 ±2 °F → 6.05 ±2.37 °F',
      'Condensing over ambient: condensing temperature 106 ±1.3 °F, air entering the condenser 85 ±1 °F → 20.5 ±1.6 °F',
      'Compression ratio: high side 244 psia, low side 73.7 psia → 3.31',
    ],
  },
  {
    name: 'cooling-check',
    input: {
      refrigerant: 'R-134a',
      machine: 'off-road',
      dischargePressure: '200 psig',
      suctionPressure: '30 psig',
      ambient: '80 °F',
      relativeHumidity: '50 %',
      ventTemperature: '48 °F',
      altitude: '7000 ft',
    },
    computes: [
      'Published band, high side: ambient 80 ±1 °F, tables loader-1000-rpm, compact-loader-any-ambient → 143.4 psig (988 kPa g) to 283.4 psig (1950 kPa g)',
      'Published band, low side: ambient 80 ±1 °F, tables loader-1000-rpm, compact-loader-any-ambient → 13.4 psig (92.1 kPa g) to 33.4 psig (230 kPa g)',
      'Condensing above ambient: condensing 129 ±1.5 °F, ambient 80 ±1 °F → 49.3 ±1.8 °F',
      'Dew point of the air going in: returnAir 80 ±1 °F, relativeHumidity 50 ±5 % → 59.7 ±3 °F',
      'Heat taken from the air: returnAir 80 ±1 °F, vent 48 ±1 °F → 13.3 ±1.9 Btu/lb',
    ],
  },
]

describe('what is worked out, from which values', () => {
  it.each(CASES)('$name, $input', ({ name, input, computes }) => {
    expect(workingOf(name, input ?? operation(name).example)).toEqual(computes)
  })
})
