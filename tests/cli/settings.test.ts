import { describe, expect, it } from 'vitest'
import { session } from './session.ts'

const KEPT = JSON.stringify({
  altitude: '5000 ft',
  law: 'us',
  people: [{ name: 'Bay two', certificates: ['us-609'] }],
})

describe('settings of the shop', () => {
  it('are shown, set, and forgotten, each with the rest left as it was', async () => {
    const settings: { text?: string } = {}
    expect((await session(['settings'], { settings })).out).toContain('Nothing is set')
    expect(settings.text).toBeUndefined()
    const set = ['--set', 'altitude=5000 ft', '--set', 'law=us', '--person', 'Bay two: us-609']
    expect((await session(['settings', ...set], { settings })).out).toMatch(/altitude +5000 ft/u)
    expect(JSON.parse(settings.text ?? '')).toEqual(JSON.parse(KEPT))
    await session(['settings', '--set', 'low-gauge-span=120 psi', '--remove', 'law'], { settings })
    expect(JSON.parse(settings.text ?? '')).toEqual({
      altitude: '5000 ft',
      lowGaugeSpan: '120 psi',
      people: [{ name: 'Bay two', certificates: ['us-609'] }],
    })
    await session(['settings', '--remove', 'bay two'], { settings })
    expect(JSON.parse(settings.text ?? '').people).toBeUndefined()
  })

  it.each([
    [['--set', 'altitude=12'], /"12" has no unit/u],
    [['--set', 'altitud=12 ft'], /no setting "altitud"[\s\S]*altitude/u],
    [['--set', 'units=metric'], /"metric" is not one of/u],
    [['--set', 'law=mars'], /"mars" is not one of/u],
    [['--person', 'Bay two: us-999'], /"us-999" is not one of/u],
    [['--person', ': us-609'], /empty/u],
    [['--remove', 'nobody'], /no setting "nobody"/u],
  ])('%j is refused and changes nothing', async (argv, message) => {
    const settings = { text: KEPT }
    const { status, err } = await session(['settings', ...argv], { settings })
    expect(status).toBe(2)
    expect(err).toMatch(message)
    expect(settings.text).toBe(KEPT)
  })

  it('fill what a command leaves open, and the answer says so', async () => {
    const asked = ['saturation', '134a', '32psig', '--json']
    const at = async (more: readonly string[], text?: string) => {
      const settings = text === undefined ? {} : { text }
      return JSON.parse((await session([...asked, ...more], { settings })).out)
    }
    const high = await at(['--altitude', '5000 ft'])
    const kept = await at([], KEPT)
    expect(kept.result).toEqual(high.result)
    expect(kept.assumptions).toContainEqual({
      field: 'altitude',
      taken: '5000 ft',
      because: 'from settings',
      short: 'altitude 5000 ft (from settings)',
    })
    expect(JSON.stringify(high.assumptions)).not.toContain('settings')
  })

  it('are overridden by any option, and by either way to say where the machine is', async () => {
    const plain = JSON.parse((await session(['saturation', '134a', '32psig', '--json'])).out)
    const settings = { text: KEPT }
    for (const more of [
      ['--no-settings'],
      ['--altitude', '0 ft'],
      ['--barometer', '101.325 kPa'],
    ]) {
      const { out } = await session(['saturation', '134a', '32psig', '--json', ...more], {
        settings,
      })
      const answer = JSON.parse(out)
      expect(answer.result.dew.temperature.value).toBe(plain.result.dew.temperature.value)
      expect(JSON.stringify(answer.assumptions)).not.toContain('settings')
    }
  })

  it('never grant a certificate: the list of people stays out of every calculation', async () => {
    const asked = ['rules', '134a', '--machine', 'off-road', '--action', 'open', '--json']
    const { out } = await session(asked, { settings: { text: KEPT } })
    expect(out).not.toContain('"enough"')
  })

  it('that cannot be read are named with their file, and can be left out', async () => {
    const settings = { text: '{"altitude": 12}' }
    const { status, err } = await session(['saturation', '134a', '32psig'], { settings })
    expect(status).toBe(2)
    expect(err).toContain('/config/settings.json')
    expect(err).toContain('--no-settings')
    expect(
      (await session(['saturation', '134a', '32psig', '--no-settings'], { settings })).status,
    ).toBe(0)
  })
})
