import { html, type TemplateResult } from 'lit-html'
import { live } from 'lit-html/directives/live.js'
import { ABOUT } from '../../../shared/about.ts'
import { choiceLabel, OF_THE_PLACE } from '../../../shared/form/index.ts'
import { fieldsOf } from '../../../shared/input/index.ts'
import type { Operation } from '../../../shared/operation.ts'
import { changeSettings, commonDraft, currentSettings, fill, type Units } from '../state.ts'
import { fieldView } from './field.ts'

const UNITS = ['us', 'si', 'both'] as const

/** What this device remembers: units, place and law, and how the page looks. */
export function settingsView(operation: Operation, changed: () => void): TemplateResult {
  const settings = currentSettings()
  const set = (change: Parameters<typeof changeSettings>[0]) => {
    changeSettings(change)
    changed()
  }
  const form = {
    operation: operation.name,
    draft: commonDraft(),
    units: settings.units,
    faults: [],
    redraw: changed,
    named: new Set<string>(),
    change(path: readonly (string | number)[], value: Parameters<typeof fill>[2]) {
      fill(operation.name, path, value)
      changed()
    },
  }
  const tick = (name: 'explained' | 'large', text: string) => html`<label class="tick">
    <input
      type="checkbox"
      .checked=${live(settings[name] ?? false)}
      @change=${(event: Event) => set({ [name]: (event.target as HTMLInputElement).checked })}
    />
    <span>${text}</span>
  </label>`
  return html`<article class="settings">
    <header>
      <h1 tabindex="-1">What this device remembers</h1>
      <p class="summary">It stays here: nothing that you type is sent anywhere.</p>
    </header>
    <form class="form" @submit=${(event: Event) => event.preventDefault()}>
      <fieldset class="group">
        <legend>Units of answers</legend>
        <div class="field">
          <label for="units">Units</label>
          <select
            id="units"
            @change=${(event: Event) => {
              const chosen = (event.target as HTMLSelectElement).value
              set({ units: chosen === '' ? undefined : (chosen as Units) })
            }}
          >
            <option value="" ?selected=${settings.units === undefined}>both, those of the first reading first</option>
            ${UNITS.filter((unit) => unit !== 'both').map(
              (unit) =>
                html`<option value=${unit} ?selected=${unit === settings.units}>${choiceLabel('units', unit)}</option>`,
            )}
          </select>
        </div>
      </fieldset>
      <fieldset class="group">
        <legend>Law and place</legend>
        <div class="fields">
          ${fieldsOf(operation)
            .filter(({ name }) => OF_THE_PLACE.has(name))
            .map((field) => fieldView(form, field))}
        </div>
      </fieldset>
      <fieldset class="group">
        <legend>How the page looks</legend>
        ${tick('explained', 'Explain each field under it')} ${tick('large', 'Large letters, for a wall')}
      </fieldset>
    </form>
    <p>
      ${ABOUT.name} ${ABOUT.version}, data checked ${ABOUT.data}.
      <a href="/reference">Reference of the API</a>
    </p>
  </article>`
}
