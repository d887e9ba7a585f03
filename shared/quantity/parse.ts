import { CalcError } from '../errors.ts'
import { findUnit, type Kind } from './kinds.ts'
import { physical } from './physical.ts'
import { Quantity } from './quantity.ts'
import {
  type Accepted,
  missingUnit,
  sentence,
  unreadable,
  wouldDo,
  wrongUnit,
} from './unit-refusal.ts'
import type { Unit } from './units.ts'

const NUMBER = String.raw`(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?`
const FRACTION = String.raw`(?:\d+[ -])?\d+\/\d+`
const AMOUNT = new RegExp(String.raw`^([+-]?)\s*(${FRACTION}|${NUMBER})\s*`, 'iu')
const PLUS_MINUS = /^(?:±|\+\/-|\+-)\s*/u
const LONGEST_TEXT = 80

/** Kinds whose amounts are spoken in two or three units ("2 lb 6 oz", "5 ft 3 in", "1 h 30 min"). */
const COMPOUND: ReadonlySet<Kind> = new Set<Kind>(['mass', 'length', 'duration'])

/**
 * Reads a quantity as people write it: "32 psig", "210 ±4 psig", "15 inHg vac", "2 lb 6 oz", "3/8 in", "11C".
 *
 * `±` gives the expanded uncertainty in the same unit, in another unit of the kind, or in percent of the value.
 *
 * @param text - Amount and unit.
 * @param accepted - Kinds that the field takes; the first that knows the unit wins.
 * @throws {CalcError} `ambiguous-quantity` when the unit is missing or could be two things,
 *   `wrong-kind` when it belongs to another kind, `bad-quantity` for anything else.
 */
export function parseQuantity<K extends Kind>(text: string, accepted: Accepted<K>): Quantity<K> {
  return plainQuantity(text, accepted) ?? anyQuantity(text, accepted)
}

/** Number, a ± in the same unit where there is one, unit: as most readings are written. */
const PLAIN =
  /^(\d{1,15}(?:\.\d{1,15})?) ?(?:± ?(\d{1,15}(?:\.\d{1,15})?) ?)?([a-z°]{1,12}(?: [a-z]{1,6})?)$/iu

/** A plain reading at once; undefined for anything that needs a closer look. @throws {CalcError} as {@link physical} does. */
export function plainQuantity<K extends Kind>(
  text: string,
  accepted: Accepted<K>,
): Quantity<K> | undefined {
  const match = PLAIN.exec(text)
  if (!match) return undefined
  const [, amount, plusMinus, spelled = ''] = match
  for (const kind of accepted) {
    const unit = findUnit(kind, spelled)
    if (!unit) continue
    const si = Number(amount) * unit.factor + unit.offset
    const width = plusMinus === undefined ? undefined : Math.abs(Number(plusMinus) * unit.factor)
    return physical(new Quantity(kind, si, width, undefined, unit.symbol), text)
  }
  return undefined
}

function anyQuantity<K extends Kind>(text: string, accepted: Accepted<K>): Quantity<K> {
  const cleaned = clean(text, accepted)
  const parts: Part[] = []
  let rest = cleaned
  let uncertainty: { amount: number; unit: string } | undefined
  for (let index = 0; index < 4 && rest !== ''; index += 1) {
    const part = readPart(rest, text, accepted)
    rest = part.rest
    parts.push(part)
    if (part.plusMinus !== undefined) {
      if (uncertainty !== undefined) throw unreadable(text, accepted)
      uncertainty = { amount: part.plusMinus, unit: part.percent ? '%' : part.unit }
    }
    const sign = PLUS_MINUS.exec(rest)
    if (sign) {
      const tail = readPart(rest.slice(sign[0].length), text, accepted, true)
      const once = uncertainty === undefined && tail.plusMinus === undefined
      if (tail.rest !== '' || tail.negative || !once) throw unreadable(text, accepted)
      uncertainty = { amount: tail.amount, unit: tail.unit === '' ? part.unit : tail.unit }
      rest = ''
    }
  }
  if (rest !== '') throw unreadable(text, accepted)
  return assemble(text, parts, uncertainty, accepted)
}

interface Part {
  readonly amount: number
  readonly negative: boolean
  readonly unit: string
  readonly plusMinus: number | undefined
  readonly percent: boolean
  readonly rest: string
}

function clean(text: string, accepted: Accepted<Kind>): string {
  if (text.length > LONGEST_TEXT) {
    throw new CalcError(
      'bad-quantity',
      `A quantity of ${text.length} characters is too long to be one.`,
      {
        hint: wouldDo(accepted),
      },
    )
  }
  const trimmed = withoutThousands(text)
    .trim()
    .replace(/[‐‑−–﹣－]/gu, '-')
    .replace(/\^(?=[23])/gu, '')
    .replace(/\s+/gu, ' ')
  if (trimmed === '') {
    throw new CalcError(
      'missing-input',
      `${sentence(accepted)} is needed, and the text is empty.`,
      {
        hint: wouldDo(accepted),
      },
    )
  }
  if (/\p{Nd}/u.test(trimmed.replace(/[0-9]/gu, ''))) {
    throw new CalcError('bad-quantity', `"${text}" has digits other than 0 to 9.`, {
      hint: 'Write the number with the digits 0 to 9.',
    })
  }
  if (/\d,\d/u.test(trimmed)) {
    throw new CalcError(
      'bad-quantity',
      `"${text}" has a comma in the number, which could be a decimal mark or a thousands mark.`,
      {
        hint: 'Use a point as the decimal mark and no thousands mark: 1.5, 1200.',
      },
    )
  }
  return trimmed
}

