/** Combinations of what a request says of itself: honest ones, and such with one thing or two that are not. */

export interface Value<Of> {
  readonly says: string
  readonly of: Of
  readonly hostile: boolean
}

export type Transport = 'read' | 'act' | 'socket'
export type Sender = 'here' | 'tablet'
export type Token =
  | 'its own'
  | 'none'
  | 'expired'
  | 'removed'
  | 'another house'
  | 'counter'
  | 'made up'

/** A header's lines, made of the server's port. */
type Lines = (port: number, host: string) => readonly string[]

export interface Knock {
  readonly host: Value<string>
  readonly origin: Value<Lines>
  readonly transport: Transport
  readonly sender: Sender
  readonly header: Value<Lines>
  readonly token: Value<Token>
  readonly hostile: boolean
}

const honest = <Of>(says: string, of: Of): Value<Of> => ({ says, of, hostile: false })
const hostile = <Of>(says: string, of: Of): Value<Of> => ({ says, of, hostile: true })

/** PORT stands for the server's own. */
export const HOSTS: readonly Value<string>[] = [
  honest('the loopback', '127.0.0.1:PORT'),
  honest('another loopback', '127.8.9.10:PORT'),
  honest('localhost', 'localhost:PORT'),
  honest('localhost in capitals', 'LOCALHOST:PORT'),
  honest('the name of tests', 'station.test:PORT'),
  honest('the name of tests without a port', 'station.test'),
  honest('IPv6', '[::1]:PORT'),
  hostile('a rebound name', 'rebound.example:PORT'),
  hostile('its own address as a stranger’s name', '127.0.0.1.evil.example:PORT'),
  hostile('its own name as a stranger’s', 'station.test.evil.example:PORT'),
  hostile('a neighbour', '192.0.2.77:PORT'),
  hostile('nothing', ''),
  hostile('somebody at its own', 'evil@127.0.0.1:PORT'),
  hostile('two names', '127.0.0.1:PORT, evil.example'),
  hostile('its own twice', '127.0.0.1:PORT\r\nHost: evil.example'),
  hostile('a path', '127.0.0.1:PORT/evil'),
  hostile('all', '0.0.0.0:PORT'),
]

const origin = (make: (host: string, port: number) => string): Lines => {
  return (port, host) => [`Origin: ${make(host, port)}`]
}

export const ORIGINS: readonly Value<Lines>[] = [
  honest('none', () => []),
  honest(
    'its own',
    origin((host) => `http://${host}`),
  ),
  honest(
    'its own in capitals',
    origin((host) => `HTTP://${host.toUpperCase()}`),
  ),
  hostile(
    'a stranger',
    origin(() => 'http://evil.example'),
  ),
  hostile(
    'a stranger on its port',
    origin((_, port) => `http://evil.example:${port}`),
  ),
  hostile(
    'its own under TLS',
    origin((host) => `https://${host}`),
  ),
  hostile(
    'another port',
    origin((host) => `http://${host.replace(/:\d+$/, '')}:1`),
  ),
  hostile(
    '“null”',
    origin(() => 'null'),
  ),
  hostile(
    'a file',
    origin(() => 'file://'),
  ),
  hostile(
    'an extension',
    origin(() => 'chrome-extension://abcdefghijklmnop'),
  ),
  hostile(
    'its own below a stranger',
    origin((host) => `http://${host}.evil.example`),
  ),
  hostile(
    'a stranger at its own',
    origin((host) => `http://evil.example@${host}`),
  ),
  hostile(
    'two',
    origin((host) => `http://${host}, http://evil.example`),
  ),
  hostile('its own twice', (_, host) => [`Origin: http://${host}`, `Origin: http://${host}`]),
  hostile(
    'nonsense',
    origin(() => 'nonsense'),
  ),
]

/** What no header of this kind may change: whatever else is wrong stays wrong. */
const claims = (says: string, lines: Lines): Value<Lines> => honest(says, lines)

