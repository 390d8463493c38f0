import { randomUUID } from 'node:crypto'
import { performance } from 'node:perf_hooks'
import { io, type Socket } from 'socket.io-client'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import type { Role } from '#lib/service/roles.ts'
import { type CrewClient, createCrewClient } from '#lib/sync/crew-client.ts'
import { createMemoryOutbox } from '#lib/sync/outbox.ts'
import { createSocketTransport } from '#lib/sync/socket-transport.ts'

export interface CrewConnection {
  readonly client: CrewClient
  readonly socket: Socket
  close(): void
}

/** A crew screen without a screen: the same client as in the browser, over the same protocol. */
export const connectCrew = (url: string, role: Role): CrewConnection => {
  const socket = io(url, {
    auth: { protocol: PROTOCOL, role, device: randomUUID() },
    transports: ['websocket'],
    forceNew: true,
    reconnectionDelay: 100,
    reconnectionDelayMax: 1_000,
    timeout: 5_000,
  })
  const client = createCrewClient({
    transport: createSocketTransport(socket),
    outbox: createMemoryOutbox(),
    newId: () => randomUUID(),
    monotonic: () => performance.now(),
    later: (act, ms) => {
      const timer = setTimeout(act, ms)
      return () => clearTimeout(timer)
    },
    folds: role !== 'pick-up',
  })
  return { client, socket, close: () => client.close() }
}

/** Settles when the view is as wanted. Rejects after `withinMs`. */
export const whenView = (
  client: CrewClient,
  isWanted: (view: ReturnType<CrewClient['view']>) => boolean,
  withinMs = 10_000,
): Promise<void> =>
  new Promise((resolve, reject) => {
    if (isWanted(client.view())) {
      resolve()
      return
    }
    const timer = setTimeout(() => {
      stop()
      reject(new Error('not in time'))
    }, withinMs)
    const stop = client.subscribe(() => {
      if (!isWanted(client.view())) return
      clearTimeout(timer)
      stop()
      resolve()
    })
  })
