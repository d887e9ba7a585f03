import { Hono } from 'hono'
import * as z from 'zod'

/** What the service answered to the question of the bench: the bare route sends the same bytes and headers. */
export interface Sent {
  readonly body: string
  readonly headers: Readonly<Record<string, string>>
}

declare global {
  var SENT: Sent
}

/** The least that an API of this kind can be: one route, one zod-validated JSON body, no calculation. */
const body = z.strictObject({ refrigerant: z.string(), pressure: z.string() })

const app = new Hono()
app.post('/v1/saturation', async (context) => {
  const parsed = body.safeParse(await context.req.json())
  if (!parsed.success) return context.json({ message: 'bad input' }, 400)
  const { SENT } = globalThis
  return new Response(SENT.body, { status: 200, headers: SENT.headers })
})

export default app
