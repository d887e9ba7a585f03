import * as z from 'zod'
import data from '../../../data/service/recovery.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  absolutePressure,
  gaugePressure,
  type Quantity,
  quantity,
  quantityOut,
  say,
} from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import type { Compressor } from '../../rules/types.ts'
import { sourceTable } from '../../source-table.ts'
import { propertySources } from '../property-sources.ts'
import { statementOut, statementSources, statementTable } from '../statement.ts'
import {
  type EquipmentDate,
  evacuationRegime,
  type Machine,
  PRESSURE_CLASSES,
  pressureClass,
  tableLevel,
} from './evacuation-level.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

export const levelOut = z.strictObject({
  regime: z
    .enum(['table-1', 'small-appliance', 'vehicle', 'vehicle-like'])
    .describe('Which rule sets the level, US federal'),
  pressureClass: z.enum([...PRESSURE_CLASSES, 'cannot-tell']).optional(),
  pressureAt104F: quantityOut.optional(),
  level: quantityOut.optional().describe('Evacuate to this absolute pressure before opening'),
  gaugeReading: quantityOut.optional().describe('What a gauge at this place shows at that level'),
  rules: z.array(statementOut),
})

type LevelResult = Computed<z.output<typeof levelOut>>

interface LevelInput {
  readonly machine: Machine
  readonly compressorDrive?: Compressor | undefined
  readonly labelCharge?: Quantity<'mass'> | undefined
  readonly equipmentMade?: EquipmentDate | undefined
}

/** How far to evacuate before opening, with the rules around it (US federal). */
export function levelPart(
  r: Refrigerant,
  input: LevelInput,
  barometerPa: number,
  notes: Notes,
): LevelResult {
  const regime = evacuationRegime(r, input.machine, input.compressorDrive, input.labelCharge?.si)
  refuseLargeSmallAppliance(regime, input.labelCharge)
  const beyond = regime === 'table-1' && isOpenDriveCab(r, input)
  if (beyond) {
    notes.warnings.push({
      code: 'regime-of-2015',
      message:
        'A cab system of more than 20 lb is no longer treated as a vehicle by the 2015 edition of 40 CFR 82.152, which was rewritten since. The level of the stricter rule is given; use approved equipment as well.',
    })
  }
  const rules = [
    ...rulesOf(regime, r),
    ...(beyond ? statements('off-road-equipment', 'off-road-20-lb') : []),
  ]
  notes.sources.push(...statementSources(rules, sourceOf))
  if (regime !== 'table-1' || r.info.id === 'R-744') return { regime, rules }
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
  // Where half a percent of pressure would change the class, the deeper vacuum of the two holds.
  const candidates = [found.class, ...(found.or ? [found.or] : [])]
  // Where the air is thinner than 29.9 inHg, opening at that pressure would still blow out.
  const levelPa = Math.min(
    barometerPa,
    ...candidates.map((name) => tableLevel(name, chargeKg, made)),
  )
  if (found.or) {
    notes.warnings.push({
      code: 'pressure-class-uncertain',
      message: `The pressure at 104 °F lies so near a limit that the class may be ${found.class} or ${found.or}; the deeper vacuum of the two is given.`,
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
    regime,
    pressureClass: found.or ? 'cannot-tell' : found.class,
    pressureAt104F: found.pressurePa === undefined ? undefined : absolutePressure(found.pressurePa),
    level,
    gaugeReading: gaugeFor(levelPa, barometerPa),
    rules,
  }
}

/** The table is printed to a tenth of an inch of mercury, and a gauge shows no more. */
function gaugeFor(levelPa: number, barometerPa: number): Quantity<'gaugePressure'> {
  const tenthPa = quantity('pressureDifference', 0.1, 'inHg').si
  const vacuumPa = tenthPa * Math.round((barometerPa - levelPa) / tenthPa)
  return vacuumPa === 0 ? gaugePressure(0).in('psig') : gaugePressure(-vacuumPa).in('inHg vac')
}

const isOpenDriveCab = (r: Refrigerant, { machine, compressorDrive }: LevelInput) =>
  machine === 'off-road' && compressorDrive === 'open-drive' && r.info.id !== 'R-22'

const SMALL_KG = quantity('mass', 5, 'lb').si

function refuseLargeSmallAppliance(
  regime: LevelResult['regime'],
  labelCharge: Quantity<'mass'> | undefined,
): void {
  if (regime !== 'small-appliance' || !labelCharge || labelCharge.si <= SMALL_KG + 1e-9) return
  throw new CalcError(
    'bad-input',
    `A small appliance holds 5 lb or less; the label says ${say(labelCharge)}.`,
    { hint: 'Give machine as stationary (or off-road) for it.', path: ['machine'] },
  )
}

function rulesOf(regime: LevelResult['regime'], r: Refrigerant) {
  if (r.info.id === 'R-744') return statements('carbon-dioxide')
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
