import { describe, expect, it } from 'vitest'
import figures from '../../../../data/service/diagnosis.json' with { type: 'json' }
import type { Cause } from '../../../../shared/diagnosis/hypotheses.ts'
import { diagnose } from '../../../../shared/service/diagnose.ts'
import { readings } from '../../../../shared/service/readings.ts'

/**
 * Symptom tables as textbooks and makers print them, turned into gauges: which sides are high and low
 * for which fault is common practice of the trade, the rounded figures are ours. What the tables say
 * of it: an army handbook of a transport cooler, TM 9-4110-255-14 paragraph 5-16 (discharge low with
 * suction normal: low charge; discharge high with suction normal: overcharge; suction high or low
 * alone: expansion valve), TM 9-4120-388-14 paragraph 5-13 and TM 5-4120-377-14 (lists of causes by
 * side), a car maker’s chart of 2010 (both sides too high: charge, condenser air, air in it, valve
 * open; low side high with high side low: compressor), a textbook of 2009, figure 15-17, and nine
 * cases of superheat and subcooling of stationary machines from a forum of the trade.
 */
type Row = readonly [
  truth: string,
  low: string,
  high: string,
  /** °F of suction line, liquid line, vent. */
  pipes?: readonly [suction?: number, liquid?: number, vent?: number],
  more?: Readonly<Record<string, unknown>>,
]

const CONDITIONS = {
  refrigerant: 'R-134a',
  ambient: '90 °F',
  returnAir: '80 °F',
  relativeHumidity: '50 %',
  compressorRpm: 1500,
}
const SPLIT = {
  refrigerant: 'R-410A',
  ambient: '95 °F',
  returnAir: '80 °F',
  compressorRpm: undefined,
}
const REST_WITH_AIR = { systemPressure: '125 psig', systemTemperature: '90 °F' }
const COOL = { ambient: '75 °F', returnAir: '72 °F' }

