import data from '../../data/rules/families.json' with { type: 'json' }

const FAMILY_OF: ReadonlyMap<string, string> = new Map(
  Object.entries(data.families).flatMap(([family, substances]) =>
    substances.map((substance) => [substance, family] as const),
  ),
)

/** Chemical family of a substance, such as 'hfc'; undefined where none lists it. */
export const familyOf = (substance: string): string | undefined => FAMILY_OF.get(substance)
