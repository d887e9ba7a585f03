import { CalcError } from '../../errors.ts'
import type { Assumption, Warning } from '../../operation.ts'
import type { Budget } from '../../quantity/index.ts'
import { METERING_SUPERHEAT } from './bands.ts'
import type { ReadingsInput } from './fields.ts'
import type { Figures } from './figures.ts'
import type { Finding, FindingId } from './findings.ts'
import { orificeVerdict } from './judge-orifice.ts'
import { subcoolingVerdict, withSuperheat } from './judge-subcooling.ts'
import { orificeTubeVerdict } from './judge-vehicle.ts'
import type { Measured } from './measured.ts'
import { readingSource } from './sources.ts'
import { compared, notJudged, type Verdict } from './verdict.ts'

export interface Judgement {
  readonly verdicts: readonly Verdict[]
  readonly assumptions: readonly Assumption[]
  readonly warnings: readonly Warning[]
}

/** Contradictions that leave nothing to judge about a figure. */
const SPOILS: Readonly<Record<'superheat' | 'subcooling', readonly FindingId[]>> = {
  superheat: [
    'suction-colder-than-dew',
    'no-pressure-difference',
    'suction-above-discharge',
    'above-critical',
  ],
  subcooling: [
    'liquid-hotter-than-bubble',
    'no-pressure-difference',
    'suction-above-discharge',
    'condensing-below-ambient',
    // No condenser cools below its air: what cooled the liquid after it is no subcooling of the charge.
    'liquid-colder-than-ambient',
    'above-critical',
  ],
}

/** Target and verdict where one is defined for this equipment and metering device. */
export function judge(
  m: Measured,
  f: Figures,
  input: ReadingsInput,
  found: readonly Finding[],
): Judgement {
  checkRanges(input)
  const { equipment, meteringDevice } = input
  if (!equipment || !meteringDevice) {
    return only(
      notJudged(
        'charge',
        'none',
        'No verdict: say what equipment this is (vehicle or stationary) and what feeds the evaporator (expansion valve, electronic valve, fixed orifice, orifice tube).',
      ),
    )
  }
  const orifice = meteringDevice === 'fixed-orifice' || meteringDevice === 'orifice-tube'
  if (orifice) {
    const figure = usable(f.superheat, 'superheat', m, f, found)
    if (isVerdict(figure)) return only(figure)
    return equipment === 'vehicle'
      ? only(orificeTubeVerdict(figure))
      : orificeVerdict(m, figure, input)
  }
  const subcooling = usable(f.subcooling, 'subcooling', m, f, found)
  const superheat = usable(f.superheat, 'superheat', m, f, found)
  const valve: Verdict = isVerdict(superheat)
    ? { ...superheat, about: 'metering-device' }
    : valveVerdict(superheat, input)
  return {
    verdicts: [
      isVerdict(subcooling)
        ? subcooling
        : withSuperheat(subcoolingVerdict(m, subcooling, input, equipment), valve.outcome),
      valve,
    ],
    assumptions: [],
    warnings: [],
  }
}

const only = (verdict: Verdict): Judgement => ({
  verdicts: [verdict],
  assumptions: [],
  warnings: [],
})

const isVerdict = (entry: Budget | Verdict): entry is Verdict => 'outcome' in entry

/** The figure, or why there is none to judge. */
function usable(
  measured: Budget | undefined,
  name: 'superheat' | 'subcooling',
  m: Measured,
  f: Figures,
  found: readonly Finding[],
): Budget | Verdict {
  const spoilt = found.find((entry) => SPOILS[name].includes(entry.id))
  if (spoilt) {
    return notJudged(
      'charge',
      name,
      `No valid test: clear the finding first. ${spoilt.message}`,
      'no-valid-test',
    )
  }
  if (measured) return measured
  const side = name === 'superheat' ? f.low : f.high
  if (side?.state === 'supercritical') {
    return notJudged(
      'charge',
      name,
      `No ${name} to judge: ${m.refrigerant.info.id} is above its critical pressure there. Use the maker's figures for the gas cooler, or weigh the charge.`,
      'no-valid-test',
    )
  }
  return notJudged(
    'charge',
    name,
    name === 'superheat'
      ? 'No superheat to judge: it takes the suction pressure and the suction-line temperature.'
      : 'No subcooling to judge: it takes the liquid pressure and the liquid-line temperature.',
  )
}

/** Superheat tells of the valve, not of the charge. */
function valveVerdict(measured: Budget, input: ReadingsInput): Verdict {
  const { superheatLow, superheatHigh } = input
  const own = superheatLow && superheatHigh
  const borrowed =
    !own && input.equipment === 'vehicle' ? ' The range is published for stationary equipment.' : ''
  return compared({
    about: 'metering-device',
    figure: 'superheat',
    method: own ? 'range-of-maker' : 'metering-superheat-range',
    measured,
    lowK: own ? superheatLow.si : METERING_SUPERHEAT.lowK,
    highK: own ? superheatHigh.si : METERING_SUPERHEAT.highK,
    meanings: {
      inside:
        'The valve holds its superheat. That does not prove the charge: an expansion valve does so until the charge is below about 80 %.' +
        borrowed,
      below:
        'The valve lets through too much: liquid may reach the compressor. Check bulb, contact and air flow before anything else.' +
        borrowed,
      above:
        'The evaporator is starved: low charge, a restriction, or the valve closed up. The subcooling tells the first two apart.' +
        borrowed,
    },
    sources: [
      ...(own ? [] : METERING_SUPERHEAT.sources),
      readingSource('rp-1173'),
      readingSource('rossi-braun'),
    ],
  })
}

/** @throws {CalcError} `bad-input` for half a range or one that runs backwards. */
function checkRanges(input: ReadingsInput): void {
  for (const name of ['superheat', 'subcooling'] as const) {
    const [low, high] = [input[`${name}Low`], input[`${name}High`]]
    if (!low !== !high) {
      throw new CalcError('missing-input', `Half of a ${name} range is given.`, {
        path: [low ? `${name}High` : `${name}Low`],
        hint: 'Give both ends of the range, or a target.',
      })
    }
    if (low && high && low.si > high.si) {
      throw new CalcError('bad-input', `The ${name} range runs backwards.`, {
        path: [`${name}Low`],
        hint: 'The lower end comes first.',
      })
    }
    const target = input[`${name}Target`]
    if (target && target.si < 0) {
      throw new CalcError('out-of-range', `A target ${name} below zero does not exist.`, {
        path: [`${name}Target`],
        hint: 'Give it as the maker prints it, without a sign.',
      })
    }
  }
}
