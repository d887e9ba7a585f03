/** Letters that stay capital in a label, by their spelling in a field name. */
const ABBREVIATIONS: Readonly<Record<string, string>> = {
  c: '°C',
  f: '°F',
  id: 'ID',
  url: 'URL',
  gwp: 'GWP',
  odp: 'ODP',
  cas: 'CAS',
  us: 'US',
  si: 'SI',
}

/** `liquidDensity` and `liquid-density` to "Liquid density". */
export function labelOf(name: string): string {
  const words = name
    .replace(/([a-z0-9])([A-Z])/gu, '$1 $2')
    .replace(/([a-z])(\d)/gu, '$1 $2')
    .split(/[\s_-]+/u)
    .map((word) => ABBREVIATIONS[word.toLowerCase()] ?? word.toLowerCase())
  const text = words.join(' ')
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** A text that begins with a capital. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
