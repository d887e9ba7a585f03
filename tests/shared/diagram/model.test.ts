import { describe, expect, it } from 'vitest'
import { modelCycle } from '../../../shared/diagram/model/of-cycle.ts'
import { cyclesApart } from '../../../shared/diagram/model/of-cycles-apart.ts'
import { massByPart } from '../../../shared/diagram/model/of-masses.ts'
import { faultSweep } from '../../../shared/diagram/model/of-sweep.ts'
import { measureIn } from '../../../shared/diagram/scene/measure.ts'
import { CalcError } from '../../../shared/errors.ts'
import { simulate } from '../../../shared/service/simulate.ts'
import {
  all,
  axisOf,
  type Found,
  middleOf,
  parsed,
  partOf,
  pointsOf,
  texts,
} from '../../support/picture.ts'

const FAULTY = simulate.example
const of = (input: object) => simulate.compute(simulate.parse(input)).result
const sound = (input: object) =>
  Object.fromEntries(Object.entries(input).filter(([name]) => name !== 'chargeNow'))
const near = (found: number, expected: number, share: number) =>
  expect(Math.abs(found / expected - 1)).toBeLessThan(share)

describe.each([
  { units: 'us', energy: 'Btu/lb', pressure: 'psia' },
  { units: 'si', energy: 'kJ/kg', pressure: 'kPa abs' },
])('the cycle of the model in $units units', ({ units, energy, pressure }) => {
  const picture = parsed(modelCycle.draw({ ...FAULTY, units }, { width: 1280 }))
  const [x, y] = [axisOf(picture, 'x'), axisOf(picture, 'y')]
  const si = ([px, py]: readonly [number, number]) => ({
    enthalpy: measureIn('specificEnergy', energy).si(x.at(px)),
    pressurePa: measureIn('absolutePressure', pressure).si(y.at(py)),
  })

  it('goes through every corner, with the faults and without', () => {
    const { points, sound: beside } = of(FAULTY)
    for (const [index, corners] of [points, beside?.points ?? []].entries()) {
      const drawn = pointsOf(partOf(picture, `cycle-${index + 1}`)).map(si)
      expect(drawn).toHaveLength(corners.length + 1)
      for (const [order, corner] of corners.entries()) {
        near(drawn[order]?.pressurePa ?? 0, corner.pressure.si, 0.004)
        near(drawn[order]?.enthalpy ?? 0, corner.enthalpy.si, 0.002)
      }
    }
  })

  it('numbers the corners in the order of flow', () => {
    const marks = partOf(picture, 'marks-1')
    const first = si(middleOf(marks))
    const inlet = of(FAULTY).points.find(({ name }) => name === 'compressor-inlet')
    near(first.pressurePa, inlet?.pressure.si ?? 0, 0.01)
    expect(texts(marks)).toEqual(['1', '2', '3', '4'])
    expect(texts(partOf(picture, 'key')).join(' ')).toContain('sound, in squares')
  })
})

describe('both cycles on the same axes', () => {
  const picture = parsed(cyclesApart.draw({ ...FAULTY, units: 'si' }, { width: 1280 }))
  const [left, right] = [1, 2].map((number) => partOf(picture, `panel-${number}`) as Found)
  const frameOf = (panel: Found | undefined) =>
    [...all(panel as Found)].find(
      ({ name, attributes }) => name === 'rect' && attributes.fill === 'none',
    )?.attributes

  it('has the sound one left and the faulty one right, each alone', () => {
    expect(texts(left)[0]).toBe('Sound')
    expect(texts(right)[0]).toBe('Faulty: undercharge')
    expect([partOf(left as Found, 'cycle-1'), partOf(right as Found, 'cycle-2')]).toEqual([
      undefined,
      undefined,
    ])
    const { points, sound: beside } = of(FAULTY)
    const y = axisOf(left as Found, 'y')
    for (const [panel, name, corners] of [
      [left, 'cycle-2', beside?.points ?? []],
      [right, 'cycle-1', points],
    ] as const) {
      const x = axisOf(panel as Found, 'x')
      const drawn = pointsOf(partOf(panel as Found, name))
      expect(drawn).toHaveLength(corners.length + 1)
      for (const [order, corner] of corners.entries()) {
        const [px = 0, py = 0] = drawn[order] ?? []
        near(measureIn('specificEnergy', 'kJ/kg').si(x.at(px)), corner.enthalpy.si, 0.004)
        near(measureIn('absolutePressure', 'kPa abs').si(y.at(py)), corner.pressure.si, 0.006)
      }
    }
  })

  it('shares one pair of axes: the same scale in both, its words once', () => {
    expect(partOf(right as Found, 'y-axis')).toBeUndefined()
    const [a, b] = [frameOf(left), frameOf(right)]
    expect([a?.y, a?.height, a?.width]).toEqual([b?.y, b?.height, b?.width])
    const [xa, xb] = [axisOf(left as Found, 'x'), axisOf(right as Found, 'x')]
    expect(xa.at(Number(a?.x))).toBeCloseTo(xb.at(Number(b?.x)), 0)
  })

  it('lies one over the other where it is narrow', () => {
    const narrow = parsed(cyclesApart.draw({ ...FAULTY, units: 'si' }, { width: 360 }))
    const [top, under] = [1, 2].map((number) => partOf(narrow, `panel-${number}`) as Found)
    expect(partOf(top as Found, 'x-axis')).toBeUndefined()
    expect(Number(frameOf(under)?.y)).toBeGreaterThan(
      Number(frameOf(top)?.y) + Number(frameOf(top)?.height),
    )
    const [ya, yb] = [axisOf(top as Found, 'y'), axisOf(under as Found, 'y')]
    expect(ya.at(Number(frameOf(top)?.y))).toBeCloseTo(yb.at(Number(frameOf(under)?.y)), 0)
  })

  it('needs a fault, and a machine that runs', () => {
    expect(() => cyclesApart.draw(sound(FAULTY))).toThrow(/nothing beside it/u)
    const dry = { modelMachine: 'loader', ambient: '120 °F', chargeNow: '10 %' }
    expect(() => cyclesApart.draw(dry)).toThrow(/no running state/u)
  })
})

