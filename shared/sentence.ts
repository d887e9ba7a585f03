/**
 * A sentence of a data file with its `{slots}` filled.
 *
 * @throws {Error} where a slot has nothing to fill it: a fault of the program.
 */
export function fillIn(
  sentence: string,
  values: Readonly<Record<string, string | number>> = {},
): string {
  return sentence.replace(/\{(\w+)\}/gu, (_, name: string) => {
    const value = values[name]
    if (value === undefined)
      throw new Error(`A sentence has the slot "${name}", which nothing fills.`)
    return String(value)
  })
}
