import { html, nothing, type TemplateResult } from 'lit-html'
import { isQuantity, isScalar, scalarText } from '../../../shared/answer/scalar.ts'
import { labelOf } from '../../../shared/answer/words.ts'
import type { Answer } from '../../../shared/operation.ts'
import { MARKS, type Source } from '../../../shared/sources.ts'
import { redraw } from '../redraw.ts'
import { capital, listView } from './parts.ts'

/** How it came about, cautions and first aid in full, all values, sources: for whoever doubts it. */
export const foldedView = (answer: Answer): TemplateResult => html`
  ${fold('How it was worked out', answer.steps.length, () => stepsView(answer))}
  ${fold('Cautions in full', answer.cautions.length, () =>
    listView(
      '',
      'whole',
      answer.cautions.map(({ text }) => text),
    ),
  )}
  ${fold('Assumptions in full', answer.assumptions.length, () =>
    listView(
      '',
      'whole',
      answer.assumptions.map(({ taken, because }) => `${capital(taken)}: ${because}.`),
    ),
  )}
  ${fold('All values', 1, () => treeView(answer.result))}
  ${fold('Sources', answer.sources.length, () => sourcesView(answer.sources))}
`

/** Which parts are open: what is folded is not drawn, since an answer changes with every letter. */
const opened = new Set<string>()

function fold(
  title: string,
  count: number,
  inside: () => TemplateResult,
): TemplateResult | typeof nothing {
  if (count === 0) return nothing
  const toggled = (event: Event) => {
    const { open } = event.target as HTMLDetailsElement
    if (open === opened.has(title)) return
    if (open) opened.add(title)
    else opened.delete(title)
    redraw()
  }
  return html`<details class="fold" .open=${opened.has(title)} @toggle=${toggled}>
    <summary>${title}</summary>
    ${opened.has(title) ? inside() : nothing}
  </details>`
}

export const stepsView = ({ steps }: Answer) => html`<ol class="steps">
  ${steps.map(
    ({ what, formula, values, gives }) => html`<li>
      <p><strong>${what}</strong>: ${scalarText(gives, false)}</p>
      <p class="formula">${formula}</p>
      <p class="values">
        ${Object.entries(values)
          .map(([name, value]) => `${labelOf(name)} ${scalarText(value, false)}`)
          .join(' · ')}
      </p>
    </li>`,
  )}
</ol>`

const sourcesView = (sources: readonly Source[]) => html`<ol class="sources">
  ${sources.map(
    ({ title, where, mark, checked, note, url }) => html`<li>
      ${url ? html`<a href=${url} rel="noreferrer">${title}</a>` : title}
      ${[where, MARKS[mark], checked && `checked ${checked}`, note].filter((text) => text).map((text) => html`; ${text}`)}
    </li>`,
  )}
</ol>`

/** Any result: groups as lists of names and values, rows of one kind as a table. */
function treeView(value: unknown): TemplateResult {
  if (isScalar(value)) return html`${scalarText(value, false)}`
  if (Array.isArray(value)) return rowsView(value)
  if (typeof value !== 'object' || value === null) return html`–`
  const entries = Object.entries(value).filter(([, entry]) => entry !== undefined)
  return html`<dl class="tree">
    ${entries.map(
      ([name, entry]) => html`<div>
        <dt>${labelOf(name)}</dt>
        <dd>${treeView(entry)}</dd>
      </div>`,
    )}
  </dl>`
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && !isQuantity(value)

function rowsView(rows: readonly unknown[]): TemplateResult {
  if (rows.length === 0) return html`none`
  const flat = rows.every((row) => isRecord(row) && Object.values(row).every(isScalar))
  if (!flat) return html`<ul>${rows.map((row) => html`<li>${treeView(row)}</li>`)}</ul>`
  const records = rows as readonly Readonly<Record<string, unknown>>[]
  return tableView(
    [...new Set(records.flatMap((row) => Object.keys(row)))].map((key) => ({
      key,
      label: labelOf(key),
    })),
    records,
  )
}

/** Rows with their columns; wide ones are scrolled by themselves, not the page. */
export const tableView = (
  columns: readonly { readonly key: string; readonly label: string }[],
  rows: readonly Readonly<Record<string, unknown>>[],
): TemplateResult => html`<div class="scroll" role="region" aria-label="Table" tabindex="0">
  <table>
    <thead>
      <tr>${columns.map(({ label }) => html`<th scope="col">${label}</th>`)}</tr>
    </thead>
    <tbody>
      ${rows.map(
        (row) => html`<tr>
          ${columns.map(({ key }) => {
            const value = row[key]
            return html`<td>${isScalar(value) ? scalarText(value, false) : ''}</td>`
          })}
        </tr>`,
      )}
    </tbody>
  </table>
</div>`
