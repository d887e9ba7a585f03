import { html, type TemplateResult } from 'lit-html'
import { knownQuestion, STAGES } from '../../../shared/form/index.ts'

const questionLink = (name: string, here: string | undefined) => html`<li>
  <a href="#/${name}" aria-current=${name === here ? 'page' : 'false'}>${knownQuestion(name) ?? name}</a>
</li>`

/** The visit from before opening to the proof: every question at its place. */
export const visitView = (): TemplateResult => html`<article class="visit">
  <header>
    <h1 tabindex="-1">What are you about to do?</h1>
    <p class="summary">
      Every figure of the visit, from the first reading to the proof that it cools. The maker’s figure
      overrides any figure from here.
    </p>
    <p class="acts"><a class="act" href="#/orders">Begin or open a work order</a></p>
  </header>
  <ol class="stages">
    ${STAGES.map(
      ({ id, title, says, operations }) => html`<li class="stage" id="stage-${id}">
        <h2>${title}</h2>
        <p>${says}</p>
        <ul>${operations.map((name) => questionLink(name, undefined))}</ul>
      </li>`,
    )}
  </ol>
</article>`

/** The same, small, above an open question: where one is in the visit, and what comes before and after. */
export function trailView(here: string): TemplateResult {
  return html`<details class="trail">
    <summary>
      ${STAGES.filter(({ operations }) => operations.includes(here))
        .map(({ title }) => title)
        .join(', ')}: other questions
    </summary>
    <ol class="stages">
      ${STAGES.map(
        ({ title, operations }) => html`<li class="stage">
          <h2>${title}</h2>
          <ul>${operations.map((name) => questionLink(name, here))}</ul>
        </li>`,
      )}
    </ol>
  </details>`
}
