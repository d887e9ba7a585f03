import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { EVERY_ANSWER } from '../../worker/reply.ts'
import { ICONS_FOLDER, iconStamp } from '../generate/icons.ts'
import { type BuiltPage, builtPage, edgeHeaders, firstBytes } from '../generate/page.ts'

/** Bytes, gzipped, before the first answer: saturation, readings, every refrigerant. */
const FIRST = 150_000
/** All of the page. */
const ALL = 527_000

describe('the built page', () => {
  let page: BuiltPage
  beforeAll(async () => {
    page = await builtPage()
  }, 60_000)

  it('is small enough for a yard with one bar of signal', () => {
    expect(firstBytes(page)).toBeGreaterThan(100_000)
    expect(firstBytes(page)).toBeLessThan(FIRST)
  })

  it('loads other steps only when they are asked for', () => {
    const all = [...page.files.keys()].filter((name) => name.endsWith('.js'))
    expect(all.length - page.first.length).toBeGreaterThan(14)
    const bytes = [...page.files.values()].reduce((sum, content) => sum + content.length, 0)
    expect(bytes).toBeGreaterThan(0)
    expect(firstBytes({ ...page, first: all })).toBeLessThan(ALL)
  })

  it('writes no script and no style into its pages, and compiles nothing', () => {
    const index = String(page.files.get('/index.html'))
    expect(index).not.toMatch(/<script(?![^>]*\ssrc=)/u)
    expect(index).not.toMatch(/<style|\sstyle=|\son\w+=/u)
    for (const [name, content] of page.files) {
      if (!name.endsWith('.js')) continue
      const text = typeof content === 'string' ? content : new TextDecoder().decode(content)
      // zod may: it is told not to, in the first line of whichever file makes the first schema.
      if (text.includes('new Function(')) {
        expect(text, name).toMatch(/^\(globalThis\.__zod_globalConfig\?\?=\{\}\)\.jitless=true;/u)
      }
    }
  })

  it('knows every file that it may need without a network', () => {
    const worker = String(page.files.get('/sw.js'))
    for (const address of page.files.keys()) {
      if (address === '/sw.js' || address.endsWith('.LEGAL.txt')) continue
      expect(worker).toContain(`"${address === '/index.html' ? '/' : address}"`)
    }
  })

  it('has icons for the device, drawn from the icon that there is now', () => {
    const { icons } = JSON.parse(String(page.files.get('/manifest.webmanifest'))) as {
      icons: { src: string; sizes: string; type: string; purpose: string }[]
    }
    const drawn = icons.filter(({ type }) => type === 'image/png')
    expect(drawn.map(({ sizes }) => sizes)).toEqual(['192x192', '512x512', '512x512'])
    expect(new Set(drawn.map(({ purpose }) => purpose))).toEqual(new Set(['any', 'maskable']))
    for (const { src, sizes } of drawn) {
      const bytes = Buffer.from(page.files.get(src) as Uint8Array)
      expect(bytes.subarray(1, 4).toString(), src).toBe('PNG')
      // Width and height stand at the head of the first chunk (ISO/IEC 15948, 11.2.2).
      expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`, src).toBe(sizes)
      expect(bytes.length, src).toBeLessThan(20_000)
    }
    const { icon } = JSON.parse(readFileSync(`${ICONS_FOLDER}made-from.json`, 'utf8'))
    expect(icon, 'npm run icons').toBe(iconStamp())
  })

  it('carries at the edge every header that an answer has', () => {
    const headers = edgeHeaders()
    for (const [name, value] of Object.entries(EVERY_ANSWER)) {
      expect(headers).toContain(`  ${name}: ${value}\n`)
    }
  })
})
