import { deltaPowers, distinct, type TermGroup, tauPowers } from './term-group.ts'
import type { PowerTerms } from './types.ts'

/** Terms that share exp(−δ^l): sums of n τ^t δ^d weighted by d and t need l only at the end. */
interface Block {
  readonly l: number
  readonly from: number
  readonly to: number
}

/** Σ n δ^d τ^t, with exp(−δ^l) where l > 0. Needs whole d and l, as published equations have. */
export function powerGroup(terms: PowerTerms): TermGroup {
  const order = terms.n.map((_, i) => i).sort((i, j) => at(terms.l, i) - at(terms.l, j))
  const l = order.map((i) => at(terms.l, i))
  const n = Float64Array.from(order, (i) => at(terms.n, i))
  const d = Int32Array.from(order, (i) => at(terms.d, i))
  const t = Float64Array.from(order, (i) => at(terms.t, i))
  const { values, index } = distinct([...t])
  const powersOfTau = tauPowers(values)
  const blocks: Block[] = [...new Set(l)].map((value) => ({
    l: value,
    from: l.indexOf(value),
    to: l.lastIndexOf(value) + 1,
  }))
  const powersOfDelta = deltaPowers(Math.max(...d, ...l))

  return (tau, delta, sums) => {
    const tp = powersOfTau(tau)
    const dp = powersOfDelta(delta)
    let a = 0
    let a_d = 0
    let a_t = 0
    let a_dd = 0
    let a_dt = 0
    let a_tt = 0
    for (let b = 0; b < blocks.length; b += 1) {
      const block = blocks[b] as Block
      let s = 0
      let sd = 0
      let sdd = 0
      let st = 0
      let sdt = 0
      let stt = 0
      for (let i = block.from; i < block.to; i += 1) {
        const di = d[i] as number
        const ti = t[i] as number
        const term = (n[i] as number) * (tp[index[i] as number] as number) * (dp[di] as number)
        const byD = di * term
        const byT = ti * term
        s += term
        sd += byD
        sdd += di * byD
        st += byT
        sdt += di * byT
        stt += ti * byT
      }
      if (block.l === 0) {
        a += s
        a_d += sd
        a_t += st
        a_dd += sdd - sd
        a_dt += sdt
        a_tt += stt - st
      } else {
        // With L = lδ^l: δ∂/∂δ gives d − L, and once more the square less lL.
        const power = dp[block.l] as number
        const L = block.l * power
        const e = Math.exp(-power)
        a += e * s
        a_d += e * (sd - L * s)
        a_t += e * st
        a_dd += e * (sdd - sd - L * (2 * sd - s) + L * (L - block.l) * s)
        a_dt += e * (sdt - L * st)
        a_tt += e * (stt - st)
      }
    }
    sums.a += a
    sums.a_d += a_d / delta
    sums.a_t += a_t / tau
    sums.a_dd += a_dd / (delta * delta)
    sums.a_dt += a_dt / (delta * tau)
    sums.a_tt += a_tt / (tau * tau)
  }
}

function at(list: readonly number[], index: number): number {
  const value = list[index]
  if (value === undefined) throw new RangeError(`term ${index} is missing from a list`)
  return value
}
