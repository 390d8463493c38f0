'use client'

import styles from '#components/counter/counter.module.css'
import { Awake } from '#components/device/awake-notice.tsx'
import { useDevice } from '#components/device/use-device.ts'
import { Connection } from '#components/live/connection.tsx'
import { CrewProvider, useCrew } from '#components/live/crew.tsx'
import { useServiceStage } from '#components/live/service-stage.ts'
import { useFetched } from '#components/live/use-fetched.ts'
import { isRunning } from '#lib/service/state.ts'
import { counterFrame as counter } from '#lib/words/counter-frame-en.ts'
import { live } from '#lib/words/live-en.ts'

const loadDesk = async () => (await import('#components/counter/order-desk.tsx')).OrderDesk

/** Allergies and diet, the order on the line, the read-back, and open tickets. */
export function CounterScreen() {
  return (
    <CrewProvider role="counter">
      <Counter />
    </CrewProvider>
  )
}

function Counter() {
  useDevice()
  const state = useCrew((view) => view.state)
  const welcome = useCrew((view) => view.welcome)
  const stage = useServiceStage()
  const OrderDesk = useFetched(loadDesk)
  return (
    <main className={styles.screen}>
      <header className={styles.strip}>
        <h1 className={styles.title}>
          {counter.title}
          {welcome?.station && <span className={styles.station}>{welcome.station.name}</span>}
        </h1>
        {state.station?.invented && <p className={styles.invented}>{live.invented}</p>}
        <Awake />
        <Connection />
      </header>
      {stage === 'open' && isRunning(state) && OrderDesk ? (
        <OrderDesk key={state.service} state={state} />
      ) : (
        <NoOrders stage={stage === 'open' ? 'connecting' : stage} />
      )}
    </main>
  )
}

function NoOrders({ stage }: { readonly stage: 'connecting' | 'no-service' | 'closed' }) {
  if (stage === 'connecting') return <p className={styles.noOrders}>{live.connecting}</p>
  const [what, todo] =
    stage === 'closed'
      ? [counter.closed, counter.closedWhat]
      : [counter.noService, counter.noServiceWhat]
  return (
    <section className={styles.noOrders}>
      <h2>{what}</h2>
      <p>{todo}</p>
      <a className={styles.link} href="/">
        {live.toFirstPage}
      </a>
    </section>
  )
}
