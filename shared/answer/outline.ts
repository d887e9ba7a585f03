import type { Unshown } from '../operation.ts'
import { type Presentation, Quantity, Showable } from '../quantity/index.ts'
import { constantTexts, figureJson, nameText, otherText, stringText } from './json-text.ts'

/** One place in the answers of a form. */
interface Place {
  kind:
    | 'members'
    | 'list'
    | 'figure'
    /** A text that was the same in every answer so far, and one that was not. */
    | 'same'
    | 'text'
    /** A list of kept objects that were the same ones in every answer so far, and one of others. */
    | 'same-constants'
    | 'constants'
    /** Numbers, yes and no, sentences with figures in them. */
    | 'other'
  /** What is the same. */
  readonly value: unknown
  /** Names of its parts. */
  readonly names: readonly string[]
  readonly parts: readonly Place[]
}

/** A way through one answer. */
interface Walk {
  readonly presentation: Presentation
  /** What stays and what is put in, in turn. */
  readonly pieces: string[]
  /** Where the next text is put in. */
  next: number
  /** Whether something differed for the first time: then the pieces are others. */
  differed: boolean
}

/** What a longer answer takes to be computed is so much that writing it does not count. */
const MOST_PLACES = 1_500

/**
 * What the answers of one form have in common: the text between what differs, in long pieces.
 *
 * Each answer is compared with it place by place, so that nothing is told that is not in the answer. A
 * text that is another one for the first time is from then on one that differs.
 */
export class Outline {
  readonly #root: Place
  #pieces: string[]

  private constructor(root: Place) {
    this.#root = root
    this.#pieces = piecesOf(root)
  }

  /** That of an answer; nothing where it is too long to be worth it. */
  static of({ tree, cautions, sources, ...notes }: Unshown): Outline | undefined {
    const left = { places: MOST_PLACES }
    const [shown, noted] = [tree, [notes.assumptions, notes.warnings]].map((p) => placeOf(p, left))
    if (!shown || !noted || left.places < 0) return undefined
    const constants = [cautions, sources].map((value) => place('same-constants', { value }))
    return new Outline(
      place('members', {
        names: [...shown.names, 'cautions', 'sources', 'assumptions', 'warnings'],
        parts: [...shown.parts, ...constants, ...noted.parts],
      }),
    )
  }

