import data from '../../../data/service/recovery.json' with { type: 'json' }
import { CalcError } from '../../errors.ts'
import { quantity } from '../../quantity/index.ts'
import {
  propertyUncertainty,
  type Refrigerant,
  saturationPressure,
} from '../../refrigerant/index.ts'
import { decide } from '../../rules/decide.ts'
import { factsFor, type JobGiven } from '../../rules/facts.ts'
import type { EquipmentDate } from './fields.ts'

export const PRESSURE_CLASSES = [
  'low-pressure',
  'medium-pressure',
  'high-pressure',
  'very-high-pressure',
] as const
type PressureClass = (typeof PRESSURE_CLASSES)[number]

/**
 * Pressure class of an appliance by the bubble pressure at 104 °F.
 *
 * @returns The class; the next one too (`or`) where the property's own uncertainty reaches it.
 */
export function pressureClass(r: Refrigerant): {
  readonly class: PressureClass
  readonly or: PressureClass | undefined
  /** Pa absolute; undefined above the critical temperature. */
  readonly pressurePa: number | undefined
} {
  const temperatureK = quantity('temperature', data.pressureClasses.at.value, '°F').si
  if (r.criticalTemperatureK <= temperatureK || r.maximumTemperatureK < temperatureK) {
    return { class: 'very-high-pressure', or: undefined, pressurePa: undefined }
  }
  const pressurePa = saturationPressure(r, temperatureK, 'bubble')
  const own = classOf(pressurePa)
  const share = propertyUncertainty(r, temperatureK, 'bubble').pressure
  const neighbour = [1 - share, 1 + share]
    .map((factor) => classOf(pressurePa * factor))
    .find((other) => other !== own)
  return { class: own, or: neighbour, pressurePa }
}

function classOf(pressurePa: number): PressureClass {
  const found = data.pressureClasses.upTo.find(
    ({ psia }) => pressurePa < quantity('absolutePressure', psia, 'psia').si,
  )
  return (found?.class ?? data.pressureClasses.above) as PressureClass
}

export const LEVEL_REGIMES = ['table-1', 'small-appliance', 'vehicle', 'vehicle-like'] as const
type Regime = (typeof LEVEL_REGIMES)[number]

/** Regimes of the federal tables, and which level goes with each. */
const LEVEL_OF: Readonly<Record<string, Regime>> = {
  mvac: 'vehicle',
  'mvac-like': 'vehicle-like',
  appliance: 'table-1',
  'small-appliance': 'small-appliance',
}
/** Stands for a charge that nobody read, kg: below every limit of the tables. */
const ORDINARY_KG = 1

/**
 * Which US federal rule sets the level of evacuation before opening, by the same tables as the rules.
 *
 * A label charge that was not given counts as an ordinary one, a unit of which nobody said so as not
 * sealed in the factory; both are named in `assumed`.
 *
 * @returns Nothing where it depends on a compressor drive that was not given.
 */
export function evacuationRegime(job: JobGiven):
  | {
      readonly regime: Regime
      readonly assumed: readonly ('labelCharge' | 'factorySealed')[]
    }
  | undefined {
  const facts = factsFor(job)
  const open = decide('us-federal', facts, undefined).regime
  const [first = ''] = open.ids
  if (open.ids.length === 1) return { regime: LEVEL_OF[first] ?? 'table-1', assumed: [] }
  const settled = decide(
    'us-federal',
    {
      ...facts,
      chargeKg: facts.chargeKg ?? ORDINARY_KG,
      factorySealed: facts.factorySealed ?? false,
    },
    undefined,
  ).regime
  const [only = ''] = settled.ids
  if (settled.ids.length > 1) return undefined
  return {
    regime: LEVEL_OF[only] ?? 'table-1',
    assumed: open.missing.filter(
      (name): name is 'labelCharge' | 'factorySealed' =>
        name === 'labelCharge' || name === 'factorySealed',
    ),
  }
}

/**
 * Level of 40 CFR 82.156 Table 1, Pa absolute.
 *
 * The table counts inches of mercury down from 29.9, so the level is an absolute pressure and does
 * not move with altitude: only what a gauge shows for it does.
 */
export function tableLevel(
  pressureClassName: PressureClass,
  fullChargeKg: number,
  made: EquipmentDate,
): number {
  const { rows, chargeLimitLb, lowPressureMmHgAbsolute } = data.evacuationLevels
  if (pressureClassName === 'low-pressure') {
    return quantity('absolutePressure', lowPressureMmHgAbsolute, 'mmHg abs').si
  }
  const size = fullChargeKg < quantity('mass', chargeLimitLb, 'lb').si ? 'below' : 'at-or-above'
  const row = rows.find(
    (entry) =>
      entry.class === pressureClassName && (entry.charge === 'any' || entry.charge === size),
  )
  if (!row) throw new CalcError('unknown-name', `No level is listed for ${pressureClassName}.`)
  const vacuum = made === 'before-1993-11-15' ? row.before : row.from
  return quantity('absolutePressure', 29.9 - vacuum, 'inHg abs').si
}
