/** What can wait until the page stands: nobody sees it before the first answer. */
type Later = typeof import('./second.ts')

let later: Later | undefined

export const laterNow = (): Later | undefined => later

/** Loads it. */
export async function loadLater(): Promise<void> {
  later = await import('./second.ts')
}
