/** Names that look most like what was typed, best first; none that differs in more than half of its letters. */
export function nearestNames(
  typed: string,
  names: readonly string[],
  count = 3,
): readonly string[] {
  const wanted = fold(typed)
  return names
    .map((name) => ({ name, distance: editDistance(wanted, fold(name)) }))
    .filter(({ name, distance }) => distance <= Math.max(2, fold(name).length / 2))
    .sort((a, b) => a.distance - b.distance)
    .slice(0, count)
    .map(({ name }) => name)
}

const LONGEST = 60
const fold = (name: string) =>
  name
    .slice(0, LONGEST)
    .toLowerCase()
    .replace(/[^a-z0-9]/gu, '')

/** Optimal string alignment distance: insertions, deletions, replacements, and swapped neighbours. */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, column) => column)
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row]
    for (let column = 1; column <= b.length; column += 1) {
      const replaced = at(last, column - 1) + (a[row - 1] === b[column - 1] ? 0 : 1)
      let best = Math.min(replaced, at(last, column) + 1, at(current, column - 1) + 1)
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]) {
        best = Math.min(best, at(beforeLast, column - 2) + 1)
      }
      current.push(best)
    }
    beforeLast = last
    last = current
  }
  return at(last, b.length)
}

const at = (row: readonly number[], column: number) => row[column] ?? Number.POSITIVE_INFINITY
