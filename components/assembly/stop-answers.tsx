import { useState } from 'react'
import styles from '#components/assembly/panels.module.css'
import stop from '#components/assembly/stop-answers.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import { Line } from '#components/line/line.tsx'
import type { PanInStop, Stopped } from '#lib/rooms/making/views/assembly-stop.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/** Whether food was in it; what of it, where that isn't all that it takes. */
export interface StopAnswer {
  readonly foodInIt: boolean
  readonly inIt?: readonly string[]
}

/** A pan that the build is made of: lit while its food counts as in it. */
function PanInIt({
  pan,
  component,
  isIn,
  isFixed,
  onTap,
}: {
  readonly pan: PanInStop
  readonly component: Component
  readonly isIn: boolean
  readonly isFixed: boolean
  readonly onTap: () => void
}) {
  const words = useAssemblyWords()
  return (
    <button
      type="button"
      className={stop.pan}
      data-side={pan.isCup}
      aria-pressed={isIn}
      disabled={isFixed}
      onClick={onTap}
    >
      <b>
        {component.short.map((line) => (
          <span key={line}>{line} </span>
        ))}
      </b>
      <span className={stop.state}>
        {pan.staysOut
          ? words.cupStaysOut
          : isIn
            ? words.wasIn(pan.isCup)
            : words.wasntIn(pan.isCup)}
      </span>
    </button>
  )
}

/** Made food that no longer fits its guest has one answer: it is waste. */
function MadeIsWaste({
  name,
  busy,
  onOut,
}: {
  readonly name: string
  readonly busy: boolean
  readonly onOut: () => void
}) {
  const words = useAssemblyWords()
  return (
    <>
      <h2 className={styles.question}>{words.madeIsWaste(name)}</h2>
      <div className={styles.answers} data-one="">
        <button type="button" disabled={busy} onClick={onOut}>
          <b>{words.throwOut(name)}</b>
          <span>{words.throwOutThen}</span>
        </button>
      </div>
    </>
  )
}

/** Nothing of it is in the making: nothing is asked, only that it was seen. */
function NothingInIt({
  name,
  busy,
  onSeen,
}: {
  readonly name: string
  readonly busy: boolean
  readonly onSeen: () => void
}) {
  const words = useAssemblyWords()
  return (
    <>
      <h2 className={styles.question}>{words.notBeingMade(name)}</h2>
      <div className={styles.answers} data-one="">
        <button type="button" disabled={busy} onClick={onSeen}>
          <b>{words.stopSeen}</b>
          <span>{words.stopSeenThen}</span>
        </button>
      </div>
    </>
  )
}

/** What was in a stopped build: its pans stand on the line, all lit, and a tap clears one. */
export function StopAnswers({
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
  const [cleared, setCleared] = useState<readonly string[]>([])
  const { name, pans, whole } = stopped
  if (stopped.inIt === 'nothing')
    return <NothingInIt name={name} busy={busy} onSeen={() => onAnswer({ foodInIt: false })} />
  if (stopped.inIt === 'all')
    return <MadeIsWaste name={name} busy={busy} onOut={() => onAnswer({ foodInIt: true })} />
  const all = Object.values(pans)
  // One that can't be put back any more is lit again.
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
  return (
    <>
      <div className={stop.asked}>
        <h2 className={styles.question}>{words.foodInIt(name)}</h2>
        <p>{whole === null ? words.tapWhatWasnt(hasCups) : words.goesWhole}</p>
      </div>
      <div className={stop.line}>
        <Line
          station={station}
          label={words.foodInIt(name)}
          widthOf={({ id }) => (pans[id] ? 'wide' : 'sliver')}
          renderPan={({ id }, component) => {
            const pan = pans[id]
            return pan ? (
              <PanInIt
                pan={pan}
                component={component}
                isIn={isIn(pan)}
                isFixed={busy || whole !== null || pan.staysOut}
                onTap={() => turn(component.id)}
              />
            ) : (
              <span className={stop.idle} />
            )
          }}
        />
      </div>
      <div className={styles.answers}>
        <button
          type="button"
          disabled={busy || lit.length === 0}
          onClick={() => onAnswer(isAll ? { foodInIt: true } : { foodInIt: true, inIt: lit })}
        >
          <b>{words.foodYes}</b>
          <span>
            {isAll
              ? words.foodYesThen
              : lit.length === 0
                ? words.foodYesNone
                : words.foodYesSome(lit.length, all.length)}
          </span>
        </button>
        <button type="button" disabled={busy} onClick={() => onAnswer({ foodInIt: false })}>
          <b>{words.foodNo}</b>
          <span>{words.foodNoThen}</span>
        </button>
      </div>
    </>
  )
}
