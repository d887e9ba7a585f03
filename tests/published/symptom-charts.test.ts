import { describe, expect, it } from 'vitest'
import { diagnose } from '../../shared/service/diagnose.ts'
import { readings } from '../../shared/service/readings.ts'

/** Middle of a printed range, with half its width as ±. */
const range = (from: number, to: number, unit: string) =>
  `${(from + to) / 2} ±${Math.abs(to - from) / 2} ${unit}`

type Row = readonly [said: string, low: string, high: string, causes: readonly string[]]

const VALVE = { machine: 'road-vehicle', meteringDevice: 'expansion-valve' } as const
const BLOCKED = ['restriction', 'valve-stuck-closed']

/**
 * Charts of gauge readings that makers print for R-134a machines with an expansion valve and a
 * receiver-drier; MPa are gauge.
 */
const CHARTS: readonly (readonly [
  source: string,
  ambient: string | undefined,
  rows: readonly Row[],
])[] = [
  [
    // Suzuki Liana RH413, service manual, page 7B-19, manualshive.com/en/manual/suzuki/liana-rh413/1408349?page=858;
    // its normal pressures are for 30 °C.
    'car, page 7B-19',
    '30 ±5 °C',
    [
      ['little refrigerant', range(0.05, 0.15, 'MPa g'), range(0.7, 1, 'MPa g'), ['undercharge']],
      [
        'overcharged, or the condenser cooled too little',
        range(0.35, 0.45, 'MPa g'),
        range(2, 2.5, 'MPa g'),
        ['overcharge', 'condenser-air'],
      ],
      [
        'valve frozen by moisture, low side negative',
        '5 inHg vac',
        range(0.7, 1, 'MPa g'),
        BLOCKED,
      ],
    ],
  ],
  [
    // Maruti Suzuki 800, detail diagnosis table at 30 to 35 °C, page 1B-10, manualshive.com/ru/manual/maruti-suzuki/800/1733948?page=61.
    'car, page 1B-10',
    '32.5 ±2.5 °C',
    [
      [
        'little refrigerant',
        range(0.05, 0.1, 'MPa g'),
        range(0.69, 0.98, 'MPa g'),
        ['undercharge'],
      ],
      [
        'dirt or ice in the valve, low side negative',
        '10 inHg vac',
        range(0.69, 0.98, 'MPa g'),
        BLOCKED,
      ],
    ],
  ],
  [
    // Daewoo Mega 500-V, shop manual S0605050K, air conditioner, page 15, easymanua.ls/daewoo/mega-500-v/manual?p=240;
    // no air temperature is printed.
    'wheel loader, page 15',
    undefined,
    [
      ['air in the system', range(36, 50, 'psig'), range(284, 356, 'psig'), ['air']],
      ['moisture has iced up the valve', '500 mmHg vac', range(85, 256, 'psig'), BLOCKED],
    ],
  ],
]

describe.each(CHARTS)('a maker’s chart, %s', (_, ambient, rows) => {
  const air = ambient === undefined ? {} : { ambient }
  it.each(rows)('%s is among the named', (_said, suctionPressure, dischargePressure, causes) => {
    const { result } = diagnose.run({
      refrigerant: 'R-134a',
      architecture: 'valve-receiver',
      suctionPressure,
      dischargePressure,
      ...air,
    })
    for (const cause of causes) expect(result.named).toContain(cause)
    expect(result.verdict).not.toBe('no-fault-shown')
  })
})

it('a chart’s range with the air known is told by the table of patterns as well', () => {
  // The same Liana chart: both sides high, both sides low.
  const told = (suctionPressure: string, liquidPressure: string) =>
    readings.run({
      refrigerant: 'R-134a',
      ...VALVE,
      ambient: '86 °F',
      suctionPressure,
      liquidPressure,
    }).headline
  expect(told('0.4 MPa g', '2.25 MPa g')).toMatch(/condenser air flow/u)
  expect(told('0.07 MPa g', '0.8 MPa g')).toMatch(/low charge/iu)
  expect(told('10 inHg vac', '0.8 MPa g')).toMatch(/restriction/iu)
})

describe('guidelines of a maker of heat pumps with R-22 and an expansion valve', () => {
  // Mammoth G-141-MHC, guidelines for refrigerant circuit diagnosis, IOM U-5 page 17,
  // manualshelf.com/manual/mammoth/g-141-mhc/specifications-english/page-17.html: normal 210/70 psi,
  // superheat 8 to 12 °F, subcooling 10 to 12 °F. Its condenser is cooled by water: no air is known.
  it.each<
    [
      said: string,
      low: number,
      high: number,
      boils: number,
      condenses: number,
      superheat: number,
      subcooling: number,
      discharge: string | undefined,
      causes: readonly string[],
    ]
  >([
    // R-22 boils at 25 psig at 1.4 °F, 45 psig 22 °F, 80 psig 47.5 °F; condenses at 180 psig at 93.6 °F, 220 psig 108 °F, 250 psig 117 °F
    ['undercharged', 25, 180, 1.4, 93.6, 27.5, 7, '205 °F', ['undercharge']],
    ['overcharged', 80, 220, 47.5, 108, 10, 22.5, '125 °F', ['overcharge']],
    [
      'valve plugged',
      45,
      250,
      22,
      117,
      27.5,
      17.5,
      '205 °F',
      ['valve-stuck-closed', 'restriction'],
    ],
  ])(
    '%s is among the named',
    (_, low, high, boils, condenses, superheat, subcooling, discharge, causes) => {
      const { result } = diagnose.run({
        refrigerant: 'R-22',
        architecture: 'stationary-valve',
        suctionPressure: `${low} psig`,
        liquidPressure: `${high} psig`,
        suctionTemperature: `${boils + superheat} °F`,
        liquidTemperature: `${condenses - subcooling} °F`,
        dischargeTemperature: discharge,
      })
      expect(result.superheat?.value).toBeCloseTo(superheat, 0)
      expect(
        result.named.some((cause) => causes.includes(cause)),
        result.named.join(),
      ).toBe(true)
      expect(result.verdict).not.toBe('no-fault-shown')
    },
  )
})
