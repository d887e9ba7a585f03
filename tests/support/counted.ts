import type { HelmholtzModel } from '../../shared/substance/model.ts'
import type { Multifluid } from '../../shared/substance/multifluid.ts'

interface Count {
  calls: number
}

/** A mixture that counts how often a search evaluates the equation of one of its components. */
export function counted(fluid: Multifluid): {
  readonly fluid: Multifluid
  readonly count: Count
} {
  const count = { calls: 0 }
  const residuals = fluid.residuals.map((part) => (tau: number, delta: number) => {
    count.calls += 1
    return part(tau, delta)
  })
  return { fluid: { ...fluid, residuals }, count }
}

/** A model that counts how often a search evaluates its equation. */
export function countedModel(model: HelmholtzModel): {
  readonly model: HelmholtzModel
  readonly count: Count
} {
  const count = { calls: 0 }
  const residual = (tau: number, delta: number) => {
    count.calls += 1
    return model.residual(tau, delta)
  }
  return { model: { ...model, residual }, count }
}
