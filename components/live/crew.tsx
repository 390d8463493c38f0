'use client'

/** The live service in a screen: one connection, one store, hooks over it. */
import { nanoid } from 'nanoid'
import { createContext, type ReactNode, useContext, useEffect, useState } from 'react'
import { io } from 'socket.io-client'
import { createStore, type StoreApi, useStore } from 'zustand'
import { openBrowserOutbox } from '#components/live/browser-outbox.ts'
import { reloadOnceFor } from '#components/live/reload-once.ts'
import { useFetched } from '#components/live/use-fetched.ts'
import { useWords } from '#components/live/words.tsx'
import { type Hello, PROTOCOL } from '#lib/protocol/wire.ts'
import type { Role } from '#lib/service/roles.ts'
import { type CrewClient, createCrewClient } from '#lib/sync/crew-client.ts'
import type { CrewView } from '#lib/sync/crew-view.ts'
import { createSocketTransport } from '#lib/sync/socket-transport.ts'
import type { Transport } from '#lib/sync/transport.ts'

interface Crew {
  readonly store: StoreApi<CrewView>
  readonly client: CrewClient
}

type Through = (transport: Transport) => Transport

const connect = (role: Role, through: Through | undefined): Crew => {
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

/** Whether this screen may be here at all: no screen needs it for its first load. */
const loadStanding = async () => (await import('#components/access/standing.tsx')).Standing

const CrewContext = createContext<Crew | null>(null)

/**
 * Connects in a role for as long as the screen is shown. Before it is mounted only `fallback` is
 * drawn: a page of its own, unless this is a part of one.
 */
export function CrewProvider({
  role,
  through,
  children,
  fallback,
}: {
  readonly role: Role
  /** What stands between the connection and this screen, as where it follows a planned service. */
  readonly through?: Through
  readonly children: ReactNode
  readonly fallback?: ReactNode
}) {
  const live = useWords()
  const [crew, setCrew] = useState<Crew | null>(null)
  const Standing = useFetched(loadStanding)
  useEffect(() => {
    const connected = connect(role, through)
    setCrew(connected)
    return () => connected.client.close()
  }, [role, through])
  if (crew)
    return (
      <CrewContext value={crew}>
        {children}
        {Standing && <Standing store={crew.store} />}
      </CrewContext>
    )
  if (fallback) return fallback
  return (
    <main>
      <p>{live.connecting}</p>
    </main>
  )
}

const useCrewContext = (): Crew => {
  const crew = useContext(CrewContext)
  if (!crew) throw new Error('a crew hook outside of CrewProvider')
  return crew
}

/** A part of the live view; the screen draws again when that part changes. */
export const useCrew = <Part,>(select: (view: CrewView) => Part): Part =>
  useStore(useCrewContext().store, select)

/** Sends a command; settles with the server's answer, however long that takes. */
export const useSend = (): CrewClient['send'] => useCrewContext().client.send
