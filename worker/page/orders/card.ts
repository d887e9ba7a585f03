import { html, nothing, type TemplateResult } from 'lit-html'
import type { Block, Item } from '../../../shared/work-order/blocks.ts'
import { lineText, stopText } from '../../../shared/work-order/card/page.ts'
import { customerPage } from '../../../shared/work-order/customer-page.ts'
import type { WorkOrderAnswer } from '../../../shared/work-order/sheet.ts'

type Card = WorkOrderAnswer['result']['card']
type Line = Card['records'][number]

/** The visit on one card: what stops the work, the machine, the dangers, the steps, the records. */
export function cardView({ result, law }: WorkOrderAnswer): TemplateResult {
  const { card, invented } = result
  return html`<section class="card" aria-label="Card">
    ${card.stops.map((text) => html`<p class="stop-line">${stopText(text)}</p>`)}
    <h2>Work order: ${card.title}</h2>
    <p>${card.machine}</p>
    ${card.about.map((text) => html`<p>${text}</p>`)}
    ${invented ? html`<p>Demonstration: invented, nothing was measured.</p>` : nothing}
    <p><strong>Danger</strong> ${card.dangers.join(' · ')}</p>
    ${law ? html`<p><strong>Law</strong> ${law}</p>` : nothing}
    <ol class="card-steps">
      ${card.steps.map(
        ({ title, lines, done }) => html`<li class=${done ? 'done' : ''}>
          <h3>${title}</h3>
          ${linesView(lines)}
        </li>`,
      )}
    </ol>
    <h3>Records</h3>
    ${linesView(card.records)}
    <p class="foot">${card.foot}</p>
  </section>`
}

const linesView = (lines: readonly Line[]) => html`<ul class="lines">
  ${lines.map((line) => html`<li class=${line.ticked === undefined ? 'told-line' : 'task'}>${boxOf(line.ticked)}${lineText(line)}</li>`)}
</ul>`

/** A box that is read as one, on the screen and on paper. */
const boxOf = (ticked: boolean | undefined) =>
  ticked === undefined
    ? nothing
    : html`<span class="box ${ticked ? 'ticked' : ''}" role="img" aria-label=${ticked ? 'done:' : 'to do:'}></span>`

/** The customer's copy: no internals. */
export const customerView = (
  answer: WorkOrderAnswer,
): TemplateResult => html`<section class="card" aria-label="Customer's copy">
  ${customerPage(answer).map(blockView)}
</section>`

function blockView(block: Block): TemplateResult {
  switch (block.kind) {
    case 'title':
      return html`<h2>${block.text}</h2>`
    case 'heading':
      return html`<h3>${block.text}</h3>`
    case 'note':
      return html`<p>${block.text}</p>`
    case 'pairs':
      return html`<dl>${block.rows.map(([label, value]) => html`<dt>${label}</dt><dd>${value}</dd>`)}</dl>`
    case 'list':
      return html`<ul>${block.items.map((item: Item) => html`<li>${boxOf(item.ticked)}${item.text}</li>`)}</ul>`
  }
}
