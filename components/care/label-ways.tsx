import { useState } from 'react'
import styles from '#components/care/label-ways.module.css'
import { useLabelWords } from '#components/care/label-words.tsx'
import type { Acting } from '#components/live/acting.ts'
import { Button } from '#components/ui/button.tsx'
import { useSettled } from '#components/ui/settled.ts'
import { goesInto, isNotSame } from '#lib/rooms/care/views/labels.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { Ingredient } from '#lib/station/station-document.ts'

interface LabelWaysProps {
  readonly state: RunningState
  readonly ingredient: Ingredient
  readonly acting: Acting
  readonly onDone: () => void
  readonly onRead: () => void
}

/** Anyone may say that a product isn't the same; the person in charge reads its label. */
export function LabelWays({ state, ingredient, acting, onDone, onRead }: LabelWaysProps) {
  const words = useLabelWords()
  const [isSure, setSure] = useState(false)
  const settled = useSettled(isSure)
  const isSaid = isNotSame(state, ingredient.id)
  const notSame = async () => {
    if (!settled() || acting.busy) return
    if (!isSure) return setSure(true)
    const done = words.done.notSame(ingredient.name)
    if (await acting.act({ type: 'notSameProduct', ingredient: ingredient.id }, done)) onDone()
    else setSure(false)
  }
  const parts = goesInto(state.station, ingredient.id).map(nameIn(state.station))
  return (
    <section className={styles.ways} aria-label={words.ways}>
      <p className={styles.fact}>
        {words.goesInto(parts)} <b>{words.lastReadFact(ingredient.readOn)}</b>
      </p>
      <h3>{words.ways}</h3>
      <div className={styles.two}>
        <div>
          <Button
            kind={isSure ? 'no' : 'plain'}
            size="large"
            disabled={acting.busy || isSaid}
            onClick={() => void notSame()}
          >
            {isSure ? words.notSameSure(ingredient.name) : words.notSame}
          </Button>
          <p>{isSaid ? words.notSameAlready : isSure ? words.sure : words.notSameWhy}</p>
        </div>
        <div>
          <Button size="large" onClick={onRead}>
            {words.read}
          </Button>
          <p>{words.readWhy}</p>
        </div>
      </div>
    </section>
  )
}
