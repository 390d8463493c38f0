'use client'

import { lazy, Suspense, useEffect } from 'react'
import { Connection } from '#components/live/connection.tsx'
import { CrewProvider, useCrew } from '#components/live/crew.tsx'
import { useServiceStage } from '#components/live/service-stage.ts'
import { WordsProvider } from '#components/live/words.tsx'
import { PansFrameWordsProvider, usePansFrameWords } from '#components/pans/frame-words.tsx'
import styles from '#components/pans/pans.module.css'
import { isRunning } from '#lib/service/state.ts'

const loadBoard = () => import('#components/pans/pans-board.tsx')

/** Rarely wanted, once all is over. */
const UnpaidOnceClosed = lazy(async () => ({
  default: (await import('#components/pans/unpaid-for-lead.tsx')).UnpaidOnceClosed,
}))

/** Fetched while the service is: a board without one has nothing to draw. */
const PansBoard = lazy(async () => ({ default: (await loadBoard()).PansBoard }))

function Connecting() {
  const words = usePansFrameWords()
  return (
    <main className={styles.quiet}>
      <h1>{words.title}</h1>
      <Connection />
    </main>
  )
}

function PansNow() {
  const words = usePansFrameWords()
  const state = useCrew((view) => view.state)
  const stage = useServiceStage()
  useEffect(() => {
    loadBoard().catch(() => undefined)
  }, [])
  if (stage === 'open' && isRunning(state))
    return (
      <Suspense fallback={<Connecting />}>
        <PansBoard state={state} />
      </Suspense>
    )
  if (stage === 'connecting') return <Connecting />
  const closed = isRunning(state) && state.closedAt !== null
  return (
    <main className={styles.quiet}>
      <Connection />
      <h1>
        {closed
          ? words.closedAt(words.sayClock(state.closedAt, state.station.timeZone))
          : words.noService}
      </h1>
      <p>{closed ? words.closedWhy(state.made, state.handedOver) : words.noServiceWhy}</p>
      {closed && (
        <Suspense fallback={null}>
          <UnpaidOnceClosed state={state} />
        </Suspense>
      )}
      <a className={styles.toStart} href={`/${location.search}`}>
        {words.toStart}
      </a>
    </main>
  )
}

/** The lead's screen: the line with what is in it, what there is to do, what can still be sold. */
export function PansScreen() {
  return (
    <WordsProvider>
      <PansFrameWordsProvider>
        <CrewProvider role="lead">
          <PansNow />
        </CrewProvider>
      </PansFrameWordsProvider>
    </WordsProvider>
  )
}
