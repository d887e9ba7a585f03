import { html, nothing, type TemplateResult } from 'lit-html'
import { CalcError } from '../../../shared/errors.ts'
import {
  choiceLabel,
  type Draft,
  draftOf,
  fieldLabel,
  isDraft,
  isEmpty,
  knownQuestion,
  labeller,
  valueAt,
  withValue,
} from '../../../shared/form/index.ts'
import { sectionGroups, sectionOf } from '../../../shared/form/order.ts'
import { type Field, fieldsOf } from '../../../shared/input/index.ts'
import { charge } from '../../../shared/service/charge.ts'
import { coolingCheck } from '../../../shared/service/cooling-check.ts'
import { evacuation } from '../../../shared/service/evacuation.ts'
import { leakTest } from '../../../shared/service/leak-test.ts'
import { readings } from '../../../shared/service/readings.ts'
import {
  type Answers,
  orderOf,
  plainNames,
  QUESTIONS,
  type Question,
  verdictOf,
} from '../../../shared/work-order/begin.ts'
import { picturesOf } from '../../../shared/work-order/pictured.ts'
import type { WorkOrderAnswer } from '../../../shared/work-order/sheet.ts'
import { workOrder } from '../../../shared/work-order/work-order.ts'
import { isWorking } from '../compute/compute.ts'
import { commonDraft, currentSettings, outcomeOf } from '../state.ts'
import { answerView } from '../view/answer.ts'
import { type Fault, type Form, filledText, type Path } from '../view/field.ts'
import { foldView, formView, groupsView } from '../view/form.ts'
import { faultsOf, NAMED, outcomeView, peekView } from '../view/operation.ts'
import { figureView } from '../view/pictures.ts'
import { cardView, customerView } from './card.ts'
import { download, fileName, fileText, orderFile, ordersIn } from './files.ts'
import {
  allOrders,
  askToPersist,
  dropOrder,
  type Kept,
  keepOrder,
  openStore,
  orderNow,
  whyNotKept,
} from './store.ts'

export { openStore }

/** What an address under `orders` shows. */
export function ordersView(rest: string, changed: () => void): TemplateResult {
  const [id = '', page] = rest.split('/')
  if (id === '') return listView(changed)
  if (id === 'new') return beginView(changed)
  const order = orderNow(id)
  if (!order) {
    return html`<article>
      <h1 tabindex="-1">This order is not on this device</h1>
      <p><a href="#/orders">To the orders</a></p>
    </article>`
  }
  if (page === 'card' || page === 'customer') return paperView(order, page)
  return orderView(order, changed)
}

const nameOf = (draft: Draft): string => {
  const machine = isDraft(draft.machine) ? draft.machine.name : undefined
  return (
    [machine, draft.order].filter((text) => typeof text === 'string' && text !== '').join(': ') ||
    'Order'
  )
}

// The list

/** What the last file that was read came to, and whether the browser promised to keep orders. */
let message = ''
let promised: boolean | undefined

function listView(changed: () => void): TemplateResult {
  const orders = allOrders()
  return html`<article>
    <header>
      <h1 tabindex="-1">Work orders</h1>
      <p class="summary">${keepingText(orders.length)}</p>
    </header>
    <p class="acts">
      <a class="act" href="#/orders/new">Begin an order</a>
      <label class="file">
        <span>Open a file</span>
        <input type="file" accept=".json,.yaml,.yml,application/json" multiple @change=${readFiles(changed)} />
      </label>
      ${
        orders.length === 0
          ? nothing
          : html`<button type="button" @click=${() => download('orders.json', fileText(orders.map(({ draft }) => orderFile(draft))))}>
            Save all to a file
          </button>`
      }
    </p>
    <p role="status" class="fault">${message}</p>
    <ul class="orders">
      ${orders.map(
        ({ id, draft, changedAt }) => html`<li>
          <a class="open" href="#/orders/${id}">${nameOf(draft)}</a>
          <span>${new Date(changedAt).toLocaleString()}</span>
        </li>`,
      )}
    </ul>
  </article>`
}

function keepingText(count: number): string {
  const refused = whyNotKept()
  if (refused !== undefined)
    return `This browser keeps nothing here (${refused}). Save each order to a file.`
  if (count === 0)
    return 'They stay on this device. A file takes one to another device, or to the command line.'
  return promised === false
    ? 'They stay on this device, but the browser may clear what is not used for long: install the page, or save them to a file.'
    : 'They stay on this device.'
}

