import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import loader from '../../data/examples/quarry-loader.json' with { type: 'json' }
import { DRAWN } from '../../shared/diagram/all.ts'
import { diagramsOf } from '../../shared/diagram/index.ts'
import { CalcError } from '../../shared/errors.ts'
import { KEPT } from '../../shared/form/index.ts'
import { operations } from '../../shared/operations.ts'
import { session } from '../cli/session.ts'
import { writePage } from '../generate/page.ts'
import { complaintsOf, NO_BROWSER, profile, seriousFaults, tooSmall, tooWide } from './chromium.ts'
import { onNode, onWorkerd, type Server } from './servers.ts'

const asked = operations.filter(({ name }) => name !== 'work-order')

beforeAll(async () => {
  if (!NO_BROWSER) await writePage('dist/page')
}, 60_000)

/** Whether there is anything to draw: a sweep is not part of every example. */
function draws(kind: keyof typeof DRAWN, input: unknown): boolean {
  try {
    DRAWN[kind].draw(input)
    return true
  } catch (error) {
    if (error instanceof CalcError) return false
    throw error
  }
}

/** An order on which everything was read that has a picture. */
const WHOLE_VISIT = {
  ...loader,
  job: 'system-opened',
  couplings: [],
  readings: {
    suctionPressure: '32 psig',
    suctionTemperature: '48 °F',
    liquidPressure: '185 psig',
    liquidTemperature: '115 °F',
  },
  evacuation: {
    vacuum: '400 micron',
    rise: [0, 5, 10, 15].map((minutes) => ({
      time: `${minutes} min`,
      pressure: `${400 + 4 * minutes} micron`,
    })),
  },
  leakTest: {
    startPressure: '150 psig',
    startTemperature: '80 °F',
    endPressure: '147 psig',
    endTemperature: '70 °F',
    elapsed: '12 h',
  },
  cooling: { ventTemperature: '48 °F', returnAir: '80 °F', relativeHumidity: '50 %' },
}

/** The level's word stands before the sentence. */
const headlineOf = async (page: Page) =>
  ((await page.textContent('.headline')) ?? '')
    .replace(/^\s*(?:Stop|Check|Good|Answer|Still needed)\s+/u, '')
    .trim()

/** In the page: all orders that stand on the device, as text. */
const ON_DEVICE = `new Promise((resolve, reject) => {
  const opened = indexedDB.open('chargewright')
  opened.onerror = () => reject(opened.error)
  opened.onsuccess = () => {
    const all = opened.result.transaction('orders').objectStore('orders').getAll()
    all.onerror = () => reject(all.error)
    all.onsuccess = () => {
      opened.result.close()
      resolve(JSON.stringify(all.result))
    }
  }
})`

