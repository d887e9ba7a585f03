/** Where the service is, as long as nobody has asked for the page: pages are made once, for every host. */
export const HERE = 'http://service.invalid'

/** Of a host and a port no more than these letters: it is put into a page as it is. */
const ORIGIN = /^https?:\/\/[\w.:[\]-]+$/u

/**
 * A page whose requests name the host that it was asked from.
 *
 * @param forwarded - Scheme by which a proxy in front was asked.
 */
export function withHost(page: string, address: string, forwarded: string | undefined): string {
  const { protocol, host } = new URL(address)
  const scheme = forwarded === 'https' || forwarded === 'http' ? `${forwarded}:` : protocol
  const origin = `${scheme}//${host}`
  return ORIGIN.test(origin) ? page.replaceAll(HERE, origin) : page
}
