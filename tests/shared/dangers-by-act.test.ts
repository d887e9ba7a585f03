import { describe, expect, it } from 'vitest'
import { type Act, ALL_DANGERS, dangersOf, isFluorinated } from '../../shared/dangers.ts'
import { type Refrigerant, refrigerant } from '../../shared/refrigerant/index.ts'

const LOOSE = 'pressure cold-burns asphyxiation'
const CUTS = 'first-aid-eyes first-aid-frostbite'

/** All that an act brings by itself. */
const BY_ACT: Readonly<Record<Act, string>> = {
  handles: LOOSE,
  'parts-couplings': `${LOOSE} whipping-line trapped-liquid parted-half stuck-coupling ${CUTS}`,
  opens: `${LOOSE} goggles-even-empty trapped-liquid ${CUTS} first-aid-inhalation`,
  recovers: `${LOOSE} full-cylinder no-disposable-refill do-not-mix`,
  pressurises: 'pressure asphyxiation whipping-line no-oxygen no-air nitrogen-regulator',
  evacuates: 'compressor-in-vacuum',
  charges: `${LOOSE} no-high-side-running warm-water-only no-liquid-to-suction weigh-the-charge`,
  runs: 'rotating-parts',
  'lifts-cab': 'lifted-cab machine-secured bystanders working-alone',
}

const HF = 'no-venting decomposition first-aid-hydrogen-fluoride'

/** What the refrigerant adds, whatever is done; and by act. */
const BY_REFRIGERANT: Readonly<Record<string, Partial<Record<Act | 'any', string>>>> = {
  'R-134a': { 'parts-couplings': HF, opens: HF, recovers: HF },
  'R-1234yf': {
    any: 'flammable',
    'parts-couplings': HF,
    opens: HF,
    recovers: HF,
    evacuates: 'pump-exhaust-outdoors',
  },
  'R-290': {
    any: 'flammable',
    'parts-couplings': 'no-venting',
    opens: 'no-venting',
    recovers: 'no-venting hydrocarbons-rated-machine',
    evacuates: 'pump-exhaust-outdoors',
    charges: 'no-flammable-retrofit',
  },
  'R-744': {
    any: 'carbon-dioxide',
    'parts-couplings': 'carbon-dioxide-release carbon-dioxide-couplings',
    opens: 'carbon-dioxide-release',
    recovers: 'carbon-dioxide-release',
    charges: 'dry-ice',
    pressurises: 'carbon-dioxide-test-pressure',
  },
}

const ACTS = Object.keys(BY_ACT) as Act[]
const GETS_IN: readonly Act[] = ['parts-couplings', 'opens', 'recovers']
const words = (...texts: readonly (string | undefined)[]) =>
  [...new Set(texts.flatMap((text) => text?.split(' ') ?? []))].sort()
const found = (facts: Parameters<typeof dangersOf>[0]) => [...dangersOf(facts)].sort()

describe('all that a job brings, and nothing else', () => {
  it.each(ACTS)('%s', (act) => {
    expect(found({ does: [act] })).toEqual(words(BY_ACT[act]))
    for (const [name, adds] of Object.entries(BY_REFRIGERANT)) {
      const facts = { refrigerant: refrigerant(name), does: [act] }
      const expected = [BY_ACT[act], adds.any, adds[act]]
      expect(found(facts), name).toEqual(words(...expected))
      const voltage = GETS_IN.includes(act) ? 'high-voltage electric-compressor-oil' : undefined
      expect(found({ ...facts, compressorDrive: 'electric' }), name).toEqual(
        words(...expected, voltage),
      )
      expect(found({ ...facts, compressorDrive: 'open' }), name).toEqual(words(...expected))
    }
  })

  it('is what the refrigerant brings where nothing is done, and nothing where nothing is known', () => {
    for (const [name, adds] of Object.entries(BY_REFRIGERANT)) {
      expect(found({ refrigerant: refrigerant(name) }), name).toEqual(words(adds.any))
    }
    expect(found({})).toEqual([])
    expect(found({ compressorDrive: 'electric' })).toEqual([])
  })

  it('is of several acts what each brings, once', () => {
    for (const name of Object.keys(BY_REFRIGERANT)) {
      const alone = ACTS.flatMap((act) =>
        dangersOf({ refrigerant: refrigerant(name), does: [act] }),
      )
      const together = dangersOf({ refrigerant: refrigerant(name), does: ACTS })
      expect([...together].sort()).toEqual([...new Set(alone)].sort())
      expect(together).toHaveLength(new Set(together).size)
    }
  })

  it('is in the list of all that there may be, which holds nothing else', () => {
    const any = words(
      ...Object.values(BY_ACT),
      ...Object.values(BY_REFRIGERANT).flatMap((adds) => Object.values(adds)),
      'high-voltage electric-compressor-oil',
    )
    expect([...ALL_DANGERS].sort()).toEqual(any)
    expect(ALL_DANGERS).toHaveLength(new Set(ALL_DANGERS).size)
  })
})

describe('fluorine', () => {
  const of = (...substances: string[]) => {
    const composition = substances.map((substance) => ({ substance, massFraction: 1 }))
    return isFluorinated({ info: { composition } } as unknown as Refrigerant)
  }

  it('is in everything but carbon dioxide and the hydrocarbons, one part of a blend being enough', () => {
    for (const bare of ['R-744', 'R-290', 'R-600', 'R-600a', 'R-601a', 'R-1270']) {
      expect(of(bare), bare).toBe(false)
      expect(of(bare, 'R-134a'), bare).toBe(true)
    }
    for (const other of ['R-134a', 'R-1234yf', 'R-12', 'R-22']) expect(of(other), other).toBe(true)
  })
})
