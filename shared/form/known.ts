import basic from '../../data/page/basic.json' with { type: 'json' }

/** Some fields of a form under a title. */
export interface Laid {
  readonly title: string
  readonly fields: readonly string[]
  readonly shown?: boolean
}

type Words = Readonly<Record<string, string>>

/** What is known of forms: names of fields and choices, and where fields stand. */
export interface Forms {
  /** Names of fields, for every operation and for one alone. */
  readonly labels: Words
  readonly ownLabels: Readonly<Record<string, Words>>
  /** Names of choices, for every field and for one alone. */
  readonly choices: Words
  readonly ownChoices: Readonly<Record<string, Words>>
  readonly groups: Readonly<Record<string, readonly Laid[]>>
  /** Units that a field is mostly written in, where its kind has more; by name, or by list and name. */
  readonly units: Readonly<Record<string, readonly string[]>>
  /** What one row of a list is called. */
  readonly rows: Words
}

const known: Forms[] = [basic]

/** Adds what is known of further forms: a page need not load those of every step before it can answer. */
export function learn(forms: Forms): void {
  if (!known.includes(forms)) known.push(forms)
}

/** The first that the known forms have, by `find`. */
export function among<T>(find: (forms: Forms) => T | undefined): T | undefined {
  for (const forms of known) {
    const found = find(forms)
    if (found !== undefined) return found
  }
  return undefined
}

/** An entry of a record by its own name: no word of JavaScript is one. */
export const at = <T>(
  record: Readonly<Record<string, T>> | undefined,
  name: string,
): T | undefined => (record !== undefined && Object.hasOwn(record, name) ? record[name] : undefined)
