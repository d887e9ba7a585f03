/** Molar gas constant, J/(mol·K): CODATA 2018, exact since the SI of 2019. */
export const GAS_CONSTANT = 8.31446261815324

/** 0 °C in K, by the definition of the Celsius scale. */
export const ZERO_CELSIUS_K = 273.15

/** Molar mass of dry air, kg/mol (US Standard Atmosphere 1976). */
export const DRY_AIR_MOLAR_MASS = 0.0289644

/** Gas constant of dry air, J/(kg·K), with the molar constant of that standard, 8314.32 J/(kmol·K). */
export const DRY_AIR_GAS_CONSTANT = 8.31432 / DRY_AIR_MOLAR_MASS
