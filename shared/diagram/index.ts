/** A kind of picture, and the operation whose answer it shows. */
export interface DiagramKind {
  readonly kind: KindName
  /** Name of the operation whose input it takes. */
  readonly operation: string
  readonly summary: string
  /** What an example of the operation needs beside it for there to be something to draw. */
  readonly also?: Readonly<Record<string, unknown>>
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
  {
    kind: 'cooling-bands',
    operation: 'cooling-check',
    summary: 'Vent, return air and pressures as read, over the published figures that fit',
  },
  {
    kind: 'model-cycle',
    operation: 'simulate',
    summary: 'The cycle of the model with its faults and without, on the pressure-enthalpy plane',
  },
  {
    kind: 'cycles-apart',
    operation: 'simulate',
    summary: 'The sound cycle and the faulty one beside each other, on the same axes',
  },
  {
    kind: 'fault-sweep',
    operation: 'simulate',
    summary: 'One fault led over a range: a panel a figure, and where no instrument shows it',
    also: { sweep: 'charge' },
  },
  {
    kind: 'mass-by-part',
    operation: 'simulate',
    summary: 'Where the refrigerant is: its mass by part, with the faults and without',
  },
] as const

export type KindName = (typeof KINDS)[number]['kind']

/**
 * Every kind of picture, declared once, in the order of a visit: the first of an operation is the one
 * that is drawn where no kind is named. What draws them is in `load.ts`, each for itself, and in
 * `all.ts`, all at once.
 */
export const DIAGRAMS: readonly DiagramKind[] = KINDS

/** An input that a picture can be drawn of. */
export const exampleOf = (
  { also }: DiagramKind,
  { example }: { readonly example: Readonly<Record<string, unknown>> },
): Readonly<Record<string, unknown>> => ({ ...example, ...also })

/** The kinds of picture of an operation, the usual one first. */
export const diagramsOf = (operation: string): readonly DiagramKind[] =>
  DIAGRAMS.filter((entry) => entry.operation === operation)
