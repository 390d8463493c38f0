/** What a screen of the crew says of its own right to be there; fetched after the first load. */
import { useEffect, useState } from 'react'
import { type StoreApi, useStore } from 'zustand'
import { isRefused, look } from '#components/access/ask.ts'
import { JoinAgain } from '#components/access/join-again.tsx'
import styles from '#components/access/standing.module.css'
import { AccessWordsProvider, useAccessWords } from '#components/access/words.tsx'
import { plannedBeside, type ServicesHere } from '#lib/rooms/day/views/services-here.ts'
import { isRunning } from '#lib/service/state.ts'
import type { CrewView } from '#lib/sync/crew-view.ts'

/** Of a page that stays, plans change seldom. */
const LOOK_EVERY_MS = 60_000

/** Over a screen of the line where more is planned: which service it follows. The screen is so much lower. */
function FollowLine({ store }: { readonly store: StoreApi<CrewView> }) {
  const words = useAccessWords()
  const service = useStore(store, (view) => view.service)
  const open = useStore(store, ({ state }) =>
    isRunning(state) && state.stage === 'open'
      ? words.sayDay(state.openedAt, state.station.timeZone)
      : null,
  )
  const [seen, setSeen] = useState<ServicesHere | null>(null)
  useEffect(() => {
    let isShown = true
    const ask = async () => {
      const answer = await look<ServicesHere>(`/services${location.search}`)
      if (isShown && !isRefused(answer)) setSeen(answer)
    }
    void ask()
    const timer = setInterval(() => void ask(), LOOK_EVERY_MS)
    return () => {
      isShown = false
      clearInterval(timer)
    }
  }, [])
  const beside = seen ? plannedBeside(seen, service) : []
  const isSaid = open !== null && beside.length > 0
  useEffect(() => {
    if (!isSaid) return
    const { dataset } = document.documentElement
    dataset.follows = ''
    return () => {
      delete dataset.follows
    }
  }, [isSaid])
  return isSaid ? (
    <p className={styles.demo} data-aside="">
      {words.sayFollows(
        open,
        beside.map(({ on }) => on),
      )}
    </p>
  ) : null
}

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
  const isIn = useStore(store, ({ welcome }) => welcome !== null && welcome.device !== null)
  if (refused === null || refused === 'busy' || refused === 'not-the-protocol')
    return isDemo ? <DemoLine /> : isIn ? <FollowLine store={store} /> : null
  return <JoinAgain because={refused} waits={waits} />
}

export function Standing({ store }: { readonly store: StoreApi<CrewView> }) {
  return (
    <AccessWordsProvider>
      <StandingNow store={store} />
    </AccessWordsProvider>
  )
}
