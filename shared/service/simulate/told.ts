import {
  type Figure,
  type Level,
  LONGEST_HEADLINE,
  MOST_FIGURES,
  type Told,
} from '../../answer/told.ts'
import { GAUGE_STEP_PA, type Place } from '../../instrument/index.ts'
import { fraction, type Quantity } from '../../quantity/index.ts'
import { differenceOf } from './compare.ts'
import { type Present, shownSize } from './faults.ts'
import type { Sweep } from './sweep.ts'
import { TEXTS } from './texts.ts'
import type { Reading, View } from './view.ts'

const { headlines, labels, says, next } = TEXTS

interface Known {
  readonly name: string
  readonly highFitting: 'discharge' | 'liquid'
  readonly device: 'valve' | 'tube'
  readonly present: readonly Present[]
  readonly now: View
  /** The same machine without faults; nothing where it has none. */
  readonly sound: View | undefined
  readonly sweep: Sweep | undefined
  readonly place: Place
}

/** What the machine does, and what each figure would be when sound. */
export function simulateTold(known: Known): Told {
  if (known.sweep) return sweepTold(known, known.sweep)
  const { outcome } = known.now
  const key = outcome.kind === 'cycling' ? outcome.by : outcome.kind
  return {
    level: levelOf(known.now),
    headline: headlineOf(known, headlines[key]),
    figures: figuresOf(known).slice(0, MOST_FIGURES),
    next: next[known.present.length > 0 ? 'faulty' : 'sound'],
  }
}

function levelOf({ outcome, running }: View): Level {
  const runs = outcome.kind === 'steady' || outcome.kind === 'cycling'
  return runs && running?.remarks.length === 0 ? 'information' : 'check'
}

/** "Loader, undercharged". */
function who({ name, present }: Known): string {
  const [first, ...others] = present
  if (first === undefined) return `${name}, ${TEXTS.sound}`
  return `${name}, ${others.length > 0 ? TEXTS.several : TEXTS.faults[first.fault]}`
}

/** Letters that a figure takes at most, in full precision. */
const LONGEST_FIGURE = 22

/** With as many remarks as there is room for, the gravest first: the result has them all. */
function headlineOf(known: Known, sentence: string): string {
  const filled = sentence.replace('{who}', who(known))
  const slots = filled.match(/\{\w+\}/gu) ?? []
  const fixed = filled.replace(/\{\w+\}/gu, '').length
  let room = LONGEST_HEADLINE - fixed - LONGEST_FIGURE * (slots.length - 1)
  const remarks = REMARK_ORDER.filter((id) => known.now.running?.remarks.includes(id))
    .map((id) => `, ${TEXTS.remarks[id].replace('{device}', TEXTS.devices[known.device])}`)
    .filter(({ length }) => {
      room -= length
      return room >= 0
    })
  return filled.replace('{remarks}', remarks.join(''))
}

/** What harms the machine first, then what the class is to see. */
const REMARK_ORDER = [
  'liquid-at-compressor',
  'receiver-empty',
  'vapour-at-device',
  'accumulator-empty',
  'evaporator-dry',
] as const

function figuresOf(known: Known): readonly Figure[] {
  const { now, sound, place, highFitting } = known
  const { outcome } = now
  const reading = (id: 'low' | 'high' | 'superheat' | 'subcooling' | 'vent', of: Reading) => {
    const value = now.running?.readings[of]
    return value === undefined ? [] : [figure(id, value, sound?.running?.readings[of])]
  }
  const control: readonly Figure[] =
    outcome.kind === 'cycling'
      ? [{ id: 'duty', label: labels.duty, value: fraction(outcome.duty), says: says.duty }]
      : outcome.kind === 'high-pressure-trip' || outcome.kind === 'low-pressure-trip'
        ? [
            {
              id: 'limit',
              label: labels.limit,
              value: place.gauge(outcome.limitPa).within(undefined),
              says: says.limit,
              basis: 'from memory',
              step: GAUGE_STEP_PA,
            },
          ]
        : []
  // A low side that swings shows no superheat to go by.
  const superheat = outcome.kind === 'cycling' ? [] : reading('superheat', 'superheat')
  const high = highFitting === 'liquid' ? 'liquidPressure' : 'dischargePressure'
  return [
    ...control,
    ...reading('low', 'suctionPressure'),
    ...reading('high', high),
    ...superheat,
    ...reading('subcooling', 'subcooling'),
    ...reading('vent', 'ventTemperature'),
    figure('capacity', now.capacity, sound?.capacity),
  ]
}

/** Cooling is told in hundreds of Btu/h. */
export const POWER_STEP_W = 29.3
/** What figures are told in, SI: a psi of the gauge, a tenth of a degree Fahrenheit. */
const STEPS: Partial<Record<Quantity['kind'], number>> = {
  gaugePressure: GAUGE_STEP_PA,
  power: POWER_STEP_W,
}
const STEP_K = 0.0556

function figure(id: keyof typeof labels, value: Quantity, sound: Quantity | undefined): Figure {
  const step = STEPS[value.kind] ?? STEP_K
  const plain = { id, label: labels[id], value, step }
  if (sound === undefined) return plain
  const gap = differenceOf(value, sound)
  if (Math.abs(gap.si) < step / 2) return { ...plain, says: says.same }
  const change = gap.si < 0 ? differenceOf(sound, value) : gap
  return {
    ...plain,
    says: says[gap.si < 0 ? 'lower' : 'higher'],
    // A change of a pressure is told more finely than a gauge shows it: its ends are rounded already.
    beside: {
      sound: { value: sound, step },
      change: { value: change, step: value.kind === 'gaugePressure' ? step / 10 : step },
    },
  }
}

/** Where the fault shows, and between which sizes nothing does. */
function sweepTold(known: Known, { setting, rows, plateau }: Sweep): Told {
  const present = known.present.filter((fault) => fault.setting !== setting)
  const sizes = rows.map(({ size }) => size)
  const ends = [Math.min(...sizes), Math.max(...sizes)] as const
  const [from, to] = plateau ?? ends
  const key = !plateau ? 'moves' : rows.some(({ moved }) => moved) ? 'plateau' : 'unmoved'
  const end = (id: 'from' | 'to', size: number): Figure => ({
    id,
    label: labels[id],
    value: shownSize(setting, size),
    ...(plateau ? { says: says.plateau } : {}),
  })
  return {
    level: 'information',
    headline: headlines[key]
      .replace('{who}', who({ ...known, present }))
      .replace('{setting}', TEXTS.settings[setting]),
    figures: [end('from', from), end('to', to)],
    next: next[plateau ? 'sweep' : 'sweep-moves'],
  }
}
