import data from '../../../data/service/charging.json' with { type: 'json' }
import { refusal } from '../../errors.ts'
import { isVehicle, type Machine } from '../../fields/index.ts'
import type { Notes } from '../../notes.ts'
import { compareWithBand, type Quantity, quantity, say } from '../../quantity/index.ts'
import { sourceTable } from '../../source-table.ts'
import type { Condition } from '../condition.ts'

const sourceOf = sourceTable(data.sources)

/** Above its label a container may burst: warm it no further. @throws {CalcError} `refused`. */
export function checkWarming(
  reading: Quantity<'temperature'> | undefined,
  path: string,
  notes: Notes,
): void {
  if (!reading) return
  const { value, unit, source } = data.warmest
  const limit = quantity('temperature', value, unit)
  const place = compareWithBand(reading, Number.NEGATIVE_INFINITY, limit.si)
  notes.sources.push(sourceOf(source as 'can-label-120-f'))
  if (place === 'inside') return
  if (place === 'above') {
    throw refusal(
      `${say(reading)} is too warm for a container of refrigerant; ${say(limit)} is the limit on the label.`,
      {
        hint: 'Let it cool. Warm only with water below that, never with a flame.',
        path: [path],
        cautions: ['warm-water-only', 'full-cylinder'],
      },
    )
  }
  notes.warnings.push({
    code: 'container-may-be-too-warm',
    message: `Within its uncertainty ${say(reading)} may be above the ${say(limit)} of the label: let it cool, or measure it better.`,
  })
}

/** Whether the weather suits the way in which the charge is judged. */
export function weatherConditions(
  outdoor: Quantity<'temperature'> | undefined,
  judgeBy: 'weight' | 'subcooling' | 'superheat',
  machine: Machine | undefined,
  notes: Notes,
): readonly Condition[] {
  const found: Condition[] = []
  const { weather } = data
  if (judgeBy !== 'weight') {
    found.push(
      condition(
        'outdoors-55f',
        `Judging the charge by ${judgeBy} needs ${say(limitOf(weather['by-temperature-or-pressure']))} or more outdoors; below it, weigh the charge in.`,
        outdoor,
        weather['by-temperature-or-pressure'],
      ),
    )
  }
  if (machine && isVehicle(machine)) {
    found.push(
      condition(
        'air-70f',
        `Charging a running vehicle system needs ${say(limitOf(weather.vehicle))} or more: in colder air it takes the charge slowly.`,
        outdoor,
        weather.vehicle,
      ),
    )
  }
  notes.sources.push(...found.map((entry) => sourceOf(entry.source as 'ra3-2-2013')))
  for (const entry of found) {
    if (entry.met === 'no' || entry.met === 'cannot-tell') {
      notes.warnings.push({ code: `weather-${entry.id}`, message: entry.text })
    }
  }
  return found
}

interface Limit {
  readonly value: number
  readonly unit: string
  readonly source: string
}

const limitOf = (limit: Limit) => quantity('temperature', limit.value, limit.unit)

function condition(
  id: string,
  text: string,
  outdoor: Quantity<'temperature'> | undefined,
  limit: Limit,
): Condition {
  const { source } = limit
  if (!outdoor) return { id, met: 'not-given', text, source }
  const place = compareWithBand(outdoor, limitOf(limit).si, Number.POSITIVE_INFINITY)
  const met = place === 'inside' ? 'yes' : place === 'below' ? 'no' : 'cannot-tell'
  return { id, met, text, source }
}
