import figures from '../../data/service/diagnosis.json' with { type: 'json' }
import type { Case, Deviations } from '../cycle/index.ts'

/** What differs from one machine of a kind to the next: shares. */
export const OF_THE_MACHINE = [
  'condenserConductance',
  'evaporatorConductance',
  'volumetric',
  'isentropic',
  'device',
  'condenserFan',
  'blower',
  'charge',
] as const
/** What differs from test to test: share of the speed, share of humidity, K, K. */
export const OF_THE_TEST = ['speed', 'returnHumidity', 'returnAirK', 'ambientK'] as const

export type MachineNuisance = (typeof OF_THE_MACHINE)[number]
export type TestNuisance = (typeof OF_THE_TEST)[number]
export type Nuisance = MachineNuisance | TestNuisance

export const NUISANCES: readonly Nuisance[] = [...OF_THE_MACHINE, ...OF_THE_TEST]

const { spread } = figures

/** How far each lies apart, 1 σ, in machines of one kind and tests of one setting. */
export const SPREAD: Readonly<Record<Nuisance, number>> = spread
/** Of a machine that is known by readings of its own, that much of it is left. */
export const KNOWN_SHARE = spread.knownMachineShare

/** A case with one of them moved by so much. */
export function moved(asked: Case, name: Nuisance, size: number): Case {
  const { conditions, deviations, faults } = asked
  switch (name) {
    case 'condenserFan':
    case 'blower':
    case 'speed':
      return { ...asked, conditions: { ...conditions, [name]: conditions[name] * (1 + size) } }
    case 'returnHumidity':
    case 'returnAirK':
    case 'ambientK':
      return { ...asked, conditions: { ...conditions, [name]: conditions[name] + size } }
    case 'charge':
      return { ...asked, faults: { ...faults, charge: faults.charge * (1 + size) } }
    default:
      return {
        ...asked,
        deviations: { ...deviations, [name]: 1 + size } satisfies Deviations,
      }
  }
}
