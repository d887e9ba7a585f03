import { slotsOf } from '../../answer/slots.ts'
import { type Figure, type Level, MOST_FIGURES, MOST_NEXT, type Told } from '../../answer/told.ts'
import type { Pattern } from '../../diagnosis/patterns.ts'
import { isVehicle } from '../../fields/index.ts'
import { REFRIGERANT_DATA } from '../../physics/saturating.ts'
import { pressureDifference } from '../../quantity/index.ts'
import { fillIn } from '../../sentence.ts'
import type { ReadingsInput } from './fields.ts'
import type { Figures } from './figures.ts'
import type { Finding } from './findings.ts'
import type { Measured } from './measured.ts'
import type { Rest } from './rest.ts'
import { TEXTS } from './texts.ts'
import { dangerFigures, restFigures, runningFigures } from './told-figures.ts'
import type { Verdict } from './verdict.ts'

const { headlines, next } = TEXTS

/** Everything that the answer is told from. */
export interface Known {
  readonly m: Measured
  readonly f: Figures
  readonly input: ReadingsInput
  readonly found: readonly Finding[]
  readonly patterns: readonly Pattern[]
  readonly rest: Rest | undefined
  readonly verdicts: readonly Verdict[]
}

/** What is said first: how urgent, in which words, and what to do. */
interface Saying {
  readonly level: Level
  /** The first whose figures are all there is taken. */
  readonly headlines: readonly string[]
  readonly next: readonly string[]
}

/** The answer in a mechanic's words: danger first, then the machine at rest, faults, the charge. */
export function readingsTold(known: Known): Told {
  const { m, f, rest, verdicts } = known
  const figures: readonly Figure[] = rest
    ? [...dangerIf(known), ...restFigures(m, rest, { off: offOf(rest) })]
    : [...dangerIf(known), ...runningFigures(m, f, verdicts)]
  const said =
    danger(known) ??
    atRest(known) ??
    contradiction(known) ??
    pattern(known) ??
    outOfBand(known) ??
    suspect(known) ??
    verdict(known)
  const ids = new Set(figures.map(({ id }) => id))
  const headline =
    said.headlines.find((text) => slotsOf(text).every((id) => ids.has(id))) ??
    said.headlines.at(-1) ??
    ''
  const named = slotsOf(headline)
  const first = figures.filter(({ id }) => named.includes(id))
  // The pressures themselves are told only where a sentence or a lack of anything better asks for them.
  const others = figures.filter(
    ({ id }) =>
      !named.includes(id) && ((id !== 'lowSide' && id !== 'highSide') || noBetter(figures)),
  )
  const most = [...first, ...others].slice(0, MOST_FIGURES).map(({ id }) => id)
  return {
    level: said.level,
    headline,
    figures: figures.filter(({ id }) => most.includes(id)),
    next: said.next.slice(0, MOST_NEXT),
  }
}

const noBetter = (figures: readonly Figure[]) => figures.length < MOST_FIGURES

const dangerIf = (known: Known) =>
  known.found.some(({ level }) => level === 'stop') ? dangerFigures(known.m) : []

const offOf = ({ against }: Rest) =>
  against?.off && pressureDifference(against.off.si, against.off.plusMinus)

function danger({ found }: Known): Saying | undefined {
  const stop = found.filter(({ level }) => level === 'stop')
  if (stop.length === 0) return undefined
  const switched = stop.some(({ id }) => id === 'above-cut-out')
  return {
    level: 'stop',
    headlines: [headlines[switched ? 'cut-out' : 'above-critical']],
    next: next.stop,
  }
}

function atRest({ rest }: Known): Saying | undefined {
  if (!rest) return undefined
  const state = rest.against?.state
  if (state === undefined || state === 'liquid-full') {
    return { level: 'check', headlines: [headlines.rest['no-air']], next: next.rest['no-air'] }
  }
  return {
    level: state === 'at' || state === 'between' ? 'information' : 'check',
    headlines: [headlines.rest[state]],
    next: next.rest[state],
  }
}

function contradiction({ found }: Known): Saying | undefined {
  const first = found.find(({ level }) => level === 'impossible')
  return first && byFinding(first, headlines.contradiction)
}

function pattern({ patterns: [first] }: Known): Saying | undefined {
  return first && { level: 'check', headlines: first.headlines, next: first.next }
}

