import { html, nothing, type TemplateResult } from 'lit-html'
import { groupsOf, isEmpty, valueAt } from '../../../shared/form/index.ts'
import type { Field } from '../../../shared/input/index.ts'
import { type Form, fieldView, filledText, type Path } from './field.ts'

/** A form in groups: the first ones open, the others folded with what stands in them. */
export function formView(form: Form, fields: readonly Field[]): TemplateResult {
  return html`<form class="form" @submit=${(event: Event) => event.preventDefault()} novalidate>
    ${groupsOf(form.operation, fields).map((group) =>
      group.shown
        ? openGroup(form, group.title, group.fields)
        : foldedGroup(form, group.title, group.fields),
    )}
  </form>`
}

const openGroup = (
  form: Form,
  title: string,
  fields: readonly Field[],
) => html`<fieldset class="group">
  <legend>${title}</legend>
  <div class="fields">${fields.map((field) => fieldView(form, field))}</div>
</fieldset>`

/** Opens by itself where something is wrong in it. */
function foldedGroup(form: Form, title: string, fields: readonly Field[]): TemplateResult {
  const filled = filledText(form, fields)
  const wrong = fields.some(({ name }) => form.fault?.path[0] === name)
  return html`<details class="group" .open=${keptOpen(form, title, wrong)} @toggle=${remember(form, title)}>
    <summary>${title}${filled === '' ? nothing : html` <span class="filled">${filled}</span>`}</summary>
    <div class="fields">${fields.map((field) => fieldView(form, field))}</div>
  </details>`
}

/** Which groups somebody opened or folded, for as long as the page is open. */
const toggled = new Map<string, boolean>()

const keyOf = ({ operation }: Form, title: string) => `${operation} ${title}`

const keptOpen = (form: Form, title: string, wrong: boolean) =>
  wrong || (toggled.get(keyOf(form, title)) ?? false)

const remember = (form: Form, title: string) => (event: Event) => {
  toggled.set(keyOf(form, title), (event.target as HTMLDetailsElement).open)
}

/** Whether anything at all stands at a path. */
export const isFilled = (form: Form, path: Path): boolean => !isEmpty(valueAt(form.draft, path))
