import { SaxesParser } from 'saxes'

/** An element of a picture, as a reader of it finds it. */
export interface Found {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly children: readonly Found[]
  /** Its own text. */
  readonly text: string
}

/** Parses a picture. @throws where it is not well-formed. */
export function parsed(svg: string): Found {
  const parser = new SaxesParser()
  const root: Found & { children: Found[] } = { name: '', attributes: {}, children: [], text: '' }
  const open: {
    name: string
    attributes: Record<string, string>
    children: Found[]
    text: string
  }[] = [root as never]
  parser.on('error', (error) => {
    throw error
  })
  parser.on('opentag', ({ name, attributes }) => {
    const element = {
      name,
      attributes: attributes as Record<string, string>,
      children: [],
      text: '',
    }
    open.at(-1)?.children.push(element)
    open.push(element)
  })
  parser.on('text', (text) => {
    const last = open.at(-1)
    if (last) last.text += text
  })
  parser.on('closetag', () => {
    open.pop()
  })
  parser.write(svg).close()
  return root.children[0] as Found
}

/** An element and all below it. */
export function* all(element: Found): Generator<Found> {
  yield element
  for (const child of element.children) yield* all(child)
}

/** The group of that name; undefined where the picture has none. */
export const partOf = (picture: Found, name: string): Found | undefined =>
  [...all(picture)].find(({ attributes }) => attributes['data-part'] === name)

export const texts = (element: Found | undefined): readonly string[] =>
  element ? [...all(element)].filter(({ name }) => name === 'text').map(({ text }) => text) : []

/** Corners of the paths below an element, px. */
export const pointsOf = (element: Found | undefined): readonly (readonly [number, number])[] =>
  [...(element ? all(element) : [])]
    .filter(({ name }) => name === 'path')
    .flatMap(({ attributes }) =>
      [...(attributes.d ?? '').matchAll(/[ML](-?[\d.]+),(-?[\d.]+)/gu)].map(
        ([, x, y]) => [Number(x), Number(y)] as const,
      ),
    )

/** Middle of a numbered mark or a ring. */
export const middleOf = (element: Found | undefined): readonly [number, number] => {
  const circle = [...(element ? all(element) : [])].find(({ name }) => name === 'circle')
  return [Number(circle?.attributes.cx), Number(circle?.attributes.cy)]
}

/** An axis as a reader takes it: by the words at its ticks and the lines of its grid. */
export interface AxisRead {
  readonly title: string
  readonly kind: 'linear' | 'log'
  /** The value at a pixel, in the unit of the axis. */
  at(pixel: number): number
}

/**
 * Reads an axis back.
 *
 * @throws where its ticks are in equal steps neither of the value nor of its logarithm.
 */
export function axisOf(picture: Found, along: 'x' | 'y', prefix = ''): AxisRead {
  const labels = [...texts(partOf(picture, `${prefix}${along}-axis`))]
  const title = labels.pop() ?? ''
  const lines = (partOf(picture, `${prefix}grid`)?.children ?? []).filter(({ name, attributes }) =>
    name === 'line' && along === 'x'
      ? attributes.x1 === attributes.x2
      : name === 'line' && attributes.y1 === attributes.y2,
  )
  const ticks = labels.map((text, index) => ({
    value: Number(text),
    pixel: Number(lines[index]?.attributes[`${along}1`]),
  }))
  if (ticks.length < 2 || lines.length !== ticks.length)
    throw new Error(`axis ${along} has no scale`)
  const scale = [
    { kind: 'linear' as const, ahead: (v: number) => v, back: (v: number) => v },
    { kind: 'log' as const, ahead: Math.log, back: Math.exp },
  ].find(({ ahead }) =>
    ticks.every(({ value, pixel }) => Math.abs(place(ahead, value) - pixel) < 0.6),
  )
  if (!scale) throw new Error(`axis ${along} is neither linear nor logarithmic`)
  const [first, last] = [ticks[0] as Tick, ticks.at(-1) as Tick]
  return {
    title,
    kind: scale.kind,
    at: (pixel) => {
      const [low, high] = [scale.ahead(first.value), scale.ahead(last.value)]
      return scale.back(low + ((pixel - first.pixel) / (last.pixel - first.pixel)) * (high - low))
    },
  }
  function place(ahead: (value: number) => number, value: number): number {
    const [a, b] = [ticks[0] as Tick, ticks.at(-1) as Tick]
    const share = (ahead(value) - ahead(a.value)) / (ahead(b.value) - ahead(a.value))
    return a.pixel + share * (b.pixel - a.pixel)
  }
}

interface Tick {
  readonly value: number
  readonly pixel: number
}

/** Whatever is wrong with a picture wherever it is shown: numbers, colours, sizes, what it must not have. */
export function faultsOf(svg: string): readonly string[] {
  const picture = parsed(svg)
  const faults: string[] = []
  const width = Number(picture.attributes.width)
  const height = Number(picture.attributes.height)
  if (picture.name !== 'svg' || picture.attributes.role !== 'img') faults.push('no image')
  if (picture.children[0]?.name !== 'title' || !picture.children[0].text) faults.push('no title')
  if (picture.children[1]?.name !== 'desc' || !picture.children[1].text)
    faults.push('no description')
  if (!(width > 0 && height > 0 && height < 6 * width + 2000)) faults.push(`${width} × ${height}`)
  if (/NaN|Infinity|undefined|\[object|\bnull\b/u.test(svg)) faults.push('the want of a number')
  for (const { name, attributes, text } of all(picture)) {
    if (['style', 'script', 'image', 'use', 'foreignObject', 'a'].includes(name)) faults.push(name)
    if ('style' in attributes || 'id' in attributes || 'href' in attributes)
      faults.push('attribute')
    if (Object.keys(attributes).some((key) => key.startsWith('on'))) faults.push('handler')
    if (name !== 'text') continue
    if (Number(attributes['font-size']) < 11) faults.push(`small: ${text}`)
    if (text === '') faults.push('empty text')
    const x = Number(attributes.x)
    if (!(x >= 0 && x <= width && Number(attributes.y) <= height)) faults.push(`outside: ${text}`)
  }
  return faults
}