function suspect({ found }: Known): Saying | undefined {
  const first = found.find(({ level }) => level === 'suspect')
  return first && byFinding(first, headlines.suspect)
}

const byFinding = ({ title, settle }: Finding, texts: readonly string[]): Saying => ({
  level: 'check',
  headlines: texts.map((text) => fillIn(text, { finding: lowered(title) })),
  next: settle,
})

const lowered = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)

/** A charge or a valve that is surely out of its band. */
function outOfBand(known: Known): Saying | undefined {
  const [charge, valve] = judged(known)
  const out = (one: Verdict | undefined) => one?.outcome === 'below' || one?.outcome === 'above'
  if (charge && out(charge)) return byCharge(charge, known)
  return valve && out(valve) ? byValve(valve, known) : undefined
}

function verdict(known: Known): Saying {
  const [charge, valve] = judged(known)
  const decided = charge?.outcome === 'inside' || charge?.outcome === 'cannot-tell'
  if (charge && decided) return byCharge(charge, known)
  if (valve?.outcome === 'inside' || valve?.outcome === 'cannot-tell') return byValve(valve, known)
  const lacks = charge?.lacks ?? valve?.lacks ?? 'figures'
  const why = headlines.why[lacks]
  const ways: Partial<Record<typeof lacks, string>> = {
    machine: next.machine,
    'machine-only': next['machine-only'],
    'device-only': next['device-only'],
    maker: next.target,
    figures: next.pipes,
  }
  return {
    level: 'information',
    headlines: headlines.figures.map((text) => text.replaceAll('{why}', why)),
    next: [ways[lacks] ?? next.pipes],
  }
}

const judged = ({ verdicts }: Known) =>
  [
    verdicts.find(({ about }) => about === 'charge'),
    verdicts.find(({ about }) => about === 'metering-device'),
  ] as const

function byCharge(charge: Verdict, { input }: Known): Saying {
  const { outcome, special, meanings, figure } = charge
  const kind = meanings?.split('-')[1] ?? 'vehicle'
  const vehicle = input.machine === undefined || isVehicle(input.machine)
  const texts: Readonly<Record<string, string>> = headlines.charge
  const key =
    special ??
    (outcome === 'cannot-tell'
      ? `cannot-tell-${figure}`
      : `${outcome}-${outcome === 'inside' && kind === 'orifice' ? 'stationary' : kind}`)
  const ways =
    outcome === 'inside'
      ? [next['cools-badly']]
      : special === 'from-discharge'
        ? [next['liquid-pressure'], next.weigh]
        : special === 'restricted'
          ? [next['feel-line'], next.bulb]
          : special === 'overfed'
            ? [next.bulb, next['air-flow']]
            : outcome === 'cannot-tell'
              ? [...betterOf(charge), next.weigh]
              : lessThanFull(charge)
                ? [next['leak-first'], next['recover-weigh']]
                : figure === 'superheat'
                  ? [next['air-flow'], ...(vehicle ? [next['recover-weigh']] : [])]
                  : [next['air-at-rest'], next['recover-weigh']]
  return {
    level: outcome === 'inside' ? 'fine' : 'check',
    headlines: [texts[key] ?? texts['inside-vehicle'] ?? ''],
    next: ways,
  }
}

/** A low subcooling or a high superheat. */
const lessThanFull = ({ figure, outcome }: Verdict) =>
  (figure === 'subcooling') === (outcome === 'below')

function byValve(valve: Verdict, known: Known): Saying {
  const { outcome } = valve
  const ways = {
    inside: [next['cools-badly']],
    below: [next.bulb, next['air-flow']],
    above: [next['feel-line'], next['leak-first'], next.bulb],
    'cannot-tell': [...betterOf(valve), next.weigh],
  } as const
  const key = outcome as keyof typeof ways
  return {
    level: outcome === 'inside' ? 'information' : 'check',
    headlines: key === 'above' ? starved(known) : [headlines.valve[key]],
    next: ways[key],
  }
}

/** A high superheat, by what the subcooling adds to it. */
function starved(known: Known): readonly string[] {
  const [charge] = judged(known)
  return [headlines.valve[charge?.outcome === 'cannot-tell' ? 'above-near' : 'above']]
}

function betterOf({ weakest }: Verdict): readonly string[] {
  if (weakest === undefined) return []
  return [weakest === REFRIGERANT_DATA ? next.chart : fillIn(next.better, { name: weakest })]
}
