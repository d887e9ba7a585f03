import { CalcError } from '../../errors.ts'

/** Mass shares that read a pressure within its band: all from one end to the other. */
export interface FittingShare {
  /** The one that reads exactly so; the middle where two such run into one another, else the nearest. */
  readonly share: number
  readonly from: number
  readonly to: number
  /** Shares in between that read exactly so: one, two about an azeotrope, or none at its top. */
  readonly exact: readonly number[]
}

/** Shares tried; between two of them the pressure runs one way, but for an extremum that is searched for. */
const LADDER = [0, 0.005, 0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 0.98, 1]
const STEPS = 40
/** A pressure is met to this, relative; at the edge of a band, which is no sharper, to the other. */
const PRESSURE = 1e-7
const EDGE_PRESSURE = 1e-5
/** Shares nearer than this are one. */
const SHARE = 1e-9
/** An extremum is found to this in share, where the pressure is flat. */
const FLAT = 5e-3

interface Node {
  readonly share: number
  readonly pressurePa: number
}

/**
 * Every mass share of a second refrigerant with which a mixture reads a pressure, each with the
 * edges of its own band. About an azeotrope a pressure fits two shares, and their bands may run
 * into one: the edges are solved, since a slope means nothing at the top.
 *
 * @param pressureAt - Pa at a mass share from 0 to 1; undefined where the mixture has no liquid.
 * @param widthAt - Half-width of the band at a share, Pa: readings and mixture model together.
 */
export function sharesThatFit(
  pressureAt: (share: number) => number | undefined,
  wantedPa: number,
  widthAt: (share: number) => number,
): readonly FittingShare[] {
  return runsOf(pressureAt).flatMap((nodes) => {
    const at = (share: number) => known(pressureAt(share))
    const gap = (share: number, side: number) => at(share) - wantedPa - side * widthAt(share)
    const crossings = (side: number) => {
      const tolerance = wantedPa * (side === 0 ? PRESSURE : EDGE_PRESSURE)
      return nodes.slice(1).flatMap((to, i) => {
        const from = nodes[i] as Node
        const ends = [from, to].map(({ share, pressurePa }) => ({
          share,
          gap: pressurePa - wantedPa - side * widthAt(share),
        })) as [Tried, Tried]
        if (ends[1].gap === 0) return [to.share]
        return ends[0].gap * ends[1].gap < 0
          ? [between((share) => gap(share, side), tolerance, ...ends)]
          : []
      })
    }
    const exact = crossings(0)
    const first = nodes[0] as Node
    const last = nodes.at(-1) as Node
    const cuts = [first.share, ...[...crossings(-1), ...crossings(1)].sort(rising), last.share]
    const fits = (share: number) => Math.abs(at(share) - wantedPa) <= widthAt(share)
    const bands = cuts.slice(1).flatMap((to, i) => {
      const from = cuts[i] as number
      return to - from > SHARE && fits((from + to) / 2) ? [{ from, to }] : []
    })
    const joined = join(bands)
    const sharp = exact
      .filter((share) => !joined.some(({ from, to }) => share >= from && share <= to))
      .map((share) => ({ from: share, to: share }))
    return [...joined, ...sharp]
      .sort((a, b) => a.from - b.from)
      .map((band) => named(band, exact, nodes, wantedPa))
  })
}

const rising = (a: number, b: number) => a - b

interface Band {
  readonly from: number
  readonly to: number
}

/** Bands that touch are one. */
function join(bands: readonly Band[]): readonly Band[] {
  const done: Band[] = []
  for (const next of bands) {
    const before = done.at(-1)
    if (before && next.from - before.to <= SHARE) {
      done.splice(-1, 1, { from: before.from, to: next.to })
    } else done.push(next)
  }
  return done
}

function named(
  { from, to }: Band,
  exact: readonly number[],
  nodes: readonly Node[],
  wantedPa: number,
): FittingShare {
  const inside = exact.filter((share) => share >= from && share <= to)
  const [only] = inside
  if (only !== undefined && inside.length === 1) return { share: only, from, to, exact: inside }
  const middle = (from + to) / 2
  const off = ({ pressurePa }: Node) => Math.abs(pressurePa - wantedPa)
  const nearest = nodes
    .filter(({ share }) => share >= from && share <= to)
    .reduce<Node | undefined>((best, n) => (best && off(best) <= off(n) ? best : n), undefined)
  const share = inside.length > 1 ? middle : (nearest?.share ?? middle)
  return { share, from, to, exact: inside }
}

/** The ladder with its extrema, cut where the mixture has no liquid. */
function runsOf(pressureAt: (share: number) => number | undefined): readonly (readonly Node[])[] {
  const runs: Node[][] = [[]]
  for (const share of LADDER) {
    const pressurePa = pressureAt(share)
    if (pressurePa === undefined) runs.push([])
    else runs.at(-1)?.push({ share, pressurePa })
  }
  return runs
    .filter((run) => run.length > 1)
    .map((run) =>
      run.flatMap((node, i) => [node, ...extremumAfter(run, i, pressureAt)]).sort(byShare),
    )
}

const byShare = (a: Node, b: Node) => a.share - b.share

/** The top or bottom about a node that lies above or below both its neighbours, by thirds. */
function extremumAfter(
  run: readonly Node[],
  index: number,
  pressureAt: (share: number) => number | undefined,
): readonly Node[] {
  const [before, here, after] = [run[index - 1], run[index], run[index + 1]]
  if (!before || !here || !after) return []
  const sign = Math.sign(here.pressurePa - before.pressurePa)
  if (sign === 0 || sign !== Math.sign(here.pressurePa - after.pressurePa)) return []
  let [low, high] = [before.share, after.share]
  for (let step = 0; step < STEPS && high - low > FLAT; step += 1) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3]
    if (sign * (known(pressureAt(a)) - known(pressureAt(b))) > 0) high = b
    else low = a
  }
  const share = (low + high) / 2
  const found = { share, pressurePa: known(pressureAt(share)) }
  return share !== here.share && sign * (found.pressurePa - here.pressurePa) > 0 ? [found] : []
}

interface Tried {
  readonly share: number
  readonly gap: number
}

/** Regula falsi, with the gap of an end that stays halved (Illinois), so that neither end sticks. */
function between(
  gapAt: (share: number) => number,
  tolerancePa: number,
  from: Tried,
  to: Tried,
): number {
  let [kept, newest] = [from, to]
  for (let step = 0; step < STEPS; step += 1) {
    const share = (kept.share * newest.gap - newest.share * kept.gap) / (newest.gap - kept.gap)
    const here = { share, gap: gapAt(share) }
    if (Math.abs(here.gap) < tolerancePa) return share
    kept = Math.sign(here.gap) === Math.sign(newest.gap) ? { ...kept, gap: kept.gap / 2 } : newest
    newest = here
  }
  throw new CalcError('no-convergence', 'No share of the other refrigerant was found.')
}

function known(pressurePa: number | undefined): number {
  if (pressurePa !== undefined) return pressurePa
  throw new CalcError(
    'no-convergence',
    'The pressure of the mixture was not found between two that were.',
  )
}
