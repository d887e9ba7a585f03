import { CalcError } from '../errors.ts'
import { findUnit, KIND_NAMES, type Kind, kindsOfUnit } from './kinds.ts'

/** Which kinds a field accepts; several where a reading may be gauge or absolute. */
export type Accepted<K extends Kind> = readonly [K, ...K[]]

/** The refusal of a unit that belongs to none of the kinds, by what it does belong to. */
export function wrongUnit(unit: string, text: string, accepted: Accepted<Kind>): CalcError {
  const others = kindsOfUnit(unit)
  const wantsPressure = accepted.some(
    (kind) => kind === 'gaugePressure' || kind === 'absolutePressure',
  )
  if (wantsPressure && others.includes('pressureDifference')) {
    return new CalcError(
      'ambiguous-quantity',
      `"${text}" does not say whether it is gauge or absolute.`,
      {
        hint: gaugeOrAbsolute(text, unit),
      },
    )
  }
  if (accepted.includes('volume') && findUnit('mass', unit)?.symbol === 'oz') {
    return new CalcError('ambiguous-quantity', `"${text}" is a weight where a volume is needed.`, {
      hint: 'For a fluid ounce write "fl oz".',
    })
  }
  const [other] = others
  if (other) {
    return new CalcError(
      'wrong-kind',
      `"${text}" is ${KIND_NAMES[other].name}; ${needed(accepted)} is needed here.`,
      {
        hint: wouldDo(accepted),
      },
    )
  }
  return new CalcError(
    'bad-quantity',
    `"${unit}" in "${text}" is not a unit of ${needed(accepted)}.`,
    {
      hint: wouldDo(accepted),
    },
  )
}

/** "Write 32 psig as a gauge shows it, 32 psia for an absolute pressure, 32 psi vac for a vacuum." */
function gaugeOrAbsolute(text: string, unit: string): string {
  const amount = text.slice(0, text.lastIndexOf(unit)).trim()
  const [gauge, absolute] =
    unit.toLowerCase() === 'psi' ? ['psig', 'psia'] : [`${unit} g`, `${unit} abs`]
  return `Write ${amount} ${gauge} as a gauge shows it, ${amount} ${absolute} for an absolute pressure, or ${amount} ${unit} vac for a vacuum.`
}

/** The refusal of a bare number, with the units that would do. */
export function missingUnit(text: string, accepted: Accepted<Kind>): CalcError {
  return new CalcError('ambiguous-quantity', `"${text}" has no unit.`, { hint: wouldDo(accepted) })
}

/** The refusal of a text that is no amount and unit. */
export function unreadable(text: string, accepted: Accepted<Kind>): CalcError {
  return new CalcError('bad-quantity', `"${text}" cannot be read as ${needed(accepted)}.`, {
    hint: wouldDo(accepted),
  })
}

const needed = (accepted: Accepted<Kind>) =>
  accepted.map((kind) => KIND_NAMES[kind].name).join(' or ')

/** The kinds with their article, to begin a sentence: "A mass". */
export const sentence = (accepted: Accepted<Kind>) => {
  const name = needed(accepted)
  return name.charAt(0).toUpperCase() + name.slice(1)
}

/** "Write it like 32 psig, 2.2 bar g …" */
export function wouldDo(accepted: Accepted<Kind>): string {
  return `Write it like ${accepted.flatMap((kind) => KIND_NAMES[kind].examples).join(', ')}.`
}
