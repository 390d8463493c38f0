/** The connection of a screen: its socket, the client over it and the store that it is drawn of. */
import { nanoid } from 'nanoid'
import { io } from 'socket.io-client'
import { createStore, type StoreApi } from 'zustand'
import { openBrowserOutbox } from '#components/live/browser-outbox.ts'
import { reloadOnceFor } from '#components/live/reload-once.ts'
import { type Hello, PROTOCOL } from '#lib/protocol/wire.ts'
import type { Role } from '#lib/service/roles.ts'
import { type CrewClient, createCrewClient } from '#lib/sync/crew-client.ts'
import type { CrewView } from '#lib/sync/crew-view.ts'
import { createSocketTransport } from '#lib/sync/socket-transport.ts'
import type { Transport } from '#lib/sync/transport.ts'

export interface Crew {
  readonly store: StoreApi<CrewView>
  readonly client: CrewClient
}

export type Through = (transport: Transport) => Transport

export const connect = (role: Role, through: Through | undefined): Crew => {
  const page = new URLSearchParams(location.search)
  const station = page.get('station')
  const hello: Hello = {
    protocol: PROTOCOL,
    role,
    ...(page.has('demo') && { house: 'demo' }),
    ...(station && { station }),
  }
  const socket = io({
    auth: { ...hello },
    transports: ['websocket'],
    reconnectionDelay: 300,
    reconnectionDelayMax: 3_000,
    timeout: 5_000,
  })
  const transport = createSocketTransport(socket)
  const client = createCrewClient({
    transport: through ? through(transport) : transport,
    // What waits for one house or station is never sent to another.
    outbox: openBrowserOutbox(role + location.search),
    newId: () => nanoid(),
    monotonic: () => performance.now(),
    later: (act, ms) => {
      const timer = setTimeout(act, ms)
      return () => clearTimeout(timer)
    },
    folds: role !== 'pick-up',
  })
  const store = createStore<CrewView>(() => client.view())
  client.subscribe(() => {
    const view = client.view()
    store.setState(view, true)
    if (view.welcome) reloadOnceFor(view.welcome.build)
  })
  return { store, client }
}
