import { randomUUID } from 'node:crypto'
import { performance } from 'node:perf_hooks'
import { io, type Socket } from 'socket.io-client'
import { type Hello, PROTOCOL } from '#lib/protocol/wire.ts'
import type { Role } from '#lib/service/roles.ts'
import { type CrewClient, createCrewClient } from '#lib/sync/crew-client.ts'
import { createMemoryOutbox } from '#lib/sync/outbox.ts'
import { createSocketTransport } from '#lib/sync/socket-transport.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'

export interface CrewConnection {
  readonly client: CrewClient
  readonly socket: Socket
  close(): void
}

/**
 * A crew screen without a screen: the same client as in the browser, over the same protocol.
 * @param token asked anew at each connection, since the one for scripts is new at each start; as the
 * role of what it proves, or walking through the demo where it is null
 * @param page of which house and station it is, as a page says it; else of those that open by default
 */
export const connectCrew = (
  url: string,
  role: Role,
  token: () => Promise<string | null> = () => scriptsToken(url),
  page: Pick<Hello, 'house' | 'station'> = {},
): CrewConnection => {
  const socket = io(url, {
    auth: (tell) => {
      void token().then((one) =>
        tell({ protocol: PROTOCOL, role, ...page, ...(one ? { token: one } : {}) }),
      )
    },
    // A browser says from which page it comes, and a script that it is none of another's.
    extraHeaders: { origin: new URL(url).origin },
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
