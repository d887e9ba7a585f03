/** The files of the page as both servers give them: what they are called, and how long they may be kept. */

/** Where the page's files with a fingerprint in their name are: what is in them never changes. */
export const FINGERPRINTED = '/assets/'

export const FOR_EVER = 'public, max-age=31536000, immutable'

/** Asked for again each time: which version is current is said here. */
export const ASK_EACH_TIME = 'public, no-cache'

export const keptFor = (address: string): string =>
  address.startsWith(FINGERPRINTED) ? FOR_EVER : ASK_EACH_TIME
