import { html, nothing, type TemplateResult } from 'lit-html'
import { live } from 'lit-html/directives/live.js'
import { capital } from '../../../shared/answer/words.ts'
import { CalcError } from '../../../shared/errors.ts'
import { choiceLabel, type Draft, isDraft, withValue } from '../../../shared/form/index.ts'
import { TEACHING } from '../../../shared/form/teaching.ts'
import { fieldsOf } from '../../../shared/input/index.ts'
import { wordsOf } from '../../../shared/service/lesson/topics.ts'
import { SWEEP_NAMES, SWEEPS } from '../../../shared/service/simulate/fields.ts'
import { readKept, writeKept } from '../kept.ts'
import { operationNow } from '../operations.ts'
import { redraw } from '../redraw.ts'
import { currentSettings } from '../state.ts'
import { notesView } from '../view/answer.ts'
import { type Fault, type Form, fieldView } from '../view/field.ts'
import { foldedView } from '../view/folded.ts'
import { askSimulate, type SimulateAnswer, simulationIn, type Told } from './answers.ts'
import { boardPicture, briefly, numbersView, workedView } from './figures.ts'
import type { Spoken } from './words.ts'

const SWEPT = 'teach:swept'
const KEPT = 'teach:bench'
/** What stands on the bench, as it is typed; kept on this device. */
let draft: Draft = readKept(KEPT, { modelMachine: 'loader' })

const MACHINE = ['modelMachine', 'refrigerant']
const WEATHER = ['ambient', 'returnAir', 'relativeHumidity', 'compressorRpm']

function put(next: Draft): void {
  draft = next
  writeKept(KEPT, draft)
  redraw()
}

/** Severities of the faults that are put in, %. */
function severities(): ReadonlyMap<string, number> {
  const rows = Array.isArray(draft.faults) ? draft.faults : []
  return new Map(
    rows.flatMap((row) =>
      isDraft(row) ? [[String(row.fault), Number.parseFloat(String(row.severity))] as const] : [],
    ),
  )
}

function setSeverity(fault: string, severity: number): void {
  const next = new Map(severities())
  if (severity > 0) next.set(fault, severity)
  else next.delete(fault)
  put({
    ...draft,
    faults: [...next].map(([name, size]) => ({ fault: name, severity: `${size} %` })),
  })
}

/** An invented machine, its weather and its faults, and what it shows beside the sound one. */
export function benchView(): Spoken {
  const told = asked()
  const { answer, error, working } = told
  const sweep = answer && sweepOf(answer)
  const view = html`<article class="teach bench" aria-busy=${working ? 'true' : 'false'}>
    <header>
      <p class="up"><a href="#/teach">${TEACHING.title}</a></p>
      <h1 tabindex="-1">${TEACHING.bench}</h1>
      <p class="summary">${TEACHING.benchSummary}</p>
    </header>
    <div class="bench-columns">
      <section aria-label="What is put on it">
        ${formOf(told)} ${faultsView(answer)}
        <p class="acts">
          <button type="button" @click=${() => put({ modelMachine: draft.modelMachine })}>
            Take everything off
          </button>
        </p>
      </section>
      <section aria-label="What it shows">
        ${error ? html`<p class="fault" role="status">${error.message} ${error.hint}</p>` : nothing}
        ${answer ? html`<p class="now">${answer.headline}</p>${numbersView(answer)}` : error ? nothing : html`<p class="empty">Working …</p>`}
      </section>
    </div>
    ${answer && !error ? picturesView(answer, sweep) : nothing}
    ${answer ? html`<div class="notes">${workedView(answer)} ${notesView(answer, (text) => text)} ${foldedView(answer)}</div>` : nothing}
  </article>`
  return { view, spoken: working ? '' : (answer?.headline ?? error?.message ?? '') }
}

function asked(): Told<SimulateAnswer> & { readonly fault?: CalcError } {
  try {
    const told = askSimulate(simulationIn(draft), '/bench')
    return told.error instanceof CalcError ? { ...told, fault: told.error } : told
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    return { error, fault: error, working: false }
  }
}

