'use client'

import { useEffect, useMemo, useState } from 'react'
import { Connection } from '#components/live/connection.tsx'
import { CrewProvider, useCrew } from '#components/live/crew.tsx'
import { plannedTransport } from '#components/live/planned-transport.ts'
import { WordsProvider } from '#components/live/words.tsx'
import { DayPage } from '#components/plan/day-page.tsx'
import styles from '#components/plan/plan.module.css'
import { PlanBoard } from '#components/plan/plan-board.tsx'
import { PlanWordsProvider, usePlanWords } from '#components/plan/words.tsx'
import { isRunning } from '#lib/service/state.ts'
import type { Transport } from '#lib/sync/transport.ts'

/** A service that is planned, drawn over its line. */
function Planned({ service }: { readonly service: string }) {
  const words = usePlanWords()
  const state = useCrew((view) => view.state)
  if (isRunning(state) && state.service === service && state.plan)
    return <PlanBoard state={state} plan={state.plan} />
  return (
    <main className={styles.quiet}>
      <h1>{words.title}</h1>
      <p>{words.connecting}</p>
      <Connection />
    </main>
  )
}

/** The service in the address; else a day is chosen first. */
function PlanNow() {
  const words = usePlanWords()
  const [service, setService] = useState<string | null>(null)
  useEffect(() => setService(new URLSearchParams(location.search).get('service') ?? ''), [])
  const through = useMemo(
    () => (service ? (transport: Transport) => plannedTransport(service, transport) : undefined),
    [service],
  )
  if (service === null)
    return (
      <main className={styles.quiet}>
        <h1>{words.title}</h1>
      </main>
    )
  return service === '' || through === undefined ? (
    <CrewProvider role="lead">
      <DayPage />
    </CrewProvider>
  ) : (
    <CrewProvider role="lead" through={through}>
      <Planned service={service} />
    </CrewProvider>
  )
}

/** Where a day is planned: the line with the loads that stand up from it, and the tasks below. */
export function PlanScreen() {
  return (
    <WordsProvider>
      <PlanWordsProvider>
        <PlanNow />
      </PlanWordsProvider>
    </WordsProvider>
  )
}
