/**
 * Keeps the whole page on the device, one version at a time.
 *
 * A version is taken in whole and then never changes: what is open goes on with the files that it
 * began with. A newer one waits until the page says that somebody agreed to it.
 */
declare const self: ServiceWorkerGlobalScope
/** Addresses of all files of the page, and a fingerprint of them: the build puts them here. */
declare const FILES: readonly string[]
declare const VERSION: string

const CACHE = `page-${VERSION}`
const KEPT = new Set(FILES)

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(CACHE)
      // Past the browser's own cache: what it kept may be of another version.
      .then((cache) => cache.addAll(FILES.map((file) => new Request(file, { cache: 'reload' })))),
  )
})

self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(names.filter((name) => name !== CACHE).map((name) => caches.delete(name))),
      )
      .then(() => self.clients.claim()),
  )
})

self.addEventListener('message', ({ data }) => {
  if (data === 'activate') void self.skipWaiting()
})

self.addEventListener('fetch', (event) => {
  const { pathname, origin } = new URL(event.request.url)
  if (event.request.method !== 'GET' || origin !== self.location.origin || !KEPT.has(pathname))
    return
  event.respondWith(
    caches
      .open(CACHE)
      .then((cache) => cache.match(pathname))
      .then((kept) => kept ?? fetch(event.request)),
  )
})
