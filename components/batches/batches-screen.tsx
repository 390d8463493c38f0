'use client'

import { useEffect, useMemo, useState } from 'react'
import styles from '#components/batches/batches.module.css'
import { BatchesBoard } from '#components/batches/batches-board.tsx'
import { BatchesWordsProvider, useBatchesWords } from '#components/batches/words.tsx'
import { Connection } from '#components/live/connection.tsx'
import { CrewProvider, useCrew } from '#components/live/crew.tsx'
import { plannedTransport } from '#components/live/planned-transport.ts'
import { WordsProvider } from '#components/live/words.tsx'
import { isRunning } from '#lib/service/state.ts'
import type { Transport } from '#lib/sync/transport.ts'

function Quiet({ why }: { readonly why: string }) {
  const words = useBatchesWords()
  return (
    <main className={styles.quiet}>
      <h1>{why}</h1>
      <a href="/">{words.toStart}</a>
    </main>
  )
}

function BatchesNow() {
  const words = useBatchesWords()
  const state = useCrew((view) => view.state)
  if (isRunning(state) && state.stage === 'planned' && state.plan)
    return <BatchesBoard state={state} on={state.plan.on} closesAt={state.plan.closesAt} />
  return (
    <>
      <Quiet why={isRunning(state) ? words.none : words.connecting} />
      <Connection />
    </>
  )
}

function Followed({ service }: { readonly service: string }) {
  const through = useMemo(
    () => (transport: Transport) => plannedTransport(service, transport),
    [service],
  )
  return (
    <CrewProvider role="lead" through={through}>
      <BatchesNow />
    </CrewProvider>
  )
}

/** The service in the address: which one is planned is chosen on the first page. */
function Asked() {
  const words = useBatchesWords()
  const [service, setService] = useState<string | null>(null)
  useEffect(() => setService(new URLSearchParams(location.search).get('service') ?? ''), [])
  if (service === null) return <Quiet why={words.connecting} />
  return service === '' ? <Quiet why={words.noService} /> : <Followed service={service} />
}

/** The batches of a planned service: started, cooked, cooled, finished and read before it opens. */
export function BatchesScreen() {
  return (
    <WordsProvider>
      <BatchesWordsProvider>
        <Asked />
      </BatchesWordsProvider>
    </WordsProvider>
  )
}
