import * as z from 'zod'
import data from '../../../data/service/recovery.json' with { type: 'json' }
import { CalcError, under } from '../../errors.ts'
import type { Notes } from '../../notes.ts'
import type { Computed } from '../../operation.ts'
import {
  fraction,
  mass,
  type PressureReading,
  type Quantity,
  quantityOut,
  say,
  toAbsolute,
} from '../../quantity/index.ts'
import { type Refrigerant, saturationPressure } from '../../refrigerant/index.ts'
import { sourceTable } from '../../source-table.ts'
import { plausible } from '../plausible.ts'
import { propertySources } from '../property-sources.ts'
import { J2788_SHARE, massAtRest } from './expected-mass.ts'

const sourceOf = sourceTable(data.sources)

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

interface ExpectedInput {
  readonly labelCharge?: Quantity<'mass'> | undefined
  readonly recovered?: Quantity<'mass'> | undefined
  readonly systemPressure?: PressureReading | undefined
  readonly systemTemperature?: Quantity<'temperature'> | undefined
  readonly internalVolume?: Quantity<'volume'> | undefined
}

/** Uncertainty of the mass that a recovery machine indicates, kg (1 oz). */
const INDICATED_KG = 0.028349523125
/** Where the readings carry no uncertainty: one small division of a service gauge and of a thermometer. */
const PRESSURE_PA = 7_000
const TEMPERATURE_K = 1

/** Mass that should come out, and what did; undefined when nothing speaks of it. */
export function expectedPart(
  r: Refrigerant,
  input: ExpectedInput,
  barometerPa: number,
  notes: Notes,
): ExpectedResult | undefined {
  const { labelCharge, systemPressure, systemTemperature, internalVolume } = input
  if (labelCharge && !(labelCharge.si > 0)) {
    throw new CalcError('bad-input', 'A label charge of nothing cannot be.', {
      hint: 'Read it on the label of the machine, such as 2 lb 6 oz.',
      path: ['labelCharge'],
    })
  }
  const readings = [systemPressure, systemTemperature, internalVolume]
  const names = ['systemPressure', 'systemTemperature', 'internalVolume']
  const missing = names.filter((_, index) => readings[index] === undefined)
  if (missing.length > 0 && missing.length < 3 && !labelCharge) {
    throw new CalcError(
      'missing-input',
      'To estimate the mass at rest takes pressure, temperature and internal volume together.',
      { hint: `Give ${missing.join(' and ')}, or the label charge.`, path: [missing[0] ?? ''] },
    )
  }
  const estimate =
    systemPressure && systemTemperature && internalVolume
      ? atRest(r, systemPressure, systemTemperature, internalVolume, barometerPa, notes)
      : undefined
  const expected = labelCharge ? fromLabel(r, labelCharge, estimate, notes) : estimate
  if (!expected) return undefined
  return { ...expected, recovered: cameOut(input.recovered, labelCharge, notes) }
}

/** Above this multiple of the saturation pressure the readings are more than roughly off. */
const ABOVE_SATURATION = 1.1

type Span = Pick<ExpectedResult, 'basis' | 'least' | 'most'>

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
      taken: '95 % as the least that comes out',
      because: `that is the figure of SAE J2788 for R-134a in vehicles; none for ${r.info.id} is at hand`,
    })
  }
  if (estimate?.basis === 'vapour-only' && estimate.most.si < J2788_SHARE * label.si) {
    notes.warnings.push({
      code: 'less-than-label-in-system',
      message: `At rest the system holds only vapour, at most ${say(estimate.most)} of the ${say(label)} on the label: find the leak before it is charged again.`,
    })
    return estimate
  }
  notes.steps.push({
    what: 'Expected mass',
    formula: 'label charge, of which a machine to SAE J2788 takes out at least 95 % in 30 minutes',
    values: { labelCharge: label, share: J2788_SHARE },
    gives: mass(J2788_SHARE * label.si),
  })
  return { basis: 'label-charge', least: mass(J2788_SHARE * label.si), most: mass(label.si) }
}

