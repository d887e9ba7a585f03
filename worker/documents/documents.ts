import type { Settings } from '../settings.ts'

/**
 * What the service says of itself: long texts that depend on nothing but its version.
 *
 * A server of one's own makes them when they are first asked for (`made.ts`); at the edge they lie
 * among the files, made when it was built (`stored.ts`), so that the program need not carry them.
 */
export interface Documents {
  /** The OpenAPI document as JSON. */
  openapi(settings: Settings): Promise<string>
  /** The reference; its requests name no host yet, see `withHost`. */
  reference(settings: Settings): Promise<string>
  /** What a code of a problem means, or nothing where there is no such code. */
  problem(code: string, settings: Settings): Promise<string | undefined>
  /** A guide, or nothing where there is none of that name. */
  guide(name: string, settings: Settings): Promise<string | undefined>
  /** What stands at the root where the page was not built. */
  front(settings: Settings): Promise<string>
}
