import type { Server } from 'node:http'

const LOOK_EVERY_MS = 50

/**
 * Ends a server: takes no new connection, lets open requests be answered for `withinS` seconds, then cuts them.
 *
 * @returns How many connections had to be cut.
 */
export function stopServer(server: Server, withinS: number): Promise<number> {
  return new Promise((resolve, reject) => {
    let cut = 0
    const deadline = setTimeout(() => {
      server.getConnections((_, count) => {
        cut = count
        server.closeAllConnections()
      })
    }, withinS * 1e3)
    // A kept connection whose answer went out a moment ago would wait for the next request.
    const look = setInterval(() => server.closeIdleConnections(), LOOK_EVERY_MS)
    server.close((error) => {
      clearTimeout(deadline)
      clearInterval(look)
      if (error) reject(error)
      else resolve(cut)
    })
    server.closeIdleConnections()
  })
}
