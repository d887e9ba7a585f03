import data from '../../../data/service/charging.json' with { type: 'json' }
import type { CautionId } from '../../cautions.ts'
import { dangersOf } from '../../dangers.ts'
import { CalcError } from '../../errors.ts'
import { isCarbonDioxide, pickRefrigerant } from '../../fields/index.ts'
import { reader, resolvePlace } from '../../instrument/index.ts'
import { type Notes, newNotes, withNotes } from '../../notes.ts'
import { mass, propagate, say } from '../../quantity/index.ts'
import type { Refrigerant } from '../../refrigerant/index.ts'
import { sourceTable } from '../../source-table.ts'
import { propertySources, propertyWarnings } from '../property-sources.ts'
import { statementSources, statementTable } from '../statement.ts'
import { amountToAdd } from './amounts.ts'
import { cansOf } from './cans-part.ts'
import { checkWarming, weatherConditions } from './conditions.ts'
import { checkDryIce } from './dry-ice.ts'
import type { ChargingGiven, ChargingInput } from './fields.ts'
import { pressures } from './flow.ts'
import { hoseOf } from './hose-part.ts'
import { checkRoute, isBlendWithGlide, rightRoutes } from './route.ts'
import { scaleReadings } from './scale.ts'
import { toldOf } from './told.ts'

const sourceOf = sourceTable(data.sources)
const statements = statementTable(data.statements, sourceOf)

/** What the scale must read, which way in, and what not to do. */
export function computeCharging(given: ChargingGiven) {
  const r = pickRefrigerant(given.refrigerant)
  const notes = newNotes()
  const place = resolvePlace(given)
  notes.cautions.push(...cautionsOf(r, given))
  notes.warnings.push(...propertyWarnings(r), ...checkRoute(r, given))
  const read = withReadings(given, notes)
  checkDryIce(r, read.phase, read.systemPressure, place)
  if (read.systemPressure ?? read.sourceTemperature ?? read.serviceHosePressure) {
    notes.assumptions.push(...place.assumptions)
    notes.sources.push(...place.sources)
    notes.warnings.push(...place.warnings)
  }
  checkWarming(read.waterTemperature, 'waterTemperature', notes)
  checkWarming(read.sourceTemperature, 'sourceTemperature', notes)
  const input = withCharge(read)
  const amount = amountToAdd(input, notes)
  const { toAdd, tolerance } = amount
  const hose = hoseOf(r, input, tolerance.si, place, notes)
  const holdUp = hose?.holdUp ?? mass(0)
  const leaves = propagate([toAdd, holdUp], (add = 0, kept = 0) => Math.max(add + kept, 0))
  const leavesSource = mass(leaves.si, leaves.plusMinus)
  const tooEmpty = (input.sourceContents?.si ?? Number.POSITIVE_INFINITY) < leaves.si
  if (tooEmpty && input.sourceContents) {
    notes.warnings.push({
      code: 'source-too-empty',
      message: `The source holds ${say(input.sourceContents)}, less than the ${say(leavesSource)} that must leave it.`,
    })
  }
  const routes = statements(...rightRoutes(r, input.engine))
  const practice = statements(...practiceOf(r, input))
  notes.sources.push(...statementSources([...routes, ...practice], sourceOf), ...propertySources(r))
  const scale = scaleReadings(amount, holdUp, input, notes)
  const cans = cansOf(input, leaves.si, notes)
  const driven = pressures(r, input, place, notes)
  const { labelCharge } = input
  const result = {
    refrigerant: r.info.id,
    band: {
      low: mass(Math.max(labelCharge.si - tolerance.si, 0)),
      target: labelCharge,
      high: mass(labelCharge.si + tolerance.si),
    },
    toAdd,
    leavesSource,
    // Where nothing has to be added there is nothing to read off the scale either.
    scale: amount.enough ? undefined : scale,
    hose,
    cans: amount.enough ? undefined : cans,
    ...driven,
    routes,
    conditions: [...weatherConditions(input.ambient, input.judgeBy, input.machine, notes)],
    practice,
  }
  const told = toldOf(input, {
    amount,
    leaves: leavesSource,
    stop: scale.stop,
    latest: scale.latest,
    coarse: scale.verdict === 'too-coarse',
    holdUp: hose?.holdUp,
    cans,
    flow: driven.flow,
    sourcePressure: driven.sourcePressure,
    tooEmpty,
  })
  return { ...withNotes(result, notes), told }
}

/** @throws {CalcError} `missing-input` where the charge is not known. */
function withCharge(read: ChargingGiven): ChargingInput {
  const { labelCharge } = read
  if (labelCharge) return { ...read, labelCharge }
  throw new CalcError('missing-input', 'The full charge is missing.', {
    path: ['labelCharge'],
    hint: 'Read it on the label, such as 2 lb 6 oz, or take it from charge.',
  })
}

/** Every reading with the ± of what it was read with. */
function withReadings(input: ChargingGiven, notes: Notes): ChargingGiven {
  const take = reader(input, notes)
  const gauge =
    input.side === 'high'
      ? 'high-side-gauge'
      : input.side === 'low'
        ? 'low-side-gauge'
        : ('a-gauge' as const)
  return {
    ...input,
    alreadyIn: take(input.alreadyIn, 'scale', 'alreadyIn'),
    canLeft: take(input.canLeft, 'scale', 'canLeft'),
    sourceTemperature: take(input.sourceTemperature, 'thermometer', 'sourceTemperature'),
    waterTemperature: take(input.waterTemperature, 'thermometer', 'waterTemperature'),
    ambient: take(input.ambient, 'thermometer', 'ambient'),
    systemPressure: take(input.systemPressure, gauge, 'systemPressure'),
    serviceHosePressure: take(input.serviceHosePressure, 'a-gauge', 'serviceHosePressure'),
  }
}

/** What is dangerous about it, before anything is read. */
function cautionsOf(r: Refrigerant, input: ChargingGiven): readonly CautionId[] {
  const { compressorDrive, engine, machine, alreadyIn } = input
  const runs = engine === 'running' && machine !== 'stationary'
  return [
    ...dangersOf({
      refrigerant: r,
      compressorDrive,
      does: ['charges', ...(runs ? (['runs'] as const) : [])],
    }),
    ...(engine !== 'off' && !alreadyIn ? (['compressor-in-vacuum'] as const) : []),
  ]
}

function practiceOf(
  r: Refrigerant,
  input: ChargingInput,
): readonly (keyof typeof data.statements)[] {
  const machine = input.supply === 'charging-machine'
  return [
    'weight-decides',
    ...(isCarbonDioxide(r) ? (['carbon-dioxide-gear'] as const) : []),
    ...(isBlendWithGlide(r) ? (['blend-as-liquid'] as const) : []),
    ...(isBlendWithGlide(r) && input.supply === 'small-cans' ? (['whole-cans'] as const) : []),
    'no-liquid-suction',
    ...(machine
      ? (['charging-machine', 'charging-machine-hoses'] as const)
      : (['clear-hoses'] as const)),
    'container-below-50-c',
    'cylinder-125-f',
    ...(input.judgeBy === 'subcooling' ? (['indoor-70-80'] as const) : []),
  ]
}
