/**
 * What is missing where a refrigerant or a step has been added, each as a sentence that says what to
 * add and where. Pure functions of what the files hold, so that they can be tried on faulty ones.
 */

interface Part {
  readonly substance: string
}

/** What `data/refrigerants/<id>.json` should hold, and may not yet. */
export interface Described {
  readonly id: string
  readonly kind?: string
  readonly composition?: readonly Part[]
  readonly safetyClass?: { readonly value?: string }
  readonly gwp?: readonly { readonly report?: string }[]
}

export interface RefrigerantRoom {
  readonly described: readonly Described[]
  /** Designations whose description, or curves, the registry imports, and those of its entries. */
  readonly imported: readonly string[]
  readonly importedCurves: readonly string[]
  /** Designations of the entries of the registry, in their order. */
  readonly entries: readonly string[]
  /** Names in `data/saturation`, and keys of `data/saturation-fits.json`. */
  readonly curves: readonly string[]
  readonly fits: readonly string[]
  readonly designations: Readonly<Record<string, { readonly safetyClass?: string } | undefined>>
  /** What `shared/substance/library.ts` lists of the files in `data/substances`. */
  readonly substances: readonly string[]
  /** What `data/mixing` has a rule for, such as 'R-32/R-125', in either order. */
  readonly pairs: readonly string[]
  /** Substances with golden values of the reference library, blends with theirs. */
  readonly goldenSubstances: readonly string[]
  readonly goldenBlends: readonly string[]
  /** Rows of `data/service/warming-potentials.json`. */
  readonly warming: readonly string[]
  /** Chemical family by substance (`data/rules/families.json`). */
  readonly families: Readonly<Record<string, string | undefined>>
  /** Components that burn, and substances without fluorine, as steps and dangers know them. */
  readonly flammable: readonly string[]
  readonly unfluorinated: readonly string[]
}

const CLASSES = ['A1', 'A2L', 'A2', 'A3']
const NO_FLUORINE = ['hydrocarbon', 'carbon-dioxide']
/** No value of that report exists for these. */
const NOT_ASSESSED: Readonly<Record<string, readonly string[]>> = { 'R-1234ze(E)': ['AR4'] }

/** What is still missing of the refrigerants that `data/refrigerants` describes. */
export function missingOfRefrigerants(room: RefrigerantRoom): readonly string[] {
  return [
    ...room.described.flatMap((info) => [
      ...registered(info.id, room),
      ...figures(info, room),
      ...parts(info, room),
    ]),
    ...unmixed(room),
    ...leftOver(room),
    ...outOfOrder(room.entries),
  ]
}

/** Pairs of substances that no paper and no estimate covers. */
function unmixed({ substances, pairs }: RefrigerantRoom): readonly string[] {
  const known = new Set(pairs)
  const missing = substances.flatMap((a, i) =>
    substances
      .slice(i + 1)
      .filter((b) => !known.has(`${a}/${b}`) && !known.has(`${b}/${a}`))
      .map((b) => `${a}/${b}`),
  )
  const more = missing.length > 1 ? ` and ${missing.length - 1} more` : ''
  return says(
    missing.length > 0,
    `${missing[0]}${more} have no mixing rule: add the new substance to SUBSTANCES of tests/generate/mixing.py and run it, which writes data/mixing.`,
  )
}

const says = (missing: boolean, sentence: string) => (missing ? [sentence] : [])

function registered(id: string, room: RefrigerantRoom): readonly string[] {
  const imports = room.imported.includes(id) && room.importedCurves.includes(id)
  const fitted = room.curves.includes(id) && room.fits.includes(id)
  return [
    ...says(
      !imports || !room.entries.includes(id),
      `${id} is not in the registry: run npm run data, which writes shared/refrigerant/registry.ts.`,
    ),
    ...says(
      !fitted,
      `${id} has no curves: run npm run data -- ${id}, which writes data/saturation/${id}.json and its row in data/saturation-fits.json.`,
    ),
  ]
}

