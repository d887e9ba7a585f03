import * as z from 'zod'
import { ALL_DANGERS } from '../dangers.ts'
import { CalcError, under } from '../errors.ts'
import { refrigerantIn } from '../fields/index.ts'
import { type Assumption, defineOperation } from '../operation.ts'
import { mass, type Quantity, quantityIn } from '../quantity/index.ts'
import { refrigerant } from '../refrigerant/index.ts'
import { cautionsFor, certificateSentence, warningsFor } from './advice.ts'
import { type Decision, decide, type Statement, statementSource } from './decide.ts'
import { type Facts, refrigerantFacts } from './facts.ts'
import { CERTIFICATE_IDS, CERTIFICATES } from './library.ts'
import { type RulesShown, rulesOut } from './shown.ts'
import { ACTIONS, COMPRESSORS, MACHINES, PLACES, SECTORS } from './types.ts'

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
  sector: z
    .enum(SECTORS)
    .optional()
    .describe(
      'What an off-road machine works at; rules of the EU name agriculture, mining, construction',
    ),
  refrigerant: refrigerantIn,
  charge: quantityIn.mass.optional().describe('Full charge of the circuit by its label'),
  action: z.enum(ACTIONS).describe('What is to be done'),
  retrofitTo: refrigerantIn.optional().describe('For a retrofit: the refrigerant to come'),
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
type RulesInput = z.output<z.ZodObject<typeof fields>>

export const rules = defineOperation({
  name: 'rules',
  summary: 'Which rules bind this machine, this place and this person',
  description:
    'Reads decision tables of statements with section, date checked and mark: which regime binds, what certificate and equipment it asks, venting, reuse of recovered refrigerant, leak repair, records. Statements from memory are shown as unverified, to look up. A guide to the text of the law, not legal advice.',
  fields,
  check: ({ action, retrofitTo, charge }) => {
    if (charge && !(charge.si > 0)) {
      throw new CalcError('bad-input', 'A full charge of nothing cannot be.', {
        path: ['charge'],
        hint: 'Read it on the label, such as 2 lb 12 oz, or leave it out.',
      })
    }
    if (action !== 'retrofit' && retrofitTo !== undefined) {
      throw new CalcError('bad-input', `retrofitTo does not go with the action ${action}.`, {
        path: ['retrofitTo'],
        hint: 'Leave it out, or ask about the action retrofit.',
      })
    }
    if (action === 'retrofit' && retrofitTo === undefined) {
      throw new CalcError('missing-input', 'A retrofit is to which refrigerant?', {
        path: ['retrofitTo'],
        hint: 'Give retrofitTo, such as R-134a.',
      })
    }
  },
  result: rulesOut,
  cautions: { always: ['local-rules'], mayAlso: ALL_DANGERS },
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
      cautions: cautionsFor(facts, decision),
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
      sector: input.sector,
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

const named = (name: string, field: string) =>
  under(field, () => refrigerantFacts(refrigerant(name).info))

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
      says: certificateSentence(certificate),
      statements: certificate.statements,
    },
    venting: decision.venting,
    use: decision.use,
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

const described = (facts: Facts): Record<string, string | Quantity> => ({
  machine: facts.machine,
  compressor: facts.compressor ?? 'not given',
  refrigerant: facts.refrigerant.id,
  charge: facts.chargeKg === undefined ? 'not given' : mass(facts.chargeKg),
})
