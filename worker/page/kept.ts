/** Texts that stay on this device; where the browser keeps nothing, for as long as the page is open. */

const before = new Map<string, string>()

export function readKept<T>(name: string, otherwise: T): T {
  try {
    const text = localStorage.getItem(name) ?? before.get(name)
    return text === undefined ? otherwise : (JSON.parse(text) as T)
  } catch {
    return otherwise
  }
}

export function writeKept(name: string, value: unknown): void {
  const text = JSON.stringify(value)
  before.set(name, text)
  try {
    localStorage.setItem(name, text)
  } catch {
    // Full or forbidden: it stays for as long as the page does.
  }
}
