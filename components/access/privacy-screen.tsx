'use client'

import { ForgetPanel } from '#components/access/forget-guest.tsx'
import { KeptTable } from '#components/access/kept-table.tsx'
import styles from '#components/access/page.module.css'
import layout from '#components/access/privacy.module.css'
import { PrivacyWordsProvider, usePrivacyWords } from '#components/access/privacy-words.tsx'
import { ReasonsPanel } from '#components/access/reasons.tsx'
import { useAccess } from '#components/access/use-access.ts'
import { AccessWordsProvider, useAccessWords } from '#components/access/words.tsx'
import { CrewProvider } from '#components/live/crew.tsx'
import { WordsProvider } from '#components/live/words.tsx'
import { Note } from '#components/ui/note.tsx'
import type { PrivacyNow } from '#lib/access/kept-http.ts'

const LOOK_EVERY_MS = 3_000

function Kept() {
  const words = usePrivacyWords()
  const access = useAccessWords()
  const { seen, refused, again } = useAccess<PrivacyNow>('/access/privacy', LOOK_EVERY_MS)
  const isShut = refused === 'not-yours' || refused === 'not-joined'
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions()
  return (
    <main className={styles.page}>
      <header className={styles.top}>
        <h1>{words.title}</h1>
        <p>{words.what}</p>
        <a href="/devices">{words.back}</a>
        <a href="/">{access.toFirstPage}</a>
      </header>
      {isShut ? (
        <Note kind="no">{words.notLead}</Note>
      ) : (
        <>
          {refused !== null && (
            <Note kind="watch" role="status">
              {access.lost}
            </Note>
          )}
          {seen?.clockInDoubt && <Note kind="watch">{words.doubt}</Note>}
          {seen ? <KeptTable now={seen} /> : <p>{access.connecting}</p>}
          {seen && (
            <p>
              {words.codes} {seen.nextGoesAt !== null && words.next(seen.nextGoesAt, timeZone)}
            </p>
          )}
          {seen && (
            <CrewProvider role="lead" fallback={<p>{access.connecting}</p>}>
              <div className={layout.panels}>
                <ForgetPanel onForgot={() => void again()} />
                <ReasonsPanel />
              </div>
            </CrewProvider>
          )}
        </>
      )}
    </main>
  )
}

/** The table of what is kept, with what is there now; forgetting a guest; reasons, for who may. */
export function PrivacyScreen() {
  return (
    <WordsProvider>
      <AccessWordsProvider>
        <PrivacyWordsProvider>
          <Kept />
        </PrivacyWordsProvider>
      </AccessWordsProvider>
    </WordsProvider>
  )
}
