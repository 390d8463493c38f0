'use client'

import { Awake } from '#components/device/awake-notice.tsx'
import { Connection } from '#components/live/connection.tsx'
import { CrewProvider, useCrew } from '#components/live/crew.tsx'
import { WordsProvider } from '#components/live/words.tsx'
import { BareLine } from '#components/pick-up/bare-line.tsx'
import { useMoved } from '#components/pick-up/moved.ts'
import { Called, Numbers } from '#components/pick-up/numbers.tsx'
import styles from '#components/pick-up/pick-up.module.css'
import { PickUpWordsProvider, usePickUpWords } from '#components/pick-up/words.tsx'
import { PICK_UP_PLACES, standingIn } from '#lib/rooms/shelf/views/pick-up-places.ts'

function PickUpNow() {
  const words = usePickUpWords()
  const picture = useCrew((view) => view.picture)
  const hasNone = useCrew((view) => view.welcome !== null && view.service === null)
  const board = useMoved(picture)
  const isOpen = picture !== null && (picture.open || picture.builds.length > 0)
  return (
    <main className={styles.screen}>
      <header className={styles.header}>
        <h1>{words.title}</h1>
        <p>{picture?.station}</p>
        <Awake />
        <Connection />
      </header>
      {isOpen ? (
        <div className={styles.board} ref={board}>
          <Called standing={standingIn(picture, 'called')} />
          {PICK_UP_PLACES.map((place) => (
            <Numbers key={place} place={place} standing={standingIn(picture, place)} />
          ))}
          <BareLine wells={picture.wells} />
        </div>
      ) : (
        <p className={styles.closed}>
          {picture?.station ? words.closed : hasNone ? words.notOpen : ''}
        </p>
      )}
    </main>
  )
}

/** For guests: the line once more, small, with the ticket numbers standing where they are. */
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
