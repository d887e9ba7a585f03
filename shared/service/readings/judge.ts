import { possibleLevels } from '../../diagnosis/signs.ts'
import { isVehicle } from '../../fields/index.ts'
import type { Budget } from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import { METERING_SUPERHEAT } from './bands.ts'
import { checkTargets } from './check-targets.ts'
import type { ReadingsInput } from './fields.ts'
import type { Figures } from './figures.ts'
import type { Finding, FindingId } from './findings.ts'
import { orificeVerdict } from './judge-orifice.ts'
import { subcoolingVerdict, withSuperheat } from './judge-subcooling.ts'
import { orificeTubeVerdict } from './judge-vehicle.ts'
import type { Measured } from './measured.ts'
import type { Difference } from './shown.ts'
import { readingSource } from './sources.ts'
import { TEXTS } from './texts.ts'
import { compared, type Judgement, notJudged, type Verdict } from './verdict.ts'

/** Contradictions and dangers that leave nothing to judge about a figure. */
const SPOILS: Readonly<Record<'superheat' | 'subcooling', readonly FindingId[]>> = {
  superheat: [
    'above-cut-out',
    'suction-colder-than-dew',
    'no-pressure-difference',
    'suction-above-discharge',
    'above-critical',
  ],
  subcooling: [
    'above-cut-out',
    'liquid-hotter-than-bubble',
    'no-pressure-difference',
    'suction-above-discharge',
    'condensing-below-ambient',
    // No condenser cools below its air: what cooled the liquid after it is no subcooling of the charge.
    'liquid-colder-than-ambient',
    'above-critical',
  ],
}

/** Target and verdict where one is defined for this machine and metering device. */
export function judge(
  m: Measured,
  f: Figures,
  input: ReadingsInput,
  found: readonly Finding[],
): Judgement {
  checkTargets(input)
  const { machine, meteringDevice } = input
  if (!machine || !meteringDevice) {
    const lacks = machine ? 'device-only' : meteringDevice ? 'machine-only' : 'machine'
    return only(notJudged('charge', 'none', TEXTS.notJudged['nothing-given'], lacks))
  }
  const orifice = meteringDevice === 'fixed-orifice' || meteringDevice === 'orifice-tube'
  if (orifice) {
    const figure = usable(f.superheat, 'superheat', m, f, found)
    if (isVerdict(figure)) return only(figure)
    return isVehicle(machine)
      ? only(orificeTubeVerdict(figure, m.refrigerant.info.id))
      : orificeVerdict(m, figure, input)
  }
  const subcooling = usable(f.subcooling, 'subcooling', m, f, found)
  const superheat = usable(f.superheat, 'superheat', m, f, found)
  const valve: Verdict = isVerdict(superheat)
    ? { ...superheat, about: 'metering-device' }
    : valveVerdict(superheat, isVerdict(subcooling) ? undefined : subcooling, m, input)
  return {
    verdicts: [
      isVerdict(subcooling)
        ? subcooling
        : withSuperheat(subcoolingVerdict(m, subcooling, input, machine), valve.outcome),
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

const isVerdict = (entry: Difference | Verdict): entry is Verdict => 'outcome' in entry

/** The figure, or why there is none to judge. */
function usable(
  measured: Difference | undefined,
  name: 'superheat' | 'subcooling',
  m: Measured,
  f: Figures,
  found: readonly Finding[],
): Difference | Verdict {
  const spoilt = found.find((entry) => SPOILS[name].includes(entry.id))
  if (spoilt) {
    const meaning = fillIn(TEXTS.notJudged.contradiction, { finding: spoilt.message })
    return notJudged('charge', name, meaning, 'figures', { outcome: 'no-valid-test', sources: [] })
  }
  if (measured) return measured
  const side = name === 'superheat' ? f.low : f.high
  if (side?.state === 'supercritical') {
    const meaning = fillIn(TEXTS.notJudged.supercritical, {
      figure: name,
      refrigerant: m.refrigerant.info.id,
    })
    return notJudged('charge', name, meaning, 'gas-cooler', {
      outcome: 'no-valid-test',
      sources: [],
    })
  }
  return notJudged('charge', name, TEXTS.notJudged[`no-${name}`], 'figures')
}

/** Superheat tells of the valve, not of the charge. */
function valveVerdict(
  measured: Difference,
  subcooling: Difference | undefined,
  m: Measured,
  input: ReadingsInput,
): Verdict {
  const { superheatLow, superheatHigh, machine } = input
  const own = superheatLow && superheatHigh
  const verdict = compared({
    about: 'metering-device',
    figure: 'superheat',
    method: own ? 'range-of-maker' : 'metering-superheat-range',
    measured,
    refrigerant: m.refrigerant.info.id,
    lowK: own ? superheatLow.si : METERING_SUPERHEAT.lowK,
    highK: own ? superheatHigh.si : METERING_SUPERHEAT.highK,
    meanings: 'superheat-valve',
    sources: [
      ...(own ? [] : METERING_SUPERHEAT.sources),
      readingSource('rp-1173'),
      readingSource('rossi-braun'),
    ],
  })
  const starved =
    verdict.outcome === 'above' && subcooling ? starvedBy(subcooling, input) : undefined
  const borrowed = !own && machine !== undefined && isVehicle(machine)
  return {
    ...verdict,
    meaning: [
      starved ?? verdict.meaning,
      ...(borrowed && verdict.outcome !== 'cannot-tell' ? [TEXTS.meanings['borrowed-range']] : []),
    ].join(' '),
  }
}

/** What starves the evaporator, where the subcooling is known well enough to say. */
function starvedBy(subcooling: Budget, { machine }: ReadingsInput): string | undefined {
  const levels = possibleLevels('subcooling', subcooling, machine)
  if (!levels.includes('low')) return TEXTS.meanings['starved-restriction']
  return levels.length === 1 ? TEXTS.meanings['starved-low-charge'] : undefined
}
