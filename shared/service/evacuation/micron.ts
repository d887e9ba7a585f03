/** Conventional micron of mercury, Pa (NIST SP 811). */
export const MICRON_PA = 0.133322387415

/** A pressure in micron inside a sentence: "18,790 micron". */
export const micron = (pa: number): string => {
  const value = pa / MICRON_PA
  if (Math.abs(value) < 10) return `${Number(value.toFixed(1))} micron`
  return `${String(Math.round(value)).replace(/\B(?=(?:\d{3})+$)/gu, ',')} micron`
}