const readFiles = (changed: () => void) => async (event: Event) => {
  const input = event.target as HTMLInputElement
  try {
    for (const file of input.files ?? []) {
      const orders = await ordersIn(file.name, await file.text())
      for (const draft of orders) keepOrder(draft)
    }
    message = ''
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    message = inWords(`${error.message} ${error.hint}`.trim())
  }
  input.value = ''
  changed()
}

// Beginning

let answers: Answers = {}
let tried = false

function beginView(changed: () => void): TemplateResult {
  const said: Answers = { ...remembered(), ...answers }
  const begin = () => {
    tried = true
    if (QUESTIONS.every((question) => verdictOf(question, said[question.id] ?? '') === true)) {
      const id = keepOrder(draftOf(orderOf(plainNames(said))) as Draft)
      answers = {}
      tried = false
      void askToPersist().then((answer) => {
        promised = answer
      })
      location.hash = `#/orders/${id}`
    }
    changed()
  }
  const set = (id: keyof Answers, text: string) => {
    answers = { ...answers, [id]: text }
    changed()
  }
  return html`<article>
    <header>
      <h1 tabindex="-1">Begin an order</h1>
      <p class="summary">What is not known yet may stay open.</p>
    </header>
    <form class="form begin" novalidate @submit=${(event: Event) => {
      event.preventDefault()
      begin()
    }}>
      <div class="fields">${QUESTIONS.map((question) => questionView(question, said[question.id] ?? '', set))}</div>
      <p class="acts"><button class="main">Begin</button></p>
    </form>
  </article>`
}

/** What the device remembers of the shop and the machine at hand. */
function remembered(): Answers {
  const { law, refrigerant, labelCharge, compressorDrive, meteringDevice } = commonDraft()
  return Object.fromEntries(
    Object.entries({ law, refrigerant, labelCharge, compressorDrive, meteringDevice }).filter(
      ([, value]) => typeof value === 'string' && value !== '',
    ),
  )
}

function questionView(
  question: Question,
  text: string,
  set: (id: keyof Answers, text: string) => void,
) {
  const { id, message: asked, choices, needed } = question
  const verdict = verdictOf(question, text)
  const wrong = verdict === true || (text === '' && !tried) ? '' : verdict
  const fault = `begin-${id}-fault`
  const typed = (event: Event) =>
    set(id, (event.target as HTMLInputElement | HTMLSelectElement).value)
  return html`<div class="field ${wrong === '' ? '' : 'wrong'}">
    <label for="begin-${id}">${asked}${needed ? html` <span class="needed">needed</span>` : nothing}</label>
    ${
      choices
        ? html`<select id="begin-${id}" aria-describedby=${fault} @change=${typed}>
          <option value="" ?selected=${text === ''}>not known yet</option>
          ${choices.map((choice) => html`<option value=${choice} ?selected=${choice === text}>${choiceLabel(id, choice)}</option>`)}
        </select>`
        : html`<input
          id="begin-${id}"
          type="text"
          autocomplete="off"
          list=${id === 'refrigerant' ? 'refrigerants' : nothing}
          aria-describedby=${fault}
          .value=${text}
          @input=${typed}
        />`
    }
    <p class="fault" id=${fault}>${wrong}</p>
  </div>`
}

// One order

const fields = fieldsOf(workOrder)
const inWords = labeller(
  workOrder.name,
  fields.map(({ name }) => name),
)

function orderView(order: Kept, changed: () => void): TemplateResult {
  const { id, draft } = order
  const outcome = outcomeOf(workOrder, draft, currentSettings().units, id)
  const answer = outcome.kind === 'answer' ? (outcome.answer as WorkOrderAnswer) : undefined
  const form: Form = {
    operation: workOrder.name,
    draft,
    units: currentSettings().units,
    faults: [...faultsOf(outcome, inWords), ...(answer ? problemsOf(answer) : [])],
    named: NAMED,
    section: sectionView,
    redraw: changed,
    change(path, value) {
      keepOrder(withValue(orderNow(id)?.draft ?? draft, path, value), id)
      changed()
    },
  }
  return html`<article class="ask order">
    <header>
      <p class="up"><a href="#/orders">Work orders</a></p>
      <h1 tabindex="-1">${nameOf(draft)}</h1>
      <p class="acts">
        <a class="act" href="#/orders/${id}/card">Card to print</a>
        <a class="act quiet" href="#/orders/${id}/customer">Customer’s copy</a>
        <button type="button" @click=${() => download(fileName(draft), fileText(orderFile(draft)))}>Save to a file</button>
        ${dropView(id, changed)}
      </p>
    </header>
    <div class="columns">
      <section aria-label="What is known">${formView(form, fields)}</section>
      <section class="told" id="told" aria-label="Answer" aria-busy=${isWorking(workOrder.name, id) ? 'true' : 'false'}>
        ${answer ? answerView(answer, inWords, nothing, cardView(answer)) : outcomeView(workOrder.name, outcome, inWords)}
      </section>
    </div>
    ${peekView(outcome, inWords)}
  </article>`
}

