import { z } from 'zod'
import { type CautionId, cautions } from '../cautions.ts'
import { CalcError } from '../errors.ts'
import { type Assumption, defineOperation, type Warning } from '../operation.ts'
import { mass, type Quantity, quantityIn } from '../quantity/index.ts'
import { refrigerant } from '../refrigerant/index.ts'
import type { CertificateAnswer } from './certificate.ts'
import { type Decision, decide, type Statement, statementSource } from './decide.ts'
import { type Facts, refrigerantFacts } from './facts.ts'
import { CERTIFICATE_IDS, CERTIFICATES } from './library.ts'
import { type RulesShown, rulesOut } from './shown.ts'
import { ACTIONS, COMPRESSORS, MACHINES, PLACES } from './types.ts'

const fields = {
  place: z.enum(PLACES).describe('Whose law: us-federal, eu, uk, canada or australia'),
  machine: z
    .enum(MACHINES)
    .describe(
      'What the system cools: the cab of a road vehicle, a bus or an off-road machine; a building; or refrigerated cargo',
    ),
  compressor: z
    .enum(COMPRESSORS)
    .optional()
    .describe('open-drive (belt or coupling, shaft through the housing) or hermetic-or-electric'),
  factorySealed: z
    .boolean()
    .optional()
    .describe('Whether the unit was wholly made, charged and hermetically sealed in a factory'),
  refrigerant: z.string().min(1).describe('Refrigerant in the machine, such as R-134a'),
  charge: quantityIn.mass.optional().describe('Full charge of the circuit by its label'),
  action: z.enum(ACTIONS).describe('What is to be done'),
  retrofitTo: z.string().min(1).optional().describe('For a retrofit: the refrigerant to come'),
  forPay: z
    .boolean()
    .optional()
    .describe('Whether the work is paid in any way; barter counts as pay'),
  ownMachine: z.boolean().optional().describe("Whether the machine is the worker's own"),
  certificates: z
    .array(z.enum(CERTIFICATE_IDS))
    .max(CERTIFICATE_IDS.length)
    .optional()
    .describe('Certificates that the worker holds; an empty list says none'),
}

/** Input of `rules` once parsed. */
export type RulesInput = z.output<z.ZodObject<typeof fields>>

export const rules = defineOperation({
  name: 'rules',
  summary: 'Which rules bind this machine, this place and this person',
  description:
    'Reads decision tables of statements with section, date checked and mark: which regime binds, what certificate and equipment it asks, venting, reuse of recovered refrigerant, leak repair, records. Statements from memory are shown as unverified, to look up. A guide to the text of the law, not legal advice.',
  fields,
  check: ({ action, retrofitTo }) => {
    if (action === 'retrofit' && retrofitTo === undefined) {
      throw new CalcError('missing-input', 'A retrofit is to which refrigerant?', {
        path: ['retrofitTo'],
        hint: 'Give retrofitTo, such as R-134a.',
      })
    }
  },
  result: rulesOut,
  cautions: ['local-rules'],
  example: {
    place: 'us-federal',
    machine: 'off-road',
    compressor: 'open-drive',
    refrigerant: 'R-134a',
    charge: '2 lb 12 oz',
    action: 'recover',
    ownMachine: true,
    certificates: ['us-608-type-ii'],
  },
  compute(input) {
    const { facts, assumptions } = factsOf(input)
    const decision = decide(input.place, facts, input.certificates)
    const said = statements(decision)
    const unverified = said.filter(({ mark }) => mark === 'memory')
    return {
      result: shown(decision, facts, unverified),
      steps: [
        {
          what: 'Which regime binds',
          formula: 'first row of the decision table that fits the machine',
          values: described(facts),
          gives: decision.regime.names.join(' or '),
        },
      ],
      cautions: cautions(...cautionsFor(facts)),
      sources: said.map((statement) => statementSource(input.place, statement)),
      assumptions,
      warnings: warningsFor(decision, facts, unverified),
    }
  },
})

/** The facts that the tables are read with. @throws {CalcError} `unknown-refrigerant`. */
function factsOf(input: RulesInput): { facts: Facts; assumptions: Assumption[] } {
  const unpaid = input.forPay === undefined && input.ownMachine === true
  return {
    facts: {
      machine: input.machine,
      compressor: input.compressor,
      factorySealed: input.factorySealed,
      refrigerant: named(input.refrigerant, 'refrigerant'),
      chargeKg: input.charge?.si,
      action: input.action,
      forPay: unpaid ? false : input.forPay,
      to: input.retrofitTo === undefined ? undefined : named(input.retrofitTo, 'retrofitTo'),
    },
    assumptions: unpaid
      ? [{ field: 'forPay', taken: 'not paid', because: "the machine is the worker's own" }]
      : [],
  }
}

