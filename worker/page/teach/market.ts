import { html, nothing, type TemplateResult } from 'lit-html'
import { live } from 'lit-html/directives/live.js'
import { valueText } from '../../../shared/answer/scalar.ts'
import { capital } from '../../../shared/answer/words.ts'
import { TEACHING } from '../../../shared/form/teaching.ts'
import { wordsOf } from '../../../shared/service/lesson/topics.ts'
import { redraw } from '../redraw.ts'
import { type Case, goOn, nameOf } from './address.ts'
import type { LessonAnswer } from './answers.ts'

import { briefly, shown } from './figures.ts'
import { readingName, stepHead, toStep } from './words.ts'

/** Readings one at a time, each for its minutes. */
export function marketView(now: Case, { result }: LessonAnswer): TemplateResult {
  const { offers, superheat, subcooling, spent } = result
  const bought = offers.filter(({ reading }) => now.bought.includes(reading))
  const open = offers.filter(({ reading }) => !now.bought.includes(reading))
  const buy = (reading: string) => {
    const next = open[(open.findIndex((each) => each.reading === reading) + 1) % open.length]
    goOn({ ...now, bought: [...now.bought, reading] })
    // The button that was pressed is gone: the next one takes its place.
    document.getElementById(`buy-${next?.reading}`)?.focus()
  }
  return html`<section aria-labelledby="step-read">
    ${stepHead(2, 'read')}
    <p>${TEACHING.read} <strong class="spent">${valueText(spent)} spent.</strong></p>
    ${
      bought.length === 0
        ? html`<p class="empty">${TEACHING.nothingBought}</p>`
        : html`<dl class="big bought">
            ${bought.map(
              ({ reading, shows, sound }) => html`<div>
                <dt>${readingName(reading)}</dt>
                <dd>
                  ${shown(shows)}
                  ${sound ? html`<span class="change">when sound ${briefly(sound)}</span>` : nothing}
                </dd>
              </div>`,
            )}
            ${superheat ? html`<div class="worked-out"><dt>Superheat</dt><dd>${shown(superheat)}</dd></div>` : nothing}
            ${subcooling ? html`<div class="worked-out"><dt>Subcooling</dt><dd>${shown(subcooling)}</dd></div>` : nothing}
          </dl>`
    }
    ${
      now.named
        ? nothing
        : html`<ul class="offers">
            ${open.map(
              ({ reading, minutes }) => html`<li>
                <button type="button" id="buy-${reading}" @click=${() => buy(reading)}>
                  ${readingName(reading)} <span class="cost">${valueText(minutes)}</span>
                </button>
              </li>`,
            )}
          </ul>`
    }
  </section>`
}

/** The cause that is ticked and not yet named, and in which case. */
let ticked = { of: '', cause: '' }

/** What it is, by all that was read. */
export function nameView(now: Case, { result }: LessonAnswer): TemplateResult {
  const chosen = result.choices.find((cause) => cause === ticked.cause && ticked.of === nameOf(now))
  return html`<section aria-labelledby="step-name">
    ${stepHead(3, 'name')}
    <form class="causes" @submit=${(event: Event) => {
      event.preventDefault()
      if (chosen === undefined) return
      goOn({ ...now, named: chosen })
      toStep('reveal')
    }}>
      <fieldset>
        <legend>${TEACHING.name}</legend>
        ${result.choices.map(
          (cause) => html`<label class="choice">
            <input
              type="radio"
              name="cause"
              value=${cause}
              .checked=${live(cause === chosen)}
              @change=${() => {
                ticked = { of: nameOf(now), cause }
                redraw()
              }}
            />
            <span>${capital(wordsOf(cause))}</span>
          </label>`,
        )}
      </fieldset>
      <p class="acts"><button class="main" ?disabled=${chosen === undefined}>${TEACHING.reveal}</button></p>
    </form>
  </section>`
}
