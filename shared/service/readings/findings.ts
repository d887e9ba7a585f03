import * as z from 'zod'
import data from '../../../data/service/reading-findings.json' with { type: 'json' }
import { cutOutOf, reachesCutOut } from '../../diagnosis/cut-out.ts'
import { isCarbonDioxide, isVehicle } from '../../fields/index.ts'
import {
  absolutePressure,
  type Budget,
  pressureDifference,
  say,
  surelyAbove,
  surelyBelow,
  temperature,
  temperatureDifference,
  widthOf,
} from '../../quantity/index.ts'
import type { Source } from '../../sources.ts'
import { DISCHARGE_HOTTEST_K, METERING_SUPERHEAT } from './bands.ts'
import type { ReadingsInput } from './fields.ts'
import type { Figures } from './figures.ts'
import { highestGauge, suctionGauge } from './gauges.ts'
import type { Measured } from './measured.ts'
import { type ReadingSourceId, readingSource } from './sources.ts'

export type FindingId = keyof typeof data.findings

/** The most urgent first. */
const FINDING_LEVELS = ['stop', 'impossible', 'suspect', 'note'] as const

export const findingOut = z
  .strictObject({
    id: z.enum(Object.keys(data.findings) as [FindingId, ...FindingId[]]),
    level: z
      .enum(FINDING_LEVELS)
      .describe('stop: dangerous; impossible: the readings contradict each other; suspect; note'),
    message: z.string(),
    causes: z.array(z.string()),
    settle: z.array(z.string()).describe('What would tell the causes apart'),
  })
  .meta({ id: 'ReadingFinding', description: 'What the readings show besides their figures.' })

export interface Finding {
  readonly id: FindingId
  readonly level: (typeof FINDING_LEVELS)[number]
  /** What it is, without its figures. */
  readonly title: string
  readonly message: string
  readonly causes: readonly string[]
  readonly settle: readonly string[]
  readonly sources: readonly Source[]
}

function finding(id: FindingId, detail: string, more: readonly Source[] = []): Finding {
  const { level, title, causes, settle, sources } = data.findings[id]
  return {
    id,
    level: level as Finding['level'],
    title,
    message: `${title}: ${detail}.`,
    causes,
    settle,
    sources: [...sources.map((key) => readingSource(key as ReadingSourceId)), ...more],
  }
}

/** Everything that the readings show besides their figures, the most urgent first. */
export function findings(m: Measured, f: Figures, input: ReadingsInput): readonly Finding[] {
  const byPressure = pressureFindings(m, f)
  // Swapped hoses or a machine at rest make all the other figures say what is not so.
  const found = byPressure.some(({ id }) => NOT_RUNNING.includes(id))
    ? [...dangerFindings(m), ...byPressure, ...criticalFindings(m, f)]
    : [
        ...dangerFindings(m),
        ...byPressure,
        ...suctionFindings(m, f, input),
        ...liquidFindings(m, f),
        ...criticalFindings(m, f),
        ...highSideFindings(m, f),
      ]
  return FINDING_LEVELS.flatMap((level) => found.filter((entry) => entry.level === level))
}

/** Readings of a machine that does not pump, or of hoses that are swapped. */
const NOT_RUNNING: readonly FindingId[] = ['no-pressure-difference', 'suction-above-discharge']

/** A pressure at which makers let a switch stop the compressor, on whichever side it was read. */
function dangerFindings(m: Measured): readonly Finding[] {
  const cutOut = cutOutOf(m.refrigerant)
  const highest = highestGauge(m)
  if (!cutOut || !highest || !reachesCutOut(highest.si, cutOut)) return []
  const limit = `${say(cutOut.pressure)}${cutOut.basis === 'published' ? '' : ` (${cutOut.basis})`}`
  return [
    finding('above-cut-out', `${say(highest.within(undefined))}, cut-out ${limit}`, cutOut.sources),
  ]
}

function pressureFindings(m: Measured, f: Figures): readonly Finding[] {
  const { pressureDifference: apart } = f
  const list: Finding[] = []
  if (apart && surelyBelow(apart, 0)) {
    list.push(finding('suction-above-discharge', `by ${pressureText(-apart.si)}`))
  } else if (apart && !surelyAbove(apart, 0)) {
    const width = widthOf(apart)
    const detail =
      width === 0
        ? 'there is no difference between them'
        : `${pressureText(apart.si)} apart, and the gauges cannot tell less than ${pressureText(width)}`
    list.push(finding('no-pressure-difference', detail))
  }
  if (f.liquidOverDischarge && surelyAbove(f.liquidOverDischarge, 0)) {
    list.push(finding('liquid-above-discharge', `by ${pressureText(f.liquidOverDischarge.si)}`))
  }
  const suction = suctionGauge(m)
  if (suction && surelyBelow(suction, 0)) {
    list.push(
      finding('suction-in-vacuum', `${pressureText(-suction.si)} below the pressure of the air`),
    )
  }
  return list
}