/** What steps were refused for, at the field that it is about. */
const problemsOf = ({ result }: WorkOrderAnswer): readonly Fault[] =>
  result.steps.flatMap(({ problems }) =>
    problems
      .filter(({ code }) => code !== 'missing-input')
      .map(({ path, message: text, hint }) => ({
        path,
        message: inWords(`${text} ${hint}`.trim()),
      })),
  )

/** A part of the order that holds the fields of a step: that step's form, folded. */
function sectionView(
  form: Form,
  field: Field,
  inner: readonly Field[],
  path: Path,
): TemplateResult | undefined {
  const operation = sectionOf(field.name)
  if (operation === undefined) return undefined
  const filled = valueAt(form.draft, path)
  const groups = sectionGroups(operation, inner, isDraft(filled) ? filled : {})
  const below: Form = { ...form, operation }
  const { section: _, ...plain } = below
  const wrong = form.faults.some((fault) => path.every((part, index) => fault.path[index] === part))
  const label = fieldLabel(form.operation, field.name)
  return html`<div class="part">
    ${foldView(
      form,
      label,
      isEmpty(filled) ? '' : filledText(plain, inner, path),
      path,
      wrong,
      () => html`
      <p class="summary">${knownQuestion(operation)}</p>
      ${groupsView(plain, groups, path)}
    `,
    )}
  </div>`
}

/** Asked twice: what is dropped does not come back. */
let dropping: string | undefined

const dropView = (id: string, changed: () => void) =>
  dropping === id
    ? html`<button
        type="button"
        class="danger-act"
        @click=${() => {
          dropOrder(id)
          dropping = undefined
          location.hash = '#/orders'
        }}
      >
        Delete it for good
      </button>`
    : html`<button
        type="button"
        @click=${() => {
          dropping = id
          changed()
        }}
      >
        Delete
      </button>`

// Paper

function paperView({ id, draft }: Kept, page: 'card' | 'customer'): TemplateResult {
  const outcome = outcomeOf(workOrder, draft, currentSettings().units, id)
  const answer = outcome.kind === 'answer' ? (outcome.answer as WorkOrderAnswer) : undefined
  return html`<article class="paper">
    <p class="acts">
      <a class="act quiet" href="#/orders/${id}">Back to the order</a>
      <button type="button" class="main" @click=${() => print()}>Print</button>
    </p>
    <h1 tabindex="-1" class="unseen">${nameOf(draft)}</h1>
    ${answer ? (page === 'card' ? html`${cardView(answer)} ${figuresView(id, draft)}` : customerView(answer)) : outcomeView(workOrder.name, outcome, inWords)}
  </article>`
}

/** Wide enough for two beside each other on a sheet, and for three. */
const FIGURE_PX = 480
const SMALL_PX = 360
/** Pictures that a sheet has room for under the card; the others are on the screen alone. */
const MOST_ON_PAPER = 3

function figuresView(id: string, draft: Draft): TemplateResult {
  const pictures = picturesOf(orderFile(draft), fieldNames)
  const width = pictures.length < MOST_ON_PAPER ? FIGURE_PX : SMALL_PX
  const drawn = pictures.flatMap(({ kind, operation, input, rank }) => {
    const view = figureView(operation, kind, input, width, id)
    return view === nothing ? [] : [{ view, rank }]
  })
  const ranks = drawn.map(({ rank }) => rank).sort((one, other) => one - other)
  const last = ranks[MOST_ON_PAPER - 1] ?? Number.POSITIVE_INFINITY
  const many = drawn.length >= MOST_ON_PAPER ? 'many' : ''
  return html`<div class="figures-row ${many}">
    ${drawn.map(({ view, rank }) => html`<div class=${rank > last ? 'not-printed' : ''}>${view}</div>`)}
  </div>`
}

const PICTURED = [readings, evacuation, leakTest, charge, coolingCheck]

const fieldNames = (name: string): ReadonlySet<string> => {
  const operation = PICTURED.find((entry) => entry.name === name)
  return new Set(operation ? Object.keys(operation.fields) : [])
}
