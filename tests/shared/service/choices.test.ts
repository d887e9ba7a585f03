import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { fields as airCheck } from '../../../shared/service/air-check/fields.ts'
import { chargeFields } from '../../../shared/service/charge/input/fields.ts'
import { contentsIn, couplingItem } from '../../../shared/service/charge/input/items.ts'
import { charging } from '../../../shared/service/charging.ts'
import { diagnoseIn } from '../../../shared/service/diagnose/input/fields.ts'
import { leakTest } from '../../../shared/service/leak-test.ts'
import { lessonFields } from '../../../shared/service/lesson/fields.ts'
import { recovery } from '../../../shared/service/recovery.ts'
import { faultKindIn } from '../../../shared/service/simulate/fields.ts'
import { modelMachineIn } from '../../../shared/service/simulate/machines.ts'
import { simulate } from '../../../shared/service/simulate.ts'

type Words = Readonly<Record<string, readonly string[]>>

const FAULTS: Words = {
  undercharge: ['low charge', 'low'],
  overcharge: ['full'],
  'condenser-air': ['blocked condenser', 'dirty condenser', 'condenser'],
  'evaporator-air': ['dirty evaporator', 'evaporator', 'blower'],
  restriction: ['plugged drier'],
  'valve-stuck-open': [],
  'valve-stuck-closed': [],
  'compressor-leak': ['leak', 'worn compressor'],
  air: ['non-condensables'],
  'stroke-stuck-high': [],
  'stroke-stuck-low': [],
}
const NAMED: Words = {
  none: ['sound'],
  ...Object.fromEntries(Object.keys(FAULTS).map((id) => [id, []])),
}
const VAPOUR = ['vapor', 'gas']

/** Every choice of a step that is no common field: its names in order, and what people say for each. */
const CHOICES: readonly (readonly [string, z.ZodType, Words])[] = [
  [
    'phase of a space',
    contentsIn.phase,
    { liquid: [], vapour: VAPOUR, 'two-phase': ['two phase'] },
  ],
  [
    'line of a coupling',
    couplingItem.shape.line,
    { liquid: ['high'], suction: ['vapour', 'vapor', 'low'] },
  ],
  [
    'couplingType',
    chargeFields.couplingType,
    {
      'two-valve': ['self-sealing', 'poppet'],
      'one-valve': [],
      'no-valve': ['spring-lock'],
      diaphragm: ['pierced', 'single-use'],
    },
  ],
  [
    'couplingsOn',
    chargeFields.couplingsOn,
    {
      'liquid-line': ['liquid'],
      'suction-line': ['suction', 'vapour-line'],
      'both-lines': ['both'],
    },
  ],
  [
    'testGas',
    leakTest.fields.testGas,
    {
      nitrogen: ['N2', 'dry nitrogen', 'OFN'],
      'nitrogen-with-refrigerant-trace': ['trace'],
      'hydrogen-mix': ['hydrogen in nitrogen', 'forming gas', 'tracer gas'],
      helium: ['He'],
      hydrogen: ['H2'],
      oxygen: ['O2'],
      'compressed-air': ['air'],
    },
  ],
  ['container', airCheck.container, { cylinder: ['tank'], system: ['machine'] }],
  [
    'supply',
    charging.fields.supply,
    { cylinder: [], 'small-cans': ['cans', 'can'], 'charging-machine': ['station'] },
  ],
  ['phase of what is charged', charging.fields.phase, { liquid: [], vapour: VAPOUR }],
  ['cylinder', recovery.fields.cylinder, { refillable: [], disposable: ['NRC', 'DOT-39'] }],
  ['recoveredBy', recovery.fields.recoveredBy, { scale: [], machine: [] }],
  ['fault', faultKindIn, FAULTS],
  [
    'modelMachine',
    modelMachineIn,
    {
      loader: ['wheel loader', 'valve-receiver', 'receiver'],
      tractor: ['valve-receiver-variable', 'variable'],
      pickup: ['pickup truck', 'truck', 'orifice-accumulator', 'accumulator'],
      van: ['valve'],
      'split-orifice': ['stationary-orifice'],
      'split-valve': ['stationary-valve'],
      'cooler-orifice': [],
      'cooler-valve': [],
    },
  ],
  [
    'sweep',
    simulate.fields.sweep,
    {
      charge: ['undercharge', 'overcharge'],
      'condenser-air': [],
      'evaporator-air': [],
      restriction: [],
      'valve-opening': [],
      'compressor-leak': [],
      air: [],
      stroke: [],
    },
  ],
  [
    'prediction of a lesson',
    (lessonFields.predictions.unwrap() as z.ZodObject).shape.lowSide as z.ZodType,
    { up: ['higher', 'rises', '+'], same: ['unchanged', '0'], down: ['lower', 'falls', '-'] },
  ],
  ['knowledge of a lesson', lessonFields.knowledge, { known: [], roughly: ['unknown'] }],
  ['suspected in a lesson', lessonFields.suspected, NAMED],
  ['named in a lesson', lessonFields.named, NAMED],
  [
    'liquidStore',
    diagnoseIn.liquidStore,
    {
      receiver: ['receiver-drier', 'drier'],
      accumulator: ['suction accumulator'],
      none: ['no'],
    },
  ],
  ['displacement', diagnoseIn.displacement, { fixed: [], variable: [] }],
]

describe.each(CHOICES)('%s', (_, choice, words) => {
  it('takes its own names, in the order of the trade, and what people say for each', () => {
    for (const [name, spoken] of Object.entries(words)) {
      for (const word of [name, ...spoken]) expect(choice.parse(word), word).toBe(name)
    }
    const schema = z.toJSONSchema(choice, { io: 'input' })
    expect(schema.enum).toEqual(Object.keys(words))
  })

  it('refuses any other word', () => {
    for (const word of ['no such word', '', '.', '%', 'discharge-line', 7, null]) {
      expect(choice.safeParse(word).success, String(word)).toBe(false)
    }
  })
})
