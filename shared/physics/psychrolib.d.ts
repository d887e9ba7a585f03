/** The part of PsychroLib that is used; the package brings no types. Temperatures in °C, pressures in Pa (SI). */
declare module 'psychrolib' {
  interface Psychrolib {
    readonly SI: unknown
    SetUnitSystem(system: unknown): void
    GetHumRatioFromRelHum(dryBulbC: number, relativeHumidity: number, pressurePa: number): number
    GetTDewPointFromHumRatio(dryBulbC: number, humidityRatio: number, pressurePa: number): number
    GetTWetBulbFromHumRatio(dryBulbC: number, humidityRatio: number, pressurePa: number): number
    GetRelHumFromHumRatio(dryBulbC: number, humidityRatio: number, pressurePa: number): number
    GetRelHumFromTWetBulb(dryBulbC: number, wetBulbC: number, pressurePa: number): number
    GetMoistAirEnthalpy(dryBulbC: number, humidityRatio: number): number
    GetSatHumRatio(dryBulbC: number, pressurePa: number): number
  }
  const psychrolib: Psychrolib
  export default psychrolib
}
