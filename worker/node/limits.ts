/** How long whoever calls may take, and how many may at once: a slow or a stuck caller holds nobody up. */

/** From the first byte until all headers are there, ms. */
export const HEADERS_TIMEOUT_MS = 10_000
/** From the first byte until the whole body is there, ms. */
export const REQUEST_TIMEOUT_MS = 30_000
/** How often the two above are looked at, ms. */
export const CHECK_EVERY_MS = 1_000
/** A connection on which nothing moves, neither way, ms. */
export const IDLE_TIMEOUT_MS = 60_000
/** A kept connection without a request, ms; longer than proxies in front keep theirs (60 s and less). */
export const KEEP_ALIVE_MS = 65_000
/** Connections at once; further ones are closed as they come. */
export const MOST_CONNECTIONS = 1_000
/** All headers together, bytes. */
export const MOST_HEADER_BYTES = 16 * 1024
/** How long open requests may take once the server is told to end, s. */
export const STOP_WITHIN_S = 10
