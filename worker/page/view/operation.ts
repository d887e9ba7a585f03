import { html, nothing, type TemplateResult } from 'lit-html'
import { cautions, isOnScreen } from '../../../shared/cautions.ts'
import type { CalcError } from '../../../shared/errors.ts'
import { knownQuestion, labeller } from '../../../shared/form/index.ts'
import { fieldsOf } from '../../../shared/input/index.ts'
import type { Operation } from '../../../shared/operation.ts'
import { isWorking } from '../compute/compute.ts'
import type { Outcome } from '../compute/outcome.ts'
import { clear, draftFor, fill, fillExample, isAsked, outcomeOf, type Units } from '../state.ts'
import { answerView } from './answer.ts'
import type { Fault, Form } from './field.ts'
import { formView } from './form.ts'
import { laterNow } from './later.ts'

/** Fields that take the name of a refrigerant. */
export const NAMED: ReadonlySet<string> = new Set([
  'refrigerant',
  'newRefrigerant',
  'cylinderHolds',
])

/** An operation as a form and, beside or under it, its answer; and that answer in a sentence. */
export function operationView(
  operation: Operation,
  units: Units,
  changed: () => void,
): { readonly view: TemplateResult; readonly spoken: string } {
  const { name } = operation
  const draft = draftFor(name)
  const outcome: Outcome = isAsked(name) ? outcomeOf(operation, draft, units) : { kind: 'nothing' }
  const inWords = labeller(
    name,
    fieldsOf(operation).map((field) => field.name),
  )
  const form: Form = {
    operation: name,
    draft,
    units,
    faults: faultsOf(outcome, inWords),
    redraw: changed,
    named: NAMED,
    change(path, value) {
      fill(name, path, value)
      changed()
    },
  }
  const act = (work: () => void) => () => {
    work()
    changed()
  }
  const view = html`<article class="ask">
    <header>
      <h1 tabindex="-1">${knownQuestion(name) ?? operation.summary}</h1>
      <p class="summary">${operation.summary}.</p>
    </header>
    <div class="columns">
      <section aria-label="What is known">
        ${formView(form, fieldsOf(operation))}
        <p class="acts">
          <button type="button" @click=${act(() => clear(name))}>Empty the form</button>
          <button type="button" @click=${act(() => fillExample(operation))}>Fill in an example</button>
        </p>
      </section>
      <section class="told" id="told" aria-label="Answer" aria-busy=${isWorking(name) ? 'true' : 'false'}>${outcomeView(name, outcome, inWords)}</section>
    </div>
    ${peekView(outcome, inWords)}
  </article>`
  return { view, spoken: spokenOf(outcome, inWords) }
}

/** What is only missing is no mistake: it is asked for, and no field is marked. */
export function faultsOf(outcome: Outcome, inWords: (text: string) => string): readonly Fault[] {
  if (outcome.kind !== 'error' || outcome.error.code === 'missing-input') return []
  const { message, hint, path } = outcome.error
  return [{ path, message: inWords(`${message} ${hint}`.trim()) }]
}

export function outcomeView(
  operation: string,
  outcome: Outcome,
  inWords: (text: string) => string,
): TemplateResult {
  switch (outcome.kind) {
    case 'nothing':
      return html`<p class="empty">The answer stands here as you type.</p>`
    case 'answer':
      return answerView(outcome.answer, inWords, laterNow()?.picturesView(operation, outcome.input))
    case 'fault':
      return html`<div class="answer stop">
        <p class="headline"><strong class="level">Fault</strong> The program failed at this; the figures may well be right. ${outcome.message}</p>
      </div>`
    case 'error':
      return errorView(outcome.error, inWords)
  }
}

function errorView(error: CalcError, inWords: (text: string) => string): TemplateResult {
  const { code, level, message, hint } = error
  const word = level === 'stop' ? 'Stop' : code === 'missing-input' ? 'Still needed' : 'Check'
  const dangers = cautions(error.cautions).filter(isOnScreen)
  return html`<div class="answer ${level === 'stop' ? 'stop' : code === 'missing-input' ? 'waiting' : 'check'}">
    <p class="headline"><strong class="level">${word}</strong> ${inWords(message)}</p>
    ${hint === '' ? nothing : html`<p class="hint-line">${inWords(hint)}</p>`}
    ${
      dangers.length === 0
        ? nothing
        : html`<h3>Danger</h3>
          <ul class="danger">
            ${dangers.map(({ short }) => html`<li>${short}</li>`)}
          </ul>`
    }
  </div>`
}

/** On a narrow screen the answer is far below what one types: its first words stay in sight. */
export function peekView(outcome: Outcome, inWords: (text: string) => string) {
  const text = spokenOf(outcome, inWords)
  if (text === '') return nothing
  const level =
    outcome.kind === 'answer'
      ? (outcome.answer.level ?? '')
      : outcome.kind === 'error' && outcome.error.level === 'stop'
        ? 'stop'
        : 'waiting'
  return html`<button type="button" class="peek ${level}" aria-hidden="true" tabindex="-1" @click=${toAnswer}>
    ${text}
  </button>`
}

function toAnswer(): void {
  document.getElementById('told')?.scrollIntoView({ behavior: 'smooth' })
}

const spokenOf = (outcome: Outcome, inWords: (text: string) => string): string => {
  if (outcome.kind === 'answer') return outcome.answer.headline ?? ''
  return outcome.kind === 'error' ? inWords(outcome.error.message) : ''
}
