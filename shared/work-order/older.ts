import { renamedTo } from '../fields/index.ts'
import { charge } from '../service/charge.ts'
import { charging } from '../service/charging.ts'
import { coolingCheck } from '../service/cooling-check.ts'
import { diagnose } from '../service/diagnose.ts'
import { evacuation } from '../service/evacuation.ts'
import { leakTest } from '../service/leak-test.ts'
import { oil } from '../service/oil.ts'
import { readings } from '../service/readings.ts'
import { recovery } from '../service/recovery.ts'
import { fields } from './input.ts'

type Raw = Readonly<Record<string, unknown>>

const SECTIONS: Readonly<Record<string, readonly string[]>> = {
  readings: Object.keys(readings.fields),
  readingsBefore: Object.keys(readings.fields),
  diagnosis: Object.keys(diagnose.fields),
  recovery: Object.keys(recovery.fields),
  charge: Object.keys(charge.fields),
  oil: Object.keys(oil.fields),
  leakTest: Object.keys(leakTest.fields),
  evacuation: Object.keys(evacuation.fields),
  charging: Object.keys(charging.fields),
  cooling: Object.keys(coolingCheck.fields),
  machine: Object.keys(fields.machine.shape),
}

const isObject = (value: unknown): value is Raw =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/**
 * An order of an earlier version by the names of this one, and what was changed; an order that states
 * its version, or uses no old name, stays as it is.
 */
export function modernised(raw: unknown): {
  readonly raw: unknown
  readonly changes: readonly string[]
} {
  if (!isObject(raw) || raw.version !== undefined) return { raw, changes: [] }
  const changes: string[] = []
  const top = renamed(raw, Object.keys(fields), '', changes)
  for (const [section, names] of Object.entries(SECTIONS)) {
    const part = top[section]
    if (isObject(part)) top[section] = renamed(part, names, `${section}.`, changes)
  }
  if (Array.isArray(top.couplings)) {
    top.couplings = top.couplings.map((entry, index) => typed(entry, index, changes))
  }
  return { raw: top, changes }
}

function renamed(
  part: Raw,
  names: readonly string[],
  prefix: string,
  changes: string[],
): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(part).map(([name, value]) => {
      const [now] = names.includes(name) ? [] : renamedTo(name, names)
      if (now === undefined || now in part) return [name, value]
      changes.push(`${prefix}${name} is now ${prefix}${now}`)
      return [now, value]
    }),
  )
}

/** `selfSealing` of a coupling says today what kind it is. */
function typed(entry: unknown, index: number, changes: string[]): unknown {
  if (!isObject(entry) || typeof entry.selfSealing !== 'boolean' || 'couplingType' in entry) {
    return entry
  }
  const { selfSealing, ...rest } = entry
  changes.push(`couplings.${index}.selfSealing is now couplings.${index}.couplingType`)
  return { ...rest, couplingType: selfSealing ? 'two-valve' : 'no-valve' }
}
