import type { Attributes } from './node.ts'

/** `page` has classes instead of colours: the page's own style sheet, {@link diagramStyle}, colours them. */
export const THEMES = ['light', 'dark', 'print', 'page'] as const
export type Theme = (typeof THEMES)[number]

const TONES = ['paper', 'ink', 'soft', 'faint', 'tint', 'warm', 'cool'] as const
type Tone = (typeof TONES)[number]

type Palette = Readonly<Record<Tone, string>>

/**
 * Rust against blue stay apart for every kind of colour blindness and in grey, and nothing is told by
 * colour alone. Text in `ink`, `soft`, `warm` and `cool` keeps 4.5:1 against the paper (WCAG 2.2, 1.4.3).
 */
export const PALETTES: Readonly<Record<Exclude<Theme, 'page'>, Palette>> = {
  light: {
    paper: '#fbfaf6',
    ink: '#1b1b18',
    soft: '#5b574c',
    faint: '#cfcabc',
    tint: '#ece6d6',
    warm: '#a33b12',
    cool: '#1d5a8a',
  },
  dark: {
    paper: '#191917',
    ink: '#e9e6dc',
    soft: '#b3ad9e',
    faint: '#4a463e',
    tint: '#302d27',
    warm: '#f0955f',
    cool: '#7db9e8',
  },
  print: {
    paper: '#ffffff',
    ink: '#000000',
    soft: '#444444',
    faint: '#bbbbbb',
    tint: '#e8e8e8',
    warm: '#7a2600',
    cool: '#00457a',
  },
}

/** How a part of a picture is drawn. Lines that lie together differ in dash or width, not in colour alone. */
interface Look {
  /** Laid over another look, whose fill it leaves alone; its line lies behind the fill. */
  readonly over?: true
  readonly stroke?: Tone
  readonly width?: number
  readonly dash?: string
  readonly fill?: Tone
}

const LOOKS = {
  paper: { fill: 'paper' },
  frame: { stroke: 'soft', width: 1 },
  grid: { stroke: 'faint', width: 0.75 },
  text: { fill: 'ink' },
  'soft-text': { fill: 'soft' },
  'warm-text': { fill: 'warm' },
  'cool-text': { fill: 'cool' },
  halo: { over: true, stroke: 'paper', width: 4 },
  dome: { stroke: 'ink', width: 2 },
  'dome-top': { stroke: 'ink', width: 2, dash: '1 4' },
  isotherm: { stroke: 'soft', width: 0.9 },
  isentrope: { stroke: 'soft', width: 0.9, dash: '7 3 1 3' },
  quality: { stroke: 'soft', width: 0.7, dash: '2 3' },
  cycle: { stroke: 'warm', width: 3 },
  'cycle-assumed': { stroke: 'warm', width: 2.2, dash: '5 4' },
  other: { stroke: 'cool', width: 2.4, dash: '9 4' },
  'other-assumed': { stroke: 'cool', width: 1.8, dash: '3 4' },
  mark: { stroke: 'warm', width: 2, fill: 'paper' },
  'other-mark': { stroke: 'cool', width: 2, fill: 'paper' },
  bubble: { stroke: 'cool', width: 2.4 },
  dew: { stroke: 'ink', width: 2.4, dash: '8 3' },
  distance: { stroke: 'warm', width: 2.4 },
  'other-distance': { stroke: 'cool', width: 2.4 },
  drop: { stroke: 'soft', width: 0.9, dash: '2 3' },
  spread: { stroke: 'ink', width: 1.2 },
  fit: { stroke: 'warm', width: 2.4 },
  limit: { stroke: 'cool', width: 2, dash: '8 4' },
  'other-limit': { stroke: 'soft', width: 1.6, dash: '2 4' },
  zone: { fill: 'tint' },
  bar: { stroke: 'ink', width: 1.2, fill: 'tint' },
  'bar-more': { stroke: 'warm', width: 1.2, fill: 'paper' },
  hatch: { stroke: 'warm', width: 1.3 },
  'hatch-cool': { stroke: 'cool', width: 1.3 },
} as const satisfies Readonly<Record<string, Look>>

export type LookName = keyof typeof LOOKS

/** Puts looks on elements, the later over the earlier: as attributes of their own, or as classes. */
export type Paint = (...looks: readonly LookName[]) => Attributes

export function paintIn(theme: Theme): Paint {
  if (theme === 'page')
    return (...names) => ({ class: names.map((name) => `dg-${name}`).join(' ') })
  const palette = PALETTES[theme]
  return (...names) =>
    Object.assign({}, ...names.map((name) => attributesOf(LOOKS[name], (tone) => palette[tone])))
}

function attributesOf(look: Look, colour: (tone: Tone) => string): Attributes {
  const { over, stroke, width, dash, fill } = look
  return {
    ...(over ? { 'paint-order': 'stroke' } : { fill: fill === undefined ? 'none' : colour(fill) }),
    ...(stroke === undefined ? {} : { stroke: colour(stroke), 'stroke-linejoin': 'round' }),
    ...(width === undefined ? {} : { 'stroke-width': width }),
    ...(dash === undefined ? {} : { 'stroke-dasharray': dash }),
  }
}

/** The style sheet for pictures of the theme `page`, light and dark by the device, in ink when printed. */
export function diagramStyle(): string {
  const tones = (palette: Palette) =>
    `:root{${TONES.map((tone) => `--dg-${tone}:${palette[tone]}`).join(';')}}`
  const rules = Object.entries(LOOKS).map(([name, look]) => {
    const set = Object.entries(attributesOf(look, (tone) => `var(--dg-${tone})`)).map(
      ([property, value]) => `${property}:${value}`,
    )
    return `.dg-${name}{${set.join(';')}}`
  })
  return [
    tones(PALETTES.light),
    `@media (prefers-color-scheme:dark){${tones(PALETTES.dark)}}`,
    `@media print{${tones(PALETTES.print)}}`,
    ...rules,
  ].join('\n')
}
