import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { type Browser, chromium } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CHROMIUM, FLAGS, NO_BROWSER } from '../browser/chromium.ts'
import { guides } from '../generate/guides.ts'
import { type Served, served } from './served.ts'

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
const PAGES = [
  '/',
  '/reference',
  '/problems/bad-input',
  ...guides().map(({ name }) => `/reference/guide/${name}`),
]

/** The part of axe-core's answer that is looked at. */
interface Found {
  readonly violations: readonly {
    readonly id: string
    readonly impact: string
    readonly nodes: readonly { readonly html: string }[]
  }[]
}

describe.skipIf(NO_BROWSER)('pages in a browser', { timeout: 120_000 }, () => {
  let server: Served
  let browser: Browser
  beforeAll(async () => {
    server = await served(process.execPath, ['worker/node/main.ts', '--port', '0'])
    browser = await chromium.launch({ executablePath: CHROMIUM, args: [...FLAGS] })
  }, 60_000)
  afterAll(async () => {
    await browser?.close()
    await server?.end()
  })

  const opened = async (path: string, width: number) => {
    const context = await browser.newContext({ viewport: { width, height: 800 }, bypassCSP: true })
    const page = await context.newPage()
    const missing: string[] = []
    page.on('response', (response) => {
      if (!response.ok()) missing.push(response.url())
    })
    await page.goto(server.url + path)
    return { page, missing, close: () => context.close() }
  }

  it.each(PAGES.flatMap((path) => [360, 1280].map((width) => [path, width] as const)))(
    '%s at %i px has no serious fault, needs no sideways scrolling, and lacks nothing',
    async (path, width) => {
      const { page, missing, close } = await opened(path, width)
      await page.addScriptTag({ content: AXE })
      // Open, since what is folded away is not looked at.
      await page.evaluate(
        'document.querySelectorAll("details").forEach((part) => { part.open = true })',
      )
      const { violations } = (await page.evaluate(
        'axe.run(document, { resultTypes: ["violations"], runOnly: ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"] })',
      )) as Found
      const serious = violations.filter(({ impact }) => ['serious', 'critical'].includes(impact))
      expect(serious.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width)
      const small = await page.evaluate(`[...document.querySelectorAll('a, summary')]
        .map((part) => [part.getBoundingClientRect(), part.textContent])
        .filter(([box]) => box.height > 0 && (box.height < 24 || box.width < 24))
        .map(([box, text]) => text + ' ' + box.width + ' x ' + box.height)`)
      expect(small).toEqual([])
      expect(missing).toEqual([])
      await close()
    },
  )

  it('the reference is short enough for a phone: what is long is folded away', async () => {
    const { page, close } = await opened('/reference', 360)
    expect(await page.evaluate('document.documentElement.scrollHeight')).toBeLessThan(24_000)
    await close()
  })
})
