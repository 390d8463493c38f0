import type { ReactNode } from 'react'
import styles from '#components/assembly/header.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import { useServerTime } from '#components/live/server-time.ts'
import type { NowBuild } from '#lib/rooms/making/views/now-build.ts'
import { sayBuild } from '#lib/service/tickets.ts'

/** Which build it is, and how long its guest has waited. */
export function BuildHeader({
  now,
  children,
}: {
  readonly now: NowBuild
  readonly children: ReactNode
}) {
  const words = useAssemblyWords()
  const time = useServerTime()
  return (
    <header className={styles.header}>
      <h1 className={styles.title}>
        <span className={styles.number}>{sayBuild(now.name)}</span>{' '}
        <span className={styles.item}>{now.item}</span>
      </h1>
      <p className={styles.base}>
        {now.base}
        {now.remakes > 0 && <b className={styles.again}>{words.madeAgain(now.remakes)}</b>}
      </p>
      <div className={styles.when}>
        <span>
          {now.of > 1 && <span className={styles.of}>{words.of(now.index, now.of)}</span>}
          <b className={styles.age}>{words.waiting(time - now.sentAt)}</b>
        </span>
        {children}
      </div>
    </header>
  )
}

/** Beside more needs than these there is no room for the handling, which was read aloud. */
const STEPS_BESIDE = 4

function Accepted({ now }: { readonly now: NowBuild }) {
  const words = useAssemblyWords()
  if (now.accepted === null) return null
  return <span className={styles.accepted}>{words.accepted(now.accepted)}</span>
}

/** The kept-apart or left-out needs of the build, and the handling in words. */
export function NeedsBanner({
  now,
  withSteps,
}: {
  readonly now: NowBuild
  readonly withSteps: boolean
}) {
  const words = useAssemblyWords()
  if (now.keepFrom.length === 0 && now.leaveOut.length === 0) return null
  return (
    <>
      {now.keepFrom.length > 0 && (
        <section className={styles.apart} data-needs="keep-apart">
          <strong className={styles.need}>
            <svg viewBox="0 0 32 30" className={styles.sign} aria-hidden="true">
              <path d="M16 2 31 28H1z" />
              <path d="M16 11v9M16 23v2.5" className={styles.mark} />
            </svg>
            {words.keepApart(now.keepFrom)}
          </strong>
          {withSteps && now.keepFrom.length <= STEPS_BESIDE && (
            <span className={styles.steps}>{words.stepsShort}</span>
          )}
          <Accepted now={now} />
        </section>
      )}
      {now.leaveOut.length > 0 && (
        <section className={styles.out} data-needs="leave-out">
          <strong className={styles.need}>{words.leaveOut(now.leaveOut)}</strong>
          {now.leaveOutSaid.length > 0 && (
            <span className={styles.accepted}>{words.leaveOutSaid(now.leaveOutSaid)}</span>
          )}
          {now.keepFrom.length === 0 && <Accepted now={now} />}
        </section>
      )}
    </>
  )
}

/** The handling order, read aloud before hands are washed. */
export function HandlingSteps({ backups }: { readonly backups: readonly string[] }) {
  const words = useAssemblyWords()
  return (
    <section className={styles.reading} aria-labelledby="read-aloud">
      <h2 id="read-aloud">{words.readAloud}</h2>
      <ol>
        {words.stepsFor(backups).map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </section>
  )
}
