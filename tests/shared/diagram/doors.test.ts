import { describe, expect, it } from 'vitest'
import { MADE_BY } from '../../../shared/about.ts'
import { DIAGRAMS, exampleOf } from '../../../shared/diagram/index.ts'
import { loadDiagram } from '../../../shared/diagram/load.ts'
import { CalcError } from '../../../shared/errors.ts'
import { operation } from '../../../shared/operations.ts'
import { createApp } from '../../../worker/app.ts'
import { session } from '../../cli/session.ts'

const app = createApp()
const post = (address: string, body: unknown) =>
  app.request(`/v1/diagram/${address}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  })

describe.each(DIAGRAMS.map((entry) => [entry.kind, entry] as const))(
  'the picture %s',
  (kind, entry) => {
    const example = exampleOf(entry, operation(entry.operation))

    it('is the same through every door', async () => {
      const options = { theme: 'dark', width: 400 } as const
      const direct = (await loadDiagram(entry.kind)).draw(example, options)
      const api = await post(`${kind}?theme=dark&width=400`, example)
      expect(api.status).toBe(200)
      expect(api.headers.get('content-type')).toBe('image/svg+xml')
      expect(api.headers.get('cache-control')).toBe('no-store')
      expect(await api.text()).toBe(direct)
      const written: Record<string, string> = {}
      const words = ['--diagram', kind, '--theme', 'dark', '--width', '400']
      const stdin = JSON.stringify(example)
      const file = await session([entry.operation, '-', '--svg', 'a.svg', '--json', ...words], {
        stdin,
        written,
      })
      expect(written).toEqual({ 'a.svg': `${direct}\n` })
      expect(file.err).toBe('')
      // The answer is printed as ever.
      expect(JSON.parse(file.out)).toEqual({
        ...operation(entry.operation).run(example),
        madeBy: MADE_BY,
      })
      const watched = await session([entry.operation, '-', '--svg', 'a.svg', '--json', ...words], {
        stdin,
        watched: true,
      })
      expect(watched.err).toBe(`Drawn into a.svg: ${kind}.\n`)
      const out = await session([entry.operation, '-', '--svg', '-', ...words], { stdin })
      expect(out).toEqual({ status: 0, out: `${direct}\n`, err: '' })
    })

    it('is refused with the problem of its operation', async () => {
      const input = { ...example, nonsense: 1 }
      const response = await post(kind, input)
      expect(response.status).toBe(400)
      expect(response.headers.get('content-type')).toMatch(/^application\/problem\+json/u)
      const { code, detail } = (await response.json()) as { code: string; detail: string }
      let refused: unknown
      try {
        operation(entry.operation).run(input)
      } catch (error) {
        refused = error
      }
      expect(refused).toBeInstanceOf(CalcError)
      expect({ code, message: detail }).toMatchObject({
        code: (refused as CalcError).code,
        message: (refused as CalcError).message,
      })
      const written = {}
      const typed = await session([entry.operation, '-', '--svg', 'a.svg'], {
        stdin: JSON.stringify(input),
        written,
      })
      expect(typed.status).toBe(2)
      expect([typed.out, written]).toEqual(['', {}])
    })
  },
)

describe('the doors to pictures', () => {
  it('list them', async () => {
    const { diagrams } = (await (await app.request('/v1/diagram')).json()) as {
      diagrams: { kind: string; operation: string }[]
    }
    expect(diagrams.map(({ kind }) => kind)).toEqual(DIAGRAMS.map(({ kind }) => kind))
    const help = await session(['readings', '--help'])
    expect(help.out.replace(/\s+/gu, ' ')).toContain('pressure-enthalpy | superheat-subcooling')
    expect((await session(['oil', '--help'])).out).not.toContain('--svg')
  })

  it('refuse a kind, a theme, a width and a form of input that there is not', async () => {
    expect((await post('nothing', {})).status).toBe(404)
    const { example } = operation('saturation')
    for (const query of [
      'theme=neon',
      'width=99',
      'width=wide',
      'colour=red',
      'width=400&width=500',
    ]) {
      const response = await post(`saturation-curve?${query}`, example)
      expect([query, response.status]).toEqual([query, 400])
    }
    expect((await post('saturation-curve', [example])).status).toBe(400)
    const plain = await app.request('/v1/diagram/saturation-curve', { method: 'POST', body: 'x' })
    expect(plain.status).toBe(415)
    const named = await session(['readings', '134a', '32psig/48F', '--svg', 'a', '--diagram', 'x'])
    expect(named.err).toContain('pressure-enthalpy, superheat-subcooling')
    const alone = await session(['saturation', '134a', '32psig', '--diagram', 'saturation-curve'])
    expect(alone.err).toContain('--svg')
  })

  it('draw one input and no rows', async () => {
    const rows =
      '{"refrigerant":"134a","pressure":"3 bar g"}\n{"refrigerant":"134a","pressure":"4 bar g"}'
    const { status, err } = await session(['saturation', '-', '--svg', 'a.svg'], { stdin: rows })
    expect(status).toBe(2)
    expect(err).toContain('one input')
  })

  it('draw with the settings of the shop, as the answer is given', async () => {
    const settings = { text: '{"altitude":"5000 ft"}' }
    const line = ['saturation', '134a', '32psig', '--svg', '-']
    const { out } = await session(line, { settings })
    expect(out).not.toBe((await session(line)).out)
    expect(out).toBe((await session([...line, '--altitude', '5000 ft', '--no-settings'])).out)
  })
})
