import { html, nothing, type TemplateResult } from 'lit-html'
import { live } from 'lit-html/directives/live.js'
import { valueText } from '../../../shared/answer/scalar.ts'
import { choiceLabel } from '../../../shared/form/index.ts'
import { TEACHING } from '../../../shared/form/teaching.ts'
import { SWEEPS } from '../../../shared/service/simulate/fields.ts'
import { type Case, goOn, nameOf } from './address.ts'
import { askSimulate, type Reveal } from './answers.ts'
import { boardPicture, briefly, numbersView, workedView } from './figures.ts'
import { stepHead } from './words.ts'

/** The fault of the case over its range, and the machine at one of its sizes beside the sound one. */
export function besideView(now: Case, reveal: Reveal): TemplateResult {
  const { sweep, simulation } = reveal
  const about = nameOf(now)
  const row = now.row === undefined ? undefined : sweep.rows[now.row]
  const input = row
    ? {
        ...simulation,
        [SWEEPS[sweep.fault]]: valueText(row.size),
      }
    : simulation
  const { answer, error } = askSimulate(input, about)
  const isRunning = (answer?.result.points.length ?? 0) > 0
  return html`<section aria-labelledby="step-sweep">
      ${stepHead(4, 'sweep')}
      <p>${TEACHING.sweepSay}</p>
      ${sizeView(now, reveal)}
      ${boardPicture('fault-sweep', { ...input, sweep: sweep.fault }, about)}
    </section>
    <section aria-labelledby="step-beside">
      ${stepHead(5, 'beside')}
      ${error ? html`<p class="fault">${error.message} ${error.hint}</p>` : nothing}
      ${
        answer
          ? html`<p class="now" role="status">${answer.headline}</p>
            ${sizeView(now, reveal, 'again')} ${numbersView(answer)}
            ${isRunning ? boardPicture(answer.result.sound ? 'cycles-apart' : 'model-cycle', input, about) : html`<p>${TEACHING.noCycle}</p>`}
            ${workedView(answer)}`
          : nothing
      }
    </section>`
}

/** A slider and two buttons over the sizes of the sweep. */
function sizeView(now: Case, { sweep, size }: Reveal, id = 'first'): TemplateResult {
  const last = sweep.rows.length - 1
  const row = now.row === undefined ? undefined : sweep.rows[now.row]
  const what = choiceLabel('sweep', sweep.fault)
  const text = row ? briefly(row.size) : `as in the case${size ? `: ${briefly(size)}` : ''}`
  const to = (next: number | undefined) => goOn({ ...now, row: next })
  const step = (by: number) =>
    to(Math.min(last, Math.max(0, (now.row ?? nearest(sweep, size)) + by)))
  return html`<div class="size">
    <label for="size-${id}">Size: ${what}</label>
    <button type="button" @click=${() => step(-1)} aria-label="Smaller: ${what}">−</button>
    <input
      id="size-${id}"
      type="range"
      min="0"
      max=${last}
      step="1"
      aria-valuetext=${text}
      .value=${live(String(now.row ?? nearest(sweep, size)))}
      @input=${(event: Event) => to(Number((event.target as HTMLInputElement).value))}
    />
    <button type="button" @click=${() => step(1)} aria-label="Larger: ${what}">+</button>
    <output for="size-${id}">${text}</output>
    <button type="button" ?disabled=${now.row === undefined} @click=${() => to(undefined)}>As in the case</button>
  </div>`
}

/** All of its charge: where a machine stands that has no fault. */
const WHOLE = { value: 100, unit: '%' }

/** The row of the sweep that lies next to the case. */
function nearest({ rows }: Reveal['sweep'], size: Reveal['size'] = WHOLE): number {
  const index = rows.findIndex((row) => row.size.unit === size.unit && row.size.value >= size.value)
  return index < 0 ? rows.length - 1 : index
}
