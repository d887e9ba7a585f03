import type { CompressorDrive, Machine, Sector } from '../fields/machine.ts'
import type { Quantity } from '../quantity/index.ts'
import { familyOf } from '../refrigerant/family.ts'
import type { Refrigerant, RefrigerantInfo } from '../refrigerant/index.ts'
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
  readonly machine: Machine | undefined
  readonly compressorDrive: CompressorDrive | undefined
  readonly factorySealed: boolean | undefined
  readonly sector: Sector | undefined
  readonly refrigerant: RefrigerantFacts
  readonly chargeKg: number | undefined
  readonly action: Action
  readonly forPay: boolean | undefined
  readonly to: RefrigerantFacts | undefined
}

/** The rules' view of a refrigerant: a substance of no listed family counts as 'other'. */
export function refrigerantFacts(info: RefrigerantInfo): RefrigerantFacts {
  const chemical = [
    ...new Set(info.composition.map(({ substance }) => familyOf(substance) ?? 'other')),
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

/** A job as the fields of any operation give it; what is left out is not guessed. */
export interface JobGiven {
  readonly refrigerant: Refrigerant
  readonly machine?: Machine | undefined
  readonly compressorDrive?: CompressorDrive | undefined
  readonly factorySealed?: boolean | undefined
  readonly sector?: Sector | undefined
  readonly labelCharge?: Quantity<'mass'> | undefined
  /** What is to be done; opening without it. */
  readonly action?: Action | undefined
  readonly forPay?: boolean | undefined
  /** The worker's own machine is worked on unpaid, unless it is said otherwise. */
  readonly ownMachine?: boolean | undefined
  readonly to?: Refrigerant | undefined
}

/** The facts that the tables are read with. */
export const factsFor = (job: JobGiven): Facts => ({
  machine: job.machine,
  compressorDrive: job.compressorDrive,
  factorySealed: job.factorySealed,
  sector: job.sector,
  refrigerant: refrigerantFacts(job.refrigerant.info),
  chargeKg: job.labelCharge?.si,
  action: job.action ?? 'open',
  forPay: job.forPay ?? (job.ownMachine === true ? false : undefined),
  to: job.to && refrigerantFacts(job.to.info),
})
