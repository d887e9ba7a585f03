import { html, nothing, type TemplateResult } from 'lit-html'
import { capital } from '../../../shared/answer/words.ts'
import { choiceLabel, fieldLabel } from '../../../shared/form/index.ts'
import { TEACHING } from '../../../shared/form/teaching.ts'
import { GAUGES } from '../../../shared/service/lesson/gauges.ts'
import { wordsOf } from '../../../shared/service/lesson/topics.ts'
import { figuresView } from '../view/answer.ts'
import type { Case } from './address.ts'
import type { LessonAnswer, Reveal } from './answers.ts'
import { shown } from './figures.ts'
import { ARROWS, readingName, stepHead } from './words.ts'

/** What it was, each prediction beside what the model says, and why it is no other. */
export function revealView(now: Case, answer: LessonAnswer): TemplateResult {
  const { reveal } = answer.result
  return html`<section aria-labelledby="step-reveal">
    ${stepHead(3, 'reveal')}
    ${reveal ? endView(now, answer, reveal) : html`<p class="empty">Working …</p>`}
  </section>`
}

function endView(now: Case, { headline = '', figures = [] }: LessonAnswer, reveal: Reveal) {
  return html`
    <p class="verdict ${reveal.verdict}">${headline}</p>
    <p class="broken">${reveal.broken}</p>
    ${now.suspected ? html`<p>Suspected before any reading: ${wordsOf(now.suspected as never)}.</p>` : nothing}
    ${figuresView(figures.filter(({ label }) => label !== 'The saying'))}
    ${gradedView(reveal)}
    <h3>${TEACHING.others}</h3>
    <p>${TEACHING.othersSay}</p>
    ${othersView(reveal)}
    <p>
      ${TEACHING.left.replace('{causes}', leftText(reveal))}
      ${TEACHING.first.replace('{readings}', reveal.best.map((each) => readingName(each).toLowerCase()).join(', '))}
    </p>`
}

const leftText = ({ left }: Reveal) =>
  left
    .map(
      ({ causes, probability }) =>
        `${causes.map((cause) => wordsOf(cause)).join(' or ')} ${percent(probability)}`,
    )
    .join(', ')

const percent = (share: number) =>
  share < 0.005 ? 'under 1\u00a0%' : `${Math.round(100 * share)} %`

const gradedView = ({ predictions }: Reveal) => html`<table class="graded">
  <caption>
    Predicted, and what the supposed fault does
  </caption>
  <thead>
    <tr><th scope="col">Reading</th><th scope="col">Predicted</th><th scope="col">Model</th><th scope="col"></th></tr>
  </thead>
  <tbody>
    ${predictions.map(
      ({
        gauge,
        predicted,
        expected,
      }) => html`<tr class=${predicted === expected ? 'right' : 'missed'}>
        <th scope="row">${fieldLabel('lesson', gauge)}</th>
        <td>${ARROWS[predicted]} ${choiceLabel(gauge, predicted)}</td>
        <td>${ARROWS[expected]} ${choiceLabel(gauge, expected)}</td>
        <td>${predicted === expected ? 'right' : 'missed'}</td>
      </tr>`,
    )}
  </tbody>
</table>`

/** Every other cause, with what would have shown it. */
export const othersView = ({ others }: Reveal): TemplateResult => html`<div
  class="scroll"
  role="region"
  aria-label=${TEACHING.others}
  tabindex="0"
>
  <table class="others">
    <thead>
      <tr>
        <th scope="col">Cause</th>
        <th scope="col">Chance left</th>
        ${GAUGES.map((gauge) => html`<th scope="col">${fieldLabel('lesson', gauge)}</th>`)}
        <th scope="col">Spoken against by</th>
        <th scope="col">Would show</th>
        <th scope="col">This shows</th>
      </tr>
    </thead>
    <tbody>
      ${others.map(
        ({ cause, probability, moves, reading, would, shows }) => html`<tr>
          <th scope="row">${capital(wordsOf(cause))}</th>
          <td>${percent(probability)}</td>
          ${GAUGES.map((gauge) => html`<td><span aria-hidden="true">${ARROWS[moves[gauge]]}</span><span class="unseen">${choiceLabel(gauge, moves[gauge])}</span></td>`)}
          <td>${reading ? readingName(reading) : 'no reading'}</td>
          <td>${shown(would)}</td>
          <td>${shown(shows)}</td>
        </tr>`,
      )}
    </tbody>
  </table>
</div>`
