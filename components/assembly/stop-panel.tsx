import styles from '#components/assembly/panels.module.css'
import { type StopAnswer, StopAnswers } from '#components/assembly/stop-answers.tsx'
import { Connection } from '#components/live/connection.tsx'
import { nameIn } from '#lib/menu/name-in.ts'
import type { StationDocument } from '#lib/menu/station-document.ts'
import type { Difference, Stopped } from '#lib/views/assembly-stop.ts'
import { assemblyEn as say } from '#lib/words/assembly-en.ts'
import { sayWhyHeld } from '#lib/words/held-en.ts'

type NameOf = (id: string) => string

const rowOf = (
  one: Difference,
  name: NameOf,
): { readonly what: string; readonly from: string; readonly to: string } => {
  switch (one.what) {
    case 'item':
      return { what: say.item, from: name(one.from), to: name(one.to) }
    case 'base':
      return {
        what: say.baseWord,
        from: one.from === null ? say.noBase : name(one.from),
        to: one.to === null ? say.noBase : name(one.to),
      }
    case 'part':
      return { what: name(one.component), from: say.part(one.from), to: say.part(one.to) }
    case 'need':
      return {
        what: say.need(one.need),
        from: '',
        to: one.is === 'new' ? say.needNew : say.needGone,
      }
  }
}

type Rows = readonly ReturnType<typeof rowOf>[]

function Changes({ rows }: { readonly rows: Rows }) {
  return (
    <>
      <p>{rows.length === 0 ? say.sameAsBefore : say.changed}</p>
      <ul>
        {rows.map((row) => (
          <li key={row.what}>
            <span className={styles.what}>{row.what}</span>
            {row.from !== '' && <s className={styles.from}>{row.from}</s>}
            <span className="visually-hidden">{say.becomes}</span>
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
  const { held, throwOut } = stopped
  const rows = stopped.differences?.map((one) => rowOf(one, nameIn(station))) ?? null
  return (
    <section
      className={styles.stop}
      data-line={stopped.inIt === 'asked'}
      role="alert"
      aria-labelledby="stop-title"
    >
      <h1 id="stop-title" className={styles.stopTitle}>
        <span className={styles.stopWord}>{say.stop}</span>{' '}
        <span className={styles.stopName}>{stopped.name}</span>
      </h1>
      <div className={styles.link}>
        <Connection />
      </div>
      <div className={styles.changes}>
        {held && (
          <>
            <p className={styles.why} data-with-changes={rows !== null}>
              {sayWhyHeld(held)}
            </p>
            <p>
              {rows !== null
                ? say.thenFresh
                : held.reason === 'off-sale'
                  ? say.thenDecided
                  : say.thenHeld}
            </p>
          </>
        )}
        {rows !== null && <Changes rows={rows} />}
        {throwOut && (
          <>
            <p className={styles.why}>{say.pastItsTime(throwOut)}</p>
            <p>{say.thenThrowOut}</p>
          </>
        )}
        {rows === null && !held && !throwOut && <p className={styles.cancelled}>{say.cancelled}</p>}
      </div>
      <StopAnswers stopped={stopped} station={station} busy={busy} onAnswer={onAnswer} />
    </section>
  )
}