  /** The answer as JSON, where it has this form. */
  textOf(answer: Unshown): string | undefined {
    const { presentation } = answer
    for (;;) {
      const walk = { presentation, pieces: this.#pieces, next: 1, differed: false }
      const fits = isOfForm(answer, this.#root, walk)
      if (walk.differed) this.#pieces = piecesOf(this.#root)
      else return fits ? this.#pieces.join('') : undefined
      if (!fits) return undefined
    }
  }
}

/** The members of the tree first, then what stands behind them. */
function isOfForm(answer: Unshown, { names, parts }: Place, walk: Walk): boolean {
  const rest = names.length - 4
  return (
    membersFit(answer.tree, names, parts, walk) === rest &&
    partFits(answer.cautions, parts[rest], walk) &&
    partFits(answer.sources, parts[rest + 1], walk) &&
    partFits(answer.assumptions, parts[rest + 2], walk) &&
    partFits(answer.warnings, parts[rest + 3], walk)
  )
}

/** How many members of an object there are, all of them in place; else -1. */
function membersFit(
  tree: object,
  names: readonly string[],
  parts: readonly Place[],
  walk: Walk,
): number {
  let count = 0
  // Plain objects inherit nothing that would be gone through, and this makes no list of names.
  for (const name in tree) {
    const part = (tree as Readonly<Record<string, unknown>>)[name]
    if (part === undefined) continue
    if (name !== names[count] || !partFits(part, parts[count], walk)) return -1
    count += 1
  }
  return count
}

/** Whether a part of an answer is what its place holds; what differs is put in. */
function partFits(part: unknown, place: Place | undefined, walk: Walk): boolean {
  if (place === undefined) return false
  switch (place.kind) {
    case 'same':
      if (part === place.value) return true
      return typeof part === 'string' && differs(place, 'text', walk)
    case 'figure':
      return part instanceof Quantity && putIn(figureJson(part, walk.presentation), walk)
    case 'members':
      return (
        isPlain(part) && membersFit(part, place.names, place.parts, walk) === place.names.length
      )
    case 'text':
      return typeof part === 'string' && putIn(stringText(part), walk)
    case 'list': {
      const { parts } = place
      if (!Array.isArray(part) || part.length !== parts.length) return false
      for (let at = 0; at < parts.length; at += 1) {
        if (!partFits(part[at], parts[at], walk)) return false
      }
      return true
    }
    case 'same-constants':
      return areSame(part as readonly object[], place.value as readonly object[])
        ? true
        : differs(place, 'constants', walk)
    case 'constants':
      return putIn(constantTexts(part as readonly object[]), walk)
    case 'other':
      return kindOf(part) === 'other' && putIn(otherText(part, walk.presentation), walk)
  }
}

function putIn(text: string, walk: Walk): true {
  walk.pieces[walk.next] = text
  walk.next += 2
  return true
}

function differs(place: Place, kind: 'text' | 'constants', walk: Walk): true {
  place.kind = kind
  walk.differed = true
  return true
}

function areSame(list: readonly object[], before: readonly object[]): boolean {
  if (list.length !== before.length) return false
  for (let at = 0; at < list.length; at += 1) if (list[at] !== before[at]) return false
  return true
}

const isPlain = (part: unknown): part is object =>
  typeof part === 'object' &&
  part !== null &&
  !(part instanceof Quantity) &&
  !(part instanceof Showable) &&
  !Array.isArray(part)

function kindOf(part: unknown): Place['kind'] {
  if (typeof part === 'string') return 'same'
  if (part instanceof Quantity) return 'figure'
  if (Array.isArray(part)) return 'list'
  return isPlain(part) ? 'members' : 'other'
}

const place = (kind: Place['kind'], { value, names = [], parts = [] }: Partial<Place>): Place => ({
  kind,
  value,
  names,
  parts,
})

/** @param left - Counts down the places that there may be; below zero nothing further is looked at. */
function placeOf(part: unknown, left: { places: number }): Place {
  left.places -= 1
  const kind = kindOf(part)
  if (left.places < 0 || (kind !== 'list' && kind !== 'members')) {
    return place(kind, { value: kind === 'same' ? part : undefined })
  }
  // As JSON has them: what is undefined is left out of an object, and holds its place in a list.
  const isThere = ([, value]: [string, unknown]) => kind === 'list' || value !== undefined
  const members = Object.entries(part as object).filter(isThere)
  return place(kind, {
    names: members.map(([name]) => name),
    parts: members.map(([, value]) => placeOf(value, left)),
  })
}

/** Texts that stay, each in one piece, and empty ones between them for what is put in. */
function piecesOf(root: Place): string[] {
  const pieces: string[] = []
  let stays: string[] = []
  const lay = ({ kind, value, names, parts }: Place): void => {
    if (kind === 'same') stays.push(stringText(value as string))
    else if (kind === 'same-constants') stays.push(constantTexts(value as readonly object[]))
    else if (kind === 'list' || kind === 'members') {
      stays.push(kind === 'list' ? '[' : '{')
      for (const [at, part] of parts.entries()) {
        if (at > 0) stays.push(',')
        if (kind === 'members') stays.push(nameText(names[at] ?? ''))
        lay(part)
      }
      stays.push(kind === 'list' ? ']' : '}')
    } else {
      pieces.push(stays.join(''), '')
      stays = []
    }
  }
  lay(root)
  pieces.push(stays.join(''))
  return pieces
}