/** The same words stand in tables of either device. */
const EITHER: readonly Row[] = [
  ['none', '30', '215'],
  ['undercharge', '14', '120'],
  ['overcharge|condenser-air|air', '48', '340'],
  ['condenser-air|overcharge|air', '42', '320'],
  ['compressor-leak', '65', '140'],
  ['undercharge', '12', '125', [78, 96, 68]],
  ['overcharge', '42', '320', [52, 98, 52]],
  ['condenser-air', '45', '330', [56, 152, 60]],
  ['compressor-leak', '68', '135', [78, 97, 70]],
  ['evaporator-air', '12', '150', [16, 103]],
  ['air', '40', '310', [52, 112, 56], REST_WITH_AIR],
]
const VALVE: readonly Row[] = [
  ...EITHER,
  ['restriction|valve-stuck-closed', '3', '150'],
  ['restriction|valve-stuck-closed', '2', '170', [75, 95]],
  ['valve-stuck-open', '58', '230', [62, 115, 60]],
  ['valve-stuck-open|compressor-leak', '60', '200'],
  // moisture frozen at the valve: it shuts the valve while it lasts
  ['valve-stuck-closed|restriction', '8 inHg vac', '140'],
  ['valve-stuck-closed|restriction', '15 inHg vac', '130', [80, 92]],
  ['undercharge', '18', '135', [70, 103]],
  ['restriction|valve-stuck-closed', '8', '165', [66, 98]],
  ['overcharge', '45', '300', [54, 95]],
  ['air|condenser-air', '45', '325'],
  ['valve-stuck-open', '55', '210', [56, 118]],
  ['compressor-leak', '60', '150', [74, 102]],
]
const ORIFICE: readonly Row[] = [
  ...EITHER,
  ['restriction|undercharge', '3', '150'],
  ['restriction', '2', '170', [75, 95]],
  ['restriction', '10 inHg vac', '155'],
  ['undercharge|restriction', '8', '110'],
  ['undercharge', '20', '140', [70, 104]],
  ['overcharge', '50', '300', [56, 100]],
  ['condenser-air', '50', '350'],
  ['compressor-leak', '75', '125'],
]
const VARIABLE: readonly Row[] = [
  ['stroke-stuck-low|compressor-leak', '60', '140', [70, 98, 66]],
  ['stroke-stuck-high|evaporator-air', '12', '170', [], COOL],
  ['stroke-stuck-low|compressor-leak', '65', '130'],
  ['undercharge', '28', '140', [80, 99, 66]],
  ['condenser-air|overcharge|air', '32', '330'],
  ['valve-stuck-closed|restriction', '5 inHg vac', '125', [78, 92]],
  ['overcharge', '32', '310', [48, 96]],
  ['stroke-stuck-high', '8', '190', [20, 105, 38], COOL],
]
const STATIONARY_ORIFICE: readonly Row[] = [
  ['undercharge', '95', '305', [75, 97], { ambient: '90 °F', returnAir: '78 °F' }],
  ['overcharge', '140', '420', [50, 95], { ambient: '90 °F', returnAir: '78 °F' }],
  ['undercharge', '100', '340', [72, 103]],
  ['overcharge', '145', '470', [50, 104]],
  ['evaporator-air', '100', '380', [34, 104]],
  ['condenser-air', '145', '520', [56, 128]],
  ['compressor-leak', '165', '330', [66, 102]],
  ['restriction', '85', '340', [74, 92]],
]
const STATIONARY_VALVE: readonly Row[] = [
  ['condenser-air', '130', '480', [60, 122], { ambient: '90 °F', returnAir: '78 °F' }],
  ['undercharge', '95', '300', [72, 98], { ambient: '90 °F', returnAir: '78 °F' }],
  ['undercharge', '105', '340', [68, 105]],
  ['overcharge', '132', '470', [56, 104]],
  ['evaporator-air', '98', '380', [40, 104]],
  ['condenser-air', '140', '530', [58, 129]],
  ['restriction|valve-stuck-closed', '85', '370', [72, 98]],
  ['valve-stuck-open', '155', '400', [54, 110]],
  ['air', '132', '470', [54, 105], { systemPressure: '310 psig', systemTemperature: '95 °F' }],
]
/** What `readings` is told of a machine. */
const KNOWN = {
  valve: { machine: 'off-road', meteringDevice: 'expansion-valve' },
  orifice: { machine: 'off-road', meteringDevice: 'orifice-tube' },
  'stationary-valve': { machine: 'stationary', meteringDevice: 'expansion-valve' },
  'stationary-orifice': { machine: 'stationary', meteringDevice: 'fixed-orifice' },
}
const PATTERNS = figures.evidence.patterns as Readonly<Record<string, readonly string[]>>

/** So near to sound ones that no sign is sure. */
const OPEN: readonly string[] = [
  'stroke-stuck-high|evaporator-air at 12/170 psig',
  'evaporator-air at 100/380 psig',
  'evaporator-air at 98/380 psig',
]

/** Nothing is said of the machine. */
const UNKNOWN: readonly Row[] = [
  ['undercharge|restriction', '10', '110'],
  ['compressor-leak', '70', '130'],
  ['condenser-air|overcharge|air', '50', '350'],
  ['none', '32', '210'],
  ['undercharge', '20', '130', [85, 104]],
  ['restriction|valve-stuck-closed', '15 inHg vac', '140', [75, 90]],
  ['overcharge', '45', '320', [54, 96]],
]

const inputOf = ([, low, high, pipes = [], more = {}]: Row) => {
  const [suction, liquid, vent] = pipes as readonly (number | undefined)[]
  return {
    suctionPressure: low.includes(' ') ? low : `${low} psig`,
    dischargePressure: `${high} psig`,
    ...(suction !== undefined && { suctionTemperature: `${suction} °F` }),
    ...(liquid !== undefined && { liquidTemperature: `${liquid} °F` }),
    ...(vent !== undefined && { ventTemperature: `${vent} °F` }),
    ...more,
  }
}

