import styles from '#components/assembly/panels.module.css'
import { type StopAnswer, StopAnswers } from '#components/assembly/stop-answers.tsx'
import { type AssemblyWords, useAssemblyWords } from '#components/assembly/words.tsx'
import { Connection } from '#components/live/connection.tsx'
import type { Difference, Stopped } from '#lib/rooms/making/views/assembly-stop.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

type NameOf = (id: string) => string

const rowOf = (
  words: AssemblyWords,
  one: Difference,
  name: NameOf,
): { readonly what: string; readonly from: string; readonly to: string } => {
  switch (one.what) {
    case 'item':
      return { what: words.item, from: name(one.from), to: name(one.to) }
    case 'base':
      return {
        what: words.baseWord,
        from: one.from === null ? words.noBase : name(one.from),
        to: one.to === null ? words.noBase : name(one.to),
      }
    case 'part':
      return { what: name(one.component), from: words.part(one.from), to: words.part(one.to) }
    case 'need':
      return {
        what: words.need(one.need),
        from: '',
        to: one.is === 'new' ? words.needNew : words.needGone,
      }
  }
}

type Rows = readonly ReturnType<typeof rowOf>[]

function Changes({ rows }: { readonly rows: Rows }) {
  const words = useAssemblyWords()
  return (
    <>
      <p>{rows.length === 0 ? words.sameAsBefore : words.changed}</p>
      <ul>
        {rows.map((row) => (
          <li key={row.what}>
            <span className={styles.what}>{row.what}</span>
            {row.from !== '' && <s className={styles.from}>{row.from}</s>}
            <span className="visually-hidden">{words.becomes}</span>
            <svg viewBox="0 0 48 32" className={styles.arrow} aria-hidden="true">
              <path d="M2 16h36M28 5l13 11-13 11" />
            </svg>
            <b className={styles.to}>{row.to}</b>
          </li>
        ))}
      </ul>
    </>
  )
}

/** A build may not go on as it was: nothing else shows until this is answered. */
export function StopPanel({
  stopped,
  station,
  busy,
  onAnswer,
}: {
  readonly stopped: Stopped
  readonly station: StationDocument
  readonly busy: boolean
  readonly onAnswer: (answer: StopAnswer) => void
}) {
  const words = useAssemblyWords()
  const { held, throwOut } = stopped
  const rows = stopped.differences?.map((one) => rowOf(words, one, nameIn(station))) ?? null
  return (
    <section
      className={styles.stop}
      data-line={stopped.inIt === 'asked'}
      role="alert"
      aria-labelledby="stop-title"
    >
      <h1 id="stop-title" className={styles.stopTitle}>
        <span className={styles.stopWord}>{words.stop}</span>{' '}
        <span className={styles.stopName}>{sayBuild(stopped.name)}</span>
      </h1>
      <div className={styles.link}>
        <Connection />
      </div>
      <div className={styles.changes}>
        {held && (
          <>
            <p className={styles.why} data-with-changes={rows !== null}>
              {words.sayWhyHeld(held)}
            </p>
            <p>
              {rows !== null
                ? words.thenFresh
                : held.reason === 'off-sale'
                  ? words.thenDecided
                  : words.thenHeld}
            </p>
          </>
        )}
        {rows !== null && <Changes rows={rows} />}
        {throwOut && (
          <>
            <p className={styles.why}>{words.pastItsTime(throwOut)}</p>
            <p>{words.thenThrowOut}</p>
          </>
        )}
        {rows === null && !held && !throwOut && (
          <p className={styles.cancelled}>{words.cancelled}</p>
        )}
      </div>
      <StopAnswers stopped={stopped} station={station} busy={busy} onAnswer={onAnswer} />
    </section>
  )
}
