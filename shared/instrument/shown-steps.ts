/** What a charging scale of a shop shows at best, kg: two grams or a tenth of an ounce. Common practice, no source. */
export const SCALE_STEP_KG = 0.002

/** What a service gauge is read to, Pa: 1 psi. Common practice, no source. */
export const GAUGE_STEP_PA = 6_894.757
