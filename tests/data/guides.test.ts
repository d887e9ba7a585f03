import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../worker/app.ts'
import * as limits from '../../worker/node/limits.ts'
import { VARIABLES } from '../../worker/node/settings.ts'
import { BATCH_BODY_LIMIT, BODY_LIMIT } from '../../worker/settings.ts'
import { guides, PAGES_FILE, pagesText } from '../generate/guides.ts'

const app = createApp()

describe('guides', () => {
  it('are rendered as they are written (else: npm run guides)', () => {
    expect(readFileSync(PAGES_FILE, 'utf8')).toBe(pagesText())
  })

  it.each(guides().map(({ name, title }) => [name, title]))(
    '%s is served and linked to',
    async (name, title) => {
      const address = `/reference/guide/${name}`
      const response = await app.request(address)
      expect(response.status).toBe(200)
      expect(response.headers.get('content-type')).toMatch(/^text\/html/u)
      const html = await response.text()
      expect(html).toContain(`<title>${title}</title>`)
      expect(html).not.toMatch(/<script|\son\w+=/u)
      for (const page of ['/', '/reference']) {
        expect(await (await app.request(page)).text()).toContain(`href="${address}"`)
      }
    },
  )

  it('that are not there are not found', async () => {
    expect((await app.request('/reference/guide/nothing')).status).toBe(404)
  })
})

describe('the guide to running it', () => {
  const text = readFileSync(new URL('../../data/guide/running.md', import.meta.url), 'utf8')

  it('names every setting, and the limits that hold', () => {
    for (const variable of Object.values(VARIABLES)) expect(text).toContain(`\`${variable}\``)
    expect(text).toContain(
      `| ${limits.HEADERS_TIMEOUT_MS / 1e3} s, ${limits.MOST_HEADER_BYTES / 1024} KiB |`,
    )
    expect(text).toContain(`| a whole request | ${limits.REQUEST_TIMEOUT_MS / 1e3} s |`)
    expect(text).toContain(`| a body | ${BODY_LIMIT / 1024} KiB |`)
    expect(text).toContain(`| a body of a batch | ${BATCH_BODY_LIMIT / 1024} KiB |`)
    expect(text).toContain(`nothing moves | ${limits.IDLE_TIMEOUT_MS / 1e3} s |`)
    expect(text).toContain(`without a request | ${limits.KEEP_ALIVE_MS / 1e3} s |`)
    expect(text).toContain(`at once | ${limits.MOST_CONNECTIONS} |`)
    expect(text).toContain(`| \`STOP_WITHIN\` | \`${limits.STOP_WITHIN_S}\` |`)
  })
})
