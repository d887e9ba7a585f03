import { describe, expect, it } from 'vitest'
import { CalcError } from '../../../shared/errors.ts'
import { operation } from '../../../shared/operations.ts'

/**
 * How far a field goes: the last value that is taken at each end, and the first that is refused as
 * nothing that the trade meets. Beyond them stands a slip of the pen or of the unit.
 */
type Ends = readonly [
  field: string,
  below: string | number | undefined,
  least: string | number | undefined,
  most: string | number | undefined,
  above: string | number | undefined,
]

const LIMITS: readonly (readonly [
  step: string,
  input: Readonly<Record<string, unknown>>,
  ends: readonly Ends[],
])[] = [
  [
    'leak-test',
    {
      refrigerant: 'R-134a',
      startPressure: '150 psig',
      endPressure: '120 psig',
      startTemperature: '80 °F',
      endTemperature: '80 °F',
      elapsed: '2 h',
      volume: '5 L',
    },
    [
      ['elapsed', '0.9 s', '1 s', '400 d', '401 d'],
      ['volume', '0.9 mL', '1 mL', '1000 m³', '1001 m³'],
      ['startTemperature', '199 K', '200.1 K', '419.9 K', '421 K'],
      ['endTemperature', '199 K', '200.1 K', '419.9 K', '421 K'],
      ['startPressure', undefined, '1 bar abs', '300 bar abs', '301 bar abs'],
    ],
  ],
  [
    'leak-test',
    { refrigerant: 'R-134a', chargeThen: '1 kg', chargeNow: '0.9 kg', between: '1 yr' },
    [
      ['chargeThen', '0.9 g', '1 g', '10000 kg', '10001 kg'],
      ['chargeNow', undefined, '0 g', '10000 kg', '10001 kg'],
      ['between', '0.9 d', '1 d', '100 yr', '101 yr'],
    ],
  ],
  [
    'leak-test',
    {
      refrigerant: 'R-134a',
      labelCharge: '60 lb',
      appliance: 'comfort-cooling',
      added: '1 lb',
      sinceLastAddition: '30 d',
    },
    [
      ['labelCharge', '0.9 g', '1 g', '99999 kg', '100001 kg'],
      ['added', undefined, '0 g', '99999 kg', '100001 kg'],
      ['sinceLastAddition', '0.9 d', '1 d', '36599 d', '36601 d'],
    ],
  ],
  [
    'evacuation',
    {
      temperature: '77 °F',
      volume: '5 L',
      pumpDisplacement: '6 cfm',
      vacuumHoseLength: '6 ft',
      vacuumHoseBore: '1/4 in',
      waterMass: '1 g',
      target: '500 micron',
    },
    [
      ['pumpDisplacement', '0.0003 m³/h', '0.0004 m³/h', '3599 m³/h', '3601 m³/h'],
      ['vacuumHoseLength', '9 mm', '10.1 mm', '1000 m', '1001 m'],
      ['vacuumHoseBore', '0.49 mm', '0.501 mm', '500 mm', '501 mm'],
      ['volume', '0.9 mL', '1.001 mL', '999 m³', '1001 m³'],
      ['waterMass', undefined, '1 g', '10 kg', '10.1 kg'],
      ['temperature', '199 K', '200.1 K', '373.1 K', '374 K'],
      ['holdFor', '29 s', '30 s', '72 h', '73 h'],
      ['target', '0.0009 Pa abs', '0.0011 Pa abs', '900 micron', '90.1 kPa abs'],
    ],
  ],
  [
    'evacuation',
    {
      temperature: '77 °F',
      volume: '5 L',
      rise: [
        { time: '0 min', pressure: '500 micron' },
        { time: '5 min', pressure: '600 micron' },
        { time: '10 min', pressure: '650 micron' },
        { time: '20 min', pressure: '700 micron' },
      ],
    },
    [
      ['negligibleRise', '0.009 Pa', '0.0101 Pa', '100 kPa', '101 kPa'],
      ['riseScatter', '0.00009 Pa', '0.000101 Pa', '10 kPa', '10.1 kPa'],
      ['volume', '0.9 mL', '1.001 mL', '999 m³', '1001 m³'],
    ],
  ],
  [
    'simulate',
    { modelMachine: 'van' },
    [
      ['ambient', '-0.1 °C', '0 °C', '60 °C', '60.1 °C'],
      ['returnAir', '-0.1 °C', '0 °C', '55 °C', '55.1 °C'],
      ['condenserFan', '19 %', '20 %', '150 %', '151 %'],
      ['blower', '19 %', '20 %', '150 %', '151 %'],
      ['chargeNow', '9 %', '10 %', '200 %', '201 %'],
      ['condenserAir', '9 %', '10 %', '100 %', '101 %'],
      ['evaporatorAir', '9 %', '10 %', '100 %', '101 %'],
      ['restriction', '-1 kPa', '0 kPa', '2000 kPa', '2001 kPa'],
      ['valveOpening', '1.9 %', '2 %', '100 %', '101 %'],
      ['compressorLeak', undefined, '0 %', '80 %', '81 %'],
      ['airInside', '-1 kPa', '0 kPa', '600 kPa', '601 kPa'],
    ],
  ],
  ['simulate', { modelMachine: 'tractor' }, [['stroke', '4.9 %', '5 %', '100 %', '101 %']]],
  [
    'simulate',
    { modelMachine: 'van', fault: 'air' },
    [['severity', undefined, '0 %', '100 %', '101 %']],
  ],
  [
    'cooling-check',
    { refrigerant: 'R-134a', machine: 'off-road', dischargePressure: '200 psig', ambient: '80 °F' },
    [
      ['ambient', '-40.1 °C', '-39.9 °C', '69.9 °C', '70.1 °C'],
      ['returnAir', '-40.1 °C', '-39.9 °C', '69.9 °C', '70.1 °C'],
      ['ventTemperature', '-40.1 °C', '-39.9 °C', '69.9 °C', '70.1 °C'],
    ],
  ],
  [
    'readings',
    {
      refrigerant: 'R-134a',
      suctionPressure: '30 psig',
      liquidPressure: '200 psig',
      machine: 'off-road',
    },
    [
      ['suctionTemperature', '-150.1 °F', '-149.9 °F', '499.9 °F', '500.1 °F'],
      ['liquidTemperature', '-150.1 °F', '-149.9 °F', '499.9 °F', '500.1 °F'],
      ['dischargeTemperature', '-150.1 °F', '-149.9 °F', '499.9 °F', '500.1 °F'],
      ['ambient', '-80.1 °F', '-79.9 °F', '179.9 °F', '180.1 °F'],
      ['returnWetBulb', '31.9 °F', '32.1 °F', '94.9 °F', '95.1 °F'],
    ],
  ],
  [
    'fractionation',
    { refrigerant: 'R-407C', temperature: '77 °F', escapes: 'vapour', lost: '10 %' },
    [['startMass', '0.9 g', '1 g', '99999 kg', '100001 kg']],
  ],
  [
    'oil',
    { refrigerant: 'R-134a', existingOil: 'pag-46', recoveredOil: '1 fl oz' },
    [
      ['recoveredOil', undefined, '0 mL', '1 m³', '1.01 m³'],
      ['oilTotal', undefined, '1 L', '1 m³', '1.01 m³'],
      ['longHoseLength', undefined, '10 m', '10000 m', '10001 m'],
    ],
  ],
  [
    'recovery',
    { ...operation('recovery').example, servicePressure: undefined },
    [['servicePressure', '49 psig', '50.1 psig', '9999 psig', '10001 psig']],
  ],
]

/** Whether a run ends in the refusal of this field as nothing that the trade meets. */
function isBeyond(step: string, input: Readonly<Record<string, unknown>>, field: string): boolean {
  try {
    operation(step).run(input)
    return false
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    const isSlip = /not one that the trade meets\.$/u.test(error.message)
    return isSlip && error.path[0] === field
  }
}

describe.each(
  LIMITS.flatMap(([step, input, ends]) =>
    ends.map(([field, ...values]) => ({ step, field, input, values })),
  ),
)('$field of $step', ({ step, field, input, values: [below, least, most, above] }) => {
  const beyond = (value: string | number) => isBeyond(step, { ...input, [field]: value }, field)

  it('is one of several facts that make an answer', () => {
    expect(operation(step).run({ ...input, [field]: most }).level).toBeDefined()
  })

  it('is taken up to its ends, and refused beyond', () => {
    for (const value of [least, most]) {
      if (value !== undefined) expect(beyond(value), `${value}`).toBe(false)
    }
    for (const value of [below, above]) {
      if (value !== undefined) expect(beyond(value), `${value}`).toBe(true)
    }
  })
})
