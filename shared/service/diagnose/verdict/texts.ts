import data from '../../../../data/service/diagnose.json' with { type: 'json' }
import type { Cause } from '../../../diagnosis/hypotheses.ts'
import { fillIn } from '../../../sentence.ts'
import type { NextStep } from './next.ts'

export const TEXTS = data

export const nameOf = (cause: Cause): string => data.causes[cause].name
export const stepText = ({ id }: Pick<NextStep, 'id'>): string =>
  data.steps[id as keyof typeof data.steps]

/** "low charge, overcharge or air in the system", at most so many by name. */
export function listed(causes: readonly Cause[], most = 3): string {
  const names = causes.slice(0, most).map(nameOf)
  if (causes.length > most) names.push('another')
  const last = names.pop() ?? ''
  return names.length === 0 ? last : `${names.join(', ')} or ${last}`
}

export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** A share as people say it, in tenths: nothing here is known better. */
export function inTenths(share: number): string {
  const tenths = Math.round(share * 10)
  if (tenths >= 10) return data.shares.most
  if (tenths < 1) return data.shares.least
  return fillIn(data.shares.tenths, { tenths })
}
