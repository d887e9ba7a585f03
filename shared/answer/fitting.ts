/**
 * The first of several ways to say the same, fullest first, that is short enough; else the last, which is the shortest.
 *
 * @param length - Letters of a way as it is shown, its figures filled in.
 */
export const fitting = (
  ways: readonly string[],
  most: number,
  length: (way: string) => number = (way) => way.length,
): string => ways.find((way) => length(way) <= most) ?? ways.at(-1) ?? ''
