import type { ReactNode } from 'react'
import styles from '#components/assembly/header.module.css'
import band from '#components/assembly/need-band.module.css'
import { NeedBand } from '#components/assembly/need-band.tsx'
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
    <header
      className={styles.header}
      data-with-needs={now.keepFrom.length + now.leaveOut.length > 0}
    >
      <div className={styles.what}>
        <h1 className={styles.title}>
          <span className={styles.number}>{sayBuild(now.name)}</span>{' '}
          <span className={styles.item}>{now.item}</span>
        </h1>
        <p className={styles.base}>
          <span className={styles.baseName}>{now.base}</span>
          {now.remakes > 0 && <b className={styles.tag}>{words.madeAgain(now.remakes)}</b>}
          {now.elsewhere !== null && <b className={styles.tag}>{words.madeAt(now.elsewhere)}</b>}
          {now.tookFrom !== null && (
            <b className={styles.tag}>{words.takenOverFrom(now.tookFrom)}</b>
          )}
        </p>
      </div>
      <div className={styles.when}>
        <span>
          {now.of > 1 && <span className={styles.of}>{words.of(now.index, now.of)}</span>}
          <b>{words.waiting(time - now.sentAt)}</b>
        </span>
        <span className={styles.link}>{children}</span>
      </div>
    </header>
  )
}

/** Beside more needs than these there is no room for the handling, which was read aloud. */
const STEPS_BESIDE = 4

function Accepted({ now }: { readonly now: NowBuild }) {
  const words = useAssemblyWords()
  if (now.accepted === null) return null
  return <span className={band.accepted}>{words.accepted(now.accepted)}</span>
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
  return (
    <NeedBand
      needs={[
        ...now.keepFrom.map((code) => ({ code, handling: 'keep-apart' as const })),
        ...now.leaveOut.map((code) => ({ code, handling: 'leave-out' as const })),
      ]}
      apart={
        <>
          {withSteps && now.keepFrom.length <= STEPS_BESIDE && (
            <span className={band.more}>{words.stepsShort}</span>
          )}
          <Accepted now={now} />
        </>
      }
      out={now.keepFrom.length === 0 && <Accepted now={now} />}
    />
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
