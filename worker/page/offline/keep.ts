/** Whether the page is kept on this device, and why not where it is not. */
export type Keeping = 'starting' | 'kept' | 'insecure' | 'unable' | 'renewable'

export interface Keeper {
  readonly state: () => Keeping
  /** Takes the version that waits; the page is loaded anew. */
  readonly renew: () => void
}

/**
 * Keeps the page on the device where the browser allows it, and says when a newer version waits.
 *
 * @param changed - Called whenever the state is another.
 */
export function keep(changed: () => void): Keeper {
  let state: Keeping = 'starting'
  let waiting: ServiceWorker | null = null
  const become = (next: Keeping) => {
    state = next
    changed()
  }
  const renew = () => {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), {
      once: true,
    })
    waiting?.postMessage('activate')
  }
  if (!window.isSecureContext) state = 'insecure'
  else if (!('serviceWorker' in navigator)) state = 'unable'
  else {
    const found = (registration: ServiceWorkerRegistration) => {
      waiting = registration.waiting
      if (waiting && registration.active) become('renewable')
      else if (registration.active) become('kept')
    }
    const watch = (registration: ServiceWorkerRegistration) => {
      registration.installing?.addEventListener('statechange', () => found(registration))
    }
    navigator.serviceWorker
      .register('/sw.js', { updateViaCache: 'none' })
      .then((registration) => {
        found(registration)
        watch(registration)
        registration.addEventListener('updatefound', () => watch(registration))
        // A tab may stay open for weeks.
        document.addEventListener('visibilitychange', () => {
          if (document.visibilityState === 'visible') void registration.update().catch(() => {})
        })
        return navigator.serviceWorker.ready.then(found)
      })
      .catch(() => become('unable'))
  }
  return { state: () => state, renew }
}
