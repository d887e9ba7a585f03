import '../core.ts'
import type { KindName } from '../../../shared/diagram/index.ts'
import { CalcError } from '../../../shared/errors.ts'
import { loadOperation, type OperationName } from '../operations.ts'
import { run, type Sent, sent } from './outcome.ts'

/** What the page asks the thread beside it: an answer, or the picture of one. */
export interface Asked {
  readonly name: OperationName
  readonly input: unknown
  readonly picture?: { readonly kind: KindName; readonly width: number }
}

/** An answer, or the text of a picture; none where there is nothing to draw. */
export type Told = Sent | { readonly svg: string | undefined }

/** The part of a worker's own scope that is used here: the types of pages do not have it. */
const scope = globalThis as unknown as {
  onmessage: (event: { readonly data: Asked }) => void
  postMessage(told: Told): void
}

// One at a time: the page sends the next one when this is answered.
scope.onmessage = ({ data }) => {
  const told = data.picture ? pictureOf(data, data.picture) : answerOf(data)
  told.then(
    (value) => scope.postMessage(value),
    (error) => scope.postMessage({ kind: 'fault', message: String(error) }),
  )
}

const answerOf = async ({ name, input }: Asked): Promise<Told> =>
  sent(run(await loadOperation(name), input))

async function pictureOf(
  { input }: Asked,
  { kind, width }: NonNullable<Asked['picture']>,
): Promise<Told> {
  const { loadDiagram } = await import('../../../shared/diagram/load.ts')
  try {
    return { svg: (await loadDiagram(kind)).draw(input, { theme: 'page', width }) }
  } catch (error) {
    if (error instanceof CalcError) return { svg: undefined }
    throw error
  }
}
