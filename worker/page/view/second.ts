export { foldedView } from './folded.ts'
export { settingsView } from './settings.ts'
