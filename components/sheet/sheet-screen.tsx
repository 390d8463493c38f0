'use client'

import { useWords, WordsProvider } from '#components/live/words.tsx'
import styles from '#components/sheet/sheet.module.css'
import { SheetTable } from '#components/sheet/sheet-table.tsx'
import { useSheet } from '#components/sheet/use-sheet.ts'
import { WordSign } from '#components/sheet/word-sign.tsx'
import { SheetWordsProvider, useSheetWords } from '#components/sheet/words.tsx'
import {
  SHEET_WORDS,
  type Sheet,
  type SheetAnswer,
  type SheetFacts,
  sheetOf,
} from '#lib/rooms/care/views/allergen-sheet.ts'

function Legend() {
  const words = useSheetWords()
  return (
    <section className={styles.legend} aria-label={words.legend}>
      <dl>
        {SHEET_WORDS.map((word) => (
          <div key={word}>
            <dt>
              <WordSign word={word} />
              <span>{words.word[word]}</span>
            </dt>
            <dd>{words.meaning[word]}</dd>
          </div>
        ))}
        <div>
          <dt>
            <b className={styles.star}>{words.canChange}</b>
          </dt>
          <dd>{words.canChangeMeaning}</dd>
        </div>
      </dl>
    </section>
  )
}

function SheetPage({
  sheet,
  at,
  isDemo,
}: {
  readonly sheet: Sheet
  readonly at: number
  readonly isDemo: boolean
}) {
  const words = useSheetWords()
  const live = useWords()
  return (
    <>
      <header className={styles.header}>
        <div>
          <h1>{isDemo ? words.demoTitle : words.title}</h1>
          <p>{words.of(sheet.station)}</p>
          {(sheet.invented || isDemo) && <p className={styles.invented}>{live.invented}</p>}
        </div>
        <p className={styles.asOf}>
          {sheet.asOf !== null && <b>{words.asOfLine(at, sheet.timeZone)}</b>}
          <span>{words.asOf(sheet.asOf, sheet.timeZone)}</span>
          <span>{words.revision(sheet.revision)}</span>
          {sheet.asOf === null && (
            <span className={styles.printed}>{words.printed(at, sheet.timeZone)}</span>
          )}
        </p>
        <nav className={styles.acts}>
          <button type="button" onClick={() => window.print()}>
            {words.print}
          </button>
          <a href={`/paper/allergens${location.search}`}>{words.inWords}</a>
          <a href="/">{words.toStart}</a>
        </nav>
      </header>
      <section className={styles.cautions} aria-label={words.cautionsTitle}>
        <p>{words.cautions.join(' ')}</p>
        {!sheet.contactKnown && <p>{words.contactUnknown}</p>}
        {sheet.unread.length > 0 && <p>{words.unreadOf(sheet.unread)}</p>}
      </section>
      <SheetTable sheet={sheet} />
      <Legend />
      {isDemo && (
        <p className={styles.across} aria-hidden="true">
          {words.demoAcross}
        </p>
      )}
    </>
  )
}

/** null where the document is damaged. */
const made = (facts: SheetFacts): Sheet | null => {
  try {
    return sheetOf(facts)
  } catch {
    return null
  }
}

function Answered({ answer: { at, facts, demo } }: { readonly answer: SheetAnswer }) {
  const words = useSheetWords()
  const sheet = facts && made(facts)
  if (sheet) return <SheetPage sheet={sheet} at={at} isDemo={demo === true} />
  return (
    <>
      <h1>{words.title}</h1>
      <p className={styles.lost}>{facts ? words.damaged : words.noStation}</p>
    </>
  )
}

function SheetNow() {
  const words = useSheetWords()
  const { answer, isLost } = useSheet()
  const zone = answer?.facts?.station.timeZone ?? 'UTC'
  const lost = answer ? words.lost(words.sayClock(answer.at, zone)) : words.never
  return (
    <main className={styles.page}>
      <div role="status">{isLost && <p className={styles.lost}>{lost}</p>}</div>
      {answer ? (
        <Answered answer={answer} />
      ) : (
        <>
          <h1>{words.title}</h1>
          {!isLost && <p>{words.loading}</p>}
        </>
      )}
    </main>
  )
}

/** For guests and inspectors: read and printed, and nothing can be done on it. */
export function SheetScreen() {
  return (
    <WordsProvider>
      <SheetWordsProvider>
        <SheetNow />
      </SheetWordsProvider>
    </WordsProvider>
  )
}
