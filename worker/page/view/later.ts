/** What can wait until the page stands: nobody sees it before the first answer. */
type Later = typeof import('./second.ts')

let later: Later | undefined

export const laterNow = (): Later | undefined => later

/** Loads it, and how it looks. */
export async function loadLater(): Promise<void> {
  const style = document.createElement('link')
  style.rel = 'stylesheet'
  style.href = '/later.css'
  document.head.append(style)
  later = await import('./second.ts')
}
