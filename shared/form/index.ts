/** Forms from the fields of operations: labels, order, what is typed, and how it becomes an input. */
export * from './draft.ts'
export * from './layout.ts'
export * from './units.ts'
export * from './words.ts'
