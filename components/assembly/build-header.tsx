import type { ReactNode } from 'react'
import styles from '#components/assembly/header.module.css'
import { useServerTime } from '#components/live/server-time.ts'
import type { NowBuild } from '#lib/views/assembly.ts'
import { assemblyEn as say } from '#lib/words/assembly-en.ts'
import { live } from '#lib/words/live-en.ts'

/** Which build it is, and how long its guest has waited. */
export function BuildHeader({
  now,
  invented,
  children,
}: {
  readonly now: NowBuild
  readonly invented: boolean
  readonly children: ReactNode
}) {
  const time = useServerTime()
  return (
    <header className={styles.header}>
      <h1 className={styles.title}>
        <span className={styles.number}>{now.name}</span>{' '}
        <span className={styles.item}>{now.item}</span>
      </h1>
      <p className={styles.base}>
        {now.base}
        {invented && <small className={styles.invented}>{live.invented}</small>}
        {now.remakes > 0 && <b className={styles.again}>{say.madeAgain(now.remakes)}</b>}
      </p>
      <div className={styles.when}>
        <span>
          {now.of > 1 && <span className={styles.of}>{say.of(now.index, now.of)}</span>}
          <b className={styles.age}>{say.waiting(time - now.sentAt)}</b>
        </span>
        {children}
      </div>
    </header>
  )
}

/** Beside more needs than these there is no room for the handling, which was read aloud. */
const STEPS_BESIDE = 4

function Accepted({ now }: { readonly now: NowBuild }) {
  if (now.accepted === null) return null
  return <span className={styles.accepted}>{say.accepted(now.accepted)}</span>
}

/** The kept-apart or left-out needs of the build, and the handling in words. */
export function NeedsBanner({
  now,
  withSteps,
}: {
  readonly now: NowBuild
  readonly withSteps: boolean
}) {
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
            {say.keepApart(now.keepFrom)}
          </strong>
          {withSteps && now.keepFrom.length <= STEPS_BESIDE && (
            <span className={styles.steps}>{say.stepsShort}</span>
          )}
          <Accepted now={now} />
        </section>
      )}
      {now.leaveOut.length > 0 && (
        <section className={styles.out} data-needs="leave-out">
          <strong className={styles.need}>{say.leaveOut(now.leaveOut)}</strong>
          {now.leaveOutSaid.length > 0 && (
            <span className={styles.accepted}>{say.leaveOutSaid(now.leaveOutSaid)}</span>
          )}
          {now.keepFrom.length === 0 && <Accepted now={now} />}
        </section>
      )}
    </>
  )
}

/** The handling order, read aloud before hands are washed. */
export function HandlingSteps({ backups }: { readonly backups: readonly string[] }) {
  return (
    <section className={styles.reading} aria-labelledby="read-aloud">
      <h2 id="read-aloud">{say.readAloud}</h2>
      <ol>
        {say.stepsFor(backups).map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </section>
  )
}
