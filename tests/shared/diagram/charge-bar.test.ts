import { describe, expect, it } from 'vitest'
import { chargeBar } from '../../../shared/diagram/bars/of-charge.ts'
import { measureIn } from '../../../shared/diagram/scene/measure.ts'
import { charge } from '../../../shared/service/charge.ts'
import { type Found, parsed, partOf, texts } from '../../support/picture.ts'

/** A panel read back: kilograms along its own scale. */
function panel(picture: Found, number: number) {
  const found = partOf(picture, `panel-${number}`)
  if (!found) throw new Error(`there is no panel ${number}`)
  const labels = [...texts(partOf(found, 'x-axis'))]
  const unit = labels.pop()?.replace('Mass, ', '') ?? ''
  const lines = (partOf(found, 'grid')?.children ?? []).filter(({ name }) => name === 'line')
  const xs = lines.map(({ attributes }) => Number(attributes.x1))
  const [a, b] = [Number(labels[0]), Number(labels.at(-1))]
  const [xa, xb] = [xs[0] ?? 0, xs.at(-1) ?? 0]
  const kg = (px: number) => measureIn('mass', unit).si(a + ((px - xa) / (xb - xa)) * (b - a))
  const bars = (partOf(found, `bar-${number}-1`)?.children ?? [])
    .filter(({ name }) => name === 'rect')
    .map(({ attributes: { x, width } }) => [kg(Number(x)), kg(Number(x) + Number(width))] as const)
  const at = (name: string) => kg(Number(partOf(found, name)?.children[0]?.attributes.x1))
  return { kg, bars, at, found, title: texts(found)[0] }
}

const near = (found: number | undefined, expected: number | undefined) =>
  expect(Math.abs((found ?? Number.NaN) - (expected ?? 0))).toBeLessThan(
    0.004 * Math.max(expected ?? 0, 0.05),
  )

describe.each(['us', 'si'])('the charge as a bar in %s units', (units) => {
  const input = { ...charge.example, units }
  const { result } = charge.compute(charge.parse(input))
  const picture = parsed(chargeBar.draw(input, { width: 1280 }))

  it('divides the whole into what is there and what is missing', () => {
    const { bars, at } = panel(picture, 1)
    const [label, missing] = [result.totalTarget?.si ?? 0, result.massToAdd?.si ?? 0]
    near(bars[0]?.[0], 0)
    near(bars[0]?.[1], label - missing)
    near(bars[1]?.[0], label - missing)
    near(bars[1]?.[1], label)
    near(at('line-1'), label)
  })

  it('holds what is missing against the tolerance, with its ±', () => {
    const { bars, at, found } = panel(picture, 2)
    near(bars[0]?.[1], result.massToAdd?.si)
    near(at('line-1'), result.againstCharge?.from.si)
    near(at('line-2'), result.againstCharge?.to.si)
    const spread = partOf(found, 'spread-2-1')?.children[0]?.attributes ?? {}
    const { kg } = panel(picture, 2)
    near(kg(Number(spread.x2)) - kg(Number(spread.x1)), 2 * (result.massToAdd?.plusMinus ?? 0))
  })

  it('sets on the scale what goes into the machine and into the hose', () => {
    const { bars } = panel(picture, 3)
    near(bars[0]?.[1], result.massToAdd?.si)
    near(bars[1]?.[1], result.setOnScale?.si)
  })
})

describe('other jobs', () => {
  const parted = {
    refrigerant: 'R-134a',
    job: 'couplers-parted',
    couplingType: 'two-valve',
    labelCharge: '3 lb 8 oz',
    coldest: '60 °F',
    parted: ['liquid:18mm/4mm+2mm', 'suction:25mm/5mm+3mm'],
  }

  it('show a bound as a bound, open and not hatched', () => {
    const { result } = charge.compute(charge.parse(parted))
    expect(result.kind).toBe('bound')
    const picture = parsed(chargeBar.draw(parted, { width: 1280 }))
    const { bars, found } = panel(picture, 2)
    near(bars[0]?.[1], result.bound?.most.si)
    // The published tolerance of a loader's charge, 1 to 2 oz.
    near(panel(picture, 2).at('line-1'), 0.45359237 / 16)
    near(panel(picture, 2).at('line-2'), 0.45359237 / 8)
    expect(partOf(found, 'bar-2-1')?.children).toHaveLength(1)
    expect(texts(found).join(' ')).toContain('at most')
    expect(texts(partOf(picture, 'key')).join(' ')).toContain('a bound, and no loss')
    expect(partOf(picture, 'panel-3')).toBeUndefined()
  })

  it('show a full charge, as much of it as was recovered, and the rest', () => {
    const input = {
      refrigerant: 'R-134a',
      job: 'system-opened',
      labelCharge: '3 lb 8 oz',
      recovered: '2 lb',
    }
    const picture = parsed(chargeBar.draw({ ...input, units: 'us' }, { width: 1280 }))
    const { bars } = panel(picture, 1)
    near(bars[0]?.[1], 2 * 0.45359237)
    near(bars[1]?.[1], 3.5 * 0.45359237)
    expect(texts(partOf(picture, 'key')).join(' ')).toContain('as much as was recovered')
  })

  it('ask for what is missing where no mass is known', () => {
    const input = { refrigerant: 'R-134a', job: 'system-opened' }
    expect(() => chargeBar.draw(input)).toThrow(/no mass is known/iu)
  })
})