function figures(info: Described, room: RefrigerantRoom): readonly string[] {
  const { id } = info
  const where = `data/refrigerants/${id}.json`
  const given = info.safetyClass?.value
  const row = room.designations[id]
  const reports = (info.gwp ?? []).map(({ report }) => report)
  const due = ['AR4', 'AR5', 'AR6'].filter((report) => !NOT_ASSESSED[id]?.includes(report))
  return [
    ...says(
      given === undefined || !CLASSES.includes(given),
      `${where} has ${given === undefined ? 'no safety class' : `the safety class '${given}'`}: set safetyClass to one of ${CLASSES.join(', ')}, with its source.`,
    ),
    ...says(
      row === undefined,
      `${id} has no row in data/service/designations.json: add its safety class, its composition in mass percent and its boiling points as published, with their source.`,
    ),
    ...says(
      row !== undefined && given !== undefined && row.safetyClass !== given,
      `${where} says safety class ${given}, data/service/designations.json says ${row?.safetyClass}: look the standard up and correct the one that is wrong.`,
    ),
    ...due
      .filter((report) => !reports.includes(report))
      .map(
        (report) =>
          `${where} has no warming potential by ${report}: add its row to gwp, with its source.`,
      ),
  ]
}

function parts(info: Described, room: RefrigerantRoom): readonly string[] {
  const composition = info.composition ?? []
  const isBlend = composition.length > 1
  const burns = !isBlend && (info.safetyClass?.value ?? 'A1') !== 'A1'
  return [
    ...says(
      composition.length === 0,
      `data/refrigerants/${info.id}.json has no composition: name its substances with their mass fractions.`,
    ),
    ...composition.flatMap(({ substance }) => substanceOf(substance, info.id, isBlend, room)),
    ...says(
      burns && composition.some(({ substance }) => !room.flammable.includes(substance)),
      `${info.id} burns (${info.safetyClass?.value}) and is not among the components that burn: add it to flammable in data/service/fractionation.json.`,
    ),
    ...says(
      isBlend && !room.goldenBlends.includes(info.id),
      `${info.id} is compared with nothing: run tests/reference/blends.py, which writes its values to tests/reference/golden/blends.json.`,
    ),
  ]
}

function substanceOf(
  substance: string,
  of: string,
  isBlend: boolean,
  room: RefrigerantRoom,
): readonly string[] {
  if (!room.substances.includes(substance)) {
    return [
      `${of} is made of ${substance}, which has no equation: write data/substances/${substance}.json by tests/generate/substances.py and list it in shared/substance/library.ts.`,
    ]
  }
  const family = room.families[substance]
  const fluorine = family === undefined || !NO_FLUORINE.includes(family)
  return [
    ...says(
      !room.goldenSubstances.includes(substance),
      `${substance} is compared with nothing: run tests/reference/golden.py, which writes tests/reference/golden/${substance}.json.`,
    ),
    ...says(
      family === undefined,
      `${substance} belongs to no chemical family, so no rule of law and no oil fits it: add it to data/rules/families.json.`,
    ),
    ...says(
      family !== undefined && room.unfluorinated.includes(substance) === fluorine,
      fluorine
        ? `${substance} is no hydrocarbon by data/rules/families.json, yet UNFLUORINATED of shared/dangers.ts says that it holds no fluorine: correct the one that is wrong.`
        : `${substance} holds no fluorine by its family: add it to UNFLUORINATED in shared/dangers.ts, or its flames are said to make hydrogen fluoride.`,
    ),
    ...says(
      isBlend && !room.warming.includes(substance),
      `${substance} has no row in data/service/warming-potentials.json: add its AR4, AR5, AR6 and odp, each with its source.`,
    ),
  ]
}

