'use client'

import { type ReactNode, useEffect, useMemo, useState } from 'react'
import { useAccess } from '#components/access/use-access.ts'
import { Connection } from '#components/live/connection.tsx'
import { CrewProvider, useCrew } from '#components/live/crew.tsx'
import { plannedTransport } from '#components/live/planned-transport.ts'
import { WordsProvider } from '#components/live/words.tsx'
import styles from '#components/prep/prep.module.css'
import { PrepBoard } from '#components/prep/prep-board.tsx'
import { PrepWordsProvider, usePrepWords } from '#components/prep/words.tsx'
import type { AccessNow } from '#lib/access/http.ts'
import { nextPlanned, type ServicesHere } from '#lib/rooms/day/views/services-here.ts'
import type { Role } from '#lib/service/roles.ts'
import { isRunning, type RunningState } from '#lib/service/state.ts'
import type { Transport } from '#lib/sync/transport.ts'

const LOOK_EVERY_MS = 10_000

/** A tablet of the crew is what it was proved for; one that isn't asks as assembly, and takes a code. */
const roleOf = (now: AccessNow): Role => {
  const role = now.you?.role
  if (role === undefined || role === 'pick-up') return 'assembly'
  return role === 'in-charge' ? 'lead' : role
}

function Quiet({
  title,
  why,
  children,
}: {
  readonly title: string
  readonly why: string
  readonly children?: ReactNode
}) {
  const words = usePrepWords()
  return (
    <main className={styles.quiet}>
      <h1>{title}</h1>
      <p>{why}</p>
      <a href="/">{words.toStart}</a>
      {children}
    </main>
  )
}

/** A planned service is on no other page of the lead’s; an open one is on Pans. */
const recordAt = (service: string, { stage }: RunningState): string => {
  const search = new URLSearchParams(location.search)
  search.set('service', service)
  return stage === 'planned' ? `/batches?${search}` : '/pans'
}

function PrepNow({ service, role }: { readonly service: string; readonly role: Role }) {
  const words = usePrepWords()
  const state = useCrew((view) => view.state)
  const isThere = isRunning(state)
  if (isThere && state.prep && state.plan)
    return (
      <PrepBoard
        state={state}
        plan={state.plan}
        {...{ service }}
        record={role === 'lead' ? recordAt(service, state) : null}
      />
    )
  return (
    <Quiet
      title={isThere ? words.notTaken : words.title}
      why={isThere ? words.notTakenWhy : words.connecting}
    >
      <Connection />
    </Quiet>
  )
}

function Followed({ service, role }: { readonly service: string; readonly role: Role }) {
  const through = useMemo(
    () => (transport: Transport) => plannedTransport(service, transport),
    [service],
  )
  return (
    <CrewProvider role={role} through={through}>
      <PrepNow service={service} role={role} />
    </CrewProvider>
  )
}

const isAnswer = (value: unknown): value is ServicesHere =>
  typeof value === 'object' && value !== null && 'planned' in value

/** The services that are planned: of this device's station, or of the one in the address. */
const usePlanned = (): ServicesHere | null => {
  const [answer, setAnswer] = useState<ServicesHere | null>(null)
  useEffect(() => {
    let isShown = true
    const look = async () => {
      const response = await fetch(`/services${location.search}`, { cache: 'no-store' })
      const value: unknown = await response.json()
      if (isShown && isAnswer(value)) setAnswer(value)
    }
    const ask = () => void look().catch(() => undefined)
    ask()
    const timer = setInterval(ask, LOOK_EVERY_MS)
    return () => {
      isShown = false
      clearInterval(timer)
    }
  }, [])
  return answer
}

/** The service in the address, or the next that is planned. */
function Connected() {
  const words = usePrepWords()
  const { seen } = useAccess<AccessNow>('/access', LOOK_EVERY_MS)
  const planned = usePlanned()
  const [asked, setAsked] = useState<string | null>(null)
  useEffect(() => setAsked(new URLSearchParams(location.search).get('service') ?? ''), [])
  const service = asked === '' ? planned && nextPlanned(planned)?.service : asked
  if (seen === null || asked === null) return <Quiet title={words.title} why={words.connecting} />
  if (service) return <Followed service={service} role={roleOf(seen)} />
  if (seen.you === null) return <Quiet title={words.notIn} why={words.notInWhy} />
  return planned === null ? (
    <Quiet title={words.title} why={words.connecting} />
  ) : (
    <Quiet title={words.none} why={planned.planned.length > 0 ? words.overWhy : words.noneWhy} />
  )
}

/** The crew's tasks of a planned service: ticked, passed on, and told where they are late. */
export function PrepScreen() {
  return (
    <WordsProvider>
      <PrepWordsProvider>
        <Connected />
      </PrepWordsProvider>
    </WordsProvider>
  )
}
