import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { exitStatusOf } from '../cli/exit.ts'
import { MADE_BY } from '../shared/about.ts'
import { CalcError } from '../shared/errors.ts'
import { operations } from '../shared/operations.ts'
import { createApp } from '../worker/app.ts'
import { statusOf } from '../worker/problem.ts'
import { session } from './cli/session.ts'
import { arbitraryInput } from './support/arbitrary-input.ts'

const app = createApp()
const SEED = Number(process.env.FUZZ_SEED ?? 20261125)

/** The answer of the calculation itself, or its refusal. */
function direct(run: (input: unknown) => unknown, input: unknown) {
  try {
    return { answer: run(input) }
  } catch (error) {
    if (error instanceof CalcError) return { error }
    throw error
  }
}

describe.each(operations.map((operation) => [operation.name, operation] as const))(
  '%s',
  (name, operation) => {
    it('says the same through every door, whatever it is asked', async () => {
      await fc.assert(
        fc.asyncProperty(arbitraryInput(operation), async (input) => {
          const body = JSON.stringify(input)
          const { answer, error } = direct(operation.run, JSON.parse(body))
          const cli = await session([name, '-', '--json'], { stdin: body })
          const api = await app.request(`/v1/${name}`, {
            method: 'POST',
            headers: { 'content-type': 'application/json' },
            body,
          })
          const heard = await api.json()
          if (error) {
            const { code, message, path, hint } = error
            expect(cli).toEqual({
              status: exitStatusOf[code],
              out: '',
              err: `${JSON.stringify(error)}\n`,
            })
            expect(api.status).toBe(statusOf[code])
            expect(heard).toEqual(expect.objectContaining({ code, detail: message, path, hint }))
          } else {
            expect(cli).toEqual({
              status: 0,
              out: `${JSON.stringify({ ...(answer as object), madeBy: MADE_BY })}\n`,
              err: '',
            })
            expect(api.status).toBe(200)
            expect(heard).toEqual(answer)
          }
        }),
        { numRuns: 25, seed: SEED },
      )
    })
  },
)
