import { execFile, execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import packageData from '../../package.json' with { type: 'json' }
import { MADE_BY } from '../../shared/about.ts'
import { operation, operations } from '../../shared/operations.ts'
import { writeBundle } from '../generate/bundle.ts'
import { served } from '../node/served.ts'

const run = promisify(execFile)
const ask = ['saturation', 'R-134a', '--pressure', '32 psig', '--json']
const answer = operation('saturation').run({ refrigerant: 'R-134a', pressure: '32 psig' })
// Node itself warns on stderr where both colour settings are made.
const { FORCE_COLOR: _, NO_COLOR: __, ...inherited } = process.env
const environment = { ...inherited, NODE_COMPILE_CACHE: '' }

let folder = ''
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'chargewright-'))
  await writeBundle(folder)
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe.each([
  ['from its sources', () => 'cli/main.ts'],
  ['as a bundle', () => join(folder, 'chargewright.mjs')],
])('the program %s', (_, entry) => {
  it('prints one JSON value and ends with 0', async () => {
    const { stdout, stderr } = await run(process.execPath, [entry(), ...ask], { env: environment })
    expect(stderr).toBe('')
    expect(JSON.parse(stdout)).toEqual({ ...answer, madeBy: MADE_BY })
  })

  it('ends with 2 on bad input, the message on the error stream', async () => {
    const failed = run(process.execPath, [entry(), 'saturation', 'R-134a', '--pressure', '32'])
    await expect(failed).rejects.toEqual(
      expect.objectContaining({
        code: 2,
        stdout: '',
        stderr: expect.stringContaining('has no unit'),
      }),
    )
  })

  it('reads rows from a pipe and stops quietly when nobody reads on', () => {
    const rows = 'pressure\n'.concat('32 psig\n'.repeat(3000))
    const command = `'${process.execPath}' '${entry()}' saturation R-134a - | head -n 1`
    const first = execFileSync('bash', ['-o', 'pipefail', '-c', command], {
      input: rows,
      encoding: 'utf8',
    })
    expect(JSON.parse(first)).toEqual(answer)
  })

  it('begins an order, fills it in and keeps settings, each in its file', async () => {
    const here = mkdtempSync(join(tmpdir(), 'chargewright-files-'))
    const env = { ...environment, CHARGEWRIGHT_CONFIG: join(here, 'config') }
    const call = async (...argv: string[]) =>
      (await run(process.execPath, [entry(), ...argv], { env })).stdout
    try {
      const file = join(here, 'loader.yaml')
      const machine = ['--machine', 'name=Loader 7,kind=off-road', '--refrigerant', '134a']
      await call('work-order', '--new', file, ...machine, '-j', 'parted')
      const begun = readFileSync(file, 'utf8')
      expect(begun).toContain('job: couplers-parted')
      await expect(call('work-order', '--new', file)).rejects.toMatchObject({ code: 1 })
      expect(readFileSync(file, 'utf8')).toBe(begun)
      const card = await call('work-order', file, '--set', 'labelCharge=2 lb 6 oz', '--save')
      expect(card).toContain('2 lb 6 oz')
      expect(readFileSync(file, 'utf8')).toContain('\nlabelCharge: 2 lb 6 oz\n')
      await call('settings', '--set', 'altitude=5000 ft')
      expect(await call('saturation', '134a', '32psig')).toContain('from settings')
    } finally {
      rmSync(here, { recursive: true })
    }
  })

  it('serves the API, and ends when told to', async () => {
    const server = await served(process.execPath, [
      entry(),
      'serve',
      '--port',
      '0',
      '--cors',
      'https://shop.example',
    ])
    const { url } = server
    try {
      expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/u)
      const response = await fetch(`${url}/v1/saturation`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', origin: 'https://shop.example' },
        body: JSON.stringify({ refrigerant: 'R-134a', pressure: '32 psig' }),
      })
      expect(response.status).toBe(200)
      expect(response.headers.get('access-control-allow-origin')).toBe('https://shop.example')
      expect(await response.json()).toEqual(answer)
      const large = await fetch(`${url}/v1/saturation`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ refrigerant: 'x'.repeat(2 * 1024 * 1024) }),
      })
      expect(large.status).toBe(413)
      const second = spawnSync(process.execPath, [entry(), 'serve', '--port', new URL(url).port], {
        encoding: 'utf8',
      })
      expect(second.status).toBe(1)
      expect(second.stderr).toContain('something listens there')
      expect(second.stderr).not.toMatch(/\n\s+at /u)
    } finally {
      expect((await server.end()).status).toBe(0)
    }
  })
})

describe('the bundle', () => {
  const bundle = (...argv: string[]) =>
    run(process.execPath, [join(folder, 'chargewright.mjs'), ...argv], { env: environment })

  it.each(operations)('answers the example of $name as the core does', async (each) => {
    const file = join(folder, `${each.name}.json`)
    writeFileSync(file, JSON.stringify(each.example))
    const { stdout } = await bundle(each.name, file, '--no-settings', '--json')
    const told = JSON.parse(JSON.stringify(each.run(each.example)))
    expect(JSON.parse(stdout)).toEqual({ ...told, madeBy: MADE_BY })
  })

  it.each(['charge', 'refrigerants', ''])(
    'prints the help of "%s" as the sources do',
    async (name) => {
      const argv = [...(name === '' ? [] : [name]), '--help']
      const { stdout } = await run(process.execPath, ['cli/main.ts', ...argv], { env: environment })
      expect((await bundle(...argv)).stdout).toBe(stdout)
    },
  )

  it('answers a good question without zod, and is refused a bad one by it', async () => {
    const zod = join(folder, 'zod.cjs')
    const away = join(folder, 'away.cjs')
    renameSync(zod, away)
    try {
      const { stdout } = await bundle(...ask)
      expect(JSON.parse(stdout)).toEqual({ ...answer, madeBy: MADE_BY })
      await expect(bundle(...ask, '--units', 'metric')).rejects.toThrow('zod.cjs')
    } finally {
      renameSync(away, zod)
    }
    const refused = bundle(...ask, '--units', 'metric')
    await expect(refused).rejects.toMatchObject({ code: 2, stderr: expect.stringContaining('us') })
  })

  it('has no letter that Node would keep the whole file at two bytes for', () => {
    const files = readdirSync(folder).filter((name) =>
      /^(?:part|zod|chargewright)\b.*js$/u.test(name),
    )
    expect(files.length).toBeGreaterThan(20)
    for (const name of files) {
      expect(readFileSync(join(folder, name), 'utf8')).not.toMatch(/[^\0-\x7f]/u)
    }
  })
})

describe('npm scripts', () => {
  it('bundle what these tests bundle', () => {
    expect(packageData.scripts.build).toMatch(/^node tests\/generate\/bundle\.ts && /u)
    expect(packageData.bin.chargewright).toBe('dist/chargewright.mjs')
  })
})
