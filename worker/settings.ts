export interface Limiter {
  limit(options: { readonly key: string }): Promise<{ readonly success: boolean }>
}

/** What whoever runs the service may set: bindings at the edge, options or environment on a server. */
export interface Settings {
  /** Origins of web pages that may call the API, with commas between; `*` for all. Off where empty. */
  readonly CORS_ORIGINS?: string
  /** The edge's rate limiter, where one is configured. */
  readonly RATE_LIMITER?: Limiter
  /** The files of the page, at the edge, where they are asked before this program is. */
  readonly ASSETS?: { fetch(request: Request): Promise<Response> }
  /** Which deployment runs, by the edge. */
  readonly CF_VERSION_METADATA?: { readonly id: string }
  /** Which build runs, elsewhere: answers that were kept from another are asked for again. */
  readonly BUILD?: string
}

export interface Environment {
  Bindings: Settings
}

/** Longest body that is read, bytes: a work order with a long vacuum log is about a tenth of it. */
export const BODY_LIMIT = 256 * 1024

/** Longest body of a batch, bytes. */
export const BATCH_BODY_LIMIT = 1024 * 1024
