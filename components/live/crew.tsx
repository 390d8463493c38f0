'use client'

/** The live service in a screen: one connection, one store, hooks over it. */
import { createContext, type ReactNode, useContext, useEffect, useState } from 'react'
import { useStore } from 'zustand'
import type { Crew, Through } from '#components/live/connect.ts'
import { fetchAgain, useFetched } from '#components/live/use-fetched.ts'
import { useWords } from '#components/live/words.tsx'
import type { Role } from '#lib/service/roles.ts'
import type { CrewClient } from '#lib/sync/crew-client.ts'
import type { CrewView } from '#lib/sync/crew-view.ts'

/** What folds a service comes beside the page, which says meanwhile that it connects. */
const loadConnect = async () => (await import('#components/live/connect.ts')).connect

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
    let connected: Crew | null = null
    const stop = fetchAgain(loadConnect, (connect) => {
      connected = connect(role, through)
      setCrew(connected)
    })
    return () => {
      stop()
      connected?.client.close()
    }
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