export const HEADERS: readonly Value<Lines>[] = [
  honest('no more', () => []),
  honest('the same origin, by the browser', () => ['Sec-Fetch-Site: same-origin']),
  claims('forwarded for the loopback', () => ['X-Forwarded-For: 127.0.0.1']),
  claims('forwarded for this host', (port) => [
    `X-Forwarded-Host: 127.0.0.1:${port}`,
    'X-Forwarded-Proto: https',
  ]),
  claims('forwarded, by the standard', (port) => [
    `Forwarded: for=127.0.0.1;host="127.0.0.1:${port}";proto=http`,
  ]),
  claims('really from the loopback', () => ['X-Real-IP: 127.0.0.1', 'True-Client-IP: ::1']),
  claims('another address meant', () => ['X-Original-URL: /health', 'X-Rewrite-URL: /health']),
  claims('another method meant', () => ['X-HTTP-Method-Override: GET']),
  claims('from within the framework', () => ['X-Middleware-Subrequest: middleware']),
  hostile('another site, by the browser', () => [
    'Sec-Fetch-Site: cross-site',
    'Sec-Fetch-Mode: cors',
  ]),
  hostile('a site nearby, in a frame', () => [
    'Sec-Fetch-Site: same-site',
    'Sec-Fetch-Mode: navigate',
    'Sec-Fetch-Dest: iframe',
  ]),
]

/** All ask for what a lead's device may. */
export const TOKENS: readonly Value<Token>[] = [
  honest('a lead’s token', 'its own'),
  hostile('no token', 'none'),
  hostile('one that ran out', 'expired'),
  hostile('one that was removed', 'removed'),
  hostile('one of another house', 'another house'),
  hostile('one of a counter', 'counter'),
  hostile('one that was made up', 'made up'),
]

const TRANSPORTS: readonly Transport[] = ['read', 'act', 'socket']
const SENDERS: readonly Sender[] = ['here', 'tablet']

/** A page always says where it is from when it acts; a script elsewhere may not act without. */
const isUnnamed = (from: Value<Lines>, transport: Transport, sender: Sender): boolean =>
  from.says === 'none' && transport !== 'read' && sender === 'tablet'

const everyKnock = (): readonly (Knock & { readonly faults: number })[] =>
  HOSTS.flatMap((host) =>
    ORIGINS.flatMap((from) =>
      HEADERS.flatMap((header) =>
        TRANSPORTS.flatMap((transport) =>
          SENDERS.flatMap((sender) =>
            TOKENS.map((token) => {
              const wrong = [host.hostile, from.hostile, header.hostile, token.hostile]
              const faults = [...wrong, isUnnamed(from, transport, sender)].filter(Boolean).length
              const said = { host, origin: from, header, transport, sender, token }
              return { ...said, hostile: faults > 0, faults }
            }),
          ),
        ),
      ),
    ),
  )

/** So many of a list, evenly over all of it. */
const spread = <One>(list: readonly One[], count: number): readonly One[] =>
  Array.from(
    { length: count },
    (_, place) => list[Math.floor((place * list.length) / count)],
  ).flatMap((one) => (one === undefined ? [] : [one]))

/** As many honest ones as hostile ones; of these most have one fault only, which alone keeps them out. */
export const knocks = (ofEach: number): readonly Knock[] => {
  const all = everyKnock()
  const single = Math.floor(ofEach * 0.8)
  return [
    ...spread(
      all.filter(({ faults }) => faults === 1),
      single,
    ),
    ...spread(
      all.filter(({ faults }) => faults > 1),
      ofEach - single,
    ),
    ...spread(
      all.filter(({ faults }) => faults === 0),
      ofEach,
    ),
  ]
}

export const sayKnock = ({ host, origin: from, header, transport, sender, token }: Knock): string =>
  `${transport} by ${sender}: host ${host.says}, origin ${from.says}, ${header.says}, ${token.says}`