describe.skipIf(NO_BROWSER).each([
  ['Node', onNode],
  ['workerd', onWorkerd],
] as const)('the page, served by %s', { timeout: 240_000 }, (runtime, start) => {
  let server: Server
  let browser: BrowserContext
  let folder: string

  beforeAll(async () => {
    server = await start()
    folder = mkdtempSync(join(tmpdir(), 'page-'))
    browser = await profile(folder)
  }, 120_000)
  afterAll(async () => {
    await browser?.close()
    await server?.end()
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
  })

  const opened = async (address = '') => {
    const page = await browser.newPage()
    const complaints = complaintsOf(page)
    await page.goto(`${server.url}/${address}`)
    await page.waitForSelector('h1')
    return { page, complaints }
  }

  it('answers the example of every step as the step itself does, and complains of nothing', async () => {
    const { page, complaints } = await opened()
    for (const operation of asked) {
      await page.goto(`${server.url}/#/${operation.name}`)
      await page.getByRole('button', { name: 'Fill in an example' }).click()
      await page.waitForSelector('.told[aria-busy=false] .headline')
      // Units are chosen for the whole page: an example brings none.
      const example = Object.fromEntries(
        Object.entries(operation.example).filter(([name]) => !KEPT.has(name)),
      )
      const { headline } = operation.run(example)
      expect(await headlineOf(page), operation.name).toBe(headline)
      const pictures = diagramsOf(operation.name).filter(({ kind }) => draws(kind, example)).length
      // A click may come while an answer is drawn anew: what is not open is clicked again.
      const drawn = async () => {
        const closed = page.locator('.picture:not([open]) > summary')
        for (const summary of await closed.all()) await summary.click({ timeout: 2000 })
        return page.locator('.drawn svg').count()
      }
      await expect
        .poll(drawn, { timeout: 30_000, interval: 200, message: operation.name })
        .toBe(pictures)
    }
    expect(complaints).toEqual([])
    await page.close()
  })

  it('loads little before the first answer (printed)', async () => {
    const page = await browser.newPage()
    const devtools = await browser.newCDPSession(page)
    await devtools.send('Network.enable')
    await devtools.send('Network.setCacheDisabled', { cacheDisabled: true })
    await devtools.send('Network.setBypassServiceWorker', { bypass: true })
    let bytes = 0
    devtools.on('Network.loadingFinished', ({ encodedDataLength }) => {
      bytes += encodedDataLength
    })
    await page.goto(`${server.url}/#/readings`)
    await page.getByRole('button', { name: 'Fill in an example' }).click()
    await page.waitForSelector('.headline')
    console.log(`${runtime}: ${(bytes / 1000).toFixed(1)} kB over the wire before the first answer`)
    expect(bytes).toBeGreaterThan(50_000)
    expect(bytes).toBeLessThan(200_000)
    await page.close()
  })

  it('says beside the field what is wrong with it, and answers as one types', async () => {
    const { page, complaints } = await opened('#/saturation')
    await page.getByRole('button', { name: 'Empty the form' }).click()
    const pressure = page.getByLabel('Pressure', { exact: true })
    await page.getByLabel('Refrigerant').fill('134a')
    await pressure.fill('32')
    // An answer that a worker computes comes a moment after the letter: until then the empty field is at fault.
    const marked = (wrong: boolean) =>
      page.waitForSelector(`#f-saturation-pressure[aria-invalid="${wrong}"]`)
    await page.waitForSelector('#f-saturation-pressure-fault:has-text("no unit")')
    await marked(true)
    expect(await pressure.getAttribute('aria-invalid')).toBe('true')
    await page.getByRole('button', { name: 'psig', exact: true }).click()
    expect(await pressure.inputValue()).toBe('32 psig')
    await marked(false)
    expect(await pressure.getAttribute('aria-invalid')).toBe('false')
    expect(await headlineOf(page)).toContain('36.8 °F')
    await pressure.pressSequentially(' ')
    await page.getByRole('button', { name: 'bar g', exact: true }).click()
    expect(await pressure.inputValue()).toBe('32 bar g')
    expect(complaints).toEqual([])
    await page.close()
  })

  it('keeps units, law and altitude, and what is typed', async () => {
    const { page } = await opened('#/settings')
    await page.getByLabel('Altitude').fill('5000 ft')
    await page.getByLabel('Units').selectOption('si')
    await page.goto(`${server.url}/#/saturation`)
    await page.getByRole('button', { name: 'Empty the form' }).click()
    await page.getByLabel('Refrigerant').fill('R-22')
    await page.getByLabel('Temperature', { exact: true }).fill('5 °C')
    await page.reload()
    await page.waitForSelector('.headline')
    expect(await page.getByLabel('Temperature', { exact: true }).inputValue()).toBe('5 °C')
    const { headline } =
      operations[0]?.run({
        refrigerant: 'R-22',
        temperature: '5 °C',
        altitude: '5000 ft',
        units: 'si',
      }) ?? {}
    expect(await headlineOf(page)).toBe(headline)
    await page.goto(`${server.url}/#/settings`)
    await page.getByLabel('Units').selectOption('')
    await page.getByLabel('Altitude').fill('')
    await page.close()
  })

  it('refuses a script that is written into it, as every page does', async () => {
    for (const address of ['', 'reference']) {
      const page = await browser.newPage()
      await page.goto(`${server.url}/${address}`)
      await page.addScriptTag({ content: 'globalThis.written = true' }).catch(() => {})
      expect(await page.evaluate('globalThis.written'), address).toBeUndefined()
      await page.close()
    }
  })

  it.each([360, 1280])('has no serious fault at %i px, in any view', async (width) => {
    const { page, complaints } = await opened()
    await page.setViewportSize({ width, height: 800 })
    const views = ['', 'settings', 'orders', 'orders/new', ...asked.map(({ name }) => name)]
    for (const view of views) {
      await page.goto(`${server.url}/#/${view}`)
      await page.waitForSelector('h1')
      const example = page.getByRole('button', { name: 'Fill in an example' })
      if ((await example.count()) > 0) {
        await example.click()
        await page.waitForSelector('.fold')
        await unfold(page)
      }
      expect({ view, faults: await seriousFaults(page) }).toEqual({ view, faults: [] })
      expect({ view, tooWide: await tooWide(page) }).toEqual({ view, tooWide: 0 })
      expect({ view, tooSmall: await tooSmall(page) }).toEqual({ view, tooSmall: [] })
    }
    expect(complaints).toEqual([])
    await page.close()
  })

  it('works without a network once it was there: reload, and steps never asked before', async () => {
    const { page } = await opened()
    await page.evaluate('navigator.serviceWorker.ready.then(() => {})')
    await page.waitForSelector('.bottom:has-text("works without a network")')
    await page.reload()
    await browser.setOffline(true)
    try {
      await page.reload()
      await page.goto(`${server.url}/?from=home#/fractionation`)
      await page.getByRole('button', { name: 'Fill in an example' }).click()
      await page.waitForSelector('.headline')
      await page.goto(`${server.url}/#/orders`)
      await page.waitForSelector('text=Begin an order')
    } finally {
      await browser.setOffline(false)
    }
    await page.close()
  })

  it('takes a work order from nothing to the printed sheet, and to the command line and back', async () => {
    const { page, complaints } = await opened('#/orders')
    await page.getByRole('link', { name: 'Begin an order' }).click()
    await page.getByRole('button', { name: 'Begin' }).click()
    expect(await page.textContent('#begin-name-fault')).toBe('Needed to go on.')
    await page.getByLabel('What is the machine called in the yard?').fill('Yard loader')
    await page.getByLabel('What kind of machine?').selectOption('off-road')
    await page.getByLabel('Refrigerant on the label').fill('134a')
    await page.getByLabel('Full charge on the label').fill('2 lb 6 oz')
    await page.getByLabel('What is done?').selectOption('system-opened')
    await page.getByLabel('Whose law binds the work?').selectOption('us-federal')
    await page.getByRole('button', { name: 'Begin' }).click()
    await page.waitForSelector('.card')
    expect(await page.textContent('h1')).toBe('Yard loader')
    await page.locator('summary', { hasText: 'Close up' }).click()
    await page.locator('summary', { hasText: /^Vacuum/u }).click()
    await page.getByLabel('Vacuum reached').fill('400 micron')
    await page.waitForSelector('.card:has-text("400 micron")')
    const id = /orders\/(\w+)/u.exec(page.url())?.[1]

    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save to a file' }).click(),
    ])
    expect(file.suggestedFilename()).toBe('yard-loader.json')
    const text = readFileSync(await file.path(), 'utf8')
    expect(JSON.parse(text)).toEqual({
      version: 2,
      machine: { name: 'Yard loader', kind: 'off-road' },
      refrigerant: '134a',
      labelCharge: '2 lb 6 oz',
      place: { law: 'us-federal' },
      job: 'system-opened',
      evacuation: { vacuum: '400 micron' },
    })
    const { status, out } = await session(['work-order', 'order.json'], {
      files: { 'order.json': text },
    })
    expect(status).toBe(0)
    expect(out).toContain('Yard loader')

    await page.getByRole('link', { name: 'Card to print' }).click()
    await page.waitForSelector('.paper .card')
    for (const format of ['A4', 'Letter'] as const) {
      const sheet = (await page.pdf({ format })).toString('latin1')
      expect(sheet.match(/\/Type \/Page\b/gu), format).toHaveLength(1)
    }
    await page.goto(`${server.url}/#/orders/${id}/customer`)
    await page.waitForSelector("text=the customer's copy")

    await page.goto(`${server.url}/#/orders`)
    const yaml =
      'machine:\n  name: Loader from a file\n  kind: off-road\nrefrigerant: R-134a\njob: diagnose\n'
    await page.setInputFiles('input[type=file]', [
      { name: 'loader.yaml', mimeType: 'text/yaml', buffer: Buffer.from(yaml) },
    ])
    await page.getByRole('link', { name: 'Loader from a file' }).click()
    await page.waitForSelector('.card')
    await page.getByRole('button', { name: 'Delete', exact: true }).click()
    await page.getByRole('button', { name: 'Delete it for good' }).click()
    await page.waitForSelector('text=Begin an order')
    expect(await page.getByRole('link', { name: 'Loader from a file' }).count()).toBe(0)

    const broken = yaml.replace('kind: off-road', 'sort: off-road')
    await page.setInputFiles('input[type=file]', [
      { name: 'loader.yaml', mimeType: 'text/yaml', buffer: Buffer.from(broken) },
    ])
    await page.waitForSelector('[role=status].fault:has-text("sort")')
    expect(complaints).toEqual([])
    await page.close()
  })

  it('has no serious fault in an order, its card and the customer’s copy', async () => {
    const { page } = await opened('#/orders')
    for (const width of [360, 1280]) {
      await page.setViewportSize({ width, height: 800 })
      await page.goto(`${server.url}/#/orders`)
      await page.setInputFiles('input[type=file]', ['data/examples/harbour-crane.json'])
      await page.locator('.orders .open').first().click()
      await page.waitForSelector('.card')
      const address = page.url()
      for (const view of ['', '/card', '/customer']) {
        await page.goto(address + view)
        await page.waitForSelector('.card')
        if (view === '') await unfold(page)
        expect({ width, view, faults: await seriousFaults(page) }).toEqual({
          width,
          view,
          faults: [],
        })
        expect({ width, view, tooWide: await tooWide(page) }).toEqual({ width, view, tooWide: 0 })
        if (view === '/card') expect(await page.textContent('.card')).toContain('Harbour crane')
      }
    }
    await page.close()
  })

  it('prints a card with what was read on one sheet, its charge with it', async () => {
    const { page, complaints } = await opened('#/orders')
    await page.waitForSelector('text=Begin an order')
    const buffer = Buffer.from(JSON.stringify(WHOLE_VISIT))
    await page.setInputFiles('input[type=file]', [
      { name: 'whole.json', mimeType: 'application/json', buffer },
    ])
    await page.locator('.orders .open').first().click()
    await page.waitForSelector('.card')
    await page.goto(`${page.url()}/card`)
    await page.waitForSelector('.figures-row svg >> nth=4')
    const titles = await page.locator('.figures-row svg > title').allTextContents()
    expect(titles.join(' · ')).toMatch(/Charge/u)
    expect(titles.join(' · ')).toMatch(/what is published/u)
    for (const format of ['A4', 'Letter'] as const) {
      const sheet = (await page.pdf({ format })).toString('latin1')
      expect(sheet.match(/\/Type \/Page\b/gu), format).toHaveLength(1)
    }
    await page.emulateMedia({ media: 'print' })
    const printed = page.locator('.figures-row svg:visible')
    expect(await printed.count()).toBe(3)
    expect(await printed.locator('title').allTextContents()).toContain('Charge')
    await page.emulateMedia({ media: null })
    expect(complaints).toEqual([])
    await page.close()
  })

  it('keeps an order that was being written when the browser was killed', async () => {
    const own = mkdtempSync(join(tmpdir(), 'killed-'))
    const first = await profile(own)
    const page = await first.newPage()
    await page.goto(`${server.url}/#/orders`)
    await page.waitForSelector('text=Begin an order')
    await page.setInputFiles('input[type=file]', ['data/examples/quarry-loader.json'])
    await page.locator('.orders .open').first().click()
    await page.getByLabel('Number of the order').fill('')
    await page.getByLabel('Number of the order').pressSequentially('Q-17')
    // Nothing is pressed to save it: it stands on the device as soon as the disk has taken it.
    await expect.poll(() => page.evaluate(ON_DEVICE), { timeout: 5000 }).toContain('Q-17')
    killAllOf(own)
    await first.close().catch(() => {})
    const second = await profile(own)
    const again = await second.newPage()
    await again.goto(`${server.url}/#/orders`)
    expect(await again.textContent('.orders .open')).toContain('Q-17')
    await second.close()
    rmSync(own, { recursive: true, force: true, maxRetries: 5 })
  })

  it('answers a letter in a moment on a slow phone (printed)', async () => {
    const { page } = await opened()
    const devtools = await browser.newCDPSession(page)
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: 4 })
    const slowest: string[] = []
    const timed = async (name: string, field: string, texts: string) => {
      const [blocked, answered] = (await page.evaluate(`(async () => {
        const input = document.querySelector('${field}')
        const first = input.value
        const texts = ${texts}
        const told = document.querySelector('.told')
        const blocked = [], answered = []
        for (let turn = 0; turn < 9; turn += 1) {
          // Another text each time: what was asked before is known.
          input.value = texts(first, turn)
          const start = performance.now()
          input.dispatchEvent(new Event('input', { bubbles: true }))
          document.body.offsetHeight
          blocked.push(performance.now() - start)
          while (told.getAttribute('aria-busy') === 'true') await new Promise((resolve) => setTimeout(resolve, 1))
          answered.push(performance.now() - start)
        }
        const middle = (list) => list.sort((one, other) => one - other)[4]
        return [middle(blocked), middle(answered)]
      })()`)) as [number, number]
      slowest.push(
        `${name} ${blocked.toFixed(1)}${answered - blocked > 1 ? ` (${answered.toFixed(0)})` : ''}`,
      )
    }
    for (const operation of asked) {
      await page.goto(`${server.url}/#/${operation.name}`)
      await page.getByRole('button', { name: 'Fill in an example' }).click()
      await page.waitForSelector('.told[aria-busy=false] .headline')
      await timed(
        operation.name,
        '.form input[list=refrigerants], .form input[type=text]',
        "(first, turn) => first.replace(/^R-?/u, turn % 2 === 0 ? '' : 'R')",
      )
    }
    await page.goto(`${server.url}/#/orders`)
    await page.setInputFiles('input[type=file]', ['data/examples/harbour-crane.json'])
    await page.locator('.orders .open').first().click()
    await page.waitForSelector('.told[aria-busy=false] .card')
    await timed('work-order', '#f-work-order-order', "(first, turn) => first + ' ' + turn")
    console.log(
      `${runtime}: letter to answer at a quarter of the speed, ms (where it is computed apart, when it is there): ${slowest.join(', ')}`,
    )
    expect(slowest).toHaveLength(asked.length + 1)
    await page.close()
  })
})

const unfold = (page: Page) =>
  page.evaluate(`(async () => {
    for (let turn = 0; turn < 3; turn += 1) {
      for (const part of document.querySelectorAll('details')) part.open = true
      await new Promise((resolve) => setTimeout(resolve, 60))
    }
  })()`)

/** Every process of a browser by the folder that it was started with, as a flat battery ends them. */
function killAllOf(folder: string): void {
  for (const name of readdirSync('/proc').filter((entry) => /^\d+$/u.test(entry))) {
    try {
      const words = readFileSync(`/proc/${name}/cmdline`, 'utf8').split('\0')
      if (words.includes(`--user-data-dir=${folder}`)) process.kill(Number(name), 'SIGKILL')
    } catch {
      // It ended meanwhile.
    }
  }
}
