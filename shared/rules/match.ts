import type { Facts, RefrigerantFacts } from './facts.ts'
import type { ChargeLimits, Condition, Row } from './types.ts'

/** `depends`: a fact was not given, and with it the row may or may not apply. */
type Applies = 'yes' | 'no' | 'depends'

interface Check {
  readonly applies: Applies
  /** Input fields that would settle it. */
  readonly missing: readonly string[]
}

/** A row that applies, or may. */
export interface Match {
  readonly row: Row
  readonly applies: 'yes' | 'depends'
  readonly missing: readonly string[]
}

/** Which regimes are still possible, and what would tell them apart. */
export interface Regimes {
  readonly ids: readonly string[]
  readonly missing: readonly string[]
}

/** Rows in order until one surely applies: the answer, or the answers between which facts are missing. */
export function firstMatch(rows: readonly Row[], facts: Facts, regimes?: Regimes): Match[] {
  const found: Match[] = []
  for (const match of matching(rows, facts, regimes)) {
    found.push(match)
    if (match.applies === 'yes') break
  }
  return found
}

/** Every row that applies, or may. */
export const allMatches = (rows: readonly Row[], facts: Facts, regimes?: Regimes): Match[] => [
  ...matching(rows, facts, regimes),
]

function* matching(rows: readonly Row[], facts: Facts, regimes?: Regimes): Generator<Match> {
  for (const row of rows) {
    const { applies, missing } = check(row.when, facts, regimes)
    if (applies !== 'no') yield { row, applies: row.unsettled ? 'depends' : applies, missing }
  }
}

function check(when: Condition, facts: Facts, regimes?: Regimes): Check {
  const checks: Check[] = [
    among(when.machine, facts.machine, 'machine'),
    among(when.compressorDrive, facts.compressorDrive, 'compressorDrive'),
    equal(when.factorySealed, facts.factorySealed, 'factorySealed'),
    among(when.sector, facts.sector, 'sector'),
    among(when.action, facts.action, 'action'),
    equal(when.forPay, facts.forPay, 'forPay'),
    charge(when.chargeLb, facts.chargeKg),
    regime(when.regime, regimes),
    sure(refrigerant(when, facts.refrigerant)),
    when.to === undefined
      ? sure(true)
      : facts.to === undefined
        ? depends('newRefrigerant')
        : sure(refrigerant(when.to, facts.to)),
  ]
  if (checks.some(({ applies }) => applies === 'no')) return sure(false)
  const open = checks.filter(({ applies }) => applies === 'depends')
  if (open.length === 0) return sure(true)
  return { applies: 'depends', missing: [...new Set(open.flatMap(({ missing }) => missing))] }
}

const sure = (holds: boolean): Check => ({ applies: holds ? 'yes' : 'no', missing: [] })
const depends = (...missing: string[]): Check => ({ applies: 'depends', missing })

function among(
  wanted: readonly string[] | undefined,
  fact: string | undefined,
  field: string,
): Check {
  if (wanted === undefined) return sure(true)
  return fact === undefined ? depends(field) : sure(wanted.includes(fact))
}

function equal(wanted: boolean | undefined, fact: boolean | undefined, field: string): Check {
  if (wanted === undefined) return sure(true)
  return fact === undefined ? depends(field) : sure(wanted === fact)
}

const POUND_KG = 0.45359237

function charge(limits: ChargeLimits | undefined, chargeKg: number | undefined): Check {
  if (limits === undefined) return sure(true)
  if (chargeKg === undefined) return depends('labelCharge')
  // Conversion noise must not move a label of exactly 20 lb across the limit.
  const pounds = Number((chargeKg / POUND_KG).toPrecision(12))
  return sure(
    pounds <= (limits.atMost ?? Number.POSITIVE_INFINITY) &&
      pounds > (limits.above ?? Number.NEGATIVE_INFINITY) &&
      pounds >= (limits.atLeast ?? Number.NEGATIVE_INFINITY) &&
      pounds < (limits.below ?? Number.POSITIVE_INFINITY),
  )
}

function regime(wanted: readonly string[] | undefined, regimes: Regimes | undefined): Check {
  if (wanted === undefined) return sure(true)
  const inside = regimes?.ids.filter((id) => wanted.includes(id)).length ?? 0
  if (inside === 0) return sure(false)
  return inside === regimes?.ids.length ? sure(true) : depends(...(regimes?.missing ?? []))
}

function refrigerant(
  when: Pick<Condition, 'refrigerant' | 'notRefrigerant' | 'family' | 'notFamily' | 'onlyFamily'>,
  { id, families, onlyFamily }: RefrigerantFacts,
): boolean {
  return (
    (when.refrigerant?.includes(id) ?? true) &&
    !(when.notRefrigerant?.includes(id) ?? false) &&
    (when.family?.some((family) => families.includes(family)) ?? true) &&
    !(when.notFamily?.some((family) => families.includes(family)) ?? false) &&
    (when.onlyFamily === undefined || when.onlyFamily === onlyFamily)
  )
}
