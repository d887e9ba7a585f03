import data from '../../data/rules/families.json' with { type: 'json' }
import type { CompressorDrive, Machine, Sector } from '../fields/machine.ts'
import type { RefrigerantInfo } from '../refrigerant/index.ts'
import type { Action } from './types.ts'

/** What the rules ask about a refrigerant. */
export interface RefrigerantFacts {
  readonly id: string
  /** Chemical families of its substances, plus 'ods' when it depletes ozone and 'flammable' when it burns. */
  readonly families: readonly string[]
  /** The family, when all its substances share one. */
  readonly onlyFamily: string | undefined
}

/** What is known of a job; what is undefined was not given, and is never guessed. */
export interface Facts {
  readonly machine: Machine
  readonly compressorDrive: CompressorDrive | undefined
  readonly factorySealed: boolean | undefined
  readonly sector: Sector | undefined
  readonly refrigerant: RefrigerantFacts
  readonly chargeKg: number | undefined
  readonly action: Action
  readonly forPay: boolean | undefined
  readonly to: RefrigerantFacts | undefined
}

const FAMILY_OF = new Map(
  Object.entries(data.families).flatMap(([family, substances]) =>
    substances.map((substance) => [substance, family] as const),
  ),
)

/** The rules' view of a refrigerant: a substance of no listed family counts as 'other'. */
export function refrigerantFacts(info: RefrigerantInfo): RefrigerantFacts {
  const chemical = [
    ...new Set(info.composition.map(({ substance }) => FAMILY_OF.get(substance) ?? 'other')),
  ]
  return {
    id: info.id,
    families: [
      ...chemical,
      ...(info.odp.value > 0 ? ['ods'] : []),
      ...(info.safetyClass.value.endsWith('1') ? [] : ['flammable']),
    ],
    onlyFamily: chemical.length === 1 ? chemical[0] : undefined,
  }
}
