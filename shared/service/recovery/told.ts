import data from '../../../data/service/recovery.json' with { type: 'json' }
import {
  type Figure,
  type Level,
  LONGEST_HEADLINE,
  MOST_NEXT,
  type Told,
} from '../../answer/told.ts'
import { isCarbonDioxide } from '../../fields/index.ts'
import { parseQuantity, type Quantity } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { mixingBasis } from '../mixing-sources.ts'
import type { CylinderResult } from './cylinder-part.ts'
import type { ExpectedResult } from './expected-part.ts'
import type { RecoveryInput } from './fields.ts'
import type { LevelResult } from './level-part.ts'

const { headlines, labels, says, next } = data.told

/** What a refrigerant scale shows: half an ounce. */
const SCALE_KG = 0.0141747615625

interface Known {
  readonly r: Refrigerant
  readonly input: RecoveryInput
  readonly expected: ExpectedResult | undefined
  readonly cylinder: CylinderResult | undefined
  readonly level: LevelResult | undefined
  readonly fits: 'yes' | 'no' | 'cannot-tell' | undefined
}

type Sentence = keyof typeof headlines

/** What comes out, where it goes, and at what to stop: the danger first. */
export function recoveryTold(known: Known): Told {
  const { cylinder } = known
  const sentence = sentenceOf(known)
  const [reason = ''] = cylinder?.reasons ?? []
  const headline = headlines[sentence]
  const said = headline.replace('{reason}', lowered(reason))
  return {
    level: LEVEL[sentence],
    headline:
      said.length <= LONGEST_HEADLINE ? said : headline.replace('{reason}', firstOf(reason)),
    figures: figuresOf(known, sentence),
    next: next[nextOf(sentence)].slice(0, MOST_NEXT),
  }
}

const lowered = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)
/** A reason up to its first colon. */
const firstOf = (reason: string) => `${lowered(reason.split(/[:;]/u)[0] ?? '')}.`

function sentenceOf({ r, expected, cylinder, level, fits }: Known): Sentence {
  if (isCarbonDioxide(r)) return 'carbon-dioxide'
  if (cylinder?.verdict === 'do-not-fill') return 'do-not-fill'
  const came = expected?.recovered?.verdict
  if (came) return came
  if (cylinder?.verdict === 'cannot-tell') return 'unknown-cylinder'
  if (cylinder?.room) {
    if (fits === 'no') return 'no-room'
    if (fits === 'cannot-tell') return 'perhaps-room'
    return fits === 'yes' ? 'fits' : 'room'
  }
  if (expected) return 'expected'
  if (level?.gaugeReading) return 'level'
  if (level?.regime === 'small-appliance') return 'small'
  return level ? 'vacuum' : 'practice'
}

const LEVEL: Readonly<Record<Sentence, Level>> = {
  'carbon-dioxide': 'check',
  'do-not-fill': 'stop',
  'unknown-cylinder': 'check',
  'no-room': 'check',
  'perhaps-room': 'check',
  fits: 'fine',
  room: 'fine',
  'as-labelled': 'fine',
  'less-than-label': 'check',
  'more-than-label': 'check',
  'cannot-tell': 'check',
  expected: 'information',
  level: 'information',
  vacuum: 'information',
  small: 'information',
  practice: 'information',
}

function nextOf(sentence: Sentence): keyof typeof next {
  switch (sentence) {
    case 'carbon-dioxide':
    case 'do-not-fill':
    case 'no-room':
      return sentence
    case 'perhaps-room':
      return 'no-room'
    case 'unknown-cylinder':
    case 'practice':
      return 'give'
    case 'less-than-label':
      return 'leak'
    case 'more-than-label':
      return 'more'
    case 'level':
    case 'vacuum':
    case 'small':
      return 'level'
    default:
      return 'fill'
  }
}

function figuresOf({ r, expected, cylinder, level, input }: Known, sentence: Sentence) {
  const scale = { step: SCALE_KG }
  const came = expected?.recovered
  const rest = expected?.basis !== 'label-charge'
  const basis = rest ? mixingBasis(r) : undefined
  return [
    ...figure('recovered', came?.mass),
    ...(came ? figure('label', input.labelCharge) : []),
    ...(came && came.verdict !== 'as-labelled' ? figure('missing', came.missing) : []),
    ...(cylinder?.verdict === 'do-not-fill'
      ? []
      : [
          ...figure('stopAt', cylinder?.stopAt, { says: says.stopAt, safe: 'down', ...scale }),
          ...figure('room', cylinder?.room, { says: says.room, safe: 'down', ...scale }),
        ]),
    ...figure('least', expected?.least, { says: rest ? says['least-rest'] : says.least, basis }),
    ...figure('most', expected?.most, { says: says.most, basis }),
    ...figure('gauge', level?.gaugeReading, { says: says.gauge }),
    ...(sentence === 'small' ? figure('inches', SMALL, { says: says.inches }) : []),
    ...figure('maximum', cylinder?.maximumContents, { says: says.maximum, safe: 'down', ...scale }),
    ...figure('full', cylinder?.liquidFullAtMaximum, { says: says.full }),
  ].slice(0, 6)
}

const SMALL = parseQuantity(data.smallAppliance.vacuum, ['gaugePressure']).in('inHg vac')

const figure = (
  id: keyof typeof labels,
  value: Quantity | undefined,
  more: Partial<Figure> = {},
): readonly Figure[] => (value === undefined ? [] : [{ id, label: labels[id], value, ...more }])
