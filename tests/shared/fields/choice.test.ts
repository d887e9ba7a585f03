import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import {
  choiceIn,
  compressorDriveIn,
  isVehicle,
  jobIn,
  lawIn,
  MACHINES,
  machineIn,
  meteringDeviceIn,
  openingJobIn,
  sectorIn,
  serviceHoseIn,
} from '../../../shared/fields/index.ts'
import { parseInput } from '../../../shared/operation.ts'
import { refusalOf } from '../../support/refusal.ts'

const CHOICES = {
  job: jobIn,
  openingJob: openingJobIn,
  machine: machineIn,
  compressorDrive: compressorDriveIn,
  meteringDevice: meteringDeviceIn,
  sector: sectorIn,
  law: lawIn,
  serviceHoseStarts: serviceHoseIn.serviceHoseStarts.unwrap(),
  serviceHoseHolds: serviceHoseIn.serviceHoseHolds.unwrap(),
} as const

const OPENING = 'couplers-parted section-opened system-opened pressure-lost'
const OPENED = {
  'couplers-parted': ['coupling', 'couplings', 'couplers', 'parted'],
  'section-opened': ['section'],
  'system-opened': ['opened'],
  'pressure-lost': ['leaked'],
}
const HELD = { empty: ['evacuated', 'vacuum'], vapour: ['vapor'] }

/** Every choice: its names in order, and the words that the trade says for each. */
const WORDS: Readonly<
  Record<keyof typeof CHOICES, readonly [string, Readonly<Record<string, readonly string[]>>]>
> = {
  job: [`diagnose ${OPENING}`, { diagnose: ['read', 'check'], ...OPENED }],
  openingJob: [OPENING, OPENED],
  machine: [
    'road-vehicle bus off-road stationary refrigerated-cargo',
    {
      'road-vehicle': ['vehicle', 'car', 'truck'],
      'off-road': ['loader', 'tractor', 'excavator', 'construction machine'],
      stationary: ['building'],
      'refrigerated-cargo': ['cargo', 'trailer'],
    },
  ],
  compressorDrive: [
    'open electric',
    {
      open: ['open-drive', 'belt', 'belt-driven', 'shaft'],
      electric: ['hermetic-or-electric', 'hermetic', 'semi-hermetic'],
    },
  ],
  meteringDevice: [
    'expansion-valve electronic-valve fixed-orifice orifice-tube',
    {
      'expansion-valve': ['valve', 'txv', 'tev', 'thermal expansion valve', 'block valve'],
      'electronic-valve': ['exv', 'eev'],
      'fixed-orifice': ['orifice', 'piston', 'capillary'],
      'orifice-tube': ['tube'],
    },
  ],
  sector: [
    'agriculture mining construction other',
    { agriculture: ['farm'], mining: ['quarry'], construction: ['building'], other: ['forestry'] },
  ],
  law: [
    'us-federal eu uk canada australia',
    {
      'us-federal': ['us', 'usa', 'united states'],
      eu: ['european union'],
      uk: ['gb', 'great britain', 'united kingdom'],
      canada: ['ca'],
      australia: ['au'],
    },
  ],
  serviceHoseStarts: ['empty vapour liquid', HELD],
  serviceHoseHolds: ['empty vapour liquid', HELD],
}

/** As somebody else may write a word: other case, other hyphens and spaces. */
const written = (word: string): fc.Arbitrary<string> =>
  fc
    .tuple(
      fc.constantFrom('', ' ', '-', '_', ' - '),
      fc.array(fc.boolean(), { minLength: word.length, maxLength: word.length }),
    )
    .map(([gap, large]) =>
      [...word]
        .map((letter, index) => (large[index] ? letter.toUpperCase() : letter))
        .join('')
        .replace(/[- ]/gu, gap),
    )

describe.each(Object.entries(WORDS))('%s', (field, [names, spoken]) => {
  const choice: z.ZodType = CHOICES[field as keyof typeof CHOICES]
  const values = names.split(' ')

  it('takes its own names and offers them in this order', () => {
    for (const name of values) expect(choice.parse(name)).toBe(name)
    expect(z.toJSONSchema(choice, { io: 'input' })).toMatchObject({ type: 'string', enum: values })
  })

  it('takes what people say, in any case and with any hyphens', () => {
    const pairs = values.flatMap((name) =>
      [name, ...(spoken[name] ?? [])].map((word) => [name, word] as const),
    )
    for (const [name, word] of pairs) {
      fc.assert(
        fc.property(written(word), (text) => {
          expect(choice.parse(text)).toBe(name)
        }),
        { numRuns: 15 },
      )
    }
  })

  it.each([['no such word'], [''], ['-'], [7], [null], [['open']], [{}], [true]])(
    'refuses %o, and names what it takes',
    (raw) => {
      const schema = z.strictObject({ [field]: choice })
      const error = refusalOf(() => parseInput(schema, { [field]: raw }))
      expect(error).toMatchObject({ code: 'bad-input', path: [field] })
      expect(error.hint).toBe(`It takes: ${values.join(', ')}.`)
    },
  )

  it('tells what is missing from what is wrong', () => {
    const error = refusalOf(() => parseInput(z.strictObject({ [field]: choice }), {}))
    expect(error).toMatchObject({ code: 'missing-input', path: [field] })
    expect(error.hint).toContain(values[0])
  })
})

describe('a choice of any words', () => {
  it('lets a name override a spoken word of the same letters', () => {
    const choice = choiceIn(['both', 'low-side'], { 'low side': 'both', pair: 'both' })
    expect(choice.parse('low side')).toBe('low-side')
    expect(choice.parse('PAIR')).toBe('both')
  })

  it('does not take a word for a name that begins alike', () => {
    expect(lawIn.safeParse('u').success).toBe(false)
    expect(lawIn.safeParse('euro').success).toBe(false)
  })
})

describe('a vehicle', () => {
  it('is anything but stationary', () => {
    expect(MACHINES.filter((machine) => !isVehicle(machine))).toEqual(['stationary'])
  })
})
