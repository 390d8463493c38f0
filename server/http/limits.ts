/** How much the network may ask of this server. Counts are of one address unless they say otherwise. */

/** Connections; a proxy on this machine makes every tablet loopback, so that one may hold more. */
export const MOST_CONNECTIONS = { ofOne: 64, ofLoopback: 500, inAll: 600 } as const

/** WebSockets. */
export const MOST_SOCKETS = { ofOne: 48, ofLoopback: 500 } as const

/**
 * Requests and handshakes in `windowS` seconds. A screen's first load is about 40. While all
 * together ask more than `inAll`, who asked for no more than `fewOf` is still answered.
 */
export const MOST_REQUESTS = {
  windowS: 10,
  ofOne: 600,
  ofLoopback: 20_000,
  inAll: 24_000,
  fewOf: 120,
} as const

/** Bodies that are being read at once, and the bytes that their routes declared, in all. */
export const MOST_BODIES = {
  ofOne: 8,
  ofLoopback: 64,
  inAll: 96,
  bytesInAll: 64 * 1_048_576,
} as const

/** Characters of a request's target. */
export const MOST_TARGET = 2_048

/** Milliseconds until a slow sender is cut off. */
export const WITHIN_MS = {
  /** From a connection's start, or the request before, to the end of the headers. */
  headers: 10_000,
  /** A body, where its route says nothing else; never longer than `request`. */
  body: 10_000,
  /** Headers and body of the slowest route. */
  request: 60_000,
  /** Nothing is sent or taken, outside of WebSockets. */
  idle: 30_000,
  keepAlive: 5_000,
  tls: 10_000,
  /** A WebSocket that doesn't say hello. */
  hello: 10_000,
} as const

/** Bytes of a request's line and headers, and how many headers. */
export const MOST_HEADERS = { bytes: 16_384, count: 100 } as const
