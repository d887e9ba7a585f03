import * as z from 'zod'
import type { Sentence, ShownSentence } from './answer/sentence.ts'
import { fillTold, type ShownTold, type Told, toldOut } from './answer/told.ts'
import { type Caution, type CautionId, caution, cautions } from './cautions.ts'
import { CalcError } from './errors.ts'
import { lawIn } from './fields/place.ts'
import { type Issue, issueError } from './issue-error.ts'
import { keptBy } from './kept.ts'
import { atOnce, type InPieces } from './pieces.ts'
import {
  type Presentation,
  Quantity,
  quantityOut,
  type Shown,
  type ShownQuantity,
  showAll,
  systemOf,
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

/** What was not given, and what was assumed instead. */
export interface Assumption {
  /** Input field, dotted. */
  readonly field: string
  readonly taken: string
  readonly because: string
  /** The same in a few words, for the screen. */
  readonly short?: string
}

/** Something the user should know about the answer or the readings, with what to do. */
export interface Warning {
  readonly code: string
  readonly message: string
}

/** What a step computes: quantities in SI, before anybody chose units. */
export interface Computation<R> {
  readonly result: R
  /** The answer in a mechanic's words. */
  readonly told?: Told | undefined
  readonly steps: readonly Step[]
  /** What the law asks of whoever does it, in one line: the frame says it where a system is opened. */
  readonly law?: string | undefined
  /** Of those that the operation declares as `mayAlso`; its `always` are added by the frame. */
  readonly cautions: readonly CautionId[]
  readonly sources: readonly Source[]
  readonly assumptions: readonly Assumption[]
  readonly warnings: readonly Warning[]
}

/** Where a schema has a shown quantity, the computation has the quantity itself. */
export type Computed<T> = T extends ShownQuantity
  ? Quantity
  : T extends ShownSentence
    ? Sentence
    : T extends readonly (infer E)[]
      ? readonly Computed<E>[]
      : T extends object
        ? { readonly [P in keyof T]: Computed<T[P]> }
        : T

export interface Answer<R = unknown> extends Partial<ShownTold> {
  readonly law?: string | undefined
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
  /** Sources behind the answer to the example, for the API description. */
  readonly sources: readonly Source[]
  /** Cautions that any answer may carry, those that each carries first. */
  readonly cautions: readonly Caution[]
  /** An input that works, shown in help and in the API description. */
  readonly example: Readonly<Record<string, unknown>>
  /** @throws {CalcError} for anything wrong with the input or refused by the calculation. */
  run(input: unknown): Answer
  /** The same before its figures are shown, for whoever writes them in another way. @throws {CalcError} as {@link run} */
  unshown(input: unknown): Unshown
  /** {@link unshown} of one that takes long, for a door at which others wait: in pieces. */
  readonly unshownInPieces?: ((input: unknown) => InPieces<Unshown>) | undefined
}

/** An answer before its figures are shown: its members stand in two groups, with those between that hold none. */
export interface Unshown extends Pick<Answer, 'cautions' | 'sources' | 'assumptions' | 'warnings'> {
  /** The told answer, result and steps. */
  readonly tree: object
  /** How they are to be shown. */
  readonly presentation: Presentation
}

/** Choices every operation takes besides its own input. */
export const presentationIn = {
  units: z
    .enum(UNIT_SYSTEMS)
    .optional()
    .describe(
      'Unit system of the answer: us, si, or both; without it both, in the system of the first reading first',
    ),
  precise: z.boolean().default(false).describe('Full precision instead of sensible rounding'),
}

const scalarOut = z.union([quantityOut, z.number(), z.string()])

const frameOut = {
  level: toldOut.level.optional(),
  headline: toldOut.headline.optional(),
  figures: toldOut.figures.optional(),
  next: toldOut.next.optional(),
  line: toldOut.line.optional(),
  madeBy: z
    .string()
    .optional()
    .describe('Version of program and data, in an answer that the command line writes to be kept'),
  law: z.string().optional().describe('What the law asks of whoever opens the system, in one line'),
  steps: z
    .array(
      z.strictObject({
        what: z.string().describe('What was worked out'),
        formula: z.string().describe('How, in words'),
        values: z.record(z.string(), scalarOut).describe('The numbers that went in, by name'),
        gives: scalarOut.describe('What came out'),
      }),
    )
    .describe('How the figures came about'),
  cautions: z.array(caution).describe('What can hurt somebody, the most dangerous first'),
  sources: z.array(source).describe('Where the figures and statements come from'),
  assumptions: z
    .array(
      z.strictObject({
        field: z.string().describe('The field that was not given'),
        taken: z.string().describe('What was assumed instead'),
        because: z.string().describe('Why'),
        short: z.string().optional().describe('What was assumed, in a few words'),
      }),
    )
    .describe('What was not given, and what was assumed instead'),
  warnings: z
    .array(
      z.strictObject({
        code: z.string().describe('A name that programs can go by'),
        message: z.string().describe('What to know or to do'),
      }),
    )
    .describe('What the user should know about the answer or the readings'),
}

type Fields = Record<string, z.ZodType>
type Checked<T> = (input: T) => void

type Compute<F extends Fields, R extends z.ZodType> = (
  input: z.output<z.ZodObject<F>>,
) => Computation<Computed<z.output<R>>>

interface Definition<F extends Fields, R extends z.ZodType> {
  readonly name: string
  readonly summary: string
  readonly description?: string
  /** Fields of the input object; unknown fields are refused. */
  readonly fields: F
  /**
   * Of a job that opens a system, what the law asks of it, in one line (`lawOfJob`): then it takes
   * `law`. Named here so that the rules come only with steps that need them.
   */
  readonly opens?: (own: object) => string | undefined
  /** An input of an earlier version by the names of this one, and what was changed in it. */
  readonly older?: (raw: unknown) => { readonly raw: unknown; readonly changes: readonly string[] }
  /** Rules between fields: throw a CalcError with the path. */
  readonly check?: Checked<z.output<z.ZodObject<F>>>
  readonly result: R
  readonly cautions: {
    /** In every answer, and in every refusal of something dangerous. */
    readonly always: readonly CautionId[]
    /** Given by `compute` where they belong; any other caution is a fault of the program. */
    readonly mayAlso: readonly CautionId[]
  }
  readonly example: z.input<z.ZodObject<F>> & Readonly<Record<string, unknown>>
  /** What it computes; of an operation that takes long `inPieces` stands instead. */
  readonly compute?: Compute<F, R>
  /** The same with a `yield` wherever something else may have its turn. */
  readonly inPieces?: (...input: Parameters<Compute<F, R>>) => InPieces<ReturnType<Compute<F, R>>>
}

export interface DefinedOperation<F extends Fields, R extends z.ZodType> extends Operation {
  /**
   * Checks an input and computes in SI, for the doors and for other steps that build on it; the
   * cautions that always belong to it are among those of the computation.
   *
   * @throws {CalcError} with the operation's cautions where it refuses something dangerous.
   */
  readonly compute: Compute<F, R>
  /** The same in pieces: in one, of an operation that does not take long. */
  readonly inPieces: (...input: Parameters<Compute<F, R>>) => InPieces<ReturnType<Compute<F, R>>>
  readonly fields: F
  readonly result: R
  /** Names of its cautions, for what is declared by them. */
  readonly cautionIds: readonly CautionId[]
  /** Parses an input, for steps that then call `compute`. @throws {CalcError} */
  parse(input: unknown): z.output<z.ZodObject<F>>
  /** The same with the units that the answer is to be shown in, for pictures of it. @throws {CalcError} */
  read(input: unknown): {
    readonly own: z.output<z.ZodObject<F>>
    readonly presentation: Presentation
  }
  run(input: unknown): Answer<z.output<R>>
}

/**
 * Makes an operation: parses, computes, and shows the answer in the asked units.
 *
 * The frame is the same for all: the told answer, `result`, `steps`, `cautions`, `sources`,
 * `assumptions`, `warnings`.
 */
export function defineOperation<F extends Fields, R extends z.ZodType>(
  definition: Definition<F, R>,
): DefinedOperation<F, R> {
  const { name, summary, result, opens } = definition
  // At run time alone: a step that opens a system need not name the field to be told of it.
  const fields: F = opens ? { law: lawIn.optional(), ...definition.fields } : definition.fields
  const { always, mayAlso } = definition.cautions
  const cautionIds = [...always, ...mayAlso]
  const declared: ReadonlySet<CautionId> = new Set(cautionIds)
  const input = z.strictObject({ ...fields, ...presentationIn })
  const output = z.strictObject({ result, ...frameOut })
  type Own = z.output<z.ZodObject<F>>
  type Computed = ReturnType<Compute<F, R>>
  let plain: PlainReader | undefined
  const read = (given: unknown) => {
    const { raw, changes } = definition.older?.(given) ?? { raw: given, changes: NO_CHANGES }
    if (plainReader) plain ??= plainReader(fields, presentationIn)
    const plainly = plainReader && plain?.(raw)
    const { own, beside } = plainly ?? apart(parseInput(input, raw) as object)
    const { units = 'both', precise = false } = beside as Chosen
    const presentation = presentationOf(units)(precise)(leadOf(own))
    return { own: own as Own, presentation, changes }
  }
  const { inPieces: pieces, compute: whole, check } = definition
  const withFrame = (own: Own, computed: Computed): Computed => {
    for (const id of computed.cautions) {
      if (!declared.has(id))
        throw new Error(`${name} gives a caution that it does not declare: ${id}`)
    }
    return {
      result: computed.result,
      told: computed.told,
      steps: computed.steps,
      law: opens?.(own) ?? computed.law,
      cautions: always.concat(computed.cautions),
      sources: computed.sources,
      assumptions: computed.assumptions,
      warnings: computed.warnings,
    }
  }
  function* inPieces(own: Own): InPieces<Computed> {
    if (!pieces) return compute(own)
    try {
      check?.(own)
      return withFrame(own, yield* pieces(own))
    } catch (error) {
      throw withCautions(always, error)
    }
  }
  function compute(own: Own): Computed {
    if (!whole) return atOnce(inPieces(own))
    try {
      check?.(own)
      return withFrame(own, whole(own))
    } catch (error) {
      throw withCautions(always, error)
    }
  }
  function* unshownInPieces(raw: unknown): InPieces<Unshown> {
    const given = read(raw)
    return unshownOf(given, yield* inPieces(given.own))
  }
  const operation: DefinedOperation<F, R> = {
    name,
    summary,
    description: definition.description ?? summary,
    input,
    output,
    get sources() {
      return operation.run(definition.example).sources
    },
    cautionIds,
    get cautions() {
      return cautions(cautionIds)
    },
    example: definition.example,
    compute,
    inPieces,
    fields,
    result,
    parse: (raw) => read(raw).own,
    read,
    unshown(raw) {
      const given = read(raw)
      return unshownOf(given, compute(given.own))
    },
    run(raw) {
      const { tree, presentation, ...rest } = operation.unshown(raw)
      const shown = showAll(tree, presentation) as Pick<Answer<z.output<R>>, 'result' | 'steps'>
      return { ...shown, ...rest }
    },
    unshownInPieces: pieces && unshownInPieces,
  }
  return operation
}

/** One of each, so that a figure which stands in every answer is written once. */
const presentationOf = keptBy((units: UnitSystem) =>
  keptBy((precise: boolean) =>
    keptBy((lead: 'us' | 'si'): Presentation => ({ units, precise, lead })),
  ),
)

const NO_CHANGES: readonly string[] = []

/** An input that was read: the fields of the step, and those of the frame beside them. */
export interface PlainInput {
  readonly own: Readonly<Record<string, unknown>>
  readonly beside: Readonly<Record<string, unknown>>
}

/** Reads an input without its schema; nothing for one that the schema must look at. */
type PlainReader = (raw: unknown) => PlainInput | undefined

let plainReader: ((fields: Fields, beside: Fields) => PlainReader) | undefined

/** Has plain inputs read without their schemas, for a door at which so many are read that it counts. */
export function readPlainly(by: typeof plainReader): void {
  plainReader = by
}

/** What the frame takes for itself of an input. */
type Chosen = Partial<Pick<Presentation, 'units' | 'precise'>>

/** The input of the step, and what the frame takes beside it. */
const apart = ({ units, precise, ...own }: object & Chosen) => ({ own, beside: { units, precise } })

/** A computed answer with the told one in its sentences. */
function unshownOf(given: Read, computed: Computation<unknown>): Unshown {
  const { told } = computed
  const filled = told && fillTold(told, given.presentation)
  return {
    tree: { ...filled, law: computed.law, result: computed.result, steps: computed.steps },
    presentation: given.presentation,
    cautions: cautions(computed.cautions),
    sources: distinctSources(computed.sources),
    assumptions: computed.assumptions,
    warnings: withChanges(given.changes, computed.warnings),
  }
}

/** How an input was read. */
interface Read {
  readonly presentation: Presentation
  /** What was changed in one of an earlier version. */
  readonly changes: readonly string[]
}

/** What an input of an earlier version was read as is told first. */
const withChanges = (changes: readonly string[], warnings: readonly Warning[]) =>
  changes.length === 0
    ? warnings
    : [
        {
          code: 'older-version',
          message: `Read as of an earlier version: ${changes.join('; ')}.`,
        },
        ...warnings,
      ]

/** The unit system that comes first: that of the first reading, else that of the law, else the US one. */
function leadOf(input: object): 'us' | 'si' {
  const { law, place } = input as { readonly law?: unknown; readonly place?: { law?: unknown } }
  const binding = law ?? place?.law ?? 'us-federal'
  return firstSystem(input) ?? (binding === 'us-federal' ? 'us' : 'si')
}

/** The system of the first reading that says one, in the order of the fields, sections included. */
function firstSystem(input: object): 'us' | 'si' | undefined {
  for (const name in input) {
    const value = (input as Readonly<Record<string, unknown>>)[name]
    if (typeof value !== 'object' || value === null) continue
    const found = value instanceof Quantity ? systemOf(value) : firstSystem(value)
    if (found !== undefined) return found
  }
  return undefined
}

/** A dangerous request is refused with the cautions of the whole operation, its own first. */
function withCautions(always: readonly CautionId[], error: unknown): unknown {
  if (!(error instanceof CalcError) || error.level !== 'stop') return error
  return error.with({ cautions: [...new Set([...error.cautions, ...always])] })
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
