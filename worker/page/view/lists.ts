import { html, type TemplateResult } from 'lit-html'
import { live } from 'lit-html/directives/live.js'
import {
  choiceLabel,
  type DraftValue,
  fieldLabel,
  rowLabel,
  valueAt,
} from '../../../shared/form/index.ts'
import type { Field } from '../../../shared/input/index.ts'
import { type Form, faultAt, faultView, fieldView, idOf, neededView, type Path } from './field.ts'

/** Several of a few words: a box each. */
export function ticksView(
  form: Form,
  field: Field,
  choices: readonly string[],
  path: Path,
): TemplateResult {
  const id = idOf(form, path)
  const value = valueAt(form.draft, path)
  const ticked: readonly DraftValue[] = Array.isArray(value) ? value : []
  const wrong = faultAt(form, path)
  return html`<fieldset class="field ticks ${wrong ? 'wrong' : ''}" aria-describedby="${id}-hint ${id}-fault">
    <legend>${fieldLabel(form.operation, field.name)}${neededView(field)}</legend>
    ${choices.map(
      (choice) => html`<label>
        <input
          type="checkbox"
          .checked=${live(ticked.includes(choice))}
          @change=${(event: Event) =>
            form.change(
              path,
              (event.target as HTMLInputElement).checked
                ? [...ticked, choice]
                : ticked.filter((entry) => entry !== choice),
            )}
        />
        <span>${choiceLabel(field.name, choice)}</span>
      </label>`,
    )}
    <p class="hint" id="${id}-hint">${field.description}</p>
    ${faultView(id, wrong)}
  </fieldset>`
}

/** Rows that one adds and takes away: couplings, parts, readings of a rise. */
export function rowsView(
  form: Form,
  field: Field,
  fields: readonly Field[],
  path: Path,
): TemplateResult {
  const id = idOf(form, path)
  const one = rowLabel(form.operation, field.name)
  const value = valueAt(form.draft, path)
  const rows: readonly DraftValue[] = Array.isArray(value) ? value : []
  const without = (index: number) =>
    form.change(
      path,
      rows.filter((_, at) => at !== index),
    )
  return html`<fieldset class="part rows">
    <legend>${fieldLabel(form.operation, field.name)}${neededView(field)}</legend>
    <p class="hint" id="${id}-hint">${field.description}</p>
    ${faultView(id, faultAt(form, path))}
    ${rows.map(
      (_, index) => html`<fieldset class="row ${fields.length < 3 ? 'short' : ''}">
        <legend>${one} ${index + 1}</legend>
        ${faultView(idOf(form, [...path, index]), faultAt(form, [...path, index]))}
        <div class="fields">${fields.map((inner) => fieldView(form, inner, [...path, index]))}</div>
        <button
          type="button"
          aria-label="Take out ${one.toLowerCase()} ${index + 1}"
          @click=${() => without(index)}
        >
          Take out
        </button>
      </fieldset>`,
    )}
    <button type="button" @click=${() => form.change(path, [...rows, {}])}>
      Add ${articled(one.toLowerCase())}
    </button>
  </fieldset>`
}

const articled = (word: string) => `${/^[aeiou]/u.test(word) ? 'an' : 'a'} ${word}`
