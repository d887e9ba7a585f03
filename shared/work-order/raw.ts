import { type Quantity, UNITS } from '../quantity/index.ts'

/** A quantity as a step's own parser reads it: in the SI unit of its kind, so without any loss. */
export function rawQuantity({ kind, si, plusMinus }: Quantity) {
  const units = UNITS[kind].filter(({ offset }) => offset === 0)
  const unit = units.find(({ factor }) => factor === 1) ?? units[0]
  const factor = unit?.factor ?? 1
  return {
    value: si / factor,
    unit: unit?.symbol ?? '',
    ...(plusMinus === undefined ? {} : { plusMinus: plusMinus / factor }),
  }
}

const LONGEST_TEXT = 120

/** What was written in a section, as words on the sheet; undefined for what is no single value. */
export function asWritten(raw: unknown): string | undefined {
  if (typeof raw === 'string') return raw.length > LONGEST_TEXT ? undefined : raw
  if (typeof raw === 'number') return String(raw)
  if (typeof raw === 'boolean') return raw ? 'yes' : 'no'
  if (Array.isArray(raw)) return raw.every(isWord) ? raw.join(', ') : `${raw.length} entries`
  if (typeof raw !== 'object' || raw === null || !('value' in raw) || !('unit' in raw)) {
    return undefined
  }
  const { value, unit } = raw
  if (typeof value !== 'number' || typeof unit !== 'string') return undefined
  const band = 'plusMinus' in raw && typeof raw.plusMinus === 'number' ? ` ±${raw.plusMinus}` : ''
  return `${value}${band} ${unit}`
}

const isWord = (entry: unknown) => typeof entry === 'string' && entry.length < 30

/** `suctionTemperature` as words on the sheet: "Suction temperature". */
export function label(field: string): string {
  const spaced = field.replace(/([a-z0-9])([A-Z])/gu, '$1 $2').toLowerCase()
  return spaced.charAt(0).toUpperCase() + spaced.slice(1)
}
