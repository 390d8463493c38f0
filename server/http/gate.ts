/** What every request and handshake is asked before anything of it is answered. */
import type { IncomingMessage } from 'node:http'
import { ownNames } from '#server/http/addresses.ts'
import { isAllowedHost, isAllowedOrigin } from '#server/http/allowed.ts'
import { MOST_TARGET } from '#server/http/limits.ts'

/** Which names this server has, and whether TLS ends in it. */
export interface Site {
  readonly secure: boolean
  readonly extraHosts: readonly string[]
}

/** Something is read, something is done, or a socket is opened. */
export type Purpose = 'read' | 'act' | 'socket'

export type GateRefusal = 'not-as-asked' | 'too-large' | 'other-host' | 'other-origin'

/** Said twice, each reader may take another one. */
const ONCE = ['host', 'origin', 'content-length', 'content-type', 'cookie', 'transfer-encoding']

const isTwice = ({ rawHeaders }: IncomingMessage): boolean => {
  const names = rawHeaders.flatMap((name, place) => (place % 2 === 0 ? [name.toLowerCase()] : []))
  return ONCE.some((name) => names.indexOf(name) !== names.lastIndexOf(name))
}

/** A page elsewhere, as a browser tells it to secure addresses: only links from there are followed. */
const isCrossSite = ({ headers }: IncomingMessage, purpose: Purpose): boolean => {
  const site = headers['sec-fetch-site']
  if (site === undefined || site === 'same-origin' || site === 'none') return false
  const isLink =
    headers['sec-fetch-mode'] === 'navigate' && headers['sec-fetch-dest'] === 'document'
  return !(purpose === 'read' && isLink)
}

/** Why a request isn't answered; null where it may be. */
export const refusalAtGate = (
  request: IncomingMessage,
  purpose: Purpose,
  { secure, extraHosts }: Site,
): GateRefusal | null => {
  const { headers, socket, url = '' } = request
  if (url.length > MOST_TARGET) return 'too-large'
  if (!url.startsWith('/') || isTwice(request)) return 'not-as-asked'
  if (!isAllowedHost(headers.host, ownNames(extraHosts))) return 'other-host'
  const isNamed = headers.origin !== undefined
  const mustBeOwn = isNamed || purpose !== 'read'
  const names = { secure, extra: extraHosts }
  if (mustBeOwn && !isAllowedOrigin(headers.origin, headers.host, socket.remoteAddress, names))
    return 'other-origin'
  return isCrossSite(request, purpose) ? 'other-origin' : null
}
