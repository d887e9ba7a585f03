export * from './field.ts'
export { fieldsOf, type JsonSchema } from './fields-of.ts'
export { parseJson } from './parse-json.ts'
export { putText, readItems, readText, unknownName } from './read-text.ts'
