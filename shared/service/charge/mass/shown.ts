import { density, mass, type Quantity, settle, type Tied, volume } from '../../../quantity/index.ts'

/** A mass in kg with its uncertainty, to be shown. */
export const massOf = (figure: Tied) => {
  const { si, plusMinus } = settle(figure)
  return mass(si, plusMinus)
}

/** A volume in m³ with its uncertainty, to be shown. */
export const volumeOf = (figure: Tied) => {
  const { si, plusMinus } = settle(figure)
  return volume(si, plusMinus)
}

/** A density in kg/m³ with its uncertainty, to be shown. */
export const densityOf = (figure: Tied) => {
  const { si, plusMinus } = settle(figure)
  return density(si, plusMinus)
}

/** Step values without the missing ones. */
export const values = (
  entries: Readonly<Record<string, Quantity | number | string | undefined>>,
): Record<string, Quantity | number | string> =>
  Object.fromEntries(
    Object.entries(entries).flatMap(([key, value]) => (value === undefined ? [] : [[key, value]])),
  )