function atRest(
  r: Refrigerant,
  reading: PressureReading,
  temperature: Quantity<'temperature'>,
  volume: Quantity<'volume'>,
  barometerPa: number,
  notes: Notes,
): Span {
  plausible(volume, 1e-5, 100, 'An internal volume', ['internalVolume'])
  const pressure = under('systemPressure', () => toAbsolute(reading, barometerPa))
  if (pressure.plusMinus === undefined || temperature.plusMinus === undefined) {
    notes.assumptions.push({
      field: 'systemPressure',
      taken: 'gauge ±1 psi (7 kPa) and thermometer ±1.8 °F (1 K) where none was stated',
      because: 'no uncertainty was given with the readings',
    })
  }
  const found = under('systemTemperature', () =>
    massAtRest(
      r,
      { si: temperature.si, plusMinus: temperature.plusMinus ?? TEMPERATURE_K },
      { si: pressure.si, plusMinus: pressure.plusMinus ?? PRESSURE_PA },
      volume.si,
    ),
  )
  notes.sources.push(...propertySources(r))
  notes.steps.push({
    what: 'Mass at rest',
    formula:
      found.basis === 'vapour-only'
        ? 'vapour density at this pressure and temperature × internal volume'
        : 'between saturated vapour and saturated liquid density, each × internal volume',
    values: { pressure, temperature, volume },
    gives: mass(found.mostKg),
  })
  const bubblePa = saturationPressure(r, temperature.si, 'bubble')
  if (found.basis === 'liquid-present' && pressure.si > ABOVE_SATURATION * bubblePa) {
    notes.warnings.push({
      code: 'above-saturation',
      message:
        'The pressure at rest is well above saturation at this temperature: air or another refrigerant is in it, or the temperature is not that of the system. Do the air check and identify it before it goes into a clean cylinder.',
    })
  } else if (found.basis === 'liquid-present') {
    notes.warnings.push({
      code: 'pressure-does-not-tell-mass',
      message:
        'The pressure at rest is that of saturation, so liquid is there and the pressure says nothing about how much: only the scale will.',
    })
  }
  return { basis: found.basis, least: mass(found.leastKg), most: mass(found.mostKg) }
}

function cameOut(
  recovered: Quantity<'mass'> | undefined,
  label: Quantity<'mass'> | undefined,
  notes: Notes,
): ExpectedResult['recovered'] {
  if (!recovered) return undefined
  if (!label) return { mass: recovered }
  const width = recovered.plusMinus ?? INDICATED_KG
  if (recovered.plusMinus === undefined) {
    notes.assumptions.push({
      field: 'recovered',
      taken: '±1 oz (28 g)',
      because: 'machines to SAE J2788 indicate the recovered mass within 1 oz',
    })
    notes.sources.push(sourceOf('j2788-indicated'))
  }
  const least = J2788_SHARE * label.si
  const [low, high] = [recovered.si - width, recovered.si + width]
  const verdict =
    high < least
      ? 'less-than-label'
      : low > label.si
        ? 'more-than-label'
        : low >= least && high <= label.si
          ? 'as-labelled'
          : 'cannot-tell'
  if (verdict === 'cannot-tell' || verdict === 'as-labelled') return found(verdict)
  notes.warnings.push({
    code: verdict,
    message:
      verdict === 'less-than-label'
        ? `Less came out than the label says: ${say(mass(label.si - recovered.si, width))} are missing. Look for the leak, or for refrigerant still trapped in oil and accumulator.`
        : 'More came out than the label says: it was overcharged, or what came out is not refrigerant alone. Check it for air and identify it before reuse.',
  })
  return found(verdict)

  function found(name: 'as-labelled' | 'less-than-label' | 'more-than-label' | 'cannot-tell') {
    const taken = recovered as Quantity<'mass'>
    const full = label as Quantity<'mass'>
    return {
      mass: taken,
      ofLabel: fraction(taken.si / full.si, width / full.si),
      verdict: name,
      missing: mass(full.si - taken.si, width),
    }
  }
}
