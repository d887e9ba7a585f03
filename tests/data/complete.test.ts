import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { EVERYDAY, WORDS } from '../../cli/input/shorthand.ts'
import { QUESTIONS } from '../cli/screens/questions.ts'
import { registryText } from '../generate/registry.ts'
import {
  type Described,
  missingOfRefrigerants,
  missingOfSteps,
  type RefrigerantRoom,
  type StepRoom,
} from '../support/complete.ts'

// Files are read, never imported: one that is missing or broken would stop the test before it can say so.

const read = (path: string) => readFileSync(path, 'utf8')
function json<T>(path: string): T {
  try {
    return JSON.parse(read(path)) as T
  } catch (error) {
    throw new Error(`${path} cannot be read as JSON: ${(error as Error).message}`)
  }
}
type Rows<T = unknown> = Readonly<Record<string, T>>
const names = (folder: string) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => name.replace(/\.json$/u, ''))
const found = (text: string, pattern: RegExp) =>
  [...text.matchAll(pattern)].map(([, name = '']) => name)

function refrigerantRoom(): RefrigerantRoom {
  const registry = read('shared/refrigerant/registry.ts')
  const byWord = new Map(
    [
      ...registry.matchAll(
        /^import (\w+) from '[./]*\/data\/(?:refrigerants|saturation)\/(.*)\.json'/gmu,
      ),
    ].map(([, word = '', id = '']) => [word, id]),
  )
  return {
    described: names('data/refrigerants').map((name) => {
      const info = json<Described>(`data/refrigerants/${name}.json`)
      return { ...info, id: name }
    }),
    imported: found(registry, /\/data\/refrigerants\/(.*)\.json'/gu),
    importedCurves: found(registry, /\/data\/saturation\/(.*)\.json'/gu),
    entries: found(registry, /^ {2}entry\((\w+),/gmu).map((word) => byWord.get(word) ?? word),
    curves: names('data/saturation'),
    fits: Object.keys(json<Rows>('data/saturation-fits.json')),
    designations: json<{ designations: RefrigerantRoom['designations'] }>(
      'data/service/designations.json',
    ).designations,
    substances: found(
      read('shared/substance/library.ts'),
      /from '[./]*\/data\/substances\/(.*)\.json'/gu,
    ).filter((name) => names('data/substances').includes(name)),
    pairs: names('data/mixing').flatMap((name) =>
      json<{ pairs: readonly { components: readonly string[] }[] }>(
        `data/mixing/${name}.json`,
      ).pairs.map(({ components }) => components.join('/')),
    ),
    goldenSubstances: names('tests/reference/golden'),
    goldenBlends: Object.keys(json<{ blends: Rows }>('tests/reference/golden/blends.json').blends),
    warming: Object.keys(
      json<{ substances: Rows }>('data/service/warming-potentials.json').substances,
    ),
    families: Object.fromEntries(
      Object.entries(
        json<{ families: Rows<readonly string[]> }>('data/rules/families.json').families,
      ).flatMap(([family, substances]) =>
        substances.map((substance) => [substance, family] as const),
      ),
    ),
    flammable: json<{ flammable: readonly string[] }>('data/service/fractionation.json').flammable,
    unfluorinated: found(
      /UNFLUORINATED.*?\[(.*?)\]/su.exec(read('shared/dangers.ts'))?.[1] ?? '',
      /'(.*?)'/gu,
    ),
  }
}

function stepRoom(): StepRoom {
  const files = readdirSync('shared', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && name !== 'operation.ts')
    .map((name) => `shared/${name}`)
  const defined = files.flatMap((file) =>
    found(read(file), /defineOperation\(\{\s*name: '([\w-]+)'/gu).map(
      (name) => [name, file] as const,
    ),
  )
  const ofFile = new Map(defined.map(([name, file]) => [file, name]))
  const notes = readdirSync('tests/shared/service/notes').map((name) =>
    read(`tests/shared/service/notes/${name}`),
  )
  const readme = read('README.md')
  const visit = json<{
    questions: Rows
    stages: readonly { operations: readonly string[] }[]
    apart: readonly string[]
  }>('data/page/visit.json')
  const groupsIn = (name: string) =>
    Object.keys(json<{ groups: Rows }>(`data/page/${name}.json`).groups)
  const table = readme.slice(readme.indexOf('| Step | Answers |'))
  return {
    defined: Object.fromEntries(defined),
    // By what it imports: the names alone, so that nothing needs to run.
    listed: found(read('shared/operations.ts'), /^import \{ \w+ \} from '\.\/(.*)'$/gmu).flatMap(
      (file) => ofFile.get(`shared/${file}`) ?? [],
    ),
    catalogue: found(read('cli/catalogue.ts'), /^ {2}'?([\w-]+)'?: async/gmu),
    page: found(read('worker/page/operations.ts'), /^ {2}'?([\w-]+)'?: async/gmu),
    questions: Object.keys(visit.questions),
    stages: [...visit.stages.flatMap(({ operations }) => operations), ...visit.apart],
    groups: [...groupsIn('basic'), ...groupsIn('steps')],
    words: Object.keys(WORDS),
    everyday: Object.keys(EVERYDAY),
    screens: Object.values(QUESTIONS).map((line) => line.split(' ')[0] ?? ''),
    notes: notes.flatMap((text) => found(text, /notesOf\('([\w-]+)'/gu)),
    always: found(
      /const ALWAYS[^{]*\{(.*?)^\}/msu.exec(read('tests/shared/frame/always.test.ts'))?.[1] ?? '',
      /^ {2}'?([\w-]+)'?:/gmu,
    ),
    readme: found(table.slice(0, table.indexOf('\n\n')), /`([\w-]+)`/gu),
  }
}

describe('every refrigerant that is described', () => {
  it('stands in every list that needs it', () => {
    const room = refrigerantRoom()
    expect(room.described.length).toBeGreaterThan(30)
    expect(missingOfRefrigerants(room)).toEqual([])
  })
})

describe('the registry of refrigerants', () => {
  const ids = names('data/refrigerants')
  const now = read('shared/refrigerant/registry.ts')

  it('is as npm run data writes it', () => {
    expect(now, 'run npm run data').toBe(registryText(ids))
  })

  it('gets a new one in its place, and loses one that is gone', () => {
    const more = registryText([...ids, 'R-9999', 'R-407Z'], now)
    expect(more).toContain(
      `import r9999Curves from '../../data/saturation/R-9999.json' with { type: 'json' }\n`,
    )
    expect(more).toContain('  entry(r407F, r407FCurves),\n  entry(r407Z, r407ZCurves),\n')
    expect(more).toContain('  entry(r1234zeE, r1234zeECurves),\n  entry(r9999, r9999Curves),\n]\n')
    expect(registryText(ids, more)).toBe(now)
    expect(() => registryText(ids, 'nothing of it')).toThrow('another shape')
  })
})

describe('every step that is defined', () => {
  it('stands in every list that needs it', () => {
    const room = stepRoom()
    expect(room.listed.length).toBeGreaterThan(15)
    expect(missingOfSteps(room)).toEqual([])
  })
})

/** An invented pure refrigerant that burns, whole: what is left out of it is told. */
const PURE: RefrigerantRoom = {
  described: [
    {
      id: 'R-1',
      composition: [{ substance: 'R-1' }],
      safetyClass: { value: 'A3' },
      gwp: [{ report: 'AR4' }, { report: 'AR5' }, { report: 'AR6' }],
    },
  ],
  imported: ['R-1'],
  importedCurves: ['R-1'],
  entries: ['R-1'],
  curves: ['R-1'],
  fits: ['R-1'],
  designations: { 'R-1': { safetyClass: 'A3' } },
  substances: ['R-1', 'R-2'],
  pairs: ['R-2/R-1'],
  goldenSubstances: ['R-1', 'R-2'],
  goldenBlends: [],
  warming: [],
  families: { 'R-1': 'hydrocarbon', 'R-2': 'hfc' },
  flammable: ['R-1'],
  unfluorinated: ['R-1'],
}
const [ONE] = PURE.described as readonly [Described]
const pure = (change: Partial<RefrigerantRoom>) => missingOfRefrigerants({ ...PURE, ...change })
const described = (change: Partial<Described>) => pure({ described: [{ ...ONE, ...change }] })

/** The same with a blend of both. */
const BLEND: RefrigerantRoom = {
  ...PURE,
  described: [
    {
      ...ONE,
      id: 'R-400A',
      composition: [{ substance: 'R-1' }, { substance: 'R-2' }],
      safetyClass: { value: 'A1' },
    },
  ],
  imported: ['R-400A'],
  importedCurves: ['R-400A'],
  entries: ['R-400A'],
  curves: ['R-400A'],
  fits: ['R-400A'],
  designations: { 'R-400A': { safetyClass: 'A1' } },
  goldenBlends: ['R-400A'],
  warming: ['R-1', 'R-2'],
}
const blend = (change: Partial<RefrigerantRoom>) => missingOfRefrigerants({ ...BLEND, ...change })

describe('of an invented refrigerant', () => {
  it('nothing is missing where it is whole', () => {
    expect(pure({})).toEqual([])
    expect(blend({})).toEqual([])
  })

  const REGISTRY =
    'R-1 is not in the registry: run npm run data, which writes shared/refrigerant/registry.ts.'
  const CURVES =
    'R-1 has no curves: run npm run data -- R-1, which writes data/saturation/R-1.json and its row in data/saturation-fits.json.'
  const SAFETY = 'set safetyClass to one of A1, A2L, A2, A3, with its source.'
  it.each([
    ['its entry', pure({ entries: [] }), REGISTRY],
    ['an import', pure({ imported: [] }), REGISTRY],
    ['the import of its curves', pure({ importedCurves: [] }), REGISTRY],
    ['its curves', pure({ curves: [] }), CURVES],
    ['how well they fit', pure({ fits: [] }), CURVES],
    [
      'its row of the standard',
      pure({ designations: {} }),
      'R-1 has no row in data/service/designations.json: add its safety class, its composition in mass percent and its boiling points as published, with their source.',
    ],
    [
      'its safety class',
      pure({ described: [{ id: 'R-1', composition: ONE.composition ?? [], gwp: ONE.gwp ?? [] }] }),
      `data/refrigerants/R-1.json has no safety class: ${SAFETY}`,
    ],
    [
      'a class that there is',
      described({ safetyClass: { value: 'A4' } })[0],
      `data/refrigerants/R-1.json has the safety class 'A4': ${SAFETY}`,
    ],
    [
      'the right class',
      described({ safetyClass: { value: 'A2L' } }),
      'data/refrigerants/R-1.json says safety class A2L, data/service/designations.json says A3: look the standard up and correct the one that is wrong.',
    ],
    [
      'a warming potential',
      described({ gwp: [{ report: 'AR4' }, { report: 'AR6' }] }),
      'data/refrigerants/R-1.json has no warming potential by AR5: add its row to gwp, with its source.',
    ],
    [
      'what it is made of',
      described({ composition: [] }),
      'data/refrigerants/R-1.json has no composition: name its substances with their mass fractions.',
    ],
    [
      'the equation',
      pure({ substances: [] }),
      'R-1 is made of R-1, which has no equation: write data/substances/R-1.json by tests/generate/substances.py and list it in shared/substance/library.ts.',
    ],
    [
      'the reference',
      pure({ goldenSubstances: [] }),
      'R-1 is compared with nothing: run tests/reference/golden.py, which writes tests/reference/golden/R-1.json.',
    ],
    [
      'how it mixes',
      pure({ pairs: [] }),
      'R-1/R-2 have no mixing rule: add the new substance to SUBSTANCES of tests/generate/mixing.py and run it, which writes data/mixing.',
    ],
    [
      'how it mixes with several',
      pure({ substances: ['R-1', 'R-2', 'R-3'] }),
      'R-1/R-3 and 1 more have no mixing rule: add the new substance to SUBSTANCES of tests/generate/mixing.py and run it, which writes data/mixing.',
    ],
    [
      'its family',
      pure({ families: {} }),
      'R-1 belongs to no chemical family, so no rule of law and no oil fits it: add it to data/rules/families.json.',
    ],
    [
      'that it burns',
      pure({ flammable: [] }),
      'R-1 burns (A3) and is not among the components that burn: add it to flammable in data/service/fractionation.json.',
    ],
    [
      'that it holds no fluorine',
      pure({ unfluorinated: [] }),
      'R-1 holds no fluorine by its family: add it to UNFLUORINATED in shared/dangers.ts, or its flames are said to make hydrogen fluoride.',
    ],
    [
      'that it does hold fluorine',
      blend({ unfluorinated: ['R-1', 'R-2'] }),
      'R-2 is no hydrocarbon by data/rules/families.json, yet UNFLUORINATED of shared/dangers.ts says that it holds no fluorine: correct the one that is wrong.',
    ],
    [
      'the reference of a blend',
      blend({ goldenBlends: [] }),
      'R-400A is compared with nothing: run tests/reference/blends.py, which writes its values to tests/reference/golden/blends.json.',
    ],
    [
      'the warming potential of a component',
      blend({ warming: ['R-1'] }),
      'R-2 has no row in data/service/warming-potentials.json: add its AR4, AR5, AR6 and odp, each with its source.',
    ],
    [
      'its description',
      pure({ described: [], designations: {}, curves: [], fits: [] }),
      'shared/refrigerant/registry.ts names R-1, which data/refrigerants does not describe: run npm run data.',
    ],
  ])('%s is missed by name', (_, told, sentence) => {
    expect([told].flat()).toEqual([sentence])
  })

  it('is told to stand in the order of designation', () => {
    const order = (...entries: readonly string[]) =>
      missingOfRefrigerants({
        ...PURE,
        described: entries.map((id) => ({ ...ONE, id })),
        imported: entries,
        importedCurves: entries,
        entries,
        curves: entries,
        fits: entries,
        designations: Object.fromEntries(entries.map((id) => [id, { safetyClass: 'A3' }])),
      })
    expect(order('R-32', 'R-134a', 'R-407A', 'R-407C', 'R-1234yf')).toEqual([])
    for (const [a, b] of [
      ['R-134a', 'R-32'],
      ['R-407C', 'R-407A'],
    ] as const) {
      expect(order(a, b)).toEqual([
        `shared/refrigerant/registry.ts has ${a} before ${b}: run npm run data, which puts them in the order of designation.`,
      ])
    }
  })
})

describe('of an invented step', () => {
  const all = ['weigh']
  const WHOLE: StepRoom = {
    defined: { weigh: 'shared/service/weigh.ts' },
    listed: all,
    catalogue: all,
    page: all,
    questions: all,
    stages: all,
    groups: all,
    words: all,
    everyday: all,
    screens: all,
    notes: all,
    always: all,
    readme: all,
  }

  it('nothing is missing where it is whole', () => {
    expect(missingOfSteps(WHOLE)).toEqual([])
  })

  it('is missed in the list of all', () => {
    expect(missingOfSteps({ ...WHOLE, listed: [] })).toEqual([
      'shared/service/weigh.ts defines the step weigh, which nothing can call: add it to shared/operations.ts, in the order of a visit.',
    ])
  })

  it.each([
    ['catalogue', 'its line to ALONE in cli/catalogue.ts, or its command loads all of them'],
    ['page', 'its line to LOADERS in worker/page/operations.ts'],
    ['questions', 'its question to questions in data/page/visit.json'],
    ['stages', 'it to a stage (or to apart) in data/page/visit.json'],
    ['groups', 'the groups of its fields to groups in data/page/steps.json'],
    [
      'words',
      'to WORDS in cli/input/shorthand.ts where quantities go that are typed without an option',
    ],
    ['everyday', 'its everyday line to EVERYDAY in cli/input/shorthand.ts'],
    ['screens', 'a question of it to tests/cli/screens/questions.ts'],
    ['notes', 'a few whole answers as tests/shared/service/notes/weigh.test.ts'],
    ['always', 'what stands in its every answer to ALWAYS in tests/shared/frame/always.test.ts'],
    ['readme', 'its row to the table of steps in README.md'],
  ] as const)('is missed in %s', (list, what) => {
    expect(missingOfSteps({ ...WHOLE, [list]: [] })).toEqual([
      `The step weigh is incomplete: add ${what}.`,
    ])
  })
})
