/** The edge of one server: its gate, and what is counted at it. */
import type { IncomingMessage } from 'node:http'
import { type Bodies, type BodyLimits, createBodies } from '#server/http/body.ts'
import {
  type ConnectionLimits,
  type Connections,
  createConnections,
} from '#server/http/connections.ts'
import { type GateRefusal, type Purpose, refusalAtGate, type Site } from '#server/http/gate.ts'
import { MOST_BODIES, MOST_CONNECTIONS, MOST_REQUESTS, MOST_SOCKETS } from '#server/http/limits.ts'
import { createRates, type RateLimits } from '#server/http/rates.ts'

export interface Refused {
  readonly because: GateRefusal | 'too-often'
  /** Milliseconds until it may be asked again; 0 where that is of no use. */
  readonly again: number
}

export interface Edge {
  readonly site: Site
  readonly connections: Connections
  readonly sockets: Connections
  readonly bodies: Bodies
  /** Counts a request and says why it isn't answered; null where it may be. */
  refusal(request: IncomingMessage, purpose: Purpose): Promise<Refused | null>
}

export interface EdgeLimits {
  readonly connections: ConnectionLimits
  readonly sockets: ConnectionLimits
  readonly bodies: BodyLimits
  readonly requests: RateLimits
}

export const createEdge = (
  site: Site,
  limits: EdgeLimits = {
    connections: MOST_CONNECTIONS,
    sockets: { ...MOST_SOCKETS, inAll: MOST_CONNECTIONS.inAll },
    bodies: MOST_BODIES,
    requests: MOST_REQUESTS,
  },
): Edge => {
  const rates = createRates(limits.requests)
  return {
    site,
    connections: createConnections(limits.connections),
    sockets: createConnections(limits.sockets),
    bodies: createBodies(limits.bodies),
    refusal: async (request, purpose) => {
      const again = await rates.take(request.socket.remoteAddress)
      if (again > 0) return { because: 'too-often', again }
      const because = refusalAtGate(request, purpose, site)
      return because === null ? null : { because, again: 0 }
    },
  }
}
