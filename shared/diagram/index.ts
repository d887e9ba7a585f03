/** A kind of picture, and the operation whose answer it shows. */
export interface DiagramKind {
  readonly kind: KindName
  /** Name of the operation whose input it takes. */
  readonly operation: string
  readonly summary: string
}

const KINDS = [
  {
    kind: 'saturation-curve',
    operation: 'saturation',
    summary: 'Where a pressure or a temperature lies on bubble and dew line',
  },
  {
    kind: 'pressure-enthalpy',
    operation: 'readings',
    summary: 'The cycle that readings describe, on the pressure-enthalpy plane of its refrigerant',
  },
  {
    kind: 'superheat-subcooling',
    operation: 'readings',
    summary: 'Readings beside bubble and dew line: superheat and subcooling as distances from them',
  },
  {
    kind: 'charge-bar',
    operation: 'charge',
    summary: 'The charge as a bar: what is there, what is missing, and the tolerance',
  },
  {
    kind: 'pressure-hold',
    operation: 'leak-test',
    summary: 'A standing test: what was read, and what the temperature alone explains',
  },
  {
    kind: 'vacuum-rise',
    operation: 'evacuation',
    summary: 'A standing vacuum over time: readings, the shape that fits best, and the limits',
  },
] as const

export type KindName = (typeof KINDS)[number]['kind']

/**
 * Every kind of picture, declared once, in the order of a visit: the first of an operation is the one
 * that is drawn where no kind is named. What draws them is in `load.ts`, each for itself, and in
 * `all.ts`, all at once.
 */
export const DIAGRAMS: readonly DiagramKind[] = KINDS

/** The kinds of picture of an operation, the usual one first. */
export const diagramsOf = (operation: string): readonly DiagramKind[] =>
  DIAGRAMS.filter((entry) => entry.operation === operation)
