import { html, render, type TemplateResult } from 'lit-html'
import { ABOUT } from '../../shared/about.ts'
import { knownQuestion } from '../../shared/form/index.ts'
import type { Keeper } from './offline/keep.ts'
import { isOperationName, loadOperation, type OperationName, operationNow } from './operations.ts'
import { drawnBy } from './redraw.ts'
import { currentSettings } from './state.ts'
import { laterNow, loadLater } from './view/later.ts'
import { operationView } from './view/operation.ts'
import { shellView } from './view/shell.ts'
import { trailView, visitView } from './view/visit.ts'

const root = document.body
const status = document.createElement('p')
status.className = 'unseen'
status.setAttribute('role', 'status')

let keeper: Keeper | undefined

drawnBy(draw)

/** Which view the address names. */
const hereNow = () => location.hash.replace(/^#\/?/u, '')

function draw(): void {
  const { large = false, explained = false } = currentSettings()
  document.documentElement.classList.toggle('large', large)
  document.documentElement.classList.toggle('explained', explained)
  const here = hereNow()
  render(shellView(viewOf(here), here, keeper), root)
}

function viewOf(here: string): TemplateResult {
  if (here === '') return visitView()
  if (here === 'settings')
    return withOperation(
      'saturation',
      (operation) => laterNow()?.settingsView(operation, draw) ?? LOADING,
    )
  const [room = '', ...rest] = here.split('/')
  if (room === 'orders') return ordersNow(rest.join('/'))
  if (room.split('?')[0] === 'teach') return teachNow(here)
  if (isOperationName(here)) {
    return html`${trailView(here)}
    ${withOperation(here, (operation) => {
      const { view, spoken } = operationView(operation, currentSettings().units, draw)
      say(spoken)
      return view
    })}`
  }
  return html`<article>
    <h1 tabindex="-1">There is nothing here</h1>
    <p><a href="#/">To the visit</a></p>
  </article>`
}

type Orders = typeof import('./orders/view.ts')
let orders: Orders | undefined

/** Orders come with every step, so they are loaded when they are asked for. */
const ordersNow = (rest: string): TemplateResult =>
  orders?.ordersView(rest, draw) ??
  withPart('work-order', async () => {
    const loaded = await import('./orders/view.ts')
    await loaded.openStore()
    orders = loaded
  })

type Teach = typeof import('./teach/view.ts')
let teach: Teach | undefined

/** The teaching view, which comes with the model. */
function teachNow(here: string): TemplateResult {
  if (!teach) {
    return withPart('lesson', async () => {
      const loaded = await import('./teach/view.ts')
      await loaded.begin()
      teach = loaded
    })
  }
  const { view, spoken } = teach.teachView(here)
  say(spoken)
  return view
}

const LOADING = html`<p class="empty">Loading …</p>`

/** A part of the page that is loaded with its operation when it is asked for. */
const withPart = (name: OperationName, load: () => Promise<void>): TemplateResult =>
  withOperation(name, () => {
    load().then(draw, () => {
      failed.add(name)
      draw()
    })
    return LOADING
  })

/** What could not be loaded, with when it was tried: offline, before all of it was kept. */
const failed = new Set<OperationName>()

function withOperation(
  name: OperationName,
  view: (operation: Awaited<ReturnType<typeof loadOperation>>) => TemplateResult,
): TemplateResult {
  const operation = operationNow(name)
  if (operation) return view(operation)
  if (failed.has(name)) {
    return html`<article>
      <h1 tabindex="-1">This part is not on the device yet</h1>
      <p>It needs the network once. <a href="#/">To the visit</a></p>
    </article>`
  }
  loadOperation(name).then(draw, () => {
    failed.add(name)
    draw()
  })
  return LOADING
}

/** Told to screen readers once somebody stops typing; what is on the screen changes with every letter. */
const SAY_AFTER_MS = 700
let saying: ReturnType<typeof setTimeout> | undefined

function say(text: string): void {
  clearTimeout(saying)
  saying = setTimeout(() => {
    if (status.textContent !== text) status.textContent = text
  }, SAY_AFTER_MS)
}

function titled(): void {
  const here = hereNow()
  const question = isOperationName(here) ? knownQuestion(here) : undefined
  document.title = question ? `${question} – ${ABOUT.name}` : ABOUT.name
}

addEventListener('hashchange', () => {
  failed.clear()
  titled()
  draw()
  scrollTo(0, 0)
  document.querySelector<HTMLElement>('main h1')?.focus({ preventScroll: true })
})
titled()
draw()
root.append(status)
void loadLater().then(
  () => {
    keeper = laterNow()?.keep(draw)
    draw()
  },
  () => {},
)