/** The machine and its day. */
function formOf({ fault }: ReturnType<typeof asked>): TemplateResult {
  const operation = operationNow('simulate')
  const faults: readonly Fault[] = fault
    ? [{ path: fault.path, message: `${fault.message} ${fault.hint}`.trim() }]
    : []
  const form: Form = {
    operation: 'simulate',
    draft,
    units: currentSettings().units,
    faults,
    redraw,
    named: new Set(['refrigerant']),
    change(path, value) {
      const next = withValue(draft, path, value)
      // Another machine can have other faults, and is made for its own refrigerants.
      put(
        path[0] === 'modelMachine' ? { ...next, faults: undefined, refrigerant: undefined } : next,
      )
    },
  }
  const fields = operation ? fieldsOf(operation) : []
  const some = (names: readonly string[]) =>
    names.flatMap((name) => fields.find((field) => field.name === name) ?? [])
  return html`<form class="form" @submit=${(event: Event) => event.preventDefault()} novalidate>
    <div class="fields">${some(MACHINE).map((field) => fieldView(form, field))}</div>
    <fieldset class="group">
      <legend>The day</legend>
      <div class="fields">${some(WEATHER).map((field) => fieldView(form, field))}</div>
    </fieldset>
  </form>`
}

const STEP = 10
const MOST = 100

/** Each fault that the machine can have, with how bad it is. */
function faultsView(answer: SimulateAnswer | undefined): TemplateResult {
  const now = severities()
  const choices = answer?.result.choices ?? [...now.keys()]
  return html`<fieldset class="group severities">
    <legend>Faults</legend>
    ${choices.map((fault) => {
      const severity = now.get(fault) ?? 0
      const size = answer?.result.faults.find((each) => each.fault === fault)?.size
      const text = severity === 0 ? 'not there' : `${severity} %${size ? `: ${briefly(size)}` : ''}`
      const name = capital(wordsOf(fault as Parameters<typeof wordsOf>[0]))
      return html`<div class="size ${severity > 0 ? 'in' : ''}">
        <label for="bench-${fault}">${name}</label>
        <input
          id="bench-${fault}"
          type="range"
          min="0"
          max=${MOST}
          step=${STEP}
          aria-valuetext=${text}
          .value=${live(String(severity))}
          @input=${(event: Event) => setSeverity(fault, Number((event.target as HTMLInputElement).value))}
        />
        <output for="bench-${fault}">${text}</output>
      </div>`
    })}
  </fieldset>`
}

/** What is led over a range: as chosen, else the first fault that is there, else the charge. */
function sweepOf({ result }: SimulateAnswer) {
  const possible = SWEEP_NAMES.filter(
    (name) => name === 'charge' || result.faults.some(({ setting }) => setting === SWEEPS[name]),
  )
  const own = possible.filter((name) =>
    result.faults.some(({ setting }) => setting === SWEEPS[name]),
  )
  const chosen = possible.find((name) => name === swept) ?? own[0] ?? 'charge'
  return { possible, chosen }
}

/** What was chosen to be led over a range; kept too. */
let swept: string = readKept(SWEPT, '')

function picturesView(
  answer: SimulateAnswer,
  sweep: ReturnType<typeof sweepOf> | undefined,
): TemplateResult {
  const input = simulationIn(draft)
  const { result } = answer
  const isFaulty = result.sound !== undefined
  return html`
    ${isFaulty ? nothing : html`<p>${TEACHING.benchSound}</p>`}
    ${result.points.length > 0 ? boardPicture(isFaulty ? 'cycles-apart' : 'model-cycle', input, '/bench') : html`<p>${TEACHING.noCycle}</p>`}
    ${result.points.length > 0 ? boardPicture('mass-by-part', input, '/bench') : nothing}
    ${
      sweep
        ? html`<section aria-label="Over a range">
            <p class="ask-one">
              <label for="swept">Lead over a range</label>
              <select
                id="swept"
                @change=${(event: Event) => {
                  swept = (event.target as HTMLSelectElement).value
                  writeKept(SWEPT, swept)
                  redraw()
                }}
              >
                ${sweep.possible.map(
                  (name) =>
                    html`<option value=${name} ?selected=${name === sweep.chosen}>${choiceLabel('sweep', name)}</option>`,
                )}
              </select>
            </p>
            ${boardPicture('fault-sweep', { ...input, sweep: sweep.chosen }, '/bench')}
          </section>`
        : nothing
    }
  `
}
