'use client'

import { Awake } from '#components/device/awake-notice.tsx'
import { Connection } from '#components/live/connection.tsx'
import { CrewProvider, useCrew } from '#components/live/crew.tsx'
import { useFetched } from '#components/live/use-fetched.ts'
import { WordsProvider } from '#components/live/words.tsx'
import styles from '#components/pick-up/pick-up.module.css'
import { PickUpWordsProvider, usePickUpWords } from '#components/pick-up/words.tsx'

const loadBoard = async () => (await import('#components/pick-up/board.tsx')).Board

function PickUpNow() {
  const words = usePickUpWords()
  const picture = useCrew((view) => view.picture)
  const hasNone = useCrew((view) => view.welcome !== null && view.service === null)
  const Board = useFetched(loadBoard)
  return (
    <main className={styles.screen}>
      <header className={styles.header}>
        <h1>{words.title}</h1>
        <p>{picture?.station}</p>
        <Awake />
        <Connection />
      </header>
      {picture?.station ? (
        Board && <Board picture={picture} />
      ) : (
        <div className={styles.closed}>
          <p>{hasNone ? words.notOpen : ''}</p>
        </div>
      )}
    </main>
  )
}

/** For guests: one path with the numbers where they are: the queue, the line, the shelf. */
export function PickUpScreen() {
  return (
    <WordsProvider>
      <PickUpWordsProvider>
        <CrewProvider role="pick-up">
          <PickUpNow />
        </CrewProvider>
      </PickUpWordsProvider>
    </WordsProvider>
  )
}
