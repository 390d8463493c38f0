/** Which Host and Origin this server answers: what keeps a page elsewhere from steering the station. */

export interface OwnNames {
  /** Addresses of this machine's interfaces now, without IPv6 zones. */
  readonly interfaces: readonly string[]
  /** As the operating system says it. */
  readonly hostname: string
  /** Lower-case names, or names with a port, from LEVEL_SCOOP_HOSTS. */
  readonly extra: readonly string[]
}

/** Reserved for tests by RFC 6761, so no network resolves it to a stranger. */
const TEST_NAME = 'station.test'

const bare = (hostname: string): string => {
  const lower = hostname.toLowerCase()
  const unbracketed = lower.startsWith('[') ? lower.slice(1, -1) : lower
  return unbracketed.endsWith('.') ? unbracketed.slice(0, -1) : unbracketed
}

/** A Host header, taken apart; null where it isn't one. */
const parseHost = (header: string): { name: string; host: string } | null => {
  if (!/^(\[[0-9a-f:.]+\]|[a-z0-9_.-]+)(:\d{1,5})?$/i.test(header)) return null
  const name = header.replace(/:\d{1,5}$/, '')
  return { name: bare(name), host: header.toLowerCase() }
}

/** An address of the loopback, also as IPv4 in IPv6. */
export const isLoopback = (address: string | undefined): boolean =>
  address !== undefined &&
  (address === '::1' || /^(::ffff:)?127\.\d{1,3}\.\d{1,3}\.\d{1,3}$/i.test(address))

/**
 * Whether this machine is meant by a Host header. The port isn't compared, since a forwarded port
 * changes it; a name that was bound to this machine by a stranger fails either way.
 */
export const isAllowedHost = (
  hostHeader: string | undefined,
  { interfaces, hostname, extra }: OwnNames,
): boolean => {
  const asked = hostHeader === undefined ? null : parseHost(hostHeader)
  if (asked === null) return false
  const own = hostname.toLowerCase()
  return (
    asked.name === 'localhost' ||
    isLoopback(asked.name) ||
    asked.name === TEST_NAME ||
    (own !== '' && (asked.name === own || asked.name === `${own}.local`)) ||
    interfaces.some((address) => bare(address) === asked.name) ||
    extra.some((name) => name === asked.name || name === asked.host)
  )
}

/**
 * Whether a page that was loaded from `origin` may act here: only one of this very host and port.
 * Scripts send no Origin; they may come from this machine only.
 * @param secure TLS ends in this server, so that a page of it has https, and else http; a name of
 * LEVEL_SCOOP_HOSTS may be https either way, since TLS can end before this machine
 */
export const isAllowedOrigin = (
  origin: string | undefined,
  hostHeader: string | undefined,
  remoteAddress: string | undefined,
  { secure, extra }: { readonly secure: boolean; readonly extra: readonly string[] },
): boolean => {
  if (origin === undefined) return isLoopback(remoteAddress)
  if (hostHeader === undefined || !URL.canParse(origin)) return false
  const { protocol, host, pathname, username, password, search, hash } = new URL(origin)
  // An origin is a scheme, a host and a port, and nothing beside.
  if (`${pathname}${username}${password}${search}${hash}` !== '/') return false
  const asked = parseHost(hostHeader)
  const isExtra = extra.some((name) => name === asked?.name || name === asked?.host)
  const schemes = secure ? ['https:'] : isExtra ? ['http:', 'https:'] : ['http:']
  const isSame = URL.canParse(`${protocol}//${hostHeader}`)
    ? new URL(`${protocol}//${hostHeader}`).host === host
    : false
  return schemes.includes(protocol) && host !== '' && isSame
}