function suctionFindings(m: Measured, f: Figures, input: ReadingsInput): readonly Finding[] {
  const { superheat, suctionOverBubble } = f
  if (!superheat || !suctionOverBubble) return []
  if (surelyBelow(superheat, 0)) {
    // Between the lines of a blend there is wet vapour; below both there is none.
    return isBlend(m) && !surelyBelow(suctionOverBubble, 0)
      ? [finding('liquid-in-suction-line', `${degrees(-superheat.si)} below its dew point`)]
      : [finding('suction-colder-than-dew', beyond(superheat))]
  }
  // An orifice tube floods the evaporator outlet by design: the accumulator keeps the liquid back.
  const floods = floodsByDesign(input)
  if (!surelyAbove(superheat, 0)) {
    return floods && superheat.si >= 0 ? [] : [finding('no-superheat', within(superheat))]
  }
  if (!floods && surelyBelow(superheat, METERING_SUPERHEAT.lowK)) {
    return [finding('superheat-very-low', degrees(superheat.si))]
  }
  const valve =
    input.meteringDevice === 'expansion-valve' || input.meteringDevice === 'electronic-valve'
  return valve && surelyAbove(superheat, METERING_SUPERHEAT.highK)
    ? [finding('superheat-very-high', degrees(superheat.si))]
    : []
}

/** A stationary machine has no accumulator that keeps the liquid back; without a word on it, an orifice tube has. */
function floodsByDesign({ machine, meteringDevice }: ReadingsInput): boolean {
  if (machine !== undefined && !isVehicle(machine)) return false
  return (
    meteringDevice === 'orifice-tube' ||
    (machine !== undefined && meteringDevice === 'fixed-orifice')
  )
}

function liquidFindings(m: Measured, f: Figures): readonly Finding[] {
  const { subcooling, liquidBelowDew, liquidOverAmbient } = f
  const list: Finding[] = []
  if (subcooling && liquidBelowDew) {
    if (surelyBelow(subcooling, 0)) {
      list.push(
        isBlend(m) && !surelyBelow(liquidBelowDew, 0)
          ? finding('vapour-in-liquid-line', `${degrees(-subcooling.si)} above its bubble point`)
          : finding('liquid-hotter-than-bubble', beyond(subcooling)),
      )
    } else if (!surelyAbove(subcooling, 0)) {
      list.push(finding('no-subcooling', within(subcooling)))
    }
    if (m.highFrom === 'discharge-line') {
      list.push(
        finding('subcooling-from-discharge-pressure', 'no pressure of the liquid line is given'),
      )
    }
  }
  if (liquidOverAmbient && surelyBelow(liquidOverAmbient, 0)) {
    list.push(finding('liquid-colder-than-ambient', `by ${degrees(-liquidOverAmbient.si)}`))
  }
  return list
}

function criticalFindings(m: Measured, f: Figures): readonly Finding[] {
  const list: Finding[] = []
  for (const [name, on] of [
    ['low side', f.low],
    ['high side', f.high],
  ] as const) {
    if (on?.state !== 'supercritical') continue
    const pressure = say(absolutePressure(on.absolute.si))
    const critical = say(absolutePressure(m.refrigerant.criticalPressurePa))
    list.push(
      finding(
        isCarbonDioxide(m.refrigerant) ? 'supercritical' : 'above-critical',
        `the ${name} is at ${pressure}, ${m.refrigerant.info.id} is critical at ${critical}`,
      ),
    )
  }
  return list
}

function highSideFindings(m: Measured, f: Figures): readonly Finding[] {
  const { condensingOverAmbient, dischargeSuperheat } = f
  const list: Finding[] = []
  if (condensingOverAmbient && surelyBelow(condensingOverAmbient, 0)) {
    list.push(finding('condensing-below-ambient', `by ${degrees(-condensingOverAmbient.si)}`))
  }
  if (dischargeSuperheat && surelyBelow(dischargeSuperheat, 0)) {
    list.push(finding('discharge-colder-than-dew', `by ${degrees(-dischargeSuperheat.si)}`))
  }
  const { dischargeTemperature: hot } = m
  if (hot && !isCarbonDioxide(m.refrigerant) && surelyAbove(hot, DISCHARGE_HOTTEST_K)) {
    list.push(
      finding('discharge-very-hot', `${say(hot)}, above ${say(temperature(DISCHARGE_HOTTEST_K))}`),
    )
  }
  return list
}

const isBlend = (m: Measured) => m.refrigerant.info.kind !== 'pure'
const degrees = (kelvin: number) => say(temperatureDifference(kelvin))

const pressureText = (pa: number) => say(pressureDifference(pa))

const beyond = ({ si, plusMinus }: Budget) =>
  plusMinus === undefined
    ? `by ${degrees(-si)}`
    : `by ${degrees(-si)}, where the instruments allow ${degrees(plusMinus)}`

const within = ({ si, plusMinus }: Budget) =>
  plusMinus === undefined
    ? `${degrees(si)} apart`
    : `${degrees(si)} apart, which these instruments know to ${degrees(plusMinus)}`
