import { describe, expect, it } from 'vitest'
import {
  COMPRESSOR_DRIVES,
  type CompressorDrive,
  LAWS,
  type Law,
  MACHINES,
  type Sector,
} from '../../../shared/fields/index.ts'
import { refrigerant } from '../../../shared/refrigerant/index.ts'
import { decide } from '../../../shared/rules/decide.ts'
import { type Facts, refrigerantFacts } from '../../../shared/rules/facts.ts'
import { CERTIFICATE_IDS, type CertificateId } from '../../../shared/rules/library.ts'
import type { Action } from '../../../shared/rules/types.ts'

/**
 * Stop or permit for every cell of certificate × machine × drive × refrigerant class × paid.
 *
 * The rows below are read from the sections themselves (their statements cite them) and owe nothing
 * to the decision tables. Every cell must fall under exactly one row of its jurisdiction.
 */
type Say = 'stop' | 'permit' | 'look up'

/** One refrigerant of each class that some rule tells apart. */
const CLASSES = {
  cfc: 'R-12',
  hcfc: 'R-22',
  hfc: 'R-134a',
  hfo: 'R-1234yf',
  'hfc and hfo': 'R-513A',
  hydrocarbon: 'R-290',
  'carbon dioxide': 'R-744',
} as const
type Class = keyof typeof CLASSES
const CLASS_NAMES = Object.keys(CLASSES) as Class[]
const FLUORINATED: readonly Class[] = ['cfc', 'hcfc', 'hfc', 'hfo', 'hfc and hfo']
const LISTED: readonly Class[] = ['cfc', 'hcfc', 'hfc', 'hfc and hfo']
const NATURAL: readonly Class[] = ['hydrocarbon', 'carbon dioxide']
const butFor = (...names: readonly Class[]) => CLASS_NAMES.filter((name) => !names.includes(name))

const KINDS = [
  ...MACHINES.filter((machine) => machine !== 'off-road'),
  'off-road, construction',
  'off-road, other',
  'off-road, work not said',
] as const
type Kind = (typeof KINDS)[number]
const OFF_ROAD: readonly Kind[] = [
  'off-road, construction',
  'off-road, other',
  'off-road, work not said',
]
const ACTIONS = ['open', 'recover', 'charge'] as const satisfies readonly Action[]

interface Rule {
  readonly kinds: readonly Kind[]
  readonly drives?: readonly CompressorDrive[]
  readonly classes?: readonly Class[]
  readonly paid?: boolean
  readonly actions?: readonly Action[]
  /** These permit; every other certificate, and none, is a stop. `any` needs none. */
  readonly enough: readonly CertificateId[] | 'any' | 'look up'
  /** Held alone, these leave it open. */
  readonly open?: readonly CertificateId[]
}

const TYPE_II = ['us-608-type-ii', 'us-608-universal'] as const
const CANADIAN = ['ca-certified', 'ca-ontario-odp-card', 'ca-other-province'] as const
const ATTESTED = {
  enough: ['eu-training-attestation'],
  open: ['eu-stationary-certificate'],
} as const satisfies Partial<Rule>

const RULES: Readonly<Record<Law, readonly Rule[]>> = {
  'us-federal': [
    // 82.34(a)(2): paid work on a motor vehicle takes section 609; unpaid work takes nothing.
    { kinds: ['road-vehicle'], paid: true, enough: ['us-609'] },
    { kinds: ['road-vehicle'], paid: false, enough: 'any' },
    // 82.32(d): a bus is a motor vehicle unless it runs on R-22.
    { kinds: ['bus'], classes: butFor('hcfc'), paid: true, enough: ['us-609'] },
    { kinds: ['bus'], classes: butFor('hcfc'), paid: false, enough: 'any' },
    { kinds: ['bus'], classes: ['hcfc'], enough: TYPE_II },
    // 82.34(a)(3), 82.152: open drive and not R-22: 609 or Type II, paid or not.
    {
      kinds: OFF_ROAD,
      drives: ['open'],
      classes: butFor('hcfc'),
      enough: ['us-609', ...TYPE_II],
    },
    { kinds: OFF_ROAD, drives: ['open'], classes: ['hcfc'], enough: TYPE_II },
    // 82.161(a)(2): everything else that is not a sealed small appliance is Type II.
    { kinds: OFF_ROAD, drives: ['electric'], enough: TYPE_II },
    { kinds: ['stationary', 'refrigerated-cargo'], enough: TYPE_II },
  ],
  eu: [
    // (EU) 2025/1893: repair takes the attestation with hydrocarbon and CO2 too; recovery names F-gas.
    { kinds: ['road-vehicle', 'bus', 'off-road, construction'], classes: FLUORINATED, ...ATTESTED },
    {
      kinds: ['road-vehicle', 'bus', 'off-road, construction'],
      classes: NATURAL,
      actions: ['open', 'charge'],
      ...ATTESTED,
    },
    {
      kinds: ['road-vehicle', 'bus', 'off-road, construction'],
      classes: NATURAL,
      actions: ['recover'],
      enough: 'look up',
    },
    { kinds: ['off-road, other', 'off-road, work not said'], enough: 'look up' },
    { kinds: ['refrigerated-cargo'], enough: 'look up' },
    // (EU) 2024/573 art. 8: recovery from stationary equipment by certified people.
    {
      kinds: ['stationary'],
      classes: FLUORINATED,
      actions: ['recover'],
      enough: ['eu-stationary-certificate'],
    },
    {
      kinds: ['stationary'],
      classes: FLUORINATED,
      actions: ['open', 'charge'],
      enough: 'look up',
    },
    { kinds: ['stationary'], classes: NATURAL, enough: 'look up' },
  ],
  uk: [
    // (EC) 307/2008 art. 2(1) as retained: recovery from cars and small vans.
    {
      kinds: ['road-vehicle'],
      classes: FLUORINATED,
      actions: ['recover'],
      enough: ['uk-training-attestation'],
    },
    {
      kinds: ['road-vehicle'],
      classes: FLUORINATED,
      actions: ['open', 'charge'],
      enough: 'look up',
    },
    { kinds: ['road-vehicle'], classes: NATURAL, enough: 'look up' },
    { kinds: KINDS.filter((kind) => kind !== 'road-vehicle'), enough: 'look up' },
  ],
  canada: [
    // SOR/2022-110 s. 14 or the province: which card, the place decides; none is never enough.
    { kinds: KINDS, classes: LISTED, enough: [], open: CANADIAN },
    { kinds: KINDS, classes: ['hfo', ...NATURAL], enough: 'look up' },
  ],
  australia: [
    // Regulations 1995, reg. 110 and 111.
    { kinds: KINDS, classes: LISTED, enough: ['au-handling-licence'] },
    { kinds: KINDS, classes: ['hfo', ...NATURAL], enough: 'look up' },
  ],
}

