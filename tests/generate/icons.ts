import { createHash } from 'node:crypto'
import { mkdirSync, writeFileSync } from 'node:fs'
import { chromium } from 'playwright-core'
import { ICON } from '../../worker/pages/icon.ts'
import { CHROMIUM, FLAGS } from '../browser/chromium.ts'

export const ICONS_FOLDER: string = new URL('../../worker/page/icons/', import.meta.url).pathname

/** What the icons were drawn from: another drawing, another fingerprint. */
export const iconStamp = (): string => createHash('sha256').update(ICON).digest('hex').slice(0, 16)

/**
 * Pictures for a device's own list of programs, which takes no SVG everywhere. A mask may cut all but the
 * middle four fifths (W3C, Web Application Manifest, 6.1): for it the drawing is smaller on its own ground.
 */
export const ICON_FILES = [
  { name: 'icon-192.png', size: 192, share: 1, purpose: 'any' },
  { name: 'icon-512.png', size: 512, share: 1, purpose: 'any' },
  { name: 'icon-mask-512.png', size: 512, share: 0.66, purpose: 'maskable' },
] as const

/** Draws them by a browser; once after the drawing was changed: `npm run icons`. */
async function drawIcons(): Promise<void> {
  mkdirSync(ICONS_FOLDER, { recursive: true })
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: [...FLAGS] })
  const ground = /fill="(#[0-9a-f]{6})"/u.exec(ICON)?.[1] ?? '#ffffff'
  for (const { name, size, share } of ICON_FILES) {
    const page = await browser.newPage({ viewport: { width: size, height: size } })
    await page.setContent(
      `<body style="margin:0;background:${ground};display:grid;place-items:center;height:100vh"><div style="width:${size * share}px;height:${size * share}px">${ICON}</div></body>`,
    )
    writeFileSync(ICONS_FOLDER + name, await page.screenshot({ type: 'png' }))
    await page.close()
  }
  await browser.close()
  writeFileSync(`${ICONS_FOLDER}made-from.json`, `${JSON.stringify({ icon: iconStamp() })}\n`)
}

if (process.argv[1] === import.meta.filename) await drawIcons()
