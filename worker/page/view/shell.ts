import { html, nothing, type TemplateResult } from 'lit-html'
import { ABOUT } from '../../../shared/about.ts'
import { refrigerants } from '../../../shared/refrigerant/index.ts'
import type { Keeper, Keeping } from '../offline/keep.ts'

const NAMES = refrigerants().map(({ id }) => id)

const KEEPING: Readonly<Record<Exclude<Keeping, 'renewable'>, string>> = {
  starting: '',
  kept: 'Kept on this device: it works without a network.',
  insecure:
    'Not kept on this device: it came over plain http, where browsers keep nothing. Over https it would work without a network.',
  unable: 'Not kept on this device: this browser does not allow it here.',
}

/** What stands around every view. */
export const shellView = (
  view: TemplateResult,
  here: string,
  keeper: Keeper | undefined,
): TemplateResult => {
  const keeping = keeper?.state() ?? 'starting'
  return html`
  <a class="skip" href="#main" @click=${toMain}>To the content</a>
  ${keeping === 'renewable' ? renewView(keeper?.renew) : nothing}
  <header class="top">
    <a class="name" href="#/">${ABOUT.name}</a>
    <nav aria-label="Page">
      <a href="#/" aria-current=${here === '' ? 'page' : 'false'}>Visit</a>
      <a href="#/orders" aria-current=${here.startsWith('orders') ? 'page' : 'false'}>Orders</a>
      <a href="#/teach" aria-current=${here.startsWith('teach') ? 'page' : 'false'}>Teach</a>
      <a href="#/settings" aria-current=${here === 'settings' ? 'page' : 'false'}>Settings</a>
    </nav>
  </header>
  <main id="main">${view}</main>
  <footer class="bottom">
    <p>${keeping === 'renewable' ? nothing : KEEPING[keeping]}</p>
  </footer>
  <datalist id="refrigerants">
    ${NAMES.map((name) => html`<option value=${name}></option>`)}
  </datalist>
`
}

/** The address says which view is open, so that a link within it moves by itself. */
function toMain(event: Event): void {
  event.preventDefault()
  document.querySelector<HTMLElement>('main h1')?.focus()
}

const renewView = (renew: (() => void) | undefined) => html`<div class="renew" role="status">
  <span>A newer version is ready.</span>
  <button type="button" @click=${renew}>Use it now</button>
</div>`