interface Cell {
  readonly kind: Kind
  readonly drive: CompressorDrive
  readonly name: Class
  readonly paid: boolean
  readonly action: Action
}

function* cells(): Generator<Cell> {
  for (const kind of KINDS)
    for (const drive of COMPRESSOR_DRIVES)
      for (const name of CLASS_NAMES)
        for (const paid of [true, false])
          for (const action of ACTIONS) yield { kind, drive, name, paid, action }
}

const fits = (rule: Rule, { kind, drive, name, paid, action }: Cell) =>
  rule.kinds.includes(kind) &&
  (rule.drives?.includes(drive) ?? true) &&
  (rule.classes?.includes(name) ?? true) &&
  (rule.paid === undefined || rule.paid === paid) &&
  (rule.actions?.includes(action) ?? true)

const SECTOR_OF: Readonly<Partial<Record<Kind, Sector>>> = {
  'off-road, construction': 'construction',
  'off-road, other': 'other',
}
const factsOf = ({ kind, drive, name, paid, action }: Cell): Facts => ({
  machine: kind.startsWith('off-road') ? 'off-road' : (kind as Facts['machine']),
  compressorDrive: drive,
  factorySealed: false,
  sector: SECTOR_OF[kind],
  refrigerant: refrigerantFacts(refrigerant(CLASSES[name]).info),
  chargeKg: 1,
  action,
  forPay: paid,
  to: undefined,
})

const SAYS: Readonly<Record<string, Say>> = {
  enough: 'permit',
  'not-needed': 'permit',
  'not-enough': 'stop',
  'cannot-tell': 'look up',
}

function expected({ enough, open }: Rule, certificate: CertificateId | undefined): Say {
  if (enough === 'any') return 'permit'
  if (enough === 'look up') return 'look up'
  if (certificate === undefined) return 'stop'
  if (enough.includes(certificate)) return 'permit'
  return open?.includes(certificate) ? 'look up' : 'stop'
}

describe.each(LAWS)('the decision in %s', (law) => {
  it('has exactly one rule for every cell', () => {
    for (const cell of cells()) {
      const found = RULES[law].filter((rule) => fits(rule, cell))
      expect(found.length, JSON.stringify(cell)).toBe(1)
    }
  })

  it('stops, permits or sends to the book as that rule says, for each certificate and for none', () => {
    let seen = 0
    for (const cell of cells()) {
      const rule = RULES[law].find((entry) => fits(entry, cell)) as Rule
      const facts = factsOf(cell)
      for (const certificate of [undefined, ...CERTIFICATE_IDS]) {
        const { held } = decide(law, facts, certificate ? [certificate] : []).certificate
        const at = `${JSON.stringify(cell)} with ${certificate ?? 'none'}`
        expect(SAYS[held], at).toBe(expected(rule, certificate))
        seen += 1
      }
    }
    expect(seen).toBe(KINDS.length * 2 * CLASS_NAMES.length * 2 * 3 * (CERTIFICATE_IDS.length + 1))
  })

  it('is never harder on two certificates than on the better one of them', () => {
    const rank = { stop: 0, 'look up': 1, permit: 2 } as const
    const say = (facts: Facts, held: CertificateId[]) =>
      rank[SAYS[decide(law, facts, held).certificate.held] as Say]
    const own = CERTIFICATE_IDS.filter((id) => id.startsWith(law.slice(0, 2)))
    for (const cell of cells()) {
      if (cell.action !== 'recover' || !cell.paid) continue
      const facts = factsOf(cell)
      for (const one of own) {
        const alone = say(facts, [one])
        for (const other of own) {
          expect(say(facts, [one, other])).toBeGreaterThanOrEqual(alone)
        }
      }
    }
  })
})
