import * as z from 'zod'
import data from '../../../data/service/recovery.json' with { type: 'json' }
import { CalcError, under } from '../../errors.ts'
import { type Place, reader } from '../../instrument/index.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  compareWithBand,
  fraction,
  mass,
  pressureDifference,
  type Quantity,
  quantity,
  quantityOut,
  say,
  widthOf,
} from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { fillIn } from '../../sentence.ts'
import { sourceTable } from '../../source-table.ts'
import { plausible } from '../plausible.ts'
import { propertySources } from '../property-sources.ts'
import { massAtRest } from './expected-mass.ts'
import type { RecoveryInput } from './fields.ts'

const sourceOf = sourceTable(data.sources)
const { warnings } = data

export const expectedOut = z.strictObject({
  basis: z.enum(['label-charge', 'vapour-only', 'liquid-present']),
  least: quantityOut,
  most: quantityOut,
  recovered: z
    .strictObject({
      mass: quantityOut,
      ofLabel: quantityOut.optional(),
      verdict: z
        .enum(['as-labelled', 'less-than-label', 'more-than-label', 'cannot-tell'])
        .optional(),
      missing: quantityOut.optional().describe('Label charge less what came out'),
    })
    .optional(),
})

export type ExpectedResult = Computed<z.output<typeof expectedOut>>
type Span = Pick<ExpectedResult, 'basis' | 'least' | 'most'>

/** Share that a machine takes out within half an hour, by the standard for R-134a. */
const SHARE = data.recoveryShare.fraction

/** Mass that should come out, and what did; undefined when nothing speaks of it. */
export function expectedPart(
  r: Refrigerant,
  input: RecoveryInput,
  place: Place,
  notes: Notes,
): ExpectedResult | undefined {
  const { labelCharge, systemPressure, systemTemperature, volume } = input
  if (labelCharge && !(labelCharge.si > 0)) {
    throw new CalcError('bad-input', 'A label charge of nothing cannot be.', {
      hint: 'Read it on the label of the machine, such as 2 lb 6 oz.',
      path: ['labelCharge'],
    })
  }
  const given = { systemPressure, systemTemperature, volume }
  const missing = Object.entries(given).flatMap(([name, value]) => (value ? [] : [name]))
  if (missing.length > 0 && missing.length < 3 && !labelCharge) {
    throw new CalcError(
      'missing-input',
      'To estimate the mass at rest takes pressure, temperature and inner volume together.',
      { hint: `Give ${missing.join(' and ')}, or the label charge.`, path: [missing[0] ?? ''] },
    )
  }
  const estimate = fromRest(r, input, place, notes)
  const expected = labelCharge ? fromLabel(r, labelCharge, estimate, notes) : estimate
  if (!expected) return undefined
  return { ...expected, recovered: cameOut(input, notes) }
}

function warn(
  code: keyof typeof warnings,
  words: Readonly<Record<string, string>>,
  notes: Notes,
): void {
  notes.warnings.push({ code, message: fillIn(warnings[code], words) })
}

function fromLabel(
  r: Refrigerant,
  label: Quantity<'mass'>,
  estimate: Span | undefined,
  notes: Notes,
): Span {
  notes.sources.push(sourceOf('sae-j2788'))
  if (r.info.id !== 'R-134a') {
    notes.assumptions.push({
      field: 'labelCharge',
      taken: `${100 * SHARE} % as the least that comes out`,
      because: `that is the figure of SAE J2788 for R-134a in vehicles; none for ${r.info.id} is at hand`,
    })
  }
  if (estimate?.basis === 'vapour-only' && estimate.most.si < SHARE * label.si) {
    warn('less-than-label-in-system', { most: say(estimate.most), label: say(label) }, notes)
    return estimate
  }
  const least = mass(SHARE * label.si)
  notes.steps.push({
    what: 'Expected mass',
    formula: 'label charge × the share that a machine to SAE J2788 takes out in half an hour',
    values: { labelCharge: label, share: SHARE },
    gives: least,
  })
  return { basis: 'label-charge', least, most: mass(label.si) }
}

function fromRest(
  r: Refrigerant,
  input: RecoveryInput,
  place: Place,
  notes: Notes,
): Span | undefined {
  if (!input.systemPressure || !input.systemTemperature || !input.volume) return undefined
  const take = reader(input, notes)
  const gauged = take(input.systemPressure, 'a-gauge', 'systemPressure')
  const temperature = take(input.systemTemperature, 'thermometer', 'systemTemperature')
  const volume = plausible(input.volume, 1e-5, 100, 'An inner volume', ['volume'])
  const pressure = under('systemPressure', () => place.absolute(gauged))
  const { found, ...at } = under('systemTemperature', () =>
    massAtRest(r, temperature, pressure, volume),
  )
  notes.sources.push(...propertySources(r))
  notes.steps.push({
    what: 'Mass at rest',
    formula:
      at.basis === 'vapour-only'
        ? 'vapour density at this pressure and temperature × inner volume'
        : 'between saturated vapour and saturated liquid density, each × inner volume',
    values: { pressure, temperature, volume },
    gives: mass(at.mostKg),
  })
  if (found.state === 'above' && found.off) {
    warn('above-saturation', { off: say(pressureDifference(found.off.si)) }, notes)
  } else if (at.basis === 'liquid-present') warn('pressure-does-not-tell-mass', {}, notes)
  return { basis: at.basis, least: mass(at.leastKg), most: mass(at.mostKg) }
}

const INDICATED = quantity(
  'mass',
  data.indicatedRecovered.plusMinus.value,
  data.indicatedRecovered.plusMinus.unit,
)

/** What came out, as well as the scale or the machine's display knows it. */
function weighed(input: RecoveryInput, notes: Notes): Quantity<'mass'> | undefined {
  const { recovered, recoveredBy } = input
  if (!recovered || recovered.plusMinus !== undefined || recoveredBy === 'scale') {
    return reader(input, notes)(recovered, 'scale', 'recovered')
  }
  notes.assumptions.push({
    field: 'recovered',
    taken: `display of the machine ±${say(INDICATED)}`,
    because: 'machines to SAE J2788 show the recovered mass within that',
    short: `machine's display ±${say(INDICATED)}`,
  })
  notes.sources.push(sourceOf('j2788-indicated'))
  return recovered.within(INDICATED.si)
}

function cameOut(input: RecoveryInput, notes: Notes): ExpectedResult['recovered'] {
  const { labelCharge: label } = input
  const out = weighed(input, notes)
  if (!out) return undefined
  if (!label) return { mass: out }
  const width = widthOf(out)
  const missing = mass(label.si - out.si, width)
  const verdict = (
    {
      below: 'less-than-label',
      inside: 'as-labelled',
      above: 'more-than-label',
      'cannot-tell': 'cannot-tell',
    } as const
  )[compareWithBand(out, SHARE * label.si, label.si)]
  if (verdict === 'less-than-label') warn(verdict, { missing: say(missing) }, notes)
  if (verdict === 'more-than-label') warn(verdict, {}, notes)
  return { mass: out, ofLabel: fraction(out.si / label.si, width / label.si), verdict, missing }
}
