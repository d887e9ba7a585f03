export * from './field.ts'
export { fieldsOf, type JsonSchema } from './fields-of.ts'
export { parseJson, putText, readItems, readText, unknownName } from './read-text.ts'
