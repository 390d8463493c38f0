/** The token that a request or a handshake brings. */
import type { IncomingMessage } from 'node:http'

export type Caller = Pick<IncomingMessage, 'headers'> & {
  readonly socket: { readonly remoteAddress?: string | undefined }
}

/** Named by the house, since cookies of one machine are shared by all its ports. */
export const cookieName = (house: string): string => `level-scoop-${house}`

const MOST_COOKIE = 4_096

/** The token of this house, said as a cookie, or by a script as a bearer; null where none is. */
export const tokenOf = ({ headers }: Caller, house: string): string | null => {
  const bearer = /^Bearer ([\w.-]{1,200})$/.exec(headers.authorization ?? '')?.[1]
  if (bearer !== undefined) return bearer
  const name = cookieName(house)
  for (const one of (headers.cookie ?? '').slice(0, MOST_COOKIE).split(';')) {
    const at = one.indexOf('=')
    if (at !== -1 && one.slice(0, at).trim() === name) return one.slice(at + 1).trim()
  }
  return null
}

const MONTH_S = 30 * 24 * 3_600

/** What keeps a token where no script of a page can read it; none: takes it away. */
export const setCookie = (house: string, token: string | null, isTls: boolean): string =>
  [
    `${cookieName(house)}=${token ?? ''}`,
    'HttpOnly',
    'SameSite=Strict',
    'Path=/',
    `Max-Age=${token === null ? 0 : MONTH_S}`,
    ...(isTls ? ['Secure'] : []),
  ].join('; ')
