/** What a screen of the crew says of its own right to be there; fetched after the first load. */
import { useEffect } from 'react'
import { type StoreApi, useStore } from 'zustand'
import { JoinAgain } from '#components/access/join-again.tsx'
import styles from '#components/access/standing.module.css'
import { AccessWordsProvider, useAccessWords } from '#components/access/words.tsx'
import { isRunning } from '#lib/service/state.ts'
import type { CrewView } from '#lib/sync/crew-view.ts'

/** Over every screen of the demo; the screen below it is so much lower. */
export function DemoLine() {
  const words = useAccessWords()
  useEffect(() => {
    const { dataset } = document.documentElement
    dataset.demo = ''
    return () => {
      delete dataset.demo
    }
  }, [])
  return (
    <p className={styles.demo} data-aside="">
      {words.demoLine}
    </p>
  )
}

function StandingNow({ store }: { readonly store: StoreApi<CrewView> }) {
  const waits = useStore(store, (view) => view.pending.length)
  const refused = useStore(store, (view) => view.refused)
  const isDemo = useStore(
    store,
    ({ welcome, state, picture }) =>
      welcome !== null &&
      (welcome.device === null ||
        welcome.house === 'demo' ||
        (isRunning(state) ? state.kind === 'demo' : picture?.demo === true)),
  )
  if (refused === null || refused === 'busy' || refused === 'not-the-protocol')
    return isDemo ? <DemoLine /> : null
  return <JoinAgain because={refused} waits={waits} />
}

export function Standing({ store }: { readonly store: StoreApi<CrewView> }) {
  return (
    <AccessWordsProvider>
      <StandingNow store={store} />
    </AccessWordsProvider>
  )
}
