import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { lesson } from '../../shared/service/lesson.ts'
import { simulate } from '../../shared/service/simulate.ts'
import { writePage } from '../generate/page.ts'
import { complaintsOf, NO_BROWSER, profile, seriousFaults, tooSmall, tooWide } from './chromium.ts'
import { onNode, onWorkerd, type Server } from './servers.ts'

const CASE = { topic: 'high-head', seed: 7 } as const
const PREDICTED = {
  lowSide: 'up',
  highSide: 'up',
  superheat: 'same',
  subcooling: 'up',
  vent: 'up',
} as const
const BOUGHT = ['high-side', 'liquid-line'] as const
const NAMED = 'condenser-air'
const END = lesson.run({ ...CASE, predictions: PREDICTED, bought: [...BOUGHT], named: NAMED })

beforeAll(async () => {
  if (!NO_BROWSER) await writePage('dist/page')
}, 60_000)

/** Nothing is computed or drawn any more. */
const settled = (page: Page) => page.waitForSelector('body:not(:has([aria-busy=true]))')

describe.skipIf(NO_BROWSER).each([
  ['Node', onNode],
  ['workerd', onWorkerd],
] as const)('teaching, served by %s', { timeout: 120_000 }, (runtime, start) => {
  let server: Server
  let browser: BrowserContext
  let folder: string

  beforeAll(async () => {
    server = await start()
    folder = mkdtempSync(join(tmpdir(), 'teach-'))
    browser = await profile(folder)
  }, 120_000)
  afterAll(async () => {
    await browser?.close()
    await server?.end()
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
  })

  const opened = async (address: string) => {
    const page = await browser.newPage()
    const complaints = complaintsOf(page)
    await page.goto(`${server.url}/#/${address}`)
    await page.waitForSelector('h1')
    return { page, complaints }
  }
  const begun = `teach/${CASE.topic}/${CASE.seed}`
  const ended = `${begun}?moves=${Object.values(PREDICTED).join('.')}&fixed=yes&bought=${BOUGHT.join('.')}&named=${NAMED}`

  it('takes a class from the saying to the end, and tells it as the lesson does', async () => {
    const { page, complaints } = await opened('teach')
    expect(await page.locator('.sayings li').count()).toBe(9)
    expect(await page.textContent('.sayings li:has-text("sight glass")')).toContain('from memory')
    await page.goto(`${server.url}/#/${begun}`)
    await page.waitForSelector('.moves')
    expect(await page.locator('.offers, .causes').count(), 'before the prediction').toBe(0)

    // Not all five: it is said which, and nothing goes on.
    await page.check('#move-lowSide-up')
    await page.getByRole('button', { name: 'That is our prediction' }).click()
    expect(await page.textContent('.moves [role=status]')).toContain('subcooling')
    for (const [gauge, move] of Object.entries(PREDICTED)) {
      await page.check(`#move-${gauge}-${move}`)
    }
    await page.selectOption('#suspected', 'overcharge')
    await page.getByRole('button', { name: 'That is our prediction' }).click()
    await page.waitForSelector('.offers')
    expect(await page.evaluate('document.activeElement.id')).toBe('step-read')

    for (const reading of BOUGHT) await page.click(`#buy-${reading}`)
    await settled(page)
    const bought = lesson.run({ ...CASE, predictions: PREDICTED, bought: [...BOUGHT] }).result
    expect(await page.textContent('.spent')).toContain(`${bought.spent.value} min`)
    expect(await page.locator('.bought > div').count()).toBe(
      BOUGHT.length + (bought.subcooling ? 1 : 0),
    )
    expect(await page.locator('#buy-high-side').count()).toBe(0)
    // What it was is nowhere on the page yet.
    expect(await page.locator('.verdict, .others, .board').count()).toBe(0)

    await page.check(`.causes input[value=${NAMED}]`)
    await page.getByRole('button', { name: 'Name it and see' }).click()
    await page.waitForSelector('.verdict')
    expect((await page.textContent('.verdict'))?.trim()).toBe(END.headline)
    expect(await page.evaluate('document.activeElement.id')).toBe('step-reveal')
    const { reveal } = END.result
    const graded = await page.locator('.graded tbody tr').allTextContents()
    expect(graded.map((text) => text.trim().split(/\s+/u).at(-1))).toEqual(
      reveal?.predictions.map(({ predicted, expected }) =>
        predicted === expected ? 'right' : 'missed',
      ),
    )
    expect(await page.locator('.others tbody tr').count()).toBe(reveal?.others.length)
    // Read aloud once nobody goes on.
    await page.waitForSelector(`p.unseen[role=status]:has-text("${END.headline?.slice(0, 30)}")`, {
      state: 'attached',
    })
    expect(complaints).toEqual([])
    await page.close()
  })

  it('leads the fault over its range, the faulty machine beside the sound one', async () => {
    const { page, complaints } = await opened(ended)
    await page.waitForSelector('.board svg >> nth=1')
    await settled(page)
    expect(await page.locator('.panel').evaluateAll((all) => all.length)).toBeGreaterThan(1)
    const { reveal } = END.result
    const rows = reveal?.sweep.rows ?? []
    const before = await page.textContent('.board >> nth=1')
    await page.locator('#size-first').fill('2')
    await settled(page)
    const size = rows[2]?.size
    expect(await page.textContent('.size output >> nth=0')).toMatch(
      new RegExp(`^${Number(size?.value.toPrecision(3))} `, 'u'),
    )
    expect(await page.getAttribute('#size-first', 'aria-valuetext')).toContain(`${size?.unit}`)
    const there = simulate.run({
      ...reveal?.simulation,
      condenserAir: undefined,
      [reveal?.setting ?? '']: `${size?.value} ${size?.unit}`,
    })
    expect((await page.textContent('.now'))?.trim()).toBe(there.headline)
    expect(await page.textContent('.board >> nth=1')).not.toBe(before)
    expect(await page.textContent('.board >> nth=0')).toContain('as it is now')
    expect(await page.textContent('.board >> nth=1')).toContain('sound and faulty')
    await page.getByRole('button', { name: 'As in the case' }).first().click()
    await settled(page)
    expect(await page.textContent('.size output >> nth=0')).toContain('as in the case')
    await page.locator('.worked summary').click()
    expect(await page.textContent('.worked')).toContain('dew temperature at the low gauge')
    expect(complaints).toEqual([])
    await page.close()
  })

  it('keeps where a class stands over a reload, and without a network', async () => {
    const { page } = await opened(begun)
    await page.evaluate('navigator.serviceWorker.ready.then(() => {})')
    await page.waitForSelector('.bottom:has-text("works without a network")')
    await page.reload()
    await page.waitForSelector('.moves')
    await browser.setOffline(true)
    try {
      for (const [gauge, move] of Object.entries(PREDICTED)) {
        await page.check(`#move-${gauge}-${move}`)
      }
      await page.reload()
      await page.waitForSelector('.moves')
      expect(await page.isChecked('#move-superheat-same')).toBe(true)
      await page.getByRole('button', { name: 'That is our prediction' }).click()
      for (const reading of BOUGHT) await page.click(`#buy-${reading}`)
      await page.reload()
      await page.waitForSelector('.bought')
      expect(await page.locator('.offers button').count()).toBe(10 - BOUGHT.length)
      await page.check(`.causes input[value=${NAMED}]`)
      await page.getByRole('button', { name: 'Name it and see' }).click()
      await page.waitForSelector('.board svg >> nth=1')
      await page.reload()
      await page.waitForSelector('.verdict')
      expect((await page.textContent('.verdict'))?.trim()).toBe(END.headline)
      await page.goto(`${server.url}/#/teach`)
      await page.getByRole('link', { name: 'Go on with the case that is open' }).click()
      await page.waitForSelector('.verdict')

      await page.goto(`${server.url}/#/teach/bench`)
      await page.locator('#bench-condenser-air').fill('60')
      await page.waitForSelector('.panel.faulty')
      await page.reload()
      await page.waitForSelector('.panel.faulty')
      expect(await page.inputValue('#bench-condenser-air')).toBe('60')
    } finally {
      await browser.setOffline(false)
    }
    await page.close()
  })

  it('is led by the keyboard alone', async () => {
    const { page, complaints } = await opened(begun)
    await page.waitForSelector('.moves')
    const here = (selector: string) =>
      page.evaluate(`document.activeElement?.matches(${JSON.stringify(selector)}) ?? false`)
    const tabTo = async (selector: string) => {
      for (let presses = 0; presses < 60; presses += 1) {
        if (await here(selector)) return
        await page.keyboard.press('Tab')
      }
      throw new Error(`no tab leads to ${selector}`)
    }
    const down = { up: 0, same: 1, down: 2 } as const
    for (const [gauge, move] of Object.entries(PREDICTED)) {
      await tabTo(`[name=move-${gauge}]`)
      await page.keyboard.press('Space')
      for (let presses = 0; presses < down[move]; presses += 1) {
        await page.keyboard.press('ArrowDown')
      }
    }
    await tabTo('.moves button')
    await page.keyboard.press('Enter')
    await page.waitForSelector('.offers')
    expect(await here('#step-read')).toBe(true)
    await tabTo('#buy-high-side')
    await page.keyboard.press('Enter')
    await page.waitForSelector('.bought')
    // The one after it is under the fingers.
    expect(await here('.offers button')).toBe(true)
    await tabTo('[name=cause]')
    await page.keyboard.press('ArrowDown')
    await tabTo('.causes button')
    await page.keyboard.press('Enter')
    await page.waitForSelector('.board svg >> nth=1')
    expect(await here('#step-reveal')).toBe(true)
    await tabTo('#size-first')
    await page.keyboard.press('Home')
    await settled(page)
    expect(await page.inputValue('#size-first')).toBe('0')
    expect(await page.textContent('.size output >> nth=0')).not.toContain('as in the case')
    expect(complaints).toEqual([])
    await page.close()
  })

  it('shows on the bench what the model says of several faults', async () => {
    const { page, complaints } = await opened('teach/bench')
    await page.getByRole('button', { name: 'Take everything off' }).click()
    await page.locator('#f-simulate-modelMachine').selectOption('van')
    await page.locator('#f-simulate-ambient').fill('100 °F')
    await page.locator('#bench-condenser-air').fill('60')
    await page.locator('#bench-undercharge').fill('40')
    await page.waitForSelector('.panel.faulty')
    await settled(page)
    const { headline, result } = simulate.run({
      modelMachine: 'van',
      ambient: '100 °F',
      faults: [
        { fault: 'condenser-air', severity: '60 %' },
        { fault: 'undercharge', severity: '40 %' },
      ],
    })
    expect((await page.textContent('.now'))?.trim()).toBe(headline)
    expect(await page.locator('.severities .size').count()).toBe(result.choices.length)
    const vent = result.readings.find(({ reading }) => reading === 'ventTemperature')
    const text = (value: number | undefined) => `${Number(value?.toPrecision(3))} °F`
    expect(await page.textContent('.panel.faulty >> nth=0')).toContain(text(vent?.now?.value))
    expect(await page.textContent('.panel >> nth=0')).toContain(text(vent?.sound?.value))
    expect(await page.locator('.board svg').count()).toBe(3)
    await page.selectOption('#swept', 'condenser-air')
    await page.waitForSelector('.board:has-text("condenser air over a range")')
    await page.locator('#f-simulate-ambient').fill('900 °F')
    await page.waitForSelector('.fault:has-text("900")')
    await page.getByRole('button', { name: 'Take everything off' }).click()
    expect(complaints).toEqual([])
    await page.close()
  })

  it('prints a sheet for the class and one with the answers, a page each', async () => {
    for (const [address, words] of [
      [begun, 'Sheet for the class'],
      [ended, 'Sheet with the answers'],
    ] as const) {
      const { page } = await opened(address.replace(/\/7/u, '/7/sheet'))
      await page.waitForSelector('.line')
      await settled(page)
      expect(await page.textContent('h1')).toBe(words)
      if (address === ended) await page.waitForSelector('.drawn svg')
      expect((await page.textContent('.teach-sheet'))?.includes('The cause: ')).toBe(
        address === ended,
      )
      for (const format of ['A4', 'Letter'] as const) {
        const sheet = (await page.pdf({ format })).toString('latin1')
        expect(sheet.match(/\/Type \/Page\b/gu), format).toHaveLength(1)
      }
      await page.close()
    }
  })

  it.each([360, 1280])(
    'has no serious fault at %i px, and large letters on a wall',
    async (width) => {
      const { page, complaints } = await opened('teach')
      await page.setViewportSize({ width, height: 800 })
      const views = [
        ['teach', '.sayings'],
        [begun, '.moves'],
        [ended.replace(/&named=.*/u, ''), '.causes'],
        [ended, '.board svg >> nth=1'],
        [ended.replace(/\/7/u, '/7/sheet'), '.drawn svg'],
        ['teach/bench', '.board svg'],
      ] as const
      for (const [view, part] of views) {
        await page.goto(`${server.url}/#/${view}`)
        await page.waitForSelector(part)
        await settled(page)
        await page.evaluate(
          'for (const part of document.querySelectorAll("details")) part.open = true',
        )
        expect({ view, faults: await seriousFaults(page) }).toEqual({ view, faults: [] })
        expect({ view, tooWide: await tooWide(page) }).toEqual({ view, tooWide: 0 })
        expect({ view, tooSmall: await tooSmall(page) }).toEqual({ view, tooSmall: [] })
        if (width < 1280 || part === '.drawn svg') continue
        // From the back of a room: nothing of the lesson itself below 16 px, its text 20 px and more.
        const size = await page.evaluate(
          "parseFloat(getComputedStyle(document.querySelector('.teach')).fontSize)",
        )
        expect(Number(size), view).toBeGreaterThanOrEqual(20)
        const letters =
          await page.evaluate(`[...document.querySelectorAll('.board svg text')].map((text) =>
        parseFloat(text.getAttribute('font-size')) * text.ownerSVGElement.getBoundingClientRect().width / text.ownerSVGElement.viewBox.baseVal.width)`)
        for (const px of letters as number[]) expect(px, view).toBeGreaterThanOrEqual(15)
      }
      expect(complaints).toEqual([])
      await page.close()
    },
  )

  it(`answers a step of the slider in a moment (printed for ${runtime})`, async () => {
    const { page } = await opened(ended)
    await page.waitForSelector('.board svg >> nth=1')
    const devtools = await browser.newCDPSession(page)
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: 4 })
    const [blocked, answered] = (await page.evaluate(`(async () => {
      const slider = document.getElementById('size-first')
      const blocked = [], answered = []
      for (let turn = 0; turn < 9; turn += 1) {
        slider.value = String(turn)
        const start = performance.now()
        slider.dispatchEvent(new Event('input', { bubbles: true }))
        document.body.offsetHeight
        blocked.push(performance.now() - start)
        while (document.querySelector('[aria-busy=true]')) await new Promise((resolve) => setTimeout(resolve, 2))
        answered.push(performance.now() - start)
      }
      const middle = (list) => list.sort((one, other) => one - other)[4]
      return [middle(blocked), middle(answered)]
    })()`)) as [number, number]
    console.log(
      `${runtime}: a step of the slider holds the page for ${blocked.toFixed(0)} ms at a quarter of the speed; figures and pictures stand after ${answered.toFixed(0)} ms`,
    )
    expect(answered).toBeGreaterThan(0)
    await page.close()
  })
})
