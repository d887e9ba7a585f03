/** Name, version and purpose, as package.json has them (a test holds them equal). */
export const ABOUT = {
  name: 'chargewright',
  version: '0.1.0',
  /** Day on which any of its data was last checked. */
  data: '2026-11-27',
  licence: 'MIT',
  description:
    'Refrigerant service calculations for people who open air-conditioning systems: saturation, superheat, charge, oil and the work order that ties them together.',
} as const

/** Who made an answer that is kept: a later version may say otherwise. */
export const MADE_BY = `${ABOUT.name} ${ABOUT.version}, data of ${ABOUT.data}`