const readingsOf = (row: Row, conditions: Readonly<Record<string, unknown>>, known: object) => {
  const { dischargePressure, suctionPressure, suctionTemperature, liquidTemperature } = inputOf(
    row,
  ) as Readonly<Record<string, string>>
  return readings.run({
    refrigerant: conditions.refrigerant,
    ambient: row[4]?.ambient ?? conditions.ambient,
    ...known,
    suctionPressure,
    liquidPressure: dischargePressure,
    ...(suctionTemperature && { suctionTemperature }),
    ...(liquidTemperature && { liquidTemperature }),
  })
}

describe.each<
  [kind: string, known: object, conditions: Readonly<Record<string, unknown>>, rows: readonly Row[]]
>([
  ['a valve', KNOWN.valve, CONDITIONS, [...VALVE, ...VARIABLE]],
  ['an orifice tube', KNOWN.orifice, CONDITIONS, ORIFICE],
  ['a stationary orifice', KNOWN['stationary-orifice'], SPLIT, STATIONARY_ORIFICE],
  ['a stationary valve', KNOWN['stationary-valve'], SPLIT, STATIONARY_VALVE],
  ['a machine of which nothing is said', {}, CONDITIONS, UNKNOWN],
])('the same without the model: %s', (_, known, conditions, rows) => {
  it.each(rows.map((row) => [`${row[0]} at ${row[1]}/${row[2]} psig`, row] as const))(
    '%s: a pattern that is told stands for it',
    (name, row) => {
      const { result, level, next, headline } = readingsOf(row, conditions, known)
      const [pattern] = result.patterns
      if (row[0] === 'none') {
        expect(pattern).toBeUndefined()
        return
      }
      expect(pattern === undefined, headline).toBe(OPEN.includes(name))
      if (pattern === undefined) return
      const stands = PATTERNS[pattern.id] ?? []
      expect(
        row[0].split('|').some((cause) => stands.includes(cause)),
        pattern.id,
      ).toBe(true)
      expect(level).toBe('check')
      expect(next?.length).toBeGreaterThan(0)
    },
  )
})

describe.each<[kind: string, known: Readonly<Record<string, unknown>>, rows: readonly Row[]]>([
  ['valve-receiver', { architecture: 'valve-receiver' }, VALVE],
  ['orifice-accumulator', { architecture: 'orifice-accumulator' }, ORIFICE],
  ['valve-receiver-variable', { architecture: 'valve-receiver-variable' }, VARIABLE],
  ['stationary-orifice', { architecture: 'stationary-orifice', ...SPLIT }, STATIONARY_ORIFICE],
  ['stationary-valve', { architecture: 'stationary-valve', ...SPLIT }, STATIONARY_VALVE],
  ['a machine of which nothing is said', {}, UNKNOWN],
])('symptom tables, figures by common practice: %s', (kind, known, rows) => {
  it.each(rows.map((row) => [`${row[0]} at ${row[1]}/${row[2]} psig`, row] as const))(
    '%s is among the named',
    (_, row) => {
      const truth = row[0].split('|') as Cause[]
      const conditions = kind.startsWith('a ')
        ? { refrigerant: 'R-134a', ambient: '90 °F' }
        : CONDITIONS
      const { result } = diagnose.run({ ...conditions, ...known, ...inputOf(row) })
      expect(
        result.named.some((cause) => truth.includes(cause)),
        `${result.verdict}: ${result.named.join(', ')}`,
      ).toBe(true)
      if (truth[0] !== 'none') expect(result.verdict).not.toBe('no-fault-shown')
      if (truth[0] === 'none') expect(['no-fault-shown', 'cannot-tell']).toContain(result.verdict)
    },
  )
})
