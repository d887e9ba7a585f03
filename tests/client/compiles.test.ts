import { execFile } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { operations } from '../../shared/operations.ts'
import { EXAMPLE, writeClient } from '../generate/client.ts'
import { served } from '../node/served.ts'

const run = promisify(execFile)
const root = new URL('../..', import.meta.url).pathname
const here = join(root, 'tests/client')
const TSC = join(here, 'node_modules/typescript/bin/tsc')

/** The requests that the README of the project shows. */
const shown = [
  ...readFileSync(join(root, 'README.md'), 'utf8').matchAll(
    /curl -s http:\/\/127\.0\.0\.1:8787(\/v1\/[a-z-]+)\b[^']*'content-type[^']*'[^']*'(\{[^']*\})'/gu,
  ),
].map(([, path = '', body = '']) => ({ path, body }))

const OPTIONS = {
  compilerOptions: {
    strict: true,
    exactOptionalPropertyTypes: true,
    noUncheckedIndexedAccess: true,
    module: 'nodenext',
    target: 'es2022',
    lib: ['es2023', 'dom'],
    types: [],
    noEmit: true,
    skipLibCheck: false,
    allowImportingTsExtensions: true,
  },
  include: ['*.ts'],
}

let folder = ''
beforeAll(async () => {
  folder = mkdtempSync(join(here, 'made-'))
  await writeClient(join(folder, 'client'))
  mkdirSync(join(folder, 'node_modules/@chargewright'), { recursive: true })
  symlinkSync(join(folder, 'client'), join(folder, 'node_modules/@chargewright/client'))
  writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(OPTIONS))
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
}, 60_000)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const head = `import { chargewright } from '@chargewright/client'\nconst service = chargewright('x')\n`
const post = (path: string, body: string) =>
  `{ const { data, error } = await service.POST('${path}', { body: ${body} })
  if (error) { const code: string = error.code; const status: number = error.status; console.log(code, status) }
  else console.log(data.result, data.cautions[0]?.text) }\n`

/** What has no business to compile. */
const WRONG = [
  [
    'a unit that there is not',
    '/v1/saturation',
    '{ refrigerant: "R-134a", pressure: { value: 1, unit: "pounds" } }',
  ],
  ['a bare number', '/v1/saturation', '{ refrigerant: "R-134a", pressure: 32 }'],
  ['no refrigerant', '/v1/saturation', '{ pressure: "32 psig" }'],
  ['an address that there is not', '/v1/saturations', '{}'],
] as const

describe('a generated client', { timeout: 120_000 }, () => {
  it('compiles with every example, the README’s request, batches, and all that can be fetched, and with nothing wrong', async () => {
    expect(shown.length).toBeGreaterThan(0)
    const examples = operations.map(({ name, example }) =>
      post(`/v1/${name}`, JSON.stringify(example)),
    )
    const batches = operations.map(
      ({
        name,
        example,
      }) => `{ const { data } = await service.POST('/v1/${name}/batch', { body: [${JSON.stringify(example)}] })
  for (const { row, answer, problem } of data ?? []) console.log(row.toFixed(), answer?.result, problem?.hint) }\n`,
    )
    const gets = `
{ const { data } = await service.GET('/v1/refrigerants')
  for (const { id, gwp, safetyClass, composition } of data?.refrigerants ?? [])
    console.log(id, gwp[0]?.value.toFixed(), safetyClass.value === 'A2L', composition[0]?.massFraction) }
{ const { data } = await service.GET('/v1/refrigerants/{id}/saturation', { params: { path: { id: 'R-134a' }, query: { pressure: '32 psig' } } })
  console.log(data?.result.dew.temperature.unit === '°F') }
{ const { data } = await service.GET('/v1/units'); console.log(data?.kinds[0]?.units[0]?.factor) }
{ const { data } = await service.GET('/healthz'); console.log(data?.version) }
`
    const text = [
      head,
      ...examples,
      ...shown.map(({ path, body }) => post(path, body)),
      ...batches,
      gets,
    ]
    writeFileSync(join(folder, 'all.ts'), text.join(''))
    writeFileSync(join(folder, 'readme.ts'), EXAMPLE)
    const wrong = WRONG.map(
      ([what, path, body]) =>
        `// @ts-expect-error ${what}\nservice.POST('${path}', { body: ${body} })\n`,
    )
    writeFileSync(join(folder, 'wrong.ts'), head + wrong.join(''))
    const said = await run(process.execPath, [TSC, '-p', folder]).then(
      () => '',
      (error: { stdout: string }) => error.stdout,
    )
    expect(said).toBe('')
  })

  it('does what its README shows', async () => {
    const server = await served(process.execPath, ['worker/node/main.ts', '--port', '0'])
    try {
      const text = EXAMPLE.replace('http://127.0.0.1:8787', server.url)
      writeFileSync(join(folder, 'example.mjs'), text)
      const { stdout } = await run(process.execPath, [join(folder, 'example.mjs')])
      expect(stdout).toMatch(/unit: '°F'/u)
      expect(stdout.match(/^[12] \{/gmu)).toHaveLength(2)
    } finally {
      await server.end()
    }
  })
})
