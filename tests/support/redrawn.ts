/** A quantity of one unit, such as "32 ±1 psig"; "2 lb 6 oz" is left as it is. */
const A_QUANTITY = /^(-?\d+(?:\.\d+)?)(?: ±\d+(?:\.\d+)?)? (\D+)$/u

/** The same input with each of its quantities drawn anew. */
export function redrawn(input: unknown, draw: (value: number, unit: string) => unknown): unknown {
  if (typeof input === 'string') {
    const [, number, unit] = A_QUANTITY.exec(input) ?? []
    return number === undefined || unit === undefined ? input : draw(Number(number), unit)
  }
  if (Array.isArray(input)) return input.map((item) => redrawn(item, draw))
  if (typeof input !== 'object' || input === null) return input
  return Object.fromEntries(
    Object.entries(input).map(([name, value]) => [name, redrawn(value, draw)]),
  )
}

/** Every value that is no object, by its path. */
export function leaves(value: unknown, path = ''): readonly (readonly [string, unknown])[] {
  if (typeof value !== 'object' || value === null) return [[path, value]]
  return Object.entries(value).flatMap(([name, item]) => leaves(item, `${path}.${name}`))
}
