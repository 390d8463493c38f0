'use client'

import styles from '#components/assembly/assembly.module.css'
import { useDevice } from '#components/device/use-device.ts'
import { CalmUnlessOpen } from '#components/live/calm-unless-open.tsx'
import { CrewProvider } from '#components/live/crew.tsx'
import { useFetched } from '#components/live/use-fetched.ts'
import { useWords, WordsProvider } from '#components/live/words.tsx'

const loadWork = async () => (await import('#components/assembly/assembly-work.tsx')).AssemblyWork

function Assembly() {
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

/** The build to make now, drawn on the line; read from a metre, worked with a pedal. */
export function AssemblyScreen() {
  return (
    <WordsProvider>
      <CrewProvider role="assembly">
        <Assembly />
      </CrewProvider>
    </WordsProvider>
  )
}
