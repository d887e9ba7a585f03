import fc from 'fast-check'
import { JOBS, MACHINES } from '../../../shared/fields/index.ts'
import { EXAMPLES, type Order } from './examples.ts'

const SECTIONS = [
  'readings',
  'readingsBefore',
  'recovery',
  'charge',
  'oil',
  'leakTest',
  'evacuation',
  'charging',
  'cooling',
  'record',
] as const

/** Where an example has no readings from before the work, its readings stand for them. */
const sectionOf = (order: Order, key: string) =>
  Object.entries((order[key === 'readingsBefore' ? 'readings' : key] as Order | undefined) ?? {})

/** Any mixture of what the examples hold, with fields left out. */
const section = (key: string) =>
  fc
    .constantFrom(...Object.values(EXAMPLES))
    .chain((order) => fc.subarray(sectionOf(order, key)).map((kept) => Object.fromEntries(kept)))

const LONG = 'A long name for a thing in the yard that goes on and on '

const machine = fc.record({
  kind: fc.constantFrom(...MACHINES),
  compressorDrive: fc.constantFrom('open', 'electric'),
  name: fc.constantFrom('Loader', LONG.repeat(2).trim()),
})

/** Orders of each job, on any machine, filled in more or less. */
export const arbitraryOrder = fc
  .record({
    head: fc.constantFrom(...Object.values(EXAMPLES)),
    job: fc.constantFrom(...JOBS),
    refrigerant: fc.constantFrom(
      'R-134a',
      'R-1234yf',
      'R-12',
      'R-407C',
      'R-410A',
      'R-744',
      'R-290',
    ),
    machine,
    cabOff: fc.boolean(),
    oil: fc.constantFrom(undefined, 'PAG 46', 'POE 68', 'mineral'),
    bare: fc.boolean(),
    sections: fc.record(Object.fromEntries(SECTIONS.map((key) => [key, section(key)])), {
      requiredKeys: [],
    }),
    lists: fc.record(
      {
        parts: fc.constantFrom(
          EXAMPLES.crane.parts,
          EXAMPLES.groomer.parts,
          [],
          Array.from({ length: 12 }, () => ({ name: LONG, part: 'hose' })),
        ),
        couplings: fc.constantFrom(EXAMPLES.loader.couplings, []),
      },
      { requiredKeys: [] },
    ),
  })
  .map(({ head, job, refrigerant, machine: kind, cabOff, oil, bare, sections, lists }): Order => {
    const { place, person, labelCharge, existingOil, oilTotal, date, story } = head
    return {
      machine: { ...(head.machine as Order), ...kind },
      job,
      refrigerant,
      cabOff,
      ...(bare ? {} : { place, person, labelCharge, oilTotal, date, story }),
      existingOil: oil ?? existingOil,
      ...sections,
      ...lists,
    }
  })
  .map((order) => JSON.parse(JSON.stringify(order)) as Order)
