import '../../../shared/form/steps.ts'

export { foldedView } from './folded.ts'
export { settingsView } from './settings.ts'
