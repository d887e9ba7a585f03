import type { Diagram } from './diagram.ts'

/** A kind of picture: which operation's answer it shows, and where it is. */
export interface DiagramKind {
  readonly kind: string
  /** Name of the operation whose input it takes. */
  readonly operation: string
  readonly summary: string
  /** Loads what draws it, and the operation with it. */
  load(): Promise<Diagram>
}

/**
 * Every kind of picture, declared once: the first of an operation is the one that is drawn where no kind is named.
 */
export const DIAGRAMS: readonly DiagramKind[] = [
  {
    kind: 'pressure-enthalpy',
    operation: 'readings',
    summary: 'The cycle that readings describe, on the pressure-enthalpy plane of its refrigerant',
    load: async () => (await import('./pressure-enthalpy/of-readings.ts')).pressureEnthalpy,
  },
  {
    kind: 'superheat-subcooling',
    operation: 'readings',
    summary: 'Readings beside bubble and dew line: superheat and subcooling as distances from them',
    load: async () => (await import('./saturation-curve/of-readings.ts')).superheatSubcooling,
  },
  {
    kind: 'saturation-curve',
    operation: 'saturation',
    summary: 'Where a pressure or a temperature lies on bubble and dew line',
    load: async () => (await import('./saturation-curve/of-saturation.ts')).saturationCurve,
  },
  {
    kind: 'vacuum-rise',
    operation: 'evacuation',
    summary: 'A standing vacuum over time: readings, the shape that fits best, and the limits',
    load: async () => (await import('./standing/of-evacuation.ts')).vacuumRise,
  },
  {
    kind: 'pressure-hold',
    operation: 'leak-test',
    summary: 'A standing test: what was read, and what the temperature alone explains',
    load: async () => (await import('./standing/of-leak-test.ts')).pressureHold,
  },
  {
    kind: 'charge-bar',
    operation: 'charge',
    summary: 'The charge as a bar: what is there, what is missing, and the tolerance',
    load: async () => (await import('./bars/of-charge.ts')).chargeBar,
  },
]

/** The kinds of picture of an operation, the usual one first. */
export const diagramsOf = (operation: string): readonly DiagramKind[] =>
  DIAGRAMS.filter((entry) => entry.operation === operation)
