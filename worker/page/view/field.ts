import { html, nothing, type TemplateResult } from 'lit-html'
import { live } from 'lit-html/directives/live.js'
import {
  choiceLabel,
  type Draft,
  type DraftValue,
  fieldLabel,
  unitAtEnd,
  unitsFor,
  valueAt,
  withUnit,
} from '../../../shared/form/index.ts'
import { DAYS, LONG } from '../../../shared/form/order.ts'
import type { Field, Shape } from '../../../shared/input/index.ts'
import type { Units } from '../state.ts'
import { laterNow } from './later.ts'

export type Path = readonly (string | number)[]

/** What is wrong with a form, and where. */
export interface Fault {
  readonly path: Path
  readonly message: string
}

/** What the fields of a form have in common. */
export interface Form {
  readonly operation: string
  readonly draft: Draft
  readonly units: Units
  readonly faults: readonly Fault[]
  readonly change: (path: Path, value: DraftValue) => void
  /** Draws the form anew where nothing in it is another, but what is shown of it. */
  readonly redraw: () => void
  /** How a group of fields is shown that is a form of its own, where it is one. */
  readonly section?: (
    form: Form,
    field: Field,
    fields: readonly Field[],
    path: Path,
  ) => TemplateResult | undefined
  /** Names of refrigerants, for fields that take one. */
  readonly named: ReadonlySet<string>
}

export const idOf = ({ operation }: Form, path: Path) => ['f', operation, ...path].join('-')

const samePath = (one: Path, other: Path) =>
  one.length === other.length && one.every((part, index) => part === other[index])

/** A field by what it takes, with its label, its description and what is wrong with it. */
export function fieldView(form: Form, field: Field, above: Path = []): TemplateResult {
  const path = [...above, field.name]
  const { shape } = field
  switch (shape.type) {
    case 'record':
      return (
        form.section?.(form, field, shape.fields, path) ??
        recordView(form, field, shape.fields, path)
      )
    case 'list':
      if (shape.item.type === 'choice')
        return laterNow()?.ticksView(form, field, shape.item.choices, path) ?? html``
      if (shape.item.type === 'record')
        return laterNow()?.rowsView(form, field, shape.item.fields, path) ?? html``
      return lineView(form, field, path, textInput(form, field, path, SEVERAL))
    case 'choice':
      return lineView(form, field, path, choiceInput(form, field, shape.choices, path))
    case 'flag':
      return lineView(form, field, path, flagInput(form, field, path))
    default:
      return lineView(
        form,
        field,
        path,
        textInput(form, field, path, exampleOf(shape, path, form.units)),
      )
  }
}

const SEVERAL = 'several: put ; between them'

/** A label, what is typed, what it is, and what is wrong with it. */
function lineView(form: Form, field: Field, path: Path, input: TemplateResult): TemplateResult {
  const id = idOf(form, path)
  const wrong = faultAt(form, path)
  return html`<div class="field ${wrong ? 'wrong' : ''}">
    <label for=${id}>${fieldLabel(form.operation, field.name)}${neededView(field)}</label>
    ${input}
    <p class="hint" id="${id}-hint">${field.description}</p>
    ${faultView(id, wrong)}
  </div>`
}

export const neededView = ({ required }: Field) =>
  required ? html` <span class="needed">needed</span>` : nothing

export const faultView = (id: string, wrong: Fault | undefined) =>
  html`<p class="fault" id="${id}-fault">${wrong ? wrong.message : nothing}</p>`

/** The fault of this field; of a group of fields, or a list, too where it is about the whole of it. */
export const faultAt = ({ faults }: Form, path: Path): Fault | undefined =>
  faults.find((fault) => samePath(fault.path, path))

const textAt = (form: Form, path: Path): string => {
  const value = valueAt(form.draft, path)
  return typeof value === 'string' ? value : ''
}

const exampleOf = (shape: Shape, path: Path, units: Units): string => {
  if (shape.type !== 'quantity') return ''
  const [unit] = unitsFor(path, shape.examples, units)
  return (
    shape.examples.find((example) => unit !== undefined && example.endsWith(unit)) ??
    shape.examples[0] ??
    ''
  )
}

