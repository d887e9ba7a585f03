const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** A quantity in two parts is one value, not a group of fields. */
const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  isObject(value) && !('unit' in value)

/** What a file says with what options say over it, field by field: an override erases nothing beside it. */
export function merged(file: unknown, options: unknown): unknown {
  if (!isGroup(file) || !isGroup(options)) return options
  const both = { ...file } as Record<string, unknown>
  for (const [name, value] of Object.entries(options)) {
    both[name] = name in file ? merged(file[name], value) : value
  }
  return both
}
