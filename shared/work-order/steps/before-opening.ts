import { isCarbonDioxide, pickRefrigerant } from '../../fields/index.ts'
import { breaksOpen, openCouplings } from '../breaks-open.ts'
import { HEAD_PATHS, runsOf } from '../head.ts'
import type { WorkOrderInput } from '../input.ts'
import type { Outcomes } from '../run.ts'
import { figure, instruct, newBody, type StepBody, state, take } from '../step.ts'

const OFF = {
  engine: 'engine-off',
  electric: 'engine-off',
  cargo: 'unit-off',
  building: 'power-off',
} as const

/** What must be known before anything is loosened: the law, the refrigerant, and the couplings. */
export function beforeOpening(input: WorkOrderInput, outcomes: Outcomes): StepBody {
  const body = newBody()
  lawOf(body, input, outcomes)
  const identifies = breaksOpen(input) && !isCarbonDioxide(pickRefrigerant(input.refrigerant))
  instruct(body, OFF[runsOf(input)], ...(identifies ? (['identify'] as const) : []), 'gauges-first')
  if (input.job === 'diagnose') return body
  couplingsOf(body, input)
  return body
}

/** What the law says of the certificate to open with: later steps repeat it only where theirs differs. */
export const certificateToOpen = ({ rules }: Outcomes): string | undefined =>
  rules.open?.state === 'done' ? rules.open.computation.result.certificate.says : undefined

function lawOf(body: StepBody, input: WorkOrderInput, { rules }: Outcomes): void {
  if (!rules.open) {
    body.missing.push({
      what: 'Whose law binds the work',
      path: ['place', 'law'],
      hint: 'us-federal, eu, uk, canada or australia',
    })
    return
  }
  const law = take(body, rules.open)
  if (!law) return
  figure(body, 'Law', law.lawName)
  figure(body, 'Regime', law.regime.names.join(' or '))
  body.findings.push(law.certificate.says)
  state(body, law.law, [
    ...law.regime.statements,
    ...law.certificate.statements,
    ...law.venting.statements,
    ...law.elsewhere.statements,
  ])
  const deciding = [
    ...law.regime.missing,
    ...law.certificate.statements.flatMap(({ dependsOn }) => dependsOn),
  ]
  for (const field of new Set(deciding)) {
    const path = HEAD_PATHS[field] ?? [field]
    body.missing.push({
      what: `What the law asks here depends on ${path.join('.')}`,
      path: [...path],
    })
  }
  if (!input.person?.certificates && law.certificate.held === 'not-given') {
    body.missing.push({
      what: 'Certificates held by the person who does the work',
      path: ['person', 'certificates'],
    })
  }
}

/** May the couplings be parted under charge? */
function couplingsOf(body: StepBody, input: WorkOrderInput): void {
  const couplings = input.couplings ?? []
  if (couplings.length === 0) {
    if (input.job !== 'couplers-parted') return
    instruct(body, 'sealing-only', 'hold-fixed-half', 'clean-and-cap')
    body.missing.push({
      what: 'The couplings that are parted, and whether a valve shuts both halves',
      path: ['couplings'],
    })
    return
  }
  instruct(body, 'sealing-only')
  couplings.forEach((coupling, index) => {
    const name = coupling.name ?? `Coupling ${index + 1}`
    const { couplingType } = coupling
    const seals = couplingType === undefined ? undefined : couplingType === 'two-valve'
    figure(
      body,
      name,
      seals === undefined
        ? 'not known whether a valve shuts both halves: not to be parted under charge yet'
        : seals
          ? 'a valve shuts both halves: may be parted under charge'
          : 'not shut by a valve in both halves: never to be parted under charge',
    )
    if (seals === undefined) {
      body.missing.push({
        what: `${name}: whether a valve shuts both halves`,
        path: ['couplings', index, 'couplingType'],
        hint: "See the coupling and its maker's sheet.",
      })
    }
  })
  if (openCouplings(input).length > 0) {
    instruct(body, 'recover-first')
    if (input.job === 'couplers-parted') {
      body.findings.push(
        'A coupling of this order has no valve in both halves, so this is no job under charge: recover first. Where only a section is opened, order it as section-opened.',
      )
    }
  }
  if (couplings.some(({ couplingType }) => couplingType === undefined)) {
    instruct(body, 'look-at-coupling')
  }
}
