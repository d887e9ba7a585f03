import { html, nothing, type TemplateResult } from 'lit-html'
import { type Group, groupsOf } from '../../../shared/form/index.ts'
import type { Field } from '../../../shared/input/index.ts'
import { type Form, fieldsView, filledText, type Path } from './field.ts'

/** A form in groups: the first ones open, the others folded with what stands in them. */
export function formView(form: Form, fields: readonly Field[]): TemplateResult {
  return html`<form class="form" @submit=${(event: Event) => event.preventDefault()} novalidate>
    ${groupsView(form, groupsOf(form.operation, fields))}
  </form>`
}

/** Groups of fields that stand below `above` in the draft. */
export const groupsView = (form: Form, groups: readonly Group[], above: Path = []) =>
  groups.map((group) =>
    group.shown ? openGroup(form, group, above) : foldedGroup(form, group, above),
  )

const openGroup = (
  form: Form,
  { title, fields }: Group,
  above: Path,
) => html`<fieldset class="group">
  <legend>${title}</legend>
  ${fieldsView(form, fields, above)}
</fieldset>`

const foldedGroup = (form: Form, { title, fields }: Group, above: Path) =>
  foldView(
    form,
    title,
    filledText(form, fields, above),
    [...above, title],
    fields.some(({ name }) => isWrong(form, [...above, name])),
    () => fieldsView(form, fields, above),
  )

const isWrong = ({ faults }: Form, path: Path) =>
  faults.some((fault) => path.every((part, index) => fault.path[index] === part))

/** A part that is folded until somebody needs it, or until something is wrong in it. */
export function foldView(
  form: Form,
  title: string,
  filled: string,
  key: Path,
  wrong: boolean,
  inside: () => TemplateResult | readonly TemplateResult[],
): TemplateResult {
  const name = [form.operation, ...key].join('/')
  const open = wrong || (toggled.get(name) ?? false)
  const remember = (event: Event) => {
    const now = (event.target as HTMLDetailsElement).open
    if (now === (toggled.get(name) ?? false)) return
    toggled.set(name, now)
    form.redraw()
  }
  return html`<details class="group" .open=${open} @toggle=${remember}>
    <summary>${title}${filled === '' ? nothing : html` <span class="filled">${filled}</span>`}</summary>
    ${open ? inside() : nothing}
  </details>`
}

/** Which parts somebody opened or folded, for as long as the page is open. */
const toggled = new Map<string, boolean>()
