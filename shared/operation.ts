import * as z from 'zod'
import { type Caution, type CautionId, caution, cautions, inOrder } from './cautions.ts'
import { type Issue, issueError } from './issue-error.ts'
import {
  type Quantity,
  quantityOut,
  type Shown,
  type ShownQuantity,
  showAll,
  UNIT_SYSTEMS,
  type UnitSystem,
} from './quantity/index.ts'
import { distinctSources, type Source, source } from './sources.ts'

/** One line of how a figure came about: the formula in words, and the numbers in it. */
export interface Step {
  readonly what: string
  readonly formula: string
  readonly values: Readonly<Record<string, Quantity | number | string>>
  readonly gives: Quantity | number | string
}

/** What was not given, and what was taken instead. */
export interface Assumption {
  /** Input field, dotted. */
  readonly field: string
  readonly taken: string
  readonly because: string
}

/** Something the user should know about the answer or the readings, with what to do. */
export interface Warning {
  readonly code: string
  readonly message: string
}

/** What a step computes: quantities in SI, before anybody chose units. */
export interface Computation<R> {
  readonly result: R
  readonly steps: readonly Step[]
  readonly cautions: readonly Caution[]
  readonly sources: readonly Source[]
  readonly assumptions: readonly Assumption[]
  readonly warnings: readonly Warning[]
}

/** Where a schema has a shown quantity, the computation has the quantity itself. */
export type Computed<T> = T extends ShownQuantity
  ? Quantity
  : T extends readonly (infer E)[]
    ? readonly Computed<E>[]
    : T extends object
      ? { readonly [P in keyof T]: Computed<T[P]> }
      : T

export interface Answer<R = unknown> {
  readonly result: R
  readonly steps: readonly Shown<Step>[]
  readonly cautions: readonly Caution[]
  readonly sources: readonly Source[]
  readonly assumptions: readonly Assumption[]
  readonly warnings: readonly Warning[]
}

/** Something the doors can call. */
export interface Operation {
  readonly name: string
  readonly summary: string
  /** More than the summary: when to use it, what it refuses. */
  readonly description: string
  readonly input: z.ZodType
  readonly output: z.ZodType
  readonly sources: readonly Source[]
  readonly cautions: readonly Caution[]
  /** An input that works, shown in help and in the API description. */
  readonly example: Readonly<Record<string, unknown>>
  /** @throws {CalcError} for anything wrong with the input or refused by the calculation. */
  run(input: unknown): Answer
}

/** Choices every operation takes besides its own input. */
export const presentationIn = {
  units: z
    .enum(UNIT_SYSTEMS)
    .default('both')
    .describe('Unit system of the answer: us, si, or both'),
  precise: z.boolean().default(false).describe('Full precision instead of sensible rounding'),
}

const scalarOut = z.union([quantityOut, z.number(), z.string()])

const frameOut = {
  steps: z
    .array(
      z.strictObject({
        what: z.string(),
        formula: z.string(),
        values: z.record(z.string(), scalarOut),
        gives: scalarOut,
      }),
    )
    .describe('How the figures came about'),
  cautions: z.array(caution),
  sources: z.array(source),
  assumptions: z
    .array(z.strictObject({ field: z.string(), taken: z.string(), because: z.string() }))
    .describe('What was not given, and what was taken instead'),
  warnings: z.array(z.strictObject({ code: z.string(), message: z.string() })),
}

type Fields = Record<string, z.ZodType>
type Checked<T> = (input: T) => void

interface Definition<F extends Fields, R extends z.ZodType> {
  readonly name: string
  readonly summary: string
  readonly description?: string
  /** Fields of the input object; unknown fields are refused. */
  readonly fields: F
  /** Rules between fields: throw a CalcError with the path. */
  readonly check?: Checked<z.output<z.ZodObject<F>>>
  readonly result: R
  readonly cautions?: readonly CautionId[]
  readonly sources?: readonly Source[]
  readonly example: z.input<z.ZodObject<F>> & Readonly<Record<string, unknown>>
  readonly compute: (input: z.output<z.ZodObject<F>>) => Computation<Computed<z.output<R>>>
}

export interface DefinedOperation<F extends Fields, R extends z.ZodType> extends Operation {
  /** The calculation in SI, for other steps that build on it. */
  readonly compute: Definition<F, R>['compute']
  readonly fields: F
  readonly result: R
  /** Parses and checks an input, for steps that then call `compute`. @throws {CalcError} */
  parse(input: unknown): z.output<z.ZodObject<F>>
  run(input: unknown): Answer<z.output<R>>
}

/**
 * Makes an operation: parses, computes, and shows the answer in the asked units.
 *
 * The frame is the same for all: `result`, `steps`, `cautions`, `sources`, `assumptions`, `warnings`.
 */
export function defineOperation<F extends Fields, R extends z.ZodType>(
  definition: Definition<F, R>,
): DefinedOperation<F, R> {
  const { name, summary, fields, result, compute } = definition
  const input = z.strictObject({ ...fields, ...presentationIn })
  const output = z.strictObject({ result, ...frameOut })
  const sources = definition.sources ?? []
  const read = (raw: unknown) => {
    const { units, precise, ...rest } = parseInput(input, raw) as {
      units: UnitSystem
      precise: boolean
    } & z.output<z.ZodObject<F>>
    const own = rest as unknown as z.output<z.ZodObject<F>>
    definition.check?.(own)
    return { own, units, precise }
  }
  return {
    name,
    summary,
    description: definition.description ?? summary,
    input,
    output,
    sources,
    cautions: cautions(...(definition.cautions ?? [])),
    example: definition.example,
    compute,
    fields,
    result,
    parse: (raw) => read(raw).own,
    run(raw) {
      const { own, units, precise } = read(raw)
      const computed = compute(own)
      const { result: found, steps } = computed
      return {
        ...(showAll({ result: found, steps }, { units, precise }) as Pick<
          Answer<z.output<R>>,
          'result' | 'steps'
        >),
        cautions: inOrder(computed.cautions),
        sources: distinctSources(computed.sources),
        assumptions: computed.assumptions,
        warnings: computed.warnings,
      }
    },
  }
}

/**
 * Parses with a zod schema; the first fault becomes the project's error.
 *
 * @throws {CalcError} `bad-input`, or the code that a quantity's own parser gave.
 */
export function parseInput<S extends z.ZodType>(schema: S, raw: unknown): z.output<S> {
  const parsed = schema.safeParse(raw)
  if (parsed.success) return parsed.data
  const fields = schema instanceof z.ZodObject ? Object.keys(schema.shape) : []
  throw issueError(parsed.error.issues as readonly Issue[], raw, fields)
}
