/**
 * How near ours lies to what it is compared with: the tolerance of each comparison, which is also
 * what README promises in its table of agreement.
 */
export const AGREEMENT = {
  /** Relative: pure substances beside the reference library. */
  pure: 1e-8,
  /** Relative: a blend's bubble and dew line beside the same library, given the same parameters. */
  blendPressure: 1e-7,
  blendDensity: 1e-6,
  /** Relative: curves beside our own solver, by the share of the critical temperature. */
  latentHeat: [
    [0.8, 1e-5],
    [0.95, 1e-5],
    [0.995, 1e-4],
    [0.999, 5e-4],
    [0.9999, 3e-3],
  ],
  /** Relative: contents of a closed space, liquid and vapour together, beside a bisection. */
  flash: 1e-5,
  /**
   * K between our boiling point at one atmosphere and the printed one. Pure ones are printed to
   * 0.001 K from NIST's equations of 2010, of which R-290 and R-1234ze(E) have changed since; blends
   * to 0.1 K from the standard's own documents, with older mixture models, which differ most where
   * a hydrocarbon is in the blend. One with an estimated pair is off by what its answers warn of.
   */
  boilingPoint: { pure: 0.03, blend: 0.7, withHydrocarbon: 1.3, estimated: 4 },
  /** Relative: makers' printed bubble pressures, which lie below the equations. */
  printed: { 'R-410A': 0.011, 'R-407C': 0.02 },
} as const