function leftOver(room: RefrigerantRoom): readonly string[] {
  const known = new Set(room.described.map(({ id }) => id))
  const strange = (ids: readonly string[], where: string, then = 'run npm run data') =>
    ids
      .filter((id) => !known.has(id))
      .map((id) => `${where} names ${id}, which data/refrigerants does not describe: ${then}.`)
  return [
    ...strange(room.entries, 'shared/refrigerant/registry.ts'),
    ...strange(room.curves, 'data/saturation'),
    ...strange(room.fits, 'data/saturation-fits.json'),
    ...strange(Object.keys(room.designations), 'data/service/designations.json', 'take it out'),
  ]
}

/** The first entry that stands before one of a lower designation. */
function outOfOrder(entries: readonly string[]): readonly string[] {
  const key = (id: string) => Number(/\d+/u.exec(id)?.[0] ?? 0)
  const at = entries.findIndex((id, i) => {
    const next = entries[i + 1]
    if (next === undefined) return false
    return key(id) > key(next) || (key(id) === key(next) && id > next)
  })
  return at < 0
    ? []
    : [
        `shared/refrigerant/registry.ts has ${entries[at]} before ${entries[at + 1]}: run npm run data, which puts them in the order of designation.`,
      ]
}

/** Every list that has a line for each step. */
export interface StepRoom {
  /** Names that files of `shared` give to `defineOperation`, with the file. */
  readonly defined: Readonly<Record<string, string>>
  /** Names of `shared/operations.ts`, in the order of a visit. */
  readonly listed: readonly string[]
  readonly catalogue: readonly string[]
  readonly page: readonly string[]
  readonly questions: readonly string[]
  readonly stages: readonly string[]
  readonly groups: readonly string[]
  readonly words: readonly string[]
  readonly everyday: readonly string[]
  /** Steps that the golden screens ask, that stored whole answers are of, and README's table. */
  readonly screens: readonly string[]
  readonly notes: readonly string[]
  readonly always: readonly string[]
  readonly readme: readonly string[]
}

type Lists = Exclude<keyof StepRoom, 'defined' | 'listed'>

const TO_ADD: Readonly<Record<Lists, string>> = {
  catalogue: 'its line to ALONE in cli/catalogue.ts, or its command loads all of them',
  page: 'its line to LOADERS in worker/page/operations.ts',
  questions: 'its question to questions in data/page/visit.json',
  stages: 'it to a stage (or to apart) in data/page/visit.json',
  groups: 'the groups of its fields to groups in data/page/steps.json',
  words: 'to WORDS in cli/input/shorthand.ts where quantities go that are typed without an option',
  everyday: 'its everyday line to EVERYDAY in cli/input/shorthand.ts',
  screens: 'a question of it to tests/cli/screens/questions.ts',
  notes: 'a few whole answers as tests/shared/service/notes/<step>.test.ts',
  always: 'what stands in its every answer to ALWAYS in tests/shared/frame/always.test.ts',
  readme: 'its row to the table of steps in README.md',
}

/** An order is a file and asks nothing by words; what it and the rules answer has tests of its own. */
const WITHOUT: Partial<Record<Lists, readonly string[]>> = {
  words: ['work-order'],
  notes: ['rules', 'work-order'],
}

/** What is still missing of the steps that are defined in `shared`. */
export function missingOfSteps(room: StepRoom): readonly string[] {
  const unlisted = Object.entries(room.defined).flatMap(([name, file]) =>
    says(
      !room.listed.includes(name),
      `${file} defines the step ${name}, which nothing can call: add it to shared/operations.ts, in the order of a visit.`,
    ),
  )
  const lists = Object.keys(TO_ADD) as readonly Lists[]
  const lines = room.listed.flatMap((name) =>
    linesOf(name, lists, room).map((what) => `The step ${name} is incomplete: add ${what}.`),
  )
  return [...unlisted, ...lines]
}

const linesOf = (name: string, lists: readonly Lists[], room: StepRoom) =>
  lists
    .filter((list) => !room[list].includes(name) && !WITHOUT[list]?.includes(name))
    .map((list) => TO_ADD[list].replaceAll('<step>', name))
