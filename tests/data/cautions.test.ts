import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import data from '../../data/service/cautions.json' with { type: 'json' }
import { CAUTION_LEVELS, type CautionId, caution, cautions } from '../../shared/cautions.ts'
import { densityStates, refrigerant, saturationPressure } from '../../shared/refrigerant/index.ts'

const file = z.strictObject({
  sources: z.record(z.string(), z.looseObject({ title: z.string().min(8), mark: z.string() })),
  cautions: z.record(
    z.string(),
    z.strictObject({
      level: z.enum(CAUTION_LEVELS),
      short: z.string().min(8).max(70),
      text: z.string().min(20),
      sources: z.array(z.string()).min(1),
    }),
  ),
})

const ids = Object.keys(data.cautions) as CautionId[]
const figures = (text: string) => text.match(/\d+(?:[.,]\d+)?/gu) ?? []

/** Level of each, and every figure in its short form and in its text: a lost or changed one shows. */
const EXPECTED: Readonly<Record<CautionId, readonly [string, string, string]>> = {
  pressure: ['danger', '', ''],
  'cold-burns': ['danger', '', '15'],
  asphyxiation: ['danger', '', ''],
  decomposition: ['danger', '', ''],
  flammable: ['danger', '', ''],
  'carbon-dioxide': ['danger', '744', '744'],
  'no-oxygen': ['danger', '', ''],
  'no-air': ['danger', '', ''],
  'nitrogen-regulator': ['danger', '', '2000'],
  'full-cylinder': ['danger', '80', '80 125 52'],
  'no-disposable-refill': ['danger', '', ''],
  'no-high-side-running': ['danger', '', ''],
  'warm-water-only': ['danger', '120 49', '120 49'],
  'no-flammable-retrofit': ['danger', '', ''],
  'electric-compressor-oil': ['danger', '', ''],
  'rotating-parts': ['warning', '', ''],
  'compressor-in-vacuum': ['warning', '', ''],
  'no-venting': ['warning', '', ''],
  'do-not-mix': ['warning', '', ''],
  'no-liquid-to-suction': ['warning', '', ''],
  'weigh-the-charge': ['note', '', ''],
  'maker-first': ['note', '', ''],
  'local-rules': ['note', '', ''],
  'trapped-liquid': ['danger', '', ''],
  'parted-half': ['danger', '', '52'],
  'stuck-coupling': ['warning', '', ''],
  'whipping-line': ['danger', '', ''],
  'goggles-even-empty': ['danger', '', ''],
  'stop-the-machine': ['danger', '', ''],
  'high-voltage': ['danger', '', ''],
  'carbon-dioxide-couplings': ['danger', '744', '744 744'],
  'dry-ice': ['danger', '744', '60.4 5.18 744 10'],
  'carbon-dioxide-release': ['warning', '744', '744'],
  'carbon-dioxide-test-pressure': ['danger', '744', '744 150 134 134 744'],
  'hydrogen-mix-only': ['danger', '', ''],
  'hydrocarbons-rated-machine': ['danger', '', ''],
  'pump-exhaust-outdoors': ['danger', '', ''],
  'lifted-cab': ['danger', '', ''],
  'machine-secured': ['warning', '', ''],
  bystanders: ['warning', '', ''],
  'working-alone': ['warning', '', ''],
  'first-aid-eyes': ['warning', '15', '15'],
  'first-aid-frostbite': ['warning', '', ''],
  'first-aid-inhalation': ['warning', '', ''],
  'first-aid-hydrogen-fluoride': ['warning', '', ''],
}

describe('the cautions', () => {
  it('fit the strict schema, and are exactly those that are named here', () => {
    file.parse(data)
    expect(ids.toSorted()).toEqual(Object.keys(EXPECTED).toSorted())
  })

  it.each(ids)('%s keeps its level and its figures', (id) => {
    const { level, short, text } = data.cautions[id]
    expect([level, figures(short).join(' '), figures(text).join(' ')]).toEqual(EXPECTED[id])
  })

  it.each(ids)(
    '%s has a line of at most 70 characters for the screen, and a text for the sheet',
    (id) => {
      const { short, text } = data.cautions[id]
      expect(short.length).toBeLessThanOrEqual(70)
      expect(short).not.toMatch(/[.\n]$/u)
      expect(text.length).toBeGreaterThan(short.length * 0.9)
      expect(text).toMatch(/\.$/u)
      expect(cautions([id])[0]).toMatchObject({ id, short, text })
      caution.parse(cautions([id])[0])
    },
  )

  it('have short lines that differ, so that two dangers never look like one', () => {
    expect(new Set(ids.map((id) => data.cautions[id].short)).size).toBe(ids.length)
  })

  it('rest on sources that are there, and leave none unused', () => {
    const cited = new Set(ids.flatMap((id) => data.cautions[id].sources))
    expect([...cited].toSorted()).toEqual(Object.keys(data.sources).toSorted())
  })

  it.each([
    ['trapped-liquid', /two valves/u, /second valve.*recover/u],
    ['parted-half', /cap, label, shade.*recover/u, /Never cap a half that hisses: recover/u],
    ['stuck-coupling', /no heat, no hammer/u, /two fitting wrenches.*No heat.*recover first/u],
    ['dry-ice', /vapour first/u, /vapour only/u],
    ['carbon-dioxide-couplings', /never part/u, /never parted under charge/u],
    ['stop-the-machine', /Stop the machine/u, /Stop the machine at once/u],
    ['goggles-even-empty', /gauges read empty/u, /gauges read empty/u],
    ['hydrogen-mix-only', /does not burn/u, /Never mix it yourself.*never use pure/u],
    ['hydrocarbons-rated-machine', /not rated/u, /Never draw a hydrocarbon.*not rated/u],
    ['lifted-cab', /nobody under a hanging load/u, /stands or blocks.*hanging load/u],
    ['machine-secured', /parking brake/u, /implement.*parking brake.*key/u],
    ['high-voltage', /trained people only/u, /no voltage proved with a meter/u],
    ['pump-exhaust-outdoors', /outdoors/u, /outdoors/u],
    ['first-aid-frostbite', /do not rub/u, /never by rubbing/u],
    ['first-aid-inhalation', /fresh air/u, /ventilate before you go in/u],
    ['first-aid-hydrogen-fluoride', /hospital/u, /hours later.*hospital/u],
  ] as const)('%s says what to do on the line and on the sheet', (id, short, text) => {
    expect(data.cautions[id].short).toMatch(short)
    expect(data.cautions[id].text).toMatch(text)
  })

  it('names the rise of pressure in a half full of liquid as our own equation has it', () => {
    const r = refrigerant('R-134a')
    const kelvin = (75 + 459.67) / 1.8
    const { byPressure, byTemperature } = densityStates(r).slopes(
      kelvin,
      saturationPressure(r, kelvin, 'bubble'),
      'liquid',
    )
    // (∂p/∂T) at constant density, for each °F in psi.
    expect(-byTemperature / byPressure / 1.8 / 6894.757).toBeCloseTo(52, 0)
  })

  it('names the triple pressure of R-744 as our own curve has it', () => {
    const r = refrigerant('R-744')
    const triplePa = saturationPressure(r, r.minimumTemperatureK, 'bubble')
    expect(triplePa / 1e5).toBeCloseTo(5.18, 2)
    expect((triplePa - 101_325) / 6894.757).toBeCloseTo(60.4, 1)
  })
})
