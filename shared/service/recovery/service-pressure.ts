import data from '../../../data/service/recovery.json' with { type: 'json' }
import { refusal } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import {
  gaugePressure,
  pressureDifference,
  type Quantity,
  quantity,
  SEA_LEVEL_PA,
  say,
} from '../../quantity/index.ts'
import {
  propertyUncertainty,
  type Refrigerant,
  saturationPressure,
} from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import { sourceTable } from '../../source-table.ts'
import { plausible } from '../plausible.ts'

const sourceOf = sourceTable(data.sources)
const { servicePressure: rule, commonServicePressures: common, reasons, refusals } = data

const HOTTEST = quantity('temperature', rule.at.value, rule.at.unit)
const psi = (value: number) => quantity('pressureDifference', value, common.unit)

/** Pressure of the refrigerant in a cylinder at 131 °F, gauge at sea level, with the data's own ±. */
export function hottestPressure(r: Refrigerant): Quantity<'gaugePressure'> {
  const pressurePa = saturationPressure(r, HOTTEST.si, 'bubble')
  const own = propertyUncertainty(r, HOTTEST.si, 'bubble').pressure * pressurePa
  return gaugePressure(pressurePa - SEA_LEVEL_PA, own)
}

/**
 * Whether a cylinder of this service pressure may hold the refrigerant: its pressure at 131 °F may not
 * exceed 5/4 of it (49 CFR 173.301(a)(8)).
 *
 * @param service - As stamped; undefined where nobody read it.
 * @returns What is in doubt.
 * @throws {CalcError} `refused` for a cylinder that is too weak.
 */
export function checkServicePressure(
  r: Refrigerant,
  service: Quantity | undefined,
  notes: Notes,
): readonly string[] {
  const hot = hottestPressure(r)
  const upper = hot.si + (hot.plusMinus ?? 0)
  const shown = hot.within(undefined)
  const words = { refrigerant: r.info.id, pressure: say(shown), at: say(HOTTEST) }
  if (!service) {
    const [weakest = 0] = common.values
    const allowed = psi(rule.factor * weakest)
    if (upper <= allowed.si) return []
    notes.sources.push(sourceOf('cfr-173-301-a8'), sourceOf('common-cylinders'))
    return [
      fillIn(reasons['service-pressure-missing'], {
        ...words,
        common: say(psi(weakest)),
        allowed: say(allowed),
      }),
    ]
  }
  plausible(service, psi(50).si, psi(10_000).si, 'A service pressure', ['servicePressure'])
  const allowed = pressureDifference(rule.factor * service.si)
  notes.sources.push(sourceOf('cfr-173-301-a8'))
  notes.steps.push({
    what: 'Pressure in the cylinder at its hottest',
    formula: `saturation pressure at the hottest, against ${rule.factor} × service pressure`,
    values: { hottest: HOTTEST, servicePressure: service, allowed },
    gives: hot,
  })
  if (upper <= allowed.si) return []
  const all = { ...words, service: say(service), allowed: say(allowed) }
  if (hot.si <= allowed.si) return [fillIn(reasons['service-pressure-close'], all)]
  const [message = '', hint = ''] = refusals['too-weak']
  throw refusal(fillIn(message, all), {
    hint: fillIn(hint, { needed: say(pressureDifference(upper / rule.factor)) }),
    path: ['servicePressure'],
    cautions: ['full-cylinder', 'pressure'],
  })
}
