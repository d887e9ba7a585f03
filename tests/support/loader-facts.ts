import { refrigerant } from '../../shared/refrigerant/index.ts'
import { type Facts, refrigerantFacts } from '../../shared/rules/facts.ts'

export const factsOf = (name: string) => refrigerantFacts(refrigerant(name).info)

/** A loader of a building site, whose R-134a somebody is paid to recover. */
export const loader: Facts = {
  machine: 'off-road',
  compressorDrive: 'open',
  factorySealed: false,
  sector: 'construction',
  refrigerant: factsOf('R-134a'),
  chargeKg: 1,
  action: 'recover',
  forPay: true,
  to: undefined,
}
