import { useState } from 'react'
import type { Choose } from '#components/job/chosen.ts'
import styles from '#components/job/panel.module.css'
import { PortionSteps } from '#components/job/portion-steps.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { Acting } from '#components/live/acting.ts'
import { useSettled } from '#components/ui/settled.ts'
import { amountOf, mostPortions, type PanPicture } from '#lib/rooms/pans/facts/pans.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Pan } from '#lib/station/station-document.ts'

interface CountFormProps {
  readonly state: RunningState
  readonly pan: Pan
  readonly picture: PanPicture
  readonly name: string
  readonly acting: Acting
  readonly choose: Choose
  readonly onDone: () => void
  readonly onBack: () => void
}

/** What a pan is counted to hold; of one that was counted to nothing, that this was a slip. */
export function CountForm(props: CountFormProps) {
  const words = useFoodWords()
  const { state, pan, picture, name, acting, choose, onDone, onBack } = props
  const held = Math.floor(picture.amount / picture.each)
  const [count, setCount] = useState(held)
  const isEnded = state.pans[pan.id]?.ended === true
  const settled = useSettled(isEnded)
  const amount = amountOf(state, pan.component, count)
  const send = async () => {
    if (!settled() || acting.busy) return
    const command = { type: 'correct', pan: pan.id, amount, kind: 'count' } as const
    const said = isEnded ? ({ ...command, was: 'slip' } as const) : command
    if (await acting.act(said, words.done.correct(name, count))) onDone()
  }
  const load = () => {
    if (settled()) choose({ kind: 'food', food: { task: 'put', pan: pan.id, way: 'load' } })
  }
  return (
    <>
      <div className={styles.doing}>
        <PortionSteps
          label={words.reallyHolds}
          value={count}
          amount={words.amount(amount, picture.unit)}
          least={0}
          most={mostPortions(state, pan)}
          onChange={setCount}
        />
        {isEnded ? (
          <p>{words.countedToNothing}</p>
        ) : (
          <p>
            {words.countWas(held)}{' '}
            {picture.onTickets > count && words.wouldBeShort(picture.onTickets)}
          </p>
        )}
      </div>
      <div className={styles.acts}>
        <button
          type="button"
          className={styles.main}
          disabled={acting.busy || (isEnded && count === 0)}
          onClick={() => void send()}
        >
          {isEnded ? words.wasSlip(count) : words.countIs(count)}
        </button>
        {isEnded && (
          <button type="button" className={styles.other} onClick={load}>
            {words.loadIt}
          </button>
        )}
        <button type="button" className={styles.other} onClick={onBack}>
          {words.back}
        </button>
      </div>
    </>
  )
}
