import type { ExecutionContext } from 'hono'
import { createApp } from './app.ts'
import { dataComes } from './edge/data.ts'
import { doorProblem } from './problem.ts'
import type { Settings } from './settings.ts'

const app = createApp()

function notReady(error: unknown): Response {
  console.error(error)
  return doorProblem('not-ready', 'The service could not read its data; nothing was computed.', {
    hint: 'Send the request again in a few seconds.',
    headers: { 'Retry-After': '5' },
  })
}

export default {
  fetch(
    request: Request,
    settings: Settings,
    execution?: ExecutionContext,
  ): Response | Promise<Response> {
    const coming = dataComes(settings)
    return coming === undefined
      ? app.fetch(request, settings, execution)
      : coming.then(() => app.fetch(request, settings, execution), notReady)
  },
}
