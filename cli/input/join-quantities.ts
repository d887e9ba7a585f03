import { kindsOfUnit } from '../../shared/quantity/kinds.ts'

const NUMBER = String.raw`(?:\d+(?:\.\d*)?|\.\d+|\d+\/\d+)(?:[ -]\d+\/\d+)?`
const AMOUNT = new RegExp(`^[+\\-−]?${NUMBER}$`, 'u')
const BAND = new RegExp(`^(?:±|\\+-|\\+/-)${NUMBER}$`, 'u')
/** "20inHg", the amount and the beginning of its unit in one word. */
const GLUED = new RegExp(`^[+\\-−]?${NUMBER}([^\\d\\s.±/].*)$`, 'u')
/** "fl oz", "inHg vac", "mL/min at 1 atm" */
const LONGEST_UNIT = 4
/** Units of which the second goes on where the first ended: "2 lb 6 oz", "5 ft 4 in". */
const GOES_ON = /^(?:(?:lbs?|pounds?) (?:oz|ounces?)|(?:ft|feet|foot) (?:in|inch|inches))$/iu

/**
 * Joins `--pressure 32 psig` as a shell cuts it into the one value that it is.
 *
 * Only after an option, and only where an amount is followed by the name of a unit, so that nothing
 * else that a person can type changes its meaning. A bare `-10C` is a temperature and no option.
 */
export function joinQuantities(argv: readonly string[]): readonly string[] {
  const joined: string[] = []
  let index = 0
  while (index < argv.length) {
    const word = argv[index] ?? ''
    joined.push(word.replace(/^-(?=\.?\d)/u, '−'))
    index += 1
    if (word === '--') return [...joined, ...argv.slice(index)]
    if (!/^--?[a-z][a-z0-9-]*$/u.test(word)) continue
    const taken = quantityWords(argv, index)
    if (taken > 0) {
      joined.push(argv.slice(index, index + taken).join(' '))
      index += taken
    } else if (/^-\.?\d/u.test(argv[index] ?? '')) {
      // What an option takes stays as it was typed.
      joined.push(argv[index] ?? '')
      index += 1
    }
  }
  return joined
}

/** Joins bare words that are one quantity: `32 psig`, `2 lb 6 oz`, `20inHg vac`, `210 ±4 psig`. */
export function joinWords(words: readonly string[]): readonly string[] {
  const joined: string[] = []
  let index = 0
  while (index < words.length) {
    const taken = Math.max(quantityWords(words, index), 1)
    joined.push(words.slice(index, index + taken).join(' '))
    index += taken
  }
  return joined
}

/** How many words from `start` are one quantity, with what goes on as in "2 lb 6 oz"; 0 for none. */
function quantityWords(argv: readonly string[], start: number): number {
  const first = oneQuantity(argv, start)
  if (!first) return 0
  const second = oneQuantity(argv, start + first.words)
  const goesOn = second !== undefined && GOES_ON.test(`${first.unit} ${second.unit}`)
  return first.words + (goesOn ? second.words : 0)
}

interface Found {
  readonly words: number
  readonly unit: string
}

/** Amount, ± where one is given, and unit. */
function oneQuantity(argv: readonly string[], start: number): Found | undefined {
  const word = argv[start] ?? ''
  const glued = GLUED.exec(word)?.[1]
  if (glued !== undefined) return unitFrom(argv, start + 1, glued)
  if (!AMOUNT.test(word)) return undefined
  const band = BAND.test(argv[start + 1] ?? '') ? 1 : 0
  const unit = unitFrom(argv, start + 1 + band)
  return unit && { ...unit, words: unit.words + band }
}

/** The longest unit that the words make, behind what stands with the amount already. */
function unitFrom(argv: readonly string[], start: number, begun = ''): Found | undefined {
  for (let count = LONGEST_UNIT; count >= (begun === '' ? 1 : 0); count -= 1) {
    const words = argv.slice(start, start + count)
    if (words.length < count) continue
    const unit = [begun, ...words].filter((part) => part !== '').join(' ')
    if (kindsOfUnit(unit).length > 0) return { words: count + 1, unit }
  }
  return undefined
}
