import { NeedBand } from '#components/assembly/need-band.tsx'
import styles from '#components/assembly/stop.module.css'
import { type StopAnswer, StopAnswers } from '#components/assembly/stop-answers.tsx'
import { type AssemblyWords, useAssemblyWords } from '#components/assembly/words.tsx'
import type { Room } from '#components/device/use-device.ts'
import { Connection } from '#components/live/connection.tsx'
import { Button } from '#components/ui/button.tsx'
import type { Difference, Stopped } from '#lib/rooms/making/views/assembly-stop.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What it was called for and what it is now, where that changed. */
const itemOf = (words: AssemblyWords, { item, differences }: Stopped, station: StationDocument) => {
  const name = nameIn(station)
  const changed = differences?.find((one) => one.what === 'item')
  return changed ? words.itemBecomes(name(changed.from), name(changed.to)) : name(item)
}

/** Why it stops and what follows, in at most two sentences. */
const whyOf = (words: AssemblyWords, stopped: Stopped): readonly string[] => {
  const { held, throwOut, differences } = stopped
  if (throwOut) return [words.pastItsTime(throwOut), words.thenThrowOut]
  const isHeldForNeed = held?.reason === 'need' && held.asked !== 'not-sure'
  const why = held ? [isHeldForNeed ? words.justTold : words.sayWhyHeld(held)] : []
  if (differences)
    return [
      ...why,
      differences.length === 0 ? words.sameAsBefore : words.changed,
      ...(held ? [words.thenFresh] : []),
    ]
  if (held?.reason === 'off-sale') return [...why, words.thenDecided]
  if (held) return [...why, words.thenHeld]
  return [words.cancelled]
}

/** Needs to be seen now: what was told late, or came with the change, or is asked no more. */
const needsOf = ({ held, differences }: Stopped, is: 'new' | 'gone'): readonly Need[] => [
  ...(is === 'new' && held?.reason === 'need' ? held.needs : []),
  ...(differences ?? []).flatMap((one: Difference) =>
    one.what === 'need' && one.is === is ? [one.need] : [],
  ),
]

/**
 * A build may not go on as it was: nothing else shows until this is answered, or left to the screen
 * that makes it.
 */
export function StopPanel({
  stopped,
  station,
  byWell,
  room,
  busy,
  onAnswer,
  onLeave,
}: {
  readonly stopped: Stopped
  readonly station: StationDocument
  readonly byWell: boolean
  readonly room: Room
  readonly busy: boolean
  readonly onAnswer: (answer: StopAnswer) => void
  readonly onLeave: () => void
}) {
  const words = useAssemblyWords()
  const gone = needsOf(stopped, 'gone')
  return (
    <section className={styles.screen} role="alert" aria-labelledby="stop-title">
      <header className={styles.head}>
        <h1 id="stop-title" className={styles.title}>
          {words.stop} {sayBuild(stopped.name)}
        </h1>
        <div className={styles.why}>
          <div className={styles.link}>
            <Connection />
          </div>
          <b>{itemOf(words, stopped, station)}</b>
          {stopped.elsewhere !== null && (
            <div className={styles.elsewhere}>
              <p>{words.wasMadeAt(stopped.elsewhere)}</p>
              <Button disabled={busy} onClick={onLeave}>
                {words.leaveTo(stopped.elsewhere)}
              </Button>
            </div>
          )}
          {whyOf(words, stopped).map((said) => (
            <p key={said}>{said}</p>
          ))}
          {gone.length > 0 && (
            <p>{words.needGone(gone.map((need) => words.need(need)).join(' · '))}</p>
          )}
        </div>
      </header>
      <NeedBand needs={needsOf(stopped, 'new')} isNew={stopped.differences !== null} />
      <StopAnswers
        stopped={stopped}
        station={station}
        byWell={byWell}
        room={room}
        busy={busy}
        onAnswer={onAnswer}
      />
    </section>
  )
}
