import { useState } from 'react'
import styles from '#components/assembly/stop.module.css'
import { StopLine } from '#components/assembly/stop-line.tsx'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import type { Room } from '#components/device/use-device.ts'
import { Button } from '#components/ui/button.tsx'
import type { PanInStop, Stopped } from '#lib/rooms/making/views/assembly-stop.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Whether food was in it; what of it, where that isn't all that it takes. */
export interface StopAnswer {
  readonly foodInIt: boolean
  readonly inIt?: readonly string[]
}

interface Answering {
  readonly stopped: Stopped
  readonly station: StationDocument
  readonly byWell: boolean
  readonly room: Room
  readonly busy: boolean
  readonly onAnswer: (answer: StopAnswer) => void
}

/** One answer: made food is waste, and of what isn't being made nothing is asked. */
function OneAnswer({ stopped, station, byWell, room, busy, onAnswer }: Answering) {
  const words = useAssemblyWords()
  const { name, inIt } = stopped
  const isMade = inIt === 'all'
  const question = isMade ? words.madeIsWaste(name) : words.notBeingMade(name)
  return (
    <>
      <div className={styles.line}>
        <StopLine
          station={station}
          line={stopped.line}
          label={words.line}
          byWell={byWell}
          room={room}
        />
      </div>
      <div className={styles.foot}>
        <h2 className={styles.question}>{question}</h2>
        <Button
          size="large"
          className={styles.answer}
          disabled={busy}
          sub={isMade ? words.throwOutThen : words.stopSeenThen}
          onClick={() => onAnswer({ foodInIt: isMade })}
        >
          {isMade ? words.throwOut(name) : words.stopSeen}
        </Button>
      </div>
    </>
  )
}

/** What was in a stopped build: its pans on the line count as in it, and a tap clears one. */
function Asked({ stopped, station, byWell, room, busy, onAnswer }: Answering) {
  const words = useAssemblyWords()
  const [cleared, setCleared] = useState<readonly string[]>([])
  const { name, pans, whole } = stopped
  const all = Object.values(pans)
  // One that can't be put back any more counts again.
  const isIn = ({ component, staysOut }: PanInStop) =>
    whole !== null || staysOut || !cleared.includes(component)
  const lit = all.filter(isIn).map(({ component }) => component)
  const isAll = lit.length === all.length
  const turn = (component: string) =>
    setCleared(
      cleared.includes(component)
        ? cleared.filter((one) => one !== component)
        : [...cleared, component],
    )
  const hasCups = all.some(({ isCup, staysOut }) => isCup && !staysOut)
  const then = isAll
    ? words.foodYesThen
    : lit.length === 0
      ? words.foodYesNone
      : words.foodYesSome(lit.length, all.length)
  return (
    <>
      <div className={styles.line}>
        <StopLine
          station={station}
          line={stopped.line}
          label={words.foodInIt(name)}
          byWell={byWell}
          room={room}
          asked={{
            pans,
            isIn,
            isFixed: ({ staysOut }) => busy || whole !== null || staysOut,
            onTap: turn,
          }}
        />
      </div>
      <div className={styles.foot}>
        <div className={styles.ask}>
          <h2 className={styles.question}>{words.foodInIt(name)}</h2>
          <p>{whole === null ? words.tapWhatWasnt(hasCups) : words.goesWhole}</p>
        </div>
        <Button
          size="large"
          className={styles.answer}
          disabled={busy || lit.length === 0}
          sub={then}
          onClick={() => onAnswer(isAll ? { foodInIt: true } : { foodInIt: true, inIt: lit })}
        >
          {words.foodYes}
        </Button>
        <Button
          size="large"
          className={styles.answer}
          disabled={busy}
          sub={words.foodNoThen}
          onClick={() => onAnswer({ foodInIt: false })}
        >
          {words.foodNo}
        </Button>
      </div>
    </>
  )
}

/** The line of a stopped build, and below it what is asked of it. */
export function StopAnswers(answering: Answering) {
  return answering.stopped.inIt === 'asked' ? (
    <Asked {...answering} />
  ) : (
    <OneAnswer {...answering} />
  )
}
