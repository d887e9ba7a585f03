import { kindsOfUnit } from '../../shared/quantity/kinds.ts'

const AMOUNT = /^[+\-−]?(?:\d+(?:\.\d*)?|\.\d+|\d+\/\d+)(?:[ -]\d+\/\d+)?$/u
/** "fl oz", "inHg vac", "mL/min at 1 atm" */
const LONGEST_UNIT = 4

/**
 * Joins `--pressure 32 psig` as a shell cuts it into the one value that it is.
 *
 * Only after an option, and only where an amount is followed by the name of a unit, so that nothing
 * else that a person can type changes its meaning.
 */
export function joinQuantities(argv: readonly string[]): readonly string[] {
  const joined: string[] = []
  let index = 0
  while (index < argv.length) {
    const word = argv[index] ?? ''
    joined.push(word)
    index += 1
    if (word === '--') return [...joined, ...argv.slice(index)]
    if (!/^--[a-z][a-z0-9-]*$/u.test(word)) continue
    const taken = quantityWords(argv, index)
    if (taken > 0) {
      joined.push(argv.slice(index, index + taken).join(' '))
      index += taken
    }
  }
  return joined
}

/** Joins bare words that are one quantity: `32 psig`, `2 lb 6 oz`. */
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

/** How many words from `start` are one quantity: amount and unit, again for "2 lb 6 oz"; 0 for none. */
function quantityWords(argv: readonly string[], start: number): number {
  let index = start
  for (;;) {
    if (!AMOUNT.test(argv[index] ?? '')) return index - start
    const unit = unitWords(argv, index + 1)
    if (unit === 0) return index - start
    index += 1 + unit
  }
}

function unitWords(argv: readonly string[], start: number): number {
  for (let count = LONGEST_UNIT; count > 0; count -= 1) {
    const words = argv.slice(start, start + count)
    if (words.length === count && kindsOfUnit(words.join(' ')).length > 0) return count
  }
  return 0
}
