/** Each entry once, by what it says. */
export const distinct = <T>(entries: readonly T[]): T[] => [
  ...new Map(entries.map((entry) => [JSON.stringify(entry), entry])).values(),
]
