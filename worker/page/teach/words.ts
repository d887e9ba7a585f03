import { html, type TemplateResult } from 'lit-html'
import { capital } from '../../../shared/answer/words.ts'
import { TEACHING } from '../../../shared/form/teaching.ts'
import { TEXTS, type TOPICS } from '../../../shared/service/lesson/topics.ts'

/** A view, and what of it is told to screen readers. */
export interface Spoken {
  readonly view: TemplateResult
  readonly spoken: string
}

export type StepId = keyof typeof TEACHING.steps

/** What a step is called and counted. */
export const stepHead = (number: number, id: StepId): TemplateResult =>
  html`<h2 id="step-${id}" tabindex="-1"><span class="count">${number}</span> ${TEACHING.steps[id]}</h2>`

/** Once drawn, the next step is where one is. */
export function toStep(id: StepId): void {
  const head = document.getElementById(`step-${id}`)
  head?.focus({ preventScroll: true })
  head?.scrollIntoView({ block: 'start' })
}

export const ARROWS = { up: '↑', same: '=', down: '↓' } as const

export const readingName = (reading: keyof typeof TEXTS.readings): string =>
  capital(TEXTS.readings[reading])

/** What a saying rests on; one that is only remembered says so. */
export const markOf = (source: (typeof TOPICS)[number]['source']): string =>
  TEACHING.marks[TEXTS.sources[source].mark as keyof typeof TEACHING.marks]
