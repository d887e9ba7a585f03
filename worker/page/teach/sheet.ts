import { html, nothing, type TemplateResult } from 'lit-html'
import { TEACHING } from '../../../shared/form/teaching.ts'
import { figureView } from '../view/pictures.ts'
import { addressOf, type Case, nameOf } from './address.ts'
import { askLesson } from './answers.ts'
import { othersView } from './reveal.ts'

/** Wide enough for a sheet, and narrow enough to be read on it. */
const SHEET_PX = 760

/** What is printed: blanks for the class, the answers once the case is revealed. */
export function sheetView(now: Case): TemplateResult {
  const { answer, error, working } = askLesson(now)
  const reveal = answer?.result.reveal
  const isFaulty = reveal !== undefined && reveal.size !== undefined && reveal.points.length > 0
  return html`<article class="paper teach-sheet" aria-busy=${working ? 'true' : 'false'}>
    <p class="acts">
      <a class="act quiet" href=${addressOf({ ...now, sheet: false })}>Back to the case</a>
      <button type="button" class="main" @click=${() => print()}>Print</button>
    </p>
    <h1 tabindex="-1">${reveal ? TEACHING.answers : TEACHING.blank}</h1>
    ${error ? html`<p class="fault">${error.message} ${error.hint}</p>` : nothing}
    ${answer?.result.sheet.map((text) => html`<p class="line">${text}</p>`)}
    ${
      reveal
        ? html`<h2>${TEACHING.others}</h2>
          ${othersView(reveal)}
          ${isFaulty ? figureView('simulate', 'cycles-apart', reveal.simulation, SHEET_PX, `${nameOf(now)}/sheet`) : nothing}`
        : nothing
    }
  </article>`
}
