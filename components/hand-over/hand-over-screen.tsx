'use client'

import { useDevice } from '#components/device/use-device.ts'
import styles from '#components/hand-over/hand-over.module.css'
import { CalmUnlessOpen } from '#components/live/calm-unless-open.tsx'
import { CrewProvider } from '#components/live/crew.tsx'
import { useFetched } from '#components/live/use-fetched.ts'
import { useWords, WordsProvider } from '#components/live/words.tsx'

const loadWork = async () => (await import('#components/hand-over/hand-over-work.tsx')).HandOverWork

function HandOver() {
  const live = useWords()
  useDevice()
  const Work = useFetched(loadWork)
  return (
    <main className={styles.root}>
      <CalmUnlessOpen className={styles.calm}>
        {(state) => (Work ? <Work state={state} /> : <p>{live.connecting}</p>)}
      </CalmUnlessOpen>
    </main>
  )
}

/** What stands on the shelf, for the one who gives it to the guest. */
export function HandOverScreen() {
  return (
    <WordsProvider>
      <CrewProvider role="hand-over">
        <HandOver />
      </CrewProvider>
    </WordsProvider>
  )
}
