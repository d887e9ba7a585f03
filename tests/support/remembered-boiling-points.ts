/** Bubble and dew point at one atmosphere, °C. */
export type BoilingPoints = readonly [id: string, bubble: number, dew: number]

/*
 * ASHRAE Standard 34, normal bubble and dew points as remembered, not read: a guard against gross
 * error only, of the blends with estimated pairs above all. Those of R-413A contradict the fitted parameters of
 * R-134a/R-218 by 3 K.
 */
export const REMEMBERED_BOILING_POINTS: readonly BoilingPoints[] = [
  ['R-401A', -34.4, -28.8],
  ['R-402A', -49.2, -47.0],
  ['R-404A', -46.6, -45.8],
  ['R-406A', -32.7, -23.5],
  ['R-407A', -45.2, -38.7],
  ['R-407C', -43.8, -36.7],
  ['R-407F', -46.1, -39.7],
  ['R-408A', -45.5, -45.0],
  ['R-409A', -35.4, -27.5],
  ['R-410A', -51.6, -51.5],
  ['R-413A', -29.3, -27.6],
  ['R-414B', -34.4, -26.1],
  ['R-416A', -23.4, -21.8],
  ['R-417A', -38.0, -32.9],
  ['R-422D', -43.2, -38.4],
  ['R-427A', -43.0, -36.3],
  ['R-438A', -43.0, -36.4],
  ['R-448A', -45.9, -39.8],
  ['R-449A', -46.0, -39.9],
  ['R-450A', -23.4, -22.8],
  ['R-452A', -47.0, -43.2],
  ['R-452B', -51.0, -50.3],
  ['R-454A', -48.4, -41.6],
  ['R-454B', -50.9, -50.0],
  ['R-454C', -46.0, -37.8],
  ['R-455A', -51.6, -39.1],
  ['R-507A', -47.1, -47.1],
  ['R-513A', -29.2, -29.1],
]
