import { Quantity, show } from '../quantity/index.ts'

const LONGEST_TEXT = 120

/** What was written in a section, as words on the sheet, in its own unit; undefined for what is no single value. */
export function asWritten(value: unknown): string | undefined {
  if (value instanceof Quantity) return quantityText(value)
  if (typeof value === 'string') return value.length > LONGEST_TEXT ? undefined : value
  if (typeof value === 'number') return String(value)
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (!Array.isArray(value)) return undefined
  return value.every(isWord) ? value.join(', ') : `${value.length} entries`
}

function quantityText(quantity: Quantity): string {
  const { value, unit, plusMinus } = show(quantity.in(quantity.written), {
    units: 'us',
    precise: true,
  })
  const tidy = (figure: number) => Number(figure.toPrecision(10))
  return plusMinus === undefined
    ? `${tidy(value)} ${unit}`
    : `${tidy(value)} ±${tidy(plusMinus)} ${unit}`
}

const isWord = (entry: unknown) => typeof entry === 'string' && entry.length < 30

/** `suctionTemperature` as words on the sheet: "Suction temperature". */
export function label(field: string): string {
  const spaced = field.replace(/([a-z0-9])([A-Z])/gu, '$1 $2').toLowerCase()
  return spaced.charAt(0).toUpperCase() + spaced.slice(1)
}
