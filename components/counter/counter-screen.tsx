'use client'

import styles from '#components/counter/counter.module.css'
import {
  CounterFrameWordsProvider,
  useCounterFrameWords,
} from '#components/counter/frame-words.tsx'
import { Awake } from '#components/device/awake-notice.tsx'
import { useDevice } from '#components/device/use-device.ts'
import { Connection } from '#components/live/connection.tsx'
import { CrewProvider, useCrew } from '#components/live/crew.tsx'
import { useServiceStage } from '#components/live/service-stage.ts'
import { useFetched } from '#components/live/use-fetched.ts'
import { useWords, WordsProvider } from '#components/live/words.tsx'
import { isRunning } from '#lib/service/state.ts'

const loadDesk = async () => (await import('#components/counter/order-desk.tsx')).OrderDesk

/** Allergies and diet, the order on the line, the read-back, and open tickets. */
export function CounterScreen() {
  return (
    <WordsProvider>
      <CounterFrameWordsProvider>
        <CrewProvider role="counter">
          <Counter />
        </CrewProvider>
      </CounterFrameWordsProvider>
    </WordsProvider>
  )
}

function Counter() {
  const words = useCounterFrameWords()
  useDevice()
  const state = useCrew((view) => view.state)
  const stage = useServiceStage()
  const OrderDesk = useFetched(loadDesk)
  const top = (
    <header className={styles.strip}>
      <h1 className={styles.title}>{words.title}</h1>
      <Awake />
      <Connection />
    </header>
  )
  return (
    <main className={styles.screen}>
      {stage === 'open' && isRunning(state) && OrderDesk ? (
        <OrderDesk key={state.service} state={state} top={top} />
      ) : (
        <>
          {top}
          <NoOrders stage={stage === 'open' ? 'connecting' : stage} />
        </>
      )}
    </main>
  )
}

function NoOrders({ stage }: { readonly stage: 'connecting' | 'no-service' | 'closed' }) {
  const words = useCounterFrameWords()
  const live = useWords()
  if (stage === 'connecting') return <p className={styles.noOrders}>{live.connecting}</p>
  const [what, todo] =
    stage === 'closed' ? [words.closed, words.closedWhat] : [words.noService, words.noServiceWhat]
  return (
    <section className={styles.noOrders}>
      <h2>{what}</h2>
      <p>{todo}</p>
      <a className={styles.link} href={`/${location.search}`}>
        {live.toFirstPage}
      </a>
    </section>
  )
}
