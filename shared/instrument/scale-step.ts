/** What a charging scale of a shop shows at best, kg: two grams or a tenth of an ounce. Common practice, no source. */
export const SCALE_STEP_KG = 0.002
