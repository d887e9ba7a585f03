import { html, nothing, type TemplateResult } from 'lit-html'
import type { ShownFigure } from '../../../shared/answer/told.ts'
import { isOnScreen } from '../../../shared/cautions.ts'
import type { Answer } from '../../../shared/operation.ts'
import { laterNow } from './later.ts'
import { capital, listView, withLinks } from './parts.ts'

const WORDS = { stop: 'Stop', check: 'Check', fine: 'Good', information: 'Answer' } as const

/**
 * An answer: what it is and what to do, the figures, what next, what can hurt; the rest is folded.
 *
 * @param pictures - What draws it, where something does.
 * @param middle - What stands for dangers, law and assumptions where something says them at length.
 */
export function answerView(
  answer: Answer,
  inWords: (text: string) => string,
  pictures?: TemplateResult | typeof nothing,
  middle?: TemplateResult,
): TemplateResult {
  const { level = 'information', headline = '', figures = [], next = [], line } = answer
  return html`<div class="answer ${level}">
    <p class="headline"><strong class="level">${WORDS[level]}</strong> ${headline}</p>
    ${line ? nothing : figuresView(figures)} ${nextView(next.map(inWords))} ${middle ?? notesView(answer, inWords)}
    ${pictures ?? nothing} ${laterNow()?.foldedView(answer) ?? nothing}
  </div>`
}

export const figuresView = (figures: readonly ShownFigure[]) =>
  figures.length === 0
    ? nothing
    : html`<dl class="figures">
        ${figures.map(
          ({ label, text, says, basis }) => html`<div>
            <dt>${capital(label)}</dt>
            <dd>
              <span class="figure">${text}</span>
              ${says ? html`<span class="says">${says}</span>` : nothing}
              ${basis ? html`<em class="basis">${basis}</em>` : nothing}
            </dd>
          </div>`,
        )}
      </dl>`

const nextView = (next: readonly string[]) =>
  next.length === 0
    ? nothing
    : html`<h3>Next</h3>
        <ol class="next">
          ${next.map((text) => html`<li>${withLinks(capital(text))}</li>`)}
        </ol>`

/** Warnings, dangers, law and what was assumed, each in its words. */
export function notesView(
  { warnings, cautions, law, assumptions }: Answer,
  inWords: (text: string) => string,
): TemplateResult {
  const dangers = cautions.filter(isOnScreen)
  const assumed = [...new Set(assumptions.map(({ short, taken }) => short ?? taken))]
  return html`
    ${
      warnings.length === 0
        ? nothing
        : listView(
            'Mind',
            'mind',
            warnings.map(({ message }) => inWords(message)),
          )
    }
    ${
      dangers.length === 0
        ? nothing
        : listView(
            'Danger',
            'danger',
            dangers.map(({ short }) => short),
          )
    }
    ${law ? html`<h3>Law</h3><p class="law">${inWords(law)}</p>` : nothing}
    ${assumed.length === 0 ? nothing : html`<h3>Assumed</h3><p class="assumed">${assumed.map(inWords).join(' · ')}</p>`}
  `
}
