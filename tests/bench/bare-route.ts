import { Hono } from 'hono'
import * as z from 'zod'

/** The least that an API of this kind can be: one route, one zod-validated JSON body. */
const body = z.strictObject({ refrigerant: z.string(), pressure: z.string() })

const app = new Hono()
app.post('/v1/saturation', async (context) => {
  const parsed = body.safeParse(await context.req.json())
  return parsed.success
    ? context.json({ refrigerant: parsed.data.refrigerant, pressure: parsed.data.pressure })
    : context.json({ message: 'bad input' }, 400)
})

export default app
