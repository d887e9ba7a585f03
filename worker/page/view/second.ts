import '../../../shared/form/steps.ts'

export { keep } from '../offline/keep.ts'
export { foldedView } from './folded.ts'
export { rowsView, ticksView } from './lists.ts'
export { picturesView } from './pictures.ts'
export { settingsView } from './settings.ts'