/** Units in whose countries a comma before three digits parts thousands, never decimals. */
const THOUSANDS =
  /^([+-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?)(?=\s*(?:ft|feet|foot|lbs?|psi[ag]?|microns?|hours?|h)\b)/iu

/** "9,000 ft" as 9000 ft; "1,500 kg" stays, and is asked about, since it may mean one and a half. */
const withoutThousands = (text: string) =>
  text.trim().replace(THOUSANDS, (amount) => amount.replaceAll(',', ''))

function readPart(
  source: string,
  text: string,
  accepted: Accepted<Kind>,
  unitOptional = false,
): Part {
  const match = AMOUNT.exec(source)
  if (!match) throw unreadable(text, accepted)
  let rest = source.slice(match[0].length)
  let plusMinus: number | undefined
  let percent = false
  const sign = PLUS_MINUS.exec(rest)
  if (sign) {
    const second = AMOUNT.exec(rest.slice(sign[0].length))
    if (!second || second[1] === '-') throw unreadable(text, accepted)
    plusMinus = amountOf(second[2] ?? '', text, accepted)
    rest = rest.slice(sign[0].length + second[0].length)
    if (rest.startsWith('%') && rest.length > 1) {
      percent = true
      rest = rest.slice(1).trim()
    }
  }
  // A unit runs to the next amount or ±; the digits inside units are the exponents of lengths and H2O.
  const unit =
    /^(?:[^\d±+]|(?<=cm|\/in)[23](?![0-9.])|(?<=m|in|ft|\/s)[23](?![0-9.a-z])|(?<=h)2(?=o))*/iu.exec(
      rest,
    )?.[0] ?? ''
  const trimmed = trailingDash(unit)
  if (trimmed.unit === '' && !unitOptional) throw missingUnit(text, accepted)
  return {
    amount: amountOf(match[2] ?? '', text, accepted),
    negative: match[1] === '-',
    unit: trimmed.unit,
    plusMinus,
    percent,
    rest: (trimmed.dash + rest.slice(unit.length)).trim(),
  }
}

/** "2 lb -6 oz": a dash before the next amount belongs to that amount. */
function trailingDash(unit: string): { unit: string; dash: string } {
  const found = /^(.*\S)\s+-$/u.exec(unit.trimEnd())
  return found ? { unit: (found[1] ?? '').trim(), dash: '-' } : { unit: unit.trim(), dash: '' }
}

function amountOf(digits: string, text: string, accepted: Accepted<Kind>): number {
  const fraction = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/u.exec(digits)
  const value = fraction
    ? Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3])
    : Number(digits)
  if (!Number.isFinite(value)) throw unreadable(text, accepted)
  return value
}

function assemble<K extends Kind>(
  text: string,
  parts: readonly Part[],
  uncertainty: { amount: number; unit: string } | undefined,
  accepted: Accepted<K>,
): Quantity<K> {
  const [first, ...others] = parts
  if (!first) throw unreadable(text, accepted)
  const { kind, unit } = resolveUnit(first.unit, text, accepted)
  const sign = first.negative ? -1 : 1
  let si = sign * first.amount * unit.factor + unit.offset
  let previous = unit
  if (others.length > 0 && !COMPOUND.has(kind)) throw unreadable(text, accepted)
  for (const part of others) {
    const next = findUnit(kind, part.unit)
    if (!next || part.negative || next.factor >= previous.factor) throw unreadable(text, accepted)
    si += sign * part.amount * next.factor
    previous = next
  }
  return physical(
    new Quantity(
      kind,
      si,
      halfWidth(kind, si, unit, uncertainty, text, accepted),
      undefined,
      unit.symbol,
    ),
    text,
  )
}

function halfWidth(
  kind: Kind,
  si: number,
  unit: Unit,
  uncertainty: { amount: number; unit: string } | undefined,
  text: string,
  accepted: Accepted<Kind>,
): number | undefined {
  if (!uncertainty) return undefined
  if (uncertainty.unit === '%' && kind !== 'fraction') {
    const span = unit.offset === 0 ? si : si - unit.offset
    return Math.abs((uncertainty.amount / 100) * span)
  }
  const found = findUnit(kind, uncertainty.unit) ?? differenceUnit(kind, uncertainty.unit)
  if (!found) throw unreadable(text, accepted)
  return Math.abs(uncertainty.amount * found.factor)
}

/** "32 psig ±1 psi" and "52 °F ±2 K": the half-width is a difference, so its unit needs no zero. */
function differenceUnit(kind: Kind, unit: string): Unit | undefined {
  if (kind === 'temperature') return findUnit('temperatureDifference', unit)
  if (kind === 'gaugePressure' || kind === 'absolutePressure') {
    return findUnit('pressureDifference', unit)
  }
  return undefined
}

/** The kind and unit that `unit` spells, of those accepted. @throws {CalcError} as {@link parseQuantity}. */
export function resolveUnit<K extends Kind>(
  unit: string,
  text: string,
  accepted: Accepted<K>,
): { kind: K; unit: Unit } {
  for (const kind of accepted) {
    const found = findUnit(kind, unit)
    if (found) return { kind, unit: found }
  }
  throw wrongUnit(unit, text, accepted)
}
