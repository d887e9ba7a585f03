import { html, nothing, type TemplateResult } from 'lit-html'
import { live } from 'lit-html/directives/live.js'
import { capital } from '../../../shared/answer/words.ts'
import { choiceLabel, fieldLabel } from '../../../shared/form/index.ts'
import { TEACHING } from '../../../shared/form/teaching.ts'
import { GAUGES, MOVES } from '../../../shared/service/lesson/gauges.ts'
import { TOPICS, wordsOf } from '../../../shared/service/lesson/topics.ts'
import { TEXTS as SIMULATED } from '../../../shared/service/simulate/texts.ts'
import { redraw } from '../redraw.ts'
import { notesView } from '../view/answer.ts'
import { foldedView } from '../view/folded.ts'
import { addressOf, type Case, freshCase, goOn, nameOf } from './address.ts'
import { askLesson, type LessonAnswer } from './answers.ts'
import { besideView } from './beside.ts'
import { briefly, shown } from './figures.ts'
import { marketView, nameView } from './market.ts'
import { revealView } from './reveal.ts'
import { ARROWS, markOf, type Spoken, stepHead, toStep } from './words.ts'

/** A case from the saying to its end: each step stands under the one before. */
export function caseView(now: Case): Spoken {
  const { answer, error, working } = askLesson(now)
  const topic = TOPICS.find(({ id }) => id === now.topic)
  const reveal = answer?.result.reveal
  const view = html`<article class="teach" aria-busy=${working ? 'true' : 'false'}>
    <header>
      <p class="up"><a href="#/teach">${TEACHING.title}</a></p>
      <h1 tabindex="-1"><q>${choiceLabel('topic', now.topic)}</q></h1>
      <p class="summary">
        ${topic ? html`<span class="basis-line">${markOf(topic.source)}</span> · ` : nothing}case ${now.seed} ·
        <a href=${addressOf(freshCase(now.topic, now.seed + 1))}>another one</a> ·
        <a href=${addressOf({ ...now, sheet: true })}>${TEACHING.sheet}</a>
      </p>
    </header>
    ${error ? html`<p class="fault" role="alert">${error.message} ${error.hint}</p>` : nothing}
    ${
      answer
        ? html`${situationView(answer)} ${predictView(now, answer)}
          ${now.fixed ? marketView(now, answer) : nothing}
          ${now.fixed && !now.named ? nameView(now, answer) : nothing}
          ${now.named ? revealView(now, answer) : nothing}
          ${reveal ? besideView(now, reveal) : nothing}
          <div class="notes">${notesView(answer, (text) => text)} ${foldedView(answer)}</div>`
        : error
          ? nothing
          : html`<p class="empty">Working …</p>`
    }
  </article>`
  return { view, spoken: working ? '' : (answer?.headline ?? error?.message ?? '') }
}

/** What is in front of the class. */
function situationView({ result }: LessonAnswer): TemplateResult {
  const { machine, conditions, seen } = result
  const facts: readonly (readonly [string, TemplateResult | string])[] = [
    ['Machine', html`<span class="figure">${machine.name}, ${machine.refrigerant}</span>`],
    ['Label charge', shown(machine.labelCharge)],
    ['Outdoors', shown(conditions.ambient)],
    ['Return air', html`${shown(conditions.returnAir)} at ${shown(conditions.relativeHumidity)}`],
    ['Compressor', html`<span class="figure">${conditions.compressorRpm} rpm</span>`],
    ['Seen', html`<span class="figure">${capital(seen.join(', '))}</span>`],
  ]
  return html`<section aria-label="The case">
    <dl class="facts">${facts.map(([name, value]) => html`<div><dt>${name}</dt><dd>${value}</dd></div>`)}</dl>
  </section>`
}

/** The case in which somebody went on without all five. */
let unsaid: string | undefined

/** Which way each reading would move, and what is suspected. */
function predictView(now: Case, { result }: LessonAnswer): TemplateResult {
  const topic = TOPICS.find(({ id }) => id === now.topic)
  const { size } = result.supposed
  const missing = GAUGES.filter((gauge) => !now.moves[gauge])
  const question =
    topic?.before === 'nominal'
      ? TEACHING.predictWeather
      : TEACHING.predict.replace('{supposed}', wordsOf(result.supposed.cause))
  const fix = () => {
    if (missing.length > 0) {
      unsaid = nameOf(now)
      redraw()
      document.querySelector<HTMLElement>(`#move-${missing[0]}-up`)?.focus()
      return
    }
    goOn({ ...now, fixed: true })
    toStep('read')
  }
  if (now.fixed) {
    return html`<section aria-labelledby="step-predict">
      ${stepHead(1, 'predict')}
      <p>${question}</p>
      <p class="said">
        ${GAUGES.map((gauge) => `${fieldLabel('lesson', gauge)} ${choiceLabel(gauge, now.moves[gauge] ?? '')}`).join(' · ')}
        ${now.suspected ? html`<br />Suspected: ${wordsOf(now.suspected as never)}` : nothing}
      </p>
    </section>`
  }
  return html`<section aria-labelledby="step-predict">
    ${stepHead(1, 'predict')}
    <p>
      ${question}
      ${size ? TEACHING.supposedSize.replace('{size}', `${SIMULATED.settings[result.supposed.setting ?? 'chargeNow']} ${briefly(size)}`) : nothing}
    </p>
    <form class="moves" @submit=${(event: Event) => {
      event.preventDefault()
      fix()
    }}>
      ${GAUGES.map(
        (gauge) => html`<fieldset>
          <legend>${fieldLabel('lesson', gauge)}</legend>
          ${MOVES.map(
            (move) => html`<label class="choice">
              <input
                type="radio"
                id="move-${gauge}-${move}"
                name="move-${gauge}"
                value=${move}
                .checked=${live(now.moves[gauge] === move)}
                @change=${() => goOn({ ...now, moves: { ...now.moves, [gauge]: move } })}
              />
              <span>${ARROWS[move]} ${choiceLabel(gauge, move)}</span>
            </label>`,
          )}
        </fieldset>`,
      )}
      <p class="ask-one">
        <label for="suspected">${TEACHING.suspect}</label>
        <select
          id="suspected"
          @change=${(event: Event) =>
            goOn({ ...now, suspected: (event.target as HTMLSelectElement).value || undefined })}
        >
          <option value="" ?selected=${!now.suspected}>not said</option>
          ${result.choices.map(
            (cause) =>
              html`<option value=${cause} ?selected=${cause === now.suspected}>${wordsOf(cause)}</option>`,
          )}
        </select>
      </p>
      <p class="acts"><button class="main">${TEACHING.fix}</button></p>
      <p class="fault" role="status">
        ${
          unsaid === nameOf(now) && missing.length > 0
            ? TEACHING.unsaid.replace(
                '{gauges}',
                missing.map((gauge) => fieldLabel('lesson', gauge).toLowerCase()).join(', '),
              )
            : nothing
        }
      </p>
    </form>
  </section>`
}
