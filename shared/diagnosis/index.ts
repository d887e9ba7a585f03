/**
 * Which causes fit what was read on a machine, which of them cannot be told apart, and what to read
 * next: pure functions over the machine model of `shared/cycle`.
 *
 * `hypotheses` solves what every fault would show, with the spread by all that is not known;
 * `posterior` weighs them by observations; `classes` merges what these cannot part, before anything
 * is ranked; `worthReading` orders further readings by information for their cost. Standard
 * deviations (1 σ) throughout: a ± of the project is two.
 *
 * A cause that only posed as another is the model's own limit as well: it inverts what it
 * simulates, and a real machine differs in more than its numbers.
 */
export { APART, type Class, classes, distance } from './classes.ts'
export { entropyBits } from './entropy.ts'
export { FEATURES, type Feature, featuresOf, type Observation } from './features.ts'
export {
  type Cause,
  type Hypothesis,
  hypotheses,
  hypothesesInPieces,
  type Knowledge,
} from './hypotheses.ts'
export { type Candidate, USUAL_CANDIDATES, type Worth, worthReading } from './next.ts'
export {
  type Posterior,
  type Priors,
  posterior,
  type Ranked,
  toThousandths,
  USUAL_PRIORS,
} from './posterior.ts'
