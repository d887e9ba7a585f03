import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { getRequestListener } from '@hono/node-server'
import type { BrowserContext } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createApp } from '../../worker/app.ts'
import { pageFiles } from '../../worker/node/page-files.ts'
import { plainHttp } from '../../worker/node/plain-http.ts'
import { writePage } from '../generate/page.ts'
import { complaintsOf, NO_BROWSER, profile } from './chromium.ts'

describe.skipIf(NO_BROWSER)('the page on a device', { timeout: 120_000 }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'renewed-'))
  let server: Server
  let port: number
  let browser: BrowserContext

  beforeAll(async () => {
    await writePage('dist/page')
    cpSync('dist/page', folder, { recursive: true })
    const app = createApp({ around: [plainHttp, pageFiles(folder)] })
    server = createServer(getRequestListener((request) => app.fetch(request, {})))
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
    port = (server.address() as AddressInfo).port
    browser = await profile(mkdtempSync(join(tmpdir(), 'renewing-')), {
      flags: ['--host-resolver-rules=MAP shop.lan 127.0.0.1'],
    })
  }, 60_000)
  afterAll(async () => {
    await browser?.close()
    server?.closeAllConnections()
    server?.close()
    rmSync(folder, { recursive: true, force: true })
  })

  it('takes a newer version only when somebody agrees, and leaves nothing of the older', async () => {
    const address = `http://127.0.0.1:${port}/`
    const page = await browser.newPage()
    const complaints = complaintsOf(page)
    await page.goto(address)
    await page.waitForSelector('.bottom:has-text("works without a network")')

    // A newer version: other words in the first file, so another service worker.
    const index = join(folder, 'index.html')
    writeFileSync(index, readFileSync(index, 'utf8').replace('<body>', '<body class="newer">'))
    const worker = join(folder, 'sw.js')
    const version = /page-[^"`]*|"[0-9a-f]{16}"/u.exec(readFileSync(worker, 'utf8'))?.[0] ?? ''
    expect(version).not.toBe('')
    const text = readFileSync(worker, 'utf8').replace(/[0-9a-f]{16}/u, '0123456789abcdef')
    writeFileSync(worker, text)
    for (const name of ['index.html', 'sw.js']) {
      for (const ending of ['br', 'gz']) rmSync(join(folder, `${name}.${ending}`))
    }
    await page.reload()
    expect(await page.evaluate('document.body.className')).toBe('')
    const renew = page.getByRole('button', { name: 'Use it now' })
    await renew.waitFor()

    await page.reload()
    expect(await page.evaluate('document.body.className'), 'without consent').toBe('')
    await renew.waitFor()
    await renew.click()
    await page.waitForSelector('body.newer')
    await page.waitForSelector('.bottom:has-text("works without a network")')
    expect(await page.evaluate('caches.keys()')).toEqual(['page-0123456789abcdef'])
    expect(complaints).toEqual([])
    await page.close()
  })

  it('says over plain http why it is not kept, works all the same, and complains of nothing', async () => {
    const page = await browser.newPage()
    const complaints = complaintsOf(page)
    await page.goto(`http://shop.lan:${port}/#/saturation`)
    await page.waitForSelector('.bottom:has-text("plain http")')
    await page.getByLabel('Refrigerant').fill('R-134a')
    await page.getByLabel('Pressure', { exact: true }).fill('32 psig')
    await page.waitForSelector('.headline:has-text("36.8 °F")')
    await page.goto(`http://shop.lan:${port}/#/orders`)
    await page.waitForSelector('text=Begin an order')
    await page.setInputFiles('input[type=file]', ['data/examples/quarry-loader.json'])
    await page.waitForSelector('.orders .open')
    await page.reload()
    await page.waitForSelector('.orders .open')
    expect(complaints).toEqual([])
    await page.close()
  })
})
