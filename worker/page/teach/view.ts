import { html, type TemplateResult } from 'lit-html'
import { ABOUT } from '../../../shared/about.ts'
import { choiceLabel } from '../../../shared/form/index.ts'
import { TEACHING } from '../../../shared/form/teaching.ts'
import { TOPICS } from '../../../shared/service/lesson/topics.ts'
import { readKept } from '../kept.ts'
import { loadOperation } from '../operations.ts'
import { addressOf, caseIn, freshCase, OPEN_CASE } from './address.ts'
import { benchView } from './bench.ts'
import { caseView } from './case.ts'
import { sheetView } from './sheet.ts'
import { markOf, type Spoken } from './words.ts'

/** Loads what the cases and the bench ask. */
export async function begin(): Promise<void> {
  await Promise.all([loadOperation('lesson'), loadOperation('simulate')])
}

/** What an address under `teach` shows. */
export function teachView(address: string): Spoken {
  document.title = `${TEACHING.title} – ${ABOUT.name}`
  if (address === 'teach') return { view: listView(), spoken: '' }
  if (address === 'teach/bench') return benchView()
  const now = caseIn(address)
  if (now) return now.sheet ? { view: sheetView(now), spoken: '' } : caseView(now)
  return {
    view: html`<article>
      <h1 tabindex="-1">There is no such case</h1>
      <p><a href="#/teach">${TEACHING.title}</a></p>
    </article>`,
    spoken: '',
  }
}

/** Every saying, with what it rests on. */
function listView(): TemplateResult {
  const open = readKept<string>(OPEN_CASE, '')
  return html`<article class="teach">
    <header>
      <h1 tabindex="-1">${TEACHING.title}</h1>
      <p class="summary">${TEACHING.summary}</p>
      <p class="acts">
        <a class="act" href="#/teach/bench">${TEACHING.bench}</a>
        ${open === '' ? '' : html`<a class="act quiet" href=${open}>${TEACHING.goOn}</a>`}
      </p>
    </header>
    <ol class="sayings">
      ${TOPICS.map(
        ({ id, source }) => html`<li>
          <a href=${addressOf(NEXT.get(id) ?? freshCase(id))}><q>${choiceLabel('topic', id)}</q></a>
          <span class="basis-line">${markOf(source)}</span>
        </li>`,
      )}
    </ol>
  </article>`
}

/** The case that each saying leads to, for as long as the page is open. */
const NEXT = new Map(TOPICS.map(({ id }) => [id, freshCase(id)]))