describe('a machine of the model', () => {
  it('has one cycle where it is sound, and none where it is pumped dry', () => {
    const whole = parsed(modelCycle.draw(sound(FAULTY)))
    expect(partOf(whole, 'cycle-2')).toBeUndefined()
    expect(texts(partOf(whole, 'key'))).toContain('sound')
    const dry = { modelMachine: 'loader', ambient: '120 °F', chargeNow: '10 %' }
    expect(of(dry).outcome.state).toBe('dry')
    expect(() => modelCycle.draw(dry)).toThrow(CalcError)
    expect(() => massByPart.draw(dry)).toThrow(/no running state/u)
  })

  it('has its mass by part as long as it is, with the sound one beside it', () => {
    const picture = parsed(massByPart.draw({ ...FAULTY, units: 'si' }, { width: 1280 }))
    const panel = partOf(picture, 'panel-1') as Found
    const labels = [...texts(partOf(panel, 'x-axis'))]
    expect(labels.pop()).toBe('Mass, g')
    const xs = (partOf(panel, 'grid')?.children ?? []).filter(({ name }) => name === 'line')
    const place = xs.map(({ attributes }) => Number(attributes.x1))
    const [xa, xb] = [place[0] ?? 0, place.at(-1) ?? 0]
    const grams = (px: number) => ((px - xa) / (xb - xa)) * Number(labels.at(-1))
    const { parts, sound: beside } = of(FAULTY)
    for (const [index, { mass }] of parts.entries()) {
      const { x = '', width = '' } =
        partOf(panel, `bar-1-${index + 1}`)?.children[0]?.attributes ?? {}
      expect(Math.abs(grams(Number(x) + Number(width)) - 1000 * mass.si)).toBeLessThan(1)
      const [corner] = pointsOf(partOf(panel, `beside-1-${index + 1}`))
      const expected = 1000 * (beside?.parts[index]?.mass.si ?? 0)
      expect(Math.abs(grams(corner?.[0] ?? 0) - expected)).toBeLessThan(1)
    }
    const whole = parts.reduce((sum, { mass }) => sum + mass.si, 0)
    near(whole, 0.45 * (of(FAULTY).machine.labelCharge.si ?? 0), 0.01)
  })
})

describe('a sweep', () => {
  const input = { ...sound(FAULTY), sweep: 'charge', sweepPoints: 9, units: 'us' }
  const picture = parsed(faultSweep.draw(input, { width: 1280 }))
  const sweep = of(input).sweep

  it.each([
    ['low side', 'suctionPressure', 'gaugePressure', 'psig'],
    ['superheat', 'superheat', 'temperatureDifference', '°F'],
    ['vent', 'ventTemperature', 'temperature', '°F'],
  ] as const)('shows the %s at every size', (title, figure, kind, unit) => {
    const panel = [...all(picture)].find(
      (part) =>
        part.attributes['data-part']?.startsWith('panel-') && part.children[0]?.text === title,
    ) as Found
    const [x, y] = [axisOf(panel, 'x'), axisOf(panel, 'y')]
    expect([x.title, y.title]).toEqual(['Charge, of the label, %', unit])
    const drawn = pointsOf(partOf(panel, 'line'))
    expect(drawn).toHaveLength(9)
    for (const [index, row] of (sweep?.rows ?? []).entries()) {
      const [px = 0, py = 0] = drawn[index] ?? []
      expect(Math.abs(x.at(px) - 100 * row.size.si)).toBeLessThan(0.5)
      const expected = measureIn(kind, unit).of(row[figure]?.si ?? Number.NaN)
      const span = Math.abs(y.at(0) - y.at(130))
      expect(Math.abs(y.at(py) - expected)).toBeLessThan(0.012 * span)
    }
  })

  it('shades where nothing shows', () => {
    const panel = partOf(picture, 'panel-1') as Found
    const { x = '', width = '' } = partOf(panel, 'plateau')?.children[0]?.attributes ?? {}
    const axis = axisOf(panel, 'x')
    expect(axis.at(Number(x))).toBeCloseTo(100 * (sweep?.plateau?.from.si ?? 0), 0)
    expect(axis.at(Number(x) + Number(width))).toBeCloseTo(100 * (sweep?.plateau?.to.si ?? 0), 0)
  })

  it('marks the size that the machine has now', () => {
    const marked = parsed(
      faultSweep.draw({ ...FAULTY, ...input, chargeNow: '45 %' }, { width: 1280 }),
    )
    const panel = partOf(marked, 'panel-2') as Found
    const [[px = 0] = []] = pointsOf(partOf(panel, 'now'))
    expect(axisOf(panel, 'x').at(px)).toBeCloseTo(45, 0)
    expect(texts(partOf(marked, 'key')).join(' ')).toContain('as it is now: 45')
    expect(partOf(picture, 'now')).toBeUndefined()
    const other = { ...sound(FAULTY), ...input, condenserAir: '60 %' }
    expect(partOf(parsed(faultSweep.draw(other)), 'now')).toBeUndefined()
  })

  it('is asked for', () => {
    expect(() => faultSweep.draw(FAULTY)).toThrow(/no sweep/u)
  })
})