function named(name: string, field: string) {
  try {
    return refrigerantFacts(refrigerant(name).info)
  } catch (error) {
    throw error instanceof CalcError ? error.under(field) : error
  }
}

const statements = (decision: Decision): readonly Statement[] =>
  Object.values(decision).flatMap((part) =>
    typeof part === 'object' && 'statements' in part ? part.statements : [],
  )

function shown(decision: Decision, facts: Facts, unverified: readonly Statement[]): RulesShown {
  const { regime, certificate } = decision
  const parts = {
    place: decision.place,
    placeName: decision.placeName,
    refrigerant: facts.refrigerant.id,
    regime: { decided: regime.ids.length === 1, ...regime },
    certificate: {
      needed: certificate.needed,
      anyOf: certificate.anyOf.map((id) => ({ id, name: CERTIFICATES[id] })),
      held: certificate.held,
      says: sentence(certificate),
      statements: certificate.statements,
    },
    venting: decision.venting,
    equipment: { statements: decision.equipment.statements },
    reuse: decision.reuse,
    leakRepair: decision.leakRepair,
    retrofit: decision.retrofit,
    records: { statements: decision.records.statements },
    elsewhere: { statements: decision.elsewhere.statements },
    unverified: unverified.map(({ id }) => id),
  }
  // The tables' answers are checked against the schema's words by a test.
  return parts as unknown as RulesShown
}

function sentence({ needed, anyOf, held }: CertificateAnswer): string {
  const names = anyOf.map((id) => CERTIFICATES[id]).join('; or ')
  const need = {
    required: `A certificate is required: ${names}.`,
    'not-required': 'No certificate is required by this law.',
    'look-up': 'Look up whether a certificate is required: see the statements.',
    depends: names
      ? `Whether a certificate is required depends on what was not given; enough in any case: ${names}.`
      : 'Whether a certificate is required depends on what was not given.',
  }[needed]
  const hold = {
    enough: ' What is held is enough.',
    'not-enough': ' What is held is not enough: do not do this work.',
    'not-needed': '',
    'not-given': ' Which certificates are held was not given.',
    'cannot-tell': ' Whether what is held is enough cannot be told.',
  }[held]
  return need + hold
}

const described = (facts: Facts): Record<string, string | Quantity> => ({
  machine: facts.machine,
  compressor: facts.compressor ?? 'not given',
  refrigerant: facts.refrigerant.id,
  charge: facts.chargeKg === undefined ? 'not given' : mass(facts.chargeKg),
})

function cautionsFor({ action, refrigerant: { families }, to }: Facts): CautionId[] {
  const opens = action === 'open' || action === 'recover' || action === 'retrofit'
  return [
    'local-rules',
    'no-venting',
    ...(opens ? (['pressure', 'cold-burns'] as const) : []),
    ...(action === 'recover' ? (['no-disposable-refill', 'full-cylinder'] as const) : []),
    ...([...families, ...(to?.families ?? [])].includes('flammable')
      ? (['flammable'] as const)
      : []),
  ]
}

function warningsFor(
  { regime, certificate }: Decision,
  facts: Facts,
  unverified: readonly Statement[],
): Warning[] {
  return [
    ...(regime.ids.length > 1
      ? [
          {
            code: 'regime-undecided',
            message: `Which regime binds is not decided: give ${regime.missing.join(', ')}.`,
          },
        ]
      : []),
    ...(certificate.held === 'not-enough'
      ? [
          {
            code: 'certificate-not-enough',
            message: 'The certificates held do not cover this work.',
          },
        ]
      : []),
    ...(facts.action === 'retrofit' && facts.to?.families.includes('flammable')
      ? [
          {
            code: 'flammable-retrofit',
            message: `${facts.to.id} burns: putting it into a machine made for another refrigerant endangers people.`,
          },
        ]
      : []),
    ...(unverified.length > 0
      ? [
          {
            code: 'unverified',
            message: `${unverified.length === 1 ? 'One statement is' : `${unverified.length} statements are`} from memory and say what to look up before relying on it.`,
          },
        ]
      : []),
  ]
}
