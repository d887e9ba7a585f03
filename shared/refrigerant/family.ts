import data from '../../data/rules/families.json' with { type: 'json' }

/** Chemical family of a substance, such as 'hfc'; undefined where none lists it. */
export const familyOf = (substance: string): string | undefined =>
  Object.entries(data.families).find(([, substances]) => substances.includes(substance))?.[0]
