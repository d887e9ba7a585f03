import { execFileSync } from 'node:child_process'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { ABOUT } from '../../shared/about.ts'
import { operation } from '../../shared/operations.ts'
import { createApp } from '../../worker/app.ts'

const ROOT = new URL('../..', import.meta.url).pathname
/** The generator lives beside the TypeScript that it asks for, which is not ours. */
const GENERATOR = join(ROOT, 'tests/client/node_modules/openapi-typescript/bin/cli.js')
const FETCH = (
  JSON.parse(readFileSync(join(ROOT, 'tests/client/package.json'), 'utf8')) as {
    devDependencies: Record<string, string>
  }
).devDependencies['openapi-fetch']

/** Writes the typed client as a package: types of the document, a client of three lines, and what to do with it. */
export async function writeClient(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true })
  const document = await (await createApp().request('/openapi.json')).text()
  writeFileSync(join(folder, 'openapi.json'), document)
  execFileSync(
    process.execPath,
    [GENERATOR, join(folder, 'openapi.json'), '-o', join(folder, 'schema.d.ts')],
    { stdio: ['ignore', 'ignore', 'inherit'] },
  )
  const files = {
    'index.js': `import createClient from 'openapi-fetch'

/** A client of the service at \`baseUrl\`. */
export const chargewright = (baseUrl, options = {}) => createClient({ ...options, baseUrl })
`,
    'index.d.ts': `import type { Client, ClientOptions } from 'openapi-fetch'
import type { components, paths } from './schema.d.ts'

export type { components, paths }
/** Any schema of the document by its name: \`Schemas['SaturationAnswer']\`. */
export type Schemas = components['schemas']
/** A client of the service at \`baseUrl\`. */
export declare const chargewright: (
  baseUrl: string,
  options?: Omit<ClientOptions, 'baseUrl'>,
) => Client<paths, 'application/json' | 'application/problem+json'>
`,
    'package.json': `${JSON.stringify(
      {
        name: '@chargewright/client',
        version: ABOUT.version,
        description: `A typed client of the ${ABOUT.name} service.`,
        license: ABOUT.licence,
        private: true,
        type: 'module',
        exports: {
          '.': { types: './index.d.ts', default: './index.js' },
          './openapi.json': './openapi.json',
        },
        files: ['index.js', 'index.d.ts', 'schema.d.ts', 'openapi.json'],
        dependencies: { 'openapi-fetch': FETCH },
      },
      null,
      2,
    )}\n`,
    'README.md': readme(),
  }
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text)
}

const readme = () => `# @chargewright/client

A typed client of the ${ABOUT.name} service, made from its OpenAPI document (version ${ABOUT.version}).

\`\`\`sh
npm install /path/to/dist/client
\`\`\`

\`\`\`ts
${EXAMPLE}\`\`\`

Every operation is \`POST /v1/<operation>\`, many inputs at once \`POST /v1/<operation>/batch\`. A refusal is no exception: it comes as \`error\`, with \`code\` for the program, \`detail\` and \`hint\` for people. Quantities are written with their unit, \`"32 psig"\` or \`{ value: 32, unit: 'psig' }\`.

For a service of another version build the client anew: \`npm run build\`.
`

/** What the README shows; a test compiles it and runs it. */
export const EXAMPLE = `import { chargewright } from '@chargewright/client'

const service = chargewright('http://127.0.0.1:8787')
const { data, error } = await service.POST('/v1/saturation', {
  body: ${JSON.stringify(operation('saturation').example)},
})
if (error) throw new Error(\`\${error.detail} \${error.hint}\`)
console.log(data.result.dew.temperature)

const { data: batch } = await service.POST('/v1/saturation/batch', {
  body: [
    { refrigerant: 'R-134a', pressure: '32 psig' },
    { refrigerant: 'R-407C', pressure: { value: 80, unit: 'psig' } },
  ],
})
for (const { row, answer, problem } of batch ?? []) {
  console.log(row, answer?.result.dew.temperature ?? problem?.detail)
}
`

if (import.meta.main) await writeClient(join(ROOT, 'dist/client'))
