import * as z from 'zod'
import { type Kind, type Presentation, type Quantity, Showable } from '../quantity/index.ts'
import { type FigureForm, figureText } from './figure-text.ts'
import { fillSlots } from './slots.ts'
import type { Figure, Told } from './told.ts'

/** A sentence of an answer whose numbers are shown in the asked units. */
export const sentenceOut = z.string().brand<'Sentence'>()
export type ShownSentence = z.output<typeof sentenceOut>

/** What is written into a blank, by unit system. */
const UNITS_OF: Partial<Record<Kind, { readonly us: string; readonly si: string }>> = {
  gaugePressure: { us: 'psig', si: 'kPa g' },
  absolutePressure: { us: 'micron', si: 'Pa abs' },
  temperature: { us: '°F', si: '°C' },
  mass: { us: 'lb oz', si: 'g' },
  volume: { us: 'fl oz', si: 'mL' },
  length: { us: 'mm', si: 'mm' },
  duration: { us: 'min', si: 'min' },
  fraction: { us: '%', si: '%' },
}

/** A place on paper where a figure is still to be written, with its unit behind it. */
export class Blank {
  readonly kind: Kind | undefined
  constructor(kind?: Kind) {
    this.kind = kind
  }
}

type Value =
  | Quantity
  | Blank
  | Pick<Figure, 'value' | 'step' | 'safe'>
  | string
  | number
  | undefined

const LINE = '____'

/** `{name}` stands for a value: a figure, or a blank to fill; without a value a bare line stands there. */
export class Sentence extends Showable {
  readonly text: string
  readonly values: Readonly<Record<string, Value>>

  constructor(text: string, values: Readonly<Record<string, Value>> = {}) {
    super()
    this.text = text
    this.values = values
  }

  shown(presentation: Presentation): string {
    return fillSlots(this.text, (name, form) => {
      const value = this.values[name]
      if (value === undefined) return LINE
      if (!(value instanceof Blank)) {
        const figure = typeof value === 'object' && 'value' in value ? value : { value }
        return figureText(figure, presentation, form as FigureForm | undefined)
      }
      const { units, lead = 'us' } = presentation
      const unit = value.kind && UNITS_OF[value.kind]?.[units === 'both' ? lead : units]
      return unit === undefined ? LINE : `${LINE} ${unit}`
    })
  }
}

export const sentence = (text: string, values?: Readonly<Record<string, Value>>) =>
  new Sentence(text, values)

/** The headline of an answer that another one quotes. */
export const headlineOf = ({ headline, figures }: Told): Sentence =>
  new Sentence(headline, Object.fromEntries(figures.map((figure) => [figure.id, figure])))
