import { describe, expect, it } from 'vitest'
import '../../shared/form/steps.ts'
import steps from '../../data/page/steps.json' with { type: 'json' }
import {
  APART,
  draftOf,
  inputOf,
  KEPT,
  knownChoice,
  knownLabel,
  knownQuestion,
  STAGES,
  unitsFor,
  unplaced,
} from '../../shared/form/index.ts'
import { type Field, fieldsOf, type Shape } from '../../shared/input/index.ts'
import { operations } from '../../shared/operations.ts'
import { isOperationName, OPERATION_NAMES } from '../../worker/page/operations.ts'

/** Every field of a form, those in rows and groups too, with its path. */
function everyField(
  fields: readonly Field[],
  above: readonly string[] = [],
): readonly (readonly [readonly string[], Field])[] {
  return fields.flatMap((field) => {
    const path = [...above, field.name]
    return [[path, field] as const, ...everyField(fieldsIn(field.shape), path)]
  })
}

const fieldsIn = (shape: Shape): readonly Field[] =>
  shape.type === 'record' ? shape.fields : shape.type === 'list' ? fieldsIn(shape.item) : []

const choicesIn = (shape: Shape): readonly string[] =>
  shape.type === 'choice' ? shape.choices : shape.type === 'list' ? choicesIn(shape.item) : []

const named = operations.map((operation) => [operation.name, operation] as const)

describe.each(named)('the form of %s', (name, operation) => {
  const fields = fieldsOf(operation)
  const every = everyField(fields)

  it('has a question, and a way to it', () => {
    expect(
      knownQuestion(name),
      `${name} needs its question in questions of data/page/visit.json`,
    ).toBeDefined()
    const stages = STAGES.flatMap((stage) => stage.operations)
    expect(
      [...stages, ...APART],
      `${name} needs a stage in data/page/visit.json, or stands apart`,
    ).toContain(name)
    expect(
      OPERATION_NAMES,
      `${name} needs its line in LOADERS of worker/page/operations.ts`,
    ).toContain(name)
  })

  it('calls each field by a word of the trade', () => {
    const missing = every.filter(([, field]) => knownLabel(name, field.name) === undefined)
    expect(
      missing.map(([path]) => path.join('.')),
      'each needs its name in labels of data/page/steps.json',
    ).toEqual([])
  })

  it('calls each choice by a word of the trade', () => {
    const missing = every.flatMap(([, field]) =>
      choicesIn(field.shape)
        .filter((choice) => knownChoice(field.name, choice) === undefined)
        .map((choice) => `${field.name}: ${choice}`),
    )
    expect(missing, 'each needs its words in choices of data/page/steps.json').toEqual([])
  })

  it('places each field in a group', () => {
    expect(
      unplaced(name, fields),
      `each needs its place in groups.${name} of data/page/steps.json`,
    ).toEqual([])
  })

  it('offers units that its quantities are read in', () => {
    for (const [path, field] of every) {
      const { shape } = field
      if (shape.type !== 'quantity') continue
      for (const system of ['us', 'si', undefined] as const) {
        const units = unitsFor(path, shape.examples, system)
        expect(units.length, path.join('.')).toBeGreaterThan(0)
        for (const unit of units) expect(codeOf(operation, path, `1 ${unit}`), unit).toBe('fits')
      }
    }
  })

  it('is filled by the example, and stands for it again', () => {
    const draft = draftOf(operation.example) as Record<string, never>
    const { input } = inputOf(fields, draft)
    expect(operation.run(input)).toEqual(operation.run(operation.example))
  })
})

/** Whether a text alone in its field is of a kind that it takes: what else is wrong does not matter here. */
function codeOf(
  operation: (typeof operations)[number],
  path: readonly string[],
  text: string,
): string {
  const parsed = operation.input.safeParse(placed(fieldsOf(operation), path, text))
  if (parsed.success) return 'fits'
  const wrong = parsed.error.issues.find(
    (issue) =>
      issue.path.filter((part) => typeof part === 'string').join('.') === path.join('.') &&
      ['wrong-kind', 'bad-quantity', 'ambiguous-quantity'].includes(
        (issue as { params?: { calc?: { code: string } } }).params?.calc?.code ?? '',
      ),
  )
  return wrong ? `${path.join('.')}: ${wrong.message}` : 'fits'
}

function placed(fields: readonly Field[], [name = '', ...rest]: readonly string[], text: string) {
  const shape = fields.find((field) => field.name === name)?.shape
  if (rest.length === 0 || shape === undefined) return { [name]: text }
  const inner: unknown = placed(fieldsIn(shape), rest, text)
  return { [name]: shape.type === 'list' ? [inner] : inner }
}

describe('the forms', () => {
  it('name no operation and no field that there is not', () => {
    const names = operations.map(({ name }) => name)
    expect(Object.keys(steps.groups).filter((name) => !names.includes(name))).toEqual([])
    expect(OPERATION_NAMES.filter((name) => !names.includes(name))).toEqual([])
    const known = new Set(
      operations.flatMap((operation) =>
        everyField(fieldsOf(operation)).map(([, { name }]) => name),
      ),
    )
    const strange = Object.keys(steps.labels).filter((name) => !known.has(name))
    expect(strange).toEqual([])
    for (const [name, groups] of Object.entries(steps.groups)) {
      const own = fieldsOf(operations.find((entry) => entry.name === name) as never).map(
        (field) => field.name,
      )
      const lost = groups.flatMap((group) => group.fields).filter((field) => !own.includes(field))
      expect(lost, name).toEqual([])
    }
  })

  it('know an operation by its name alone', () => {
    expect(isOperationName('charge')).toBe(true)
    expect(isOperationName('toString')).toBe(false)
    expect(knownQuestion('constructor')).toBeUndefined()
  })

  it('leave to the page what is set for all of it', () => {
    expect([...KEPT]).toEqual(expect.arrayContaining(['units', 'precise']))
  })
})