function textInput(form: Form, field: Field, path: Path, placeholder: string): TemplateResult {
  const { shape } = field
  const id = idOf(form, path)
  const text = textAt(form, path)
  if (LONG.has(field.name)) {
    return html`<textarea
      id=${id}
      aria-describedby="${id}-hint ${id}-fault"
      .value=${live(text)}
      @input=${(event: Event) => form.change(path, (event.target as HTMLTextAreaElement).value)}
    ></textarea>`
  }
  const units = shape.type === 'quantity' ? unitsFor(path, shape.examples, form.units) : []
  const ended = unitAtEnd(text, units)
  return html`<div class="typed">
    <input
      id=${id}
      type=${DAYS.has(field.name) ? 'date' : 'text'}
      inputmode=${shape.type === 'number' ? 'decimal' : 'text'}
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
      placeholder=${placeholder}
      list=${form.named.has(field.name) ? 'refrigerants' : nothing}
      aria-describedby="${id}-hint ${id}-fault"
      aria-invalid=${faultAt(form, path) ? 'true' : 'false'}
      ?required=${field.required}
      .value=${live(text)}
      @input=${(event: Event) => form.change(path, (event.target as HTMLInputElement).value)}
    />
    ${
      units.length === 0
        ? nothing
        : html`<div class="units" role="group" aria-label="Unit">
          ${units.map(
            (unit) => html`<button
              type="button"
              tabindex="-1"
              aria-pressed=${unit === ended ? 'true' : 'false'}
              @click=${() => {
                form.change(path, withUnit(textAt(form, path), unit, units))
                document.getElementById(id)?.focus()
              }}
            >
              ${unit}
            </button>`,
          )}
        </div>`
    }
  </div>`
}

/** One of a few answers, or none of them: what nobody said is not a no. */
function selectView(
  form: Form,
  path: Path,
  chosen: string,
  answers: readonly (readonly [value: string, label: string])[],
  said: (value: string) => DraftValue | undefined,
): TemplateResult {
  const id = idOf(form, path)
  return html`<select
    id=${id}
    aria-describedby="${id}-hint ${id}-fault"
    aria-invalid=${faultAt(form, path) ? 'true' : 'false'}
    .value=${live(chosen)}
    @change=${(event: Event) => form.change(path, said((event.target as HTMLSelectElement).value))}
  >
    ${[['', 'not said'] as const, ...answers].map(
      ([value, label]) =>
        html`<option value=${value} ?selected=${value === chosen}>${label}</option>`,
    )}
  </select>`
}

function choiceInput(
  form: Form,
  field: Field,
  choices: readonly string[],
  path: Path,
): TemplateResult {
  const answers = choices.map((choice) => [choice, choiceLabel(field.name, choice)] as const)
  return selectView(form, path, textAt(form, path), answers, (value) => value)
}

/** Yes, no, or not said. */
function flagInput(form: Form, _: Field, path: Path): TemplateResult {
  const value = valueAt(form.draft, path)
  const chosen =
    value === true || value === 'true' ? 'yes' : value === false || value === 'false' ? 'no' : ''
  const answers = [
    ['yes', 'yes'],
    ['no', 'no'],
  ] as const
  return selectView(form, path, chosen, answers, (said) =>
    said === '' ? undefined : said === 'yes',
  )
}

function recordView(
  form: Form,
  field: Field,
  fields: readonly Field[],
  path: Path,
): TemplateResult {
  const id = idOf(form, path)
  return html`<fieldset class="part">
    <legend>${fieldLabel(form.operation, field.name)}${neededView(field)}</legend>
    <p class="hint" id="${id}-hint">${field.description}</p>
    ${faultView(id, faultAt(form, path))}
    ${recordFields(form, fields, path)}
  </fieldset>`
}

const recordFields = (form: Form, fields: readonly Field[], path: Path) =>
  html`<div class="fields">${fields.map((inner) => fieldView(form, inner, path))}</div>`

/** Fields one after the other; a group of fields that stands alone needs no second title. */
export function fieldsView(form: Form, fields: readonly Field[], above: Path): TemplateResult {
  const [only, ...others] = fields
  if (only?.shape.type === 'record' && others.length === 0) {
    return recordFields(form, only.shape.fields, [...above, only.name])
  }
  return html`<div class="fields">${fields.map((field) => fieldView(form, field, above))}</div>`
}

/** What stands in some fields, for the line of a folded group. */
export function filledText(form: Form, fields: readonly Field[], above: Path = []): string {
  return fields
    .flatMap(({ name, shape }) => {
      const path = [...above, name]
      const value = valueAt(form.draft, path)
      if (typeof value === 'boolean') return value ? [fieldLabel(form.operation, name)] : []
      if (Array.isArray(value)) return listText(form, name, shape, value)
      if (shape.type === 'record') return [filledText(form, shape.fields, path)]
      if (typeof value !== 'string' || value.trim() === '') return []
      return [shape.type === 'choice' ? choiceLabel(name, value) : value]
    })
    .filter((text) => text !== '')
    .join(' · ')
}

function listText(form: Form, name: string, shape: Shape, value: readonly DraftValue[]) {
  const item = shape.type === 'list' ? shape.item.type : ''
  if (item === 'choice') return value.map((choice) => choiceLabel(name, String(choice)))
  return value.length === 0 ? [] : [`${fieldLabel(form.operation, name)}: ${value.length}`]
}
