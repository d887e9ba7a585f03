import { html, nothing, type TemplateResult } from 'lit-html'
import { valueText } from '../../../shared/answer/scalar.ts'
import { capital, labelOf } from '../../../shared/answer/words.ts'
import { TEACHING } from '../../../shared/form/teaching.ts'
import type { ShownQuantity, ShownValue } from '../../../shared/quantity/index.ts'
import { isDrawing } from '../compute/compute.ts'
import { currentSettings } from '../state.ts'
import { stepsView } from '../view/folded.ts'
import { figureView } from '../view/pictures.ts'
import type { SimulateAnswer } from './answers.ts'

/** Three digits: more are not read from the back of a room. One with its ± keeps what it has. */
export const briefly = (value: ShownValue): string =>
  valueText(
    value.plusMinus === undefined ? { ...value, value: Number(value.value.toPrecision(3)) } : value,
  )

/** A figure in large figures, in the other unit system small behind it. */
export const shown = (value: ShownQuantity | undefined): TemplateResult | string =>
  value === undefined
    ? '–'
    : html`<span class="figure">${briefly(value)}</span>${value.also ? html` <span class="also">${briefly(value.also)}</span>` : nothing}`

/** Words of a figure of the model. */
const NAMES: Readonly<Record<string, string>> = {
  suctionPressure: 'Low side',
  dischargePressure: 'High side',
  liquidPressure: 'High side at the liquid line',
  suctionTemperature: 'Suction line',
  dischargeTemperature: 'Discharge line',
  liquidTemperature: 'Liquid line',
  deviceInletTemperature: 'Before the valve',
  evaporatorOutletTemperature: 'After the evaporator',
  ventTemperature: 'Vent',
  condenserOutletAir: 'Air out of the condenser',
  capacity: 'Cooling',
  power: 'Power of the shaft',
}
/** What a class looks at first; the others are folded. */
const FIRST = [
  'suctionPressure',
  'dischargePressure',
  'superheat',
  'subcooling',
  'ventTemperature',
  'capacity',
]

const nameOf = (name: string) => NAMES[name] ?? labelOf(name)

interface Row {
  readonly name: string
  readonly now?: ShownQuantity | undefined
  readonly sound?: ShownQuantity | undefined
  readonly difference?: ShownQuantity | undefined
}

const rowsOf = ({ result }: SimulateAnswer): readonly Row[] => [
  ...result.readings.map(({ reading, ...rest }) => ({ name: reading, ...rest })),
  ...result.performance.map(({ figure, ...rest }) => ({ name: figure, ...rest })),
]

/** The sound machine and the faulty one beside each other: numbers, masses by part. */
export function numbersView(answer: SimulateAnswer): TemplateResult {
  const { result } = answer
  const rows = rowsOf(answer)
  const first = rows.filter(({ name }) => FIRST.includes(name))
  const others = rows.filter(({ name }) => !FIRST.includes(name))
  const isFaulty = result.sound !== undefined
  const masses: readonly Row[] = result.parts.map(({ part, mass }) => ({
    name: part,
    now: mass,
    sound: result.sound?.parts.find((each) => each.part === part)?.mass,
  }))
  const panels = (shownRows: readonly Row[]) => html`<div class="panels">
    ${isFaulty ? panelView('Sound', shownRows, ({ sound }) => shown(sound)) : nothing}
    ${panelView(
      isFaulty ? 'Faulty' : 'Sound',
      shownRows,
      ({ now, difference }) => html`${shown(now)}${changeView(difference)}`,
    )}
  </div>`
  return html`${panels(first)}
    <details class="fold">
      <summary>Every other figure</summary>
      ${panels(others)}
    </details>
    <details class="fold">
      <summary>Where the refrigerant is</summary>
      ${panels(masses)}
    </details>`
}

const changeView = (difference: ShownQuantity | undefined) =>
  difference === undefined || difference.value === 0
    ? nothing
    : html` <span class="change">${difference.value > 0 ? '+' : '−'}${briefly({ ...difference, value: Math.abs(difference.value) })}</span>`

const panelView = (
  title: string,
  rows: readonly Row[],
  of: (row: Row) => TemplateResult | string,
) => html`<section class="panel ${title === 'Faulty' ? 'faulty' : ''}" aria-label=${title}>
  <h3>${title}</h3>
  <dl class="big">
    ${rows.map(
      (row) => html`<div>
        <dt>${capital(nameOf(row.name))}</dt>
        <dd>${of(row)}</dd>
      </div>`,
    )}
  </dl>
</section>`

/** How much larger pictures are shown than they are laid out: letters are read from the back of a room. */
const ENLARGED = 1.35
const NARROW = 320
const WIDE = 1000

/** Steps of 40 px: a window that is dragged asks for no picture with each pixel. */
const widthNow = () => {
  const room = (document.querySelector('main')?.clientWidth ?? 700) - 34
  const laid = innerWidth < 700 ? room : room / ENLARGED
  return Math.min(WIDE, Math.max(NARROW, Math.floor(laid / 40) * 40))
}

/** A picture of the machine, as wide as the view; it stays while the next one is drawn. */
export function boardPicture(
  kind: 'cycles-apart' | 'model-cycle' | 'fault-sweep' | 'mass-by-part',
  input: object,
  about: string,
): TemplateResult {
  const { units } = currentSettings()
  const picture = figureView(
    'simulate',
    kind,
    units ? { ...input, units } : input,
    widthNow(),
    about,
  )
  const drawing = isDrawing('simulate', kind, about)
  return html`<div class="board" aria-busy=${drawing ? 'true' : 'false'}>${picture}</div>`
}

/** Steps in words and numbers. */
export const workedView = (answer: SimulateAnswer): TemplateResult | typeof nothing =>
  answer.steps.length === 0
    ? nothing
    : html`<details class="fold worked">
        <summary>${TEACHING.worked}</summary>
        ${stepsView(answer)}
      </details>`
