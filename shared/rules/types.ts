import type { Mark } from '../sources.ts'

export const ACTIONS = ['open', 'recover', 'charge', 'buy', 'dispose', 'retrofit'] as const
export type Action = (typeof ACTIONS)[number]

/** Bounds of a full charge in pounds, as the US rules write them. */
export interface ChargeLimits {
  readonly atMost?: number
  readonly above?: number
  readonly atLeast?: number
  readonly below?: number
}

/** When a row applies: every condition named must hold; one left out always holds. */
export interface Condition {
  readonly machine?: readonly string[]
  readonly compressorDrive?: readonly string[]
  readonly factorySealed?: boolean
  readonly sector?: readonly string[]
  readonly refrigerant?: readonly string[]
  readonly notRefrigerant?: readonly string[]
  /** At least one of the refrigerant's families is among these. */
  readonly family?: readonly string[]
  /** None of its families is among these. */
  readonly notFamily?: readonly string[]
  /** Every substance in it is of this family. */
  readonly onlyFamily?: string
  readonly chargeLb?: ChargeLimits
  readonly action?: readonly string[]
  readonly forPay?: boolean
  readonly regime?: readonly string[]
  /** The same questions about the refrigerant that is to replace the present one. */
  readonly to?: Pick<Condition, 'refrigerant' | 'family'>
}

/** A row of a decision table. */
export interface Row {
  readonly when: Condition
  readonly answer?: string
  /** Certificates of which one suffices. */
  readonly anyOf?: readonly string[]
  /** Which of them it is depends on a place finer than these rules know. */
  readonly placeDecides?: boolean
  /** Certificates that may suffice besides: by their kind, which these rules do not know. */
  readonly perhaps?: readonly string[]
  /** Whether it applies hangs on what no field holds: a figure from memory, the size of a container. */
  readonly unsettled?: boolean
  readonly statements: readonly string[]
  /** Those of them that a short citation names; without it the first. */
  readonly cite?: readonly string[]
}

export interface StatementData {
  readonly text: string
  readonly section: string
  readonly mark: Mark
  /** Month or day on which the text was read, YYYY-MM or YYYY-MM-DD; nothing where it is from memory. */
  readonly checked?: string | undefined
  readonly source: string
}

export const TOPICS = [
  'regime',
  'certificate',
  'venting',
  'use',
  'equipment',
  'reuse',
  'leakRepair',
  'retrofit',
  'records',
  'elsewhere',
] as const
export type Topic = (typeof TOPICS)[number]

/** Where a statement was read. */
export interface LawSource {
  readonly title: string
  /** Which text it was, where that is not the one in force: "2015 edition". */
  readonly edition?: string
  readonly url?: string
}

/** One file of `data/rules`: the statements of a jurisdiction, and the tables that pick among them. */
export interface Jurisdiction {
  readonly jurisdiction: string
  readonly name: string
  readonly sources: Readonly<Record<string, LawSource>>
  readonly statements: Readonly<Record<string, StatementData>>
  readonly regimes: Readonly<Record<string, string>>
  readonly tables: Readonly<Record<Topic, readonly Row[]>>
}
