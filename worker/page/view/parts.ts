import { html, type TemplateResult } from 'lit-html'
import { capital } from '../../../shared/answer/words.ts'
import { knownQuestion } from '../../../shared/form/index.ts'

export { capital }

/** Texts under a title; the title may stand elsewhere. */
export const listView = (title: string, name: string, texts: readonly string[]): TemplateResult =>
  html`${title === '' ? '' : html`<h3>${title}</h3>`}
    <ul class=${name}>
      ${texts.map((text) => html`<li>${text}</li>`)}
    </ul>`

/** A text in which the name of a step in brackets, "(cooling-check)", leads to it. */
export function withLinks(text: string): TemplateResult {
  const parts = text.split(/\(([a-z]+(?:-[a-z]+)*)\)/u)
  return html`${parts.map((part, index) => {
    const question = index % 2 === 1 ? knownQuestion(part) : undefined
    if (question === undefined) return index % 2 === 1 ? `(${part})` : part
    return html`(<a href="#/${part}">${question}</a>)`
  })}`
}
