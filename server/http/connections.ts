/** How many connections are held at once: no address takes the place of the others. */
import type { Socket } from 'node:net'
import { isLoopback } from '#server/http/allowed.ts'
import { addressOf } from '#server/http/peer.ts'

export interface ConnectionLimits {
  readonly ofOne: number
  readonly ofLoopback: number
  readonly inAll: number
}

type Held = Pick<Socket, 'remoteAddress' | 'remotePort' | 'destroy' | 'once'>

export interface Connections {
  /** Counts a new connection, or destroys it; where all are taken, one of who holds most goes. */
  admit(socket: Held): boolean
  /** A device was proved on it: it isn't closed to make room. */
  keep(socket: Pick<Socket, 'remoteAddress' | 'remotePort'>): void
  count(): number
  refused(): number
}

/** One name for a connection, also for what TLS lays over it. */
const nameOf = ({ remoteAddress, remotePort }: Pick<Socket, 'remoteAddress' | 'remotePort'>) =>
  `${addressOf(remoteAddress)} ${remotePort}`

export const createConnections = (limits: ConnectionLimits): Connections => {
  const byAddress = new Map<string, Map<string, Held>>()
  const kept = new Set<string>()
  let count = 0
  let refused = 0

  const release = (address: string, name: string, socket: Held): void => {
    const held = byAddress.get(address)
    if (held?.get(name) !== socket) return
    held.delete(name)
    kept.delete(name)
    count -= 1
    if (held.size === 0) byAddress.delete(address)
  }

  /** The newest unproved connection of who holds most of them, where that is more than `own` + 1. */
  const toMakeRoom = (own: number): [string, string, Held] | null => {
    let most = own + 1
    let found: [string, string, Held] | null = null
    for (const [address, held] of byAddress) {
      const open = [...held].filter(([name]) => !kept.has(name))
      const last = open.at(-1)
      if (open.length <= most || last === undefined) continue
      most = open.length
      found = [address, ...last]
    }
    return found
  }

  return {
    admit: (socket) => {
      const address = addressOf(socket.remoteAddress)
      const own = byAddress.get(address)?.size ?? 0
      const most = isLoopback(address) ? limits.ofLoopback : limits.ofOne
      const leaving = own < most && count >= limits.inAll ? toMakeRoom(own) : null
      if (own >= most || (count >= limits.inAll && leaving === null)) {
        refused += 1
        socket.destroy()
        return false
      }
      if (leaving !== null) {
        refused += 1
        release(...leaving)
        leaving[2].destroy()
      }
      const name = nameOf(socket)
      const held = byAddress.get(address) ?? new Map<string, Held>()
      byAddress.set(address, held.set(name, socket))
      count += 1
      socket.once('close', () => release(address, name, socket))
      return true
    },
    keep: (socket) => {
      const name = nameOf(socket)
      if (byAddress.get(addressOf(socket.remoteAddress))?.has(name)) kept.add(name)
    },
    count: () => count,
    refused: () => refused,
  }
}
