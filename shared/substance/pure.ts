import { idealPart } from './ideal.ts'
import type { HelmholtzModel } from './model.ts'
import { residualPart } from './residual.ts'
import type { SubstanceData } from './types.ts'

/** The Helmholtz model of one pure substance, from its published equation. */
export function pureModel(data: SubstanceData): HelmholtzModel {
  return {
    name: data.id,
    molarMass: data.molarMass,
    gasConstant: data.gasConstant,
    reducingTemperature: data.reducing.temperatureK,
    reducingDensity: data.reducing.densityMolPerM3,
    ideal: idealPart(data.ideal, data.reducing.temperatureK),
    residual: residualPart(data.residual),
  }
}
