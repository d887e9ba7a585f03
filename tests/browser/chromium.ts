import { existsSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { type BrowserContext, chromium, type Page } from 'playwright-core'

/**
 * Debian's browser itself: its starter prints an error of its own. Where it is not, tests in a browser
 * are skipped, unless BROWSER_TESTS says that they must run.
 */
export const CHROMIUM: string = process.env.CHROMIUM ?? '/usr/lib/chromium/chromium'
export const NO_BROWSER: boolean = process.env.BROWSER_TESTS !== 'required' && !existsSync(CHROMIUM)
if (NO_BROWSER) console.warn(`There is no ${CHROMIUM}: nothing is looked at in a browser.`)

export const FLAGS: readonly string[] =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync'.split(
    ' ',
  )

/** A browser with a folder of its own, in which what a page keeps outlives it. */
export const profile = (
  folder: string,
  options: { readonly width?: number; readonly flags?: readonly string[] } = {},
): Promise<BrowserContext> =>
  chromium.launchPersistentContext(folder, {
    executablePath: CHROMIUM,
    args: [...FLAGS, ...(options.flags ?? [])],
    viewport: { width: options.width ?? 1280, height: 800 },
    acceptDownloads: true,
  })

/** What a page complains of, its security policy included. */
export function complaintsOf(page: Page): readonly string[] {
  const complaints: string[] = []
  page.on('console', (entry) => {
    if (['error', 'warning'].includes(entry.type())) complaints.push(entry.text())
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  page.on('requestfailed', (request) => complaints.push(`failed: ${request.url()}`))
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()}: ${response.url()}`)
  })
  return complaints
}

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What axe-core finds serious or critical, as rule and place. By evaluation: scripts are refused here. */
export async function seriousFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(AXE)
  const { violations } = (await page.evaluate(
    'axe.run(document, { preload: false, resultTypes: ["violations"], runOnly: ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"] })',
  )) as {
    violations: { id: string; impact: string; nodes: { html: string }[] }[]
  }
  return violations
    .filter(({ impact }) => ['serious', 'critical'].includes(impact))
    .map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)
}

/** How far the page is wider than its window, px: nobody scrolls sideways. */
export const tooWide = async (page: Page): Promise<number> =>
  Number(
    await page.evaluate(
      'document.documentElement.scrollWidth - document.documentElement.clientWidth',
    ),
  )

/** Buttons, links and fields that a finger does not find (WCAG 2.2, 2.5.8: 24 px). */
export const tooSmall = async (page: Page): Promise<readonly string[]> =>
  (await page.evaluate(`[...document.querySelectorAll('a, button, summary, input, select, textarea')]
    .map((part) => [part.getBoundingClientRect(), part.textContent || part.id || part.type, part])
    .filter(([box, , part]) => box.height > 0 && (box.height < 24 || box.width < 24) && !part.closest('label') && !part.classList.contains('skip') && !part.closest('li, p, footer') )
    .map(([box, text]) => text.trim() + ' ' + Math.round(box.width) + ' x ' + Math.round(box.height))`)) as string[]
