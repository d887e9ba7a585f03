import type * as z from 'zod'
import { ALL_DANGERS } from '../dangers.ts'
import { CalcError } from '../errors.ts'
import {
  choiceIn,
  compressorDriveIn,
  factorySealedIn,
  labelChargeIn,
  lawIn,
  machineIn,
  newRefrigerantIn,
  personIn,
  pickRefrigerant,
  refrigerantIn,
  sectorIn,
} from '../fields/index.ts'
import { type Assumption, defineOperation } from '../operation.ts'
import { mass, type Quantity } from '../quantity/index.ts'
import { cautionsFor, certificateSentence, warningsFor } from './advice.ts'
import { type Decision, decide, type Statement, statementSource } from './decide.ts'
import { type Facts, factsFor } from './facts.ts'
import { CERTIFICATES } from './library.ts'
import { type RulesShown, rulesOut } from './shown.ts'
import { rulesTold } from './told.ts'
import { ACTIONS } from './types.ts'

const fields = {
  law: lawIn,
  machine: machineIn,
  compressorDrive: compressorDriveIn.optional(),
  factorySealed: factorySealedIn.optional(),
  sector: sectorIn.optional(),
  refrigerant: refrigerantIn,
  labelCharge: labelChargeIn.optional(),
  action: choiceIn(ACTIONS).describe('What is to be done'),
  newRefrigerant: newRefrigerantIn.optional().describe('For a retrofit: the new refrigerant'),
  ...personIn,
}

/** Input of `rules` once parsed. */
type RulesInput = z.output<z.ZodObject<typeof fields>>

export const rules = defineOperation({
  name: 'rules',
  summary: 'Which rules bind this machine, this place and this person',
  description:
    'Reads decision tables of statements with section, date checked and mark: which regime binds, what certificate and equipment it asks, venting, reuse of recovered refrigerant, leak repair, records. Statements from memory are shown as unverified, to look up. A guide to the text of the law, not legal advice.',
  fields,
  check: ({ action, newRefrigerant, labelCharge }) => {
    if (labelCharge && !(labelCharge.si > 0)) {
      throw new CalcError('bad-input', 'A full charge of nothing cannot be.', {
        path: ['labelCharge'],
        hint: 'Read it on the label, such as 2 lb 12 oz, or leave it out.',
      })
    }
    if (action !== 'retrofit' && newRefrigerant !== undefined) {
      throw new CalcError('bad-input', `newRefrigerant does not go with the action ${action}.`, {
        path: ['newRefrigerant'],
        hint: 'Leave it out, or ask about the action retrofit.',
      })
    }
    if (action === 'retrofit' && newRefrigerant === undefined) {
      throw new CalcError('missing-input', 'A retrofit is to which refrigerant?', {
        path: ['newRefrigerant'],
        hint: 'Give newRefrigerant, such as R-134a.',
      })
    }
  },
  result: rulesOut,
  cautions: { always: ['local-rules'], mayAlso: ALL_DANGERS },
  example: {
    law: 'us-federal',
    machine: 'off-road',
    compressorDrive: 'open',
    refrigerant: 'R-134a',
    labelCharge: '2 lb 12 oz',
    action: 'recover',
    ownMachine: true,
    certificates: ['us-608-type-ii'],
  },
  compute(input) {
    const { facts, assumptions } = factsOf(input)
    const decision = decide(input.law, facts, input.certificates)
    const said = statements(decision)
    const unverified = said.filter(({ mark }) => mark === 'memory')
    return {
      result: shown(decision, facts, unverified),
      told: rulesTold(decision, facts),
      steps: [
        {
          what: 'Which regime binds',
          formula: 'first row of the decision table that fits the machine',
          values: described(facts),
          gives: decision.regime.names.join(' or '),
        },
      ],
      cautions: cautionsFor(
        facts,
        decision,
        pickRefrigerant(input.refrigerant),
        input.newRefrigerant === undefined
          ? undefined
          : pickRefrigerant(input.newRefrigerant, 'newRefrigerant'),
      ),
      sources: said.map((statement) => statementSource(input.law, statement)),
      assumptions,
      warnings: warningsFor(decision, facts, unverified),
    }
  },
})

/** The facts that the tables are read with. @throws {CalcError} `unknown-refrigerant`. */
function factsOf(input: RulesInput): { facts: Facts; assumptions: Assumption[] } {
  const unpaid = input.forPay === undefined && input.ownMachine === true
  const to =
    input.newRefrigerant === undefined
      ? undefined
      : pickRefrigerant(input.newRefrigerant, 'newRefrigerant')
  return {
    facts: factsFor({ ...input, refrigerant: pickRefrigerant(input.refrigerant), to }),
    assumptions: unpaid
      ? [{ field: 'forPay', taken: 'not paid', because: "the machine is the worker's own" }]
      : [],
  }
}

const statements = (decision: Decision): readonly Statement[] =>
  Object.values(decision).flatMap((part) =>
    typeof part === 'object' && 'statements' in part ? part.statements : [],
  )

function shown(decision: Decision, facts: Facts, unverified: readonly Statement[]): RulesShown {
  const { regime, certificate } = decision
  const parts = {
    law: decision.law,
    lawName: decision.lawName,
    refrigerant: facts.refrigerant.id,
    regime: { decided: regime.ids.length === 1, ...regime },
    certificate: {
      needed: certificate.needed,
      anyOf: certificate.anyOf.map((id) => ({ id, name: CERTIFICATES[id] })),
      held: certificate.held,
      missing: certificate.missing,
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
  machine: facts.machine ?? 'not given',
  compressorDrive: facts.compressorDrive ?? 'not given',
  refrigerant: facts.refrigerant.id,
  labelCharge: facts.chargeKg === undefined ? 'not given' : mass(facts.chargeKg),
})
