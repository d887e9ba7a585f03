import { describe, expect, it } from 'vitest'
import machines from '../../data/service/machines.json' with { type: 'json' }
import { figuresIn } from '../support/figures.ts'

/** The invented machines: what each is like, its architecture and refrigerant, then its own sizes in SI. */
const MACHINES: Readonly<Record<string, readonly string[]>> = {
  'loader-receiver-134a': [
    'valve-receiver R-134a',
    'store [kind receiver, volume 0.0005]',
    'device [kind valve, flowArea 0.00000211, staticSuperheatK 3.5, openingSuperheatK 6, bleed 0.04]',
    'compressor [displacement 0.000165, nominalSpeed 30, clearance 0.045, leakage 0.06, throttling 0.08, efficiency [best 0.68, atRatio 3.5, fall 0.35], shellLoss 0.08]',
    'condenser [refrigerantConductance 3800, singlePhaseShare 0.35, airConductance 1000, airExponent 0.5, airFlow 0.48, volume 0.001]',
    'evaporator [refrigerantConductance 1500, singlePhaseShare 0.25, airConductance 340, airExponent 0.5, airFlow 0.14, volume 0.0011]',
    'lines [discharge 0.00035, liquid 0.00025, suction 0.0008]',
    'drops [discharge [nominalPa 30000, density 70], liquid [nominalPa 25000, density 1120], suction [nominalPa 25000, density 14]]',
    'nominalFlow 0.045',
    'charge 0.919',
    'controls [thermostat [opensK 273.9, closesK 276.9], highCutOutPa 3070000]',
    'ports [low compressor, high discharge, liquidThermometer before-restriction]',
    'ductGainK 1.5',
    'nominal [ambientK 308.15, returnAirK 301.15, returnHumidity 0.5, barometerPa 101325, speed 25, condenserFan 1, blower 1]',
  ],
  'loader-receiver-1234yf': [
    'loader-receiver-134a R-1234yf',
    'controls [thermostat [opensK 273.9, closesK 276.9], highCutOutPa 2900000]',
    'nominalFlow 0.047',
    'device [kind valve, flowArea 0.00000309, staticSuperheatK 3.5, openingSuperheatK 6, bleed 0.04]',
    'charge 0.881',
  ],
  'van-valve-134a': [
    'loader-receiver-134a valve R-134a',
    'store [kind none]',
    'charge 0.694',
    'device [kind valve, flowArea 0.00000185, staticSuperheatK 3.5, openingSuperheatK 6, bleed 0.04]',
  ],
  'van-valve-1234yf': [
    'van-valve-134a R-1234yf',
    'controls [thermostat [opensK 273.9, closesK 276.9], highCutOutPa 2900000]',
    'nominalFlow 0.047',
    'charge 0.685',
    'device [kind valve, flowArea 0.00000255, staticSuperheatK 3.5, openingSuperheatK 6, bleed 0.04]',
  ],
  'pickup-orifice-134a': [
    'loader-receiver-134a orifice-accumulator R-134a',
    'store [kind accumulator, volume 0.0009, bleed 0.02]',
    'device [kind tube, length 0.038, diameter 0.0018]',
    'controls [cyclingSwitch [opensPa 273700, closesPa 418500], highCutOutPa 3070000]',
    'ports [low compressor, high liquid, liquidThermometer before-restriction]',
    'charge 1.19',
  ],
  'pickup-orifice-1234yf': [
    'pickup-orifice-134a R-1234yf',
    'controls [cyclingSwitch [opensPa 273700, closesPa 418500], highCutOutPa 2900000]',
    'nominalFlow 0.047',
    'charge 1.15',
    'device [kind tube, length 0.038, diameter 0.0021]',
  ],
  'tractor-variable-134a': [
    'loader-receiver-134a valve-receiver-variable R-134a',
    'compressor [displacement 0.00019, nominalSpeed 30, clearance 0.045, leakage 0.06, throttling 0.08, efficiency [best 0.68, atRatio 3.5, fall 0.35], shellLoss 0.08, stroke [minimum 0.06, setPa 297000, setAtDischargePa 1500000, droop 0.025]]',
    'controls [highCutOutPa 3070000]',
    'charge 0.922',
    'device [kind valve, flowArea 0.00000202, staticSuperheatK 3.5, openingSuperheatK 6, bleed 0.04]',
  ],
  'tractor-variable-1234yf': [
    'tractor-variable-134a R-1234yf',
    'controls [highCutOutPa 2900000]',
    'nominalFlow 0.047',
    'device [kind valve, flowArea 0.00000299, staticSuperheatK 3.5, openingSuperheatK 6, bleed 0.04]',
    'charge 0.882',
    'compressor [displacement 0.00019, nominalSpeed 30, clearance 0.045, leakage 0.06, throttling 0.08, efficiency [best 0.68, atRatio 3.5, fall 0.35], shellLoss 0.08, stroke [minimum 0.06, setPa 325000, setAtDischargePa 1500000, droop 0.025]]',
  ],
  'split-orifice-410a': [
    'stationary-orifice R-410A',
    'store [kind none]',
    'device [kind tube, length 0.0127, diameter 0.00105]',
    'compressor [displacement 0.000014, nominalSpeed 48, clearance 0.02, leakage 0.03, throttling 0.02, efficiency [best 0.72, atRatio 2.8, fall 0.3], shellLoss 0.05]',
    'condenser [refrigerantConductance 1700, singlePhaseShare 0.35, airConductance 620, airExponent 0.5, airFlow 0.65, volume 0.0009]',
    'evaporator [refrigerantConductance 900, singlePhaseShare 0.25, airConductance 330, airExponent 0.5, airFlow 0.18, volume 0.0008]',
    'lines [discharge 0.0006, liquid 0.00015, suction 0.0007]',
    'drops [discharge [nominalPa 20000, density 90], liquid [nominalPa 30000, density 980], suction [nominalPa 20000, density 34]]',
    'nominalFlow 0.021',
    'charge 0.659',
    'controls [highCutOutPa 4300000, lowCutOutPa 446000]',
    'ports [low compressor, high liquid, liquidThermometer before-restriction]',
    'ductGainK 0.5',
    'nominal [ambientK 308.15, returnAirK 299.85, returnHumidity 0.5, barometerPa 101325, speed 48, condenserFan 1, blower 1]',
  ],
  'split-valve-410a': [
    'split-orifice-410a stationary-valve R-410A',
    'device [kind valve, flowArea 8.47e-7, staticSuperheatK 3, openingSuperheatK 5, bleed 0.05]',
    'charge 0.666',
  ],
  'cooler-orifice-134a': [
    'split-orifice-410a stationary-orifice R-134a',
    'compressor [displacement 0.000034, nominalSpeed 48, clearance 0.02, leakage 0.03, throttling 0.02, efficiency [best 0.72, atRatio 2.8, fall 0.3], shellLoss 0.05]',
    'controls [highCutOutPa 2100000, lowCutOutPa 150000]',
    'drops [discharge [nominalPa 20000, density 50], liquid [nominalPa 20000, density 1140], suction [nominalPa 15000, density 17]]',
    'nominalFlow 0.021',
    'charge 0.571',
    'device [kind tube, length 0.0127, diameter 0.0013]',
  ],
  'cooler-valve-134a': [
    'split-valve-410a R-134a',
    'compressor [displacement 0.000034, nominalSpeed 48, clearance 0.02, leakage 0.03, throttling 0.02, efficiency [best 0.72, atRatio 2.8, fall 0.3], shellLoss 0.05]',
    'controls [highCutOutPa 2100000, lowCutOutPa 150000]',
    'drops [discharge [nominalPa 20000, density 50], liquid [nominalPa 20000, density 1140], suction [nominalPa 15000, density 17]]',
    'nominalFlow 0.021',
    'charge 0.575',
    'device [kind valve, flowArea 0.0000013, staticSuperheatK 3, openingSuperheatK 5, bleed 0.05]',
  ],
}

describe('sizes of the invented machines', () => {
  it.each(machines.machines.map((row) => [row.id, row] as const))('%s', (id, row) => {
    const {
      id: _,
      name: __,
      architecture,
      refrigerant,
      like,
      ...sizes
    } = row as typeof row & {
      readonly architecture?: string
      readonly like?: string
    }
    const kind = [like, architecture, refrigerant].filter((word) => word !== undefined).join(' ')
    const own = Object.entries(sizes).map(([key, size]) =>
      typeof size === 'object' ? `${key} [${figuresIn(size)}]` : `${key} ${size}`,
    )
    expect([kind, ...own]).toEqual(MACHINES[id])
    expect(Object.keys(MACHINES)).toHaveLength(machines.machines.length)
  })
})
