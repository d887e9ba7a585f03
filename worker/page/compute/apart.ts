import { loadOperation, type OperationName } from '../operations.ts'
import { run, type Sent, sent } from './outcome.ts'

/** What the page asks the thread beside it. */
export interface Asked {
  readonly name: OperationName
  readonly input: unknown
}

/** The part of a worker's own scope that is used here: the types of pages do not have it. */
const scope = globalThis as unknown as {
  onmessage: (event: { readonly data: Asked }) => void
  postMessage(answer: Sent): void
}

// One at a time: the page sends the next one when this is answered.
scope.onmessage = ({ data: { name, input } }) => {
  loadOperation(name).then(
    (operation) => scope.postMessage(sent(run(operation, input))),
    (error) => scope.postMessage({ kind: 'fault', message: String(error) }),
  )
}
