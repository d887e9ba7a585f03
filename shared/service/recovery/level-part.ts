import * as z from 'zod'
import data from '../../../data/service/recovery.json' with { type: 'json' }
import { isCarbonDioxide } from '../../fields/index.ts'
import type { Place } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  absolutePressure,
  gaugePressure,
  type Quantity,
  quantity,
  quantityOut,
} from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import { sourceTable } from '../../source-table.ts'
import { propertySources } from '../property-sources.ts'
import { statementOut, statementSources, statementTable } from '../statement.ts'
import {
  evacuationRegime,
  LEVEL_REGIMES,
  PRESSURE_CLASSES,
  pressureClass,
  tableLevel,
} from './evacuation-level.ts'
import type { RecoveryInput } from './fields.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

export const levelOut = z.strictObject({
  regime: z.enum(LEVEL_REGIMES).describe('Which rule sets the level, US federal'),
  pressureClass: z.enum([...PRESSURE_CLASSES, 'cannot-tell']).optional(),
  pressureAt104F: quantityOut.optional(),
  level: quantityOut.optional().describe('Evacuate to this absolute pressure before opening'),
  gaugeReading: quantityOut.optional().describe('What a gauge at this place shows at that level'),
  rules: z.array(statementOut),
})

export type LevelResult = Computed<z.output<typeof levelOut>>

/** What was assumed of a machine, so that its rule is known. */
const ASSUMED = {
  labelCharge: {
    field: 'labelCharge',
    taken: 'an ordinary full charge, below every limit of the rules',
    because: 'the label charge was not given',
  },
  factorySealed: {
    field: 'factorySealed',
    taken: 'not sealed in the factory',
    because: 'it was not given, and the level is then the deeper one',
  },
} as const

/**
 * How far to evacuate before opening, with the rules around it (US federal).
 *
 * @returns Nothing, and a warning, where it depends on a compressor drive that was not given.
 */
export function levelPart(
  r: Refrigerant,
  input: RecoveryInput,
  place: Place,
  notes: Notes,
): LevelResult | undefined {
  const settled = evacuationRegime({ ...input, refrigerant: r })
  if (!settled) {
    notes.warnings.push({ code: 'drive-not-given', message: data.warnings['drive-not-given'] })
    return undefined
  }
  const { regime, assumed } = settled
  notes.assumptions.push(...assumed.map((name) => ASSUMED[name]))
  if (input.law === undefined) {
    notes.assumptions.push({
      field: 'law',
      taken: 'US federal law for the level of evacuation',
      because: 'no law was given',
      short: 'level by US federal law',
    })
  }
  const beyond = regime === 'table-1' && isOpenDriveCab(r, input)
  if (beyond) {
    notes.warnings.push({ code: 'regime-of-2015', message: data.warnings['regime-of-2015'] })
  }
  const rules = [
    ...rulesOf(regime, r),
    ...(beyond ? statements('off-road-equipment', 'off-road-20-lb') : []),
  ]
  notes.sources.push(...statementSources(rules, sourceOf))
  if (regime !== 'table-1' || isCarbonDioxide(r)) return { regime, rules }
  return { regime, rules, ...tableOne(r, input, place, notes) }
}

/** The level of Table 1. */
function tableOne(r: Refrigerant, input: RecoveryInput, place: Place, notes: Notes) {
  const made = input.equipmentMade ?? 'from-1993-11-15'
  if (input.equipmentMade === undefined) {
    notes.assumptions.push({
      field: 'equipmentMade',
      taken: 'on or after 15 November 1993',
      because: 'the date of the recovery equipment was not given',
    })
  }
  if (!input.labelCharge) {
    notes.assumptions.push({
      field: 'labelCharge',
      taken: 'a full charge below 200 lb',
      because: 'the label charge was not given',
    })
  }
  const chargeKg = input.labelCharge?.si ?? 0
  const found = pressureClass(r)
  // Where the data's own uncertainty would change the class, the deeper vacuum of the two holds.
  const candidates = [found.class, ...(found.or ? [found.or] : [])]
  // Where the air is thinner than 29.9 inHg, opening at that pressure would still blow out.
  const levelPa = Math.min(
    place.barometerPa,
    ...candidates.map((name) => tableLevel(name, chargeKg, made)),
  )
  if (found.or) {
    notes.warnings.push({
      code: 'pressure-class-uncertain',
      message: fillIn(data.warnings['pressure-class-uncertain'], {
        one: found.class,
        other: found.or,
      }),
    })
  }
  const level = absolutePressure(levelPa).in('inHg abs')
  notes.sources.push(sourceOf('cfr-82-152-classes'), ...propertySources(r))
  notes.steps.push({
    what: 'Level of evacuation',
    formula: '29.9 inHg less the vacuum in 40 CFR 82.156 Table 1, at most the barometer',
    values: { pressureClass: found.or ? 'cannot-tell' : found.class, equipment: made },
    gives: level,
  })
  return {
    pressureClass: found.or ? ('cannot-tell' as const) : found.class,
    pressureAt104F: found.pressurePa === undefined ? undefined : absolutePressure(found.pressurePa),
    level,
    gaugeReading: gaugeFor(levelPa, place),
  }
}

/** The table is printed to a tenth of an inch of mercury, and a gauge shows no more; ± is the barometer's. */
function gaugeFor(levelPa: number, place: Place): Quantity<'gaugePressure'> {
  const tenthPa = quantity('pressureDifference', 0.1, 'inHg').si
  const vacuumPa = tenthPa * Math.round((place.barometerPa - levelPa) / tenthPa)
  return vacuumPa === 0
    ? gaugePressure(0).in('psig')
    : gaugePressure(-vacuumPa, place.plusMinusPa).in('inHg vac')
}

const isOpenDriveCab = (r: Refrigerant, { machine, compressorDrive }: RecoveryInput) =>
  machine === 'off-road' && compressorDrive === 'open' && r.info.id !== 'R-22'

function rulesOf(regime: LevelResult['regime'], r: Refrigerant) {
  if (isCarbonDioxide(r)) return statements('carbon-dioxide')
  const share = r.info.id === 'R-134a' ? (['j2788-share'] as const) : []
  switch (regime) {
    case 'table-1':
      return statements('table-1', 'not-major', 'leak-unreachable')
    case 'small-appliance':
      return statements('small-appliance', 'small-appliance-definition')
    case 'vehicle':
      return statements('vehicle-equipment', 'vacuum-five-minutes', ...share, 'disposal-102-mm')
    case 'vehicle-like':
      return statements(
        'off-road-equipment',
        'off-road-20-lb',
        'vacuum-five-minutes',
        ...share,
        'disposal-102-mm',
      )
  }
}
