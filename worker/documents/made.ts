import type { Operation } from '../../shared/operation.ts'
import { openapiDocument } from '../openapi/document.ts'
import { frontPage } from '../pages/front.ts'
import { guidePage } from '../pages/guide.ts'
import type { Html } from '../pages/layout.ts'
import { problemPage } from '../pages/problems.ts'
import { referencePage } from '../pages/reference.ts'
import type { Documents } from './documents.ts'

/** The documents, made when first asked for, those that take long once. */
export function documents(operations: readonly Operation[]): Documents {
  const document = once(() => openapiDocument(operations))
  const openapi = once(async () => JSON.stringify(document()))
  const reference = once(async () => String(await referencePage(document())))
  return {
    openapi,
    reference,
    problem: (code) => text(problemPage(code)),
    guide: (name) => text(guidePage(name)),
    front: async () => String(await frontPage()),
  }
}

const text = async (page: Html | undefined) => (page === undefined ? undefined : String(await page))

/** Made when first asked for, then kept. */
function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined
  return () => {
    made ??= { value: make() }
    return made.value
  }
}
