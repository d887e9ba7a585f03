import { CalcError } from '../../errors.ts'

/** A name of the model as words: `compressorAndDischarge`, `condenser-outlet`. */
export const spoken = (name: string): string =>
  name
    .replace(/([a-z])([A-Z])/gu, '$1 $2')
    .replaceAll('-', ' ')
    .toLowerCase()

const endOf = (state: string) => (state === 'dry' ? 'pumped dry' : 'stopped by its cut-out')

/** The refusal to draw a machine that has no running state. */
export const nothingRuns = (state: string): CalcError =>
  new CalcError('bad-input', `The machine is ${endOf(state)}: it has no running state to draw.`, {
    hint: 'Make the fault smaller, or draw a sweep: it shows where the machine stops.',
  })
