import { sourceSaid } from '#components/food/source-said.ts'
import type { Put } from '#components/food/use-put.ts'
import type { Choose } from '#components/job/chosen.ts'
import styles from '#components/job/job.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { isOutOfTurn, sourceKey } from '#lib/rooms/pans/views/put-sources.ts'
import type { RunningState } from '#lib/service/state.ts'

interface PutFromProps {
  readonly state: RunningState
  readonly put: Put
  readonly choose: Choose
  readonly component: string
}

/** What could go in, what is to be used first, and why something can't. */
export function PutFrom({ state, put, choose, component }: PutFromProps) {
  const words = useFoodWords()
  const isNone = put.sources.length === 0
  return (
    <fieldset className={styles.choices}>
      <legend>{words.forms.whatGoesIn}</legend>
      {put.sources.map((source) => {
        const { name, more, off } = sourceSaid(words, state, component, source)
        return (
          <Button
            key={sourceKey(source)}
            disabled={off}
            aria-pressed={source === put.source}
            sub={more}
            onClick={() => put.choose(source)}
          >
            {name}
          </Button>
        )
      })}
      {put.source && isOutOfTurn(put.source) && <Note kind="no">{words.forms.olderStays}</Note>}
      {isNone && (
        <>
          <Note kind="no">{words.forms.needsBatch}</Note>
          <Button onClick={() => choose({ task: 'start-batch', component })}>
            {words.forms.startBatch}
          </Button>
        </>
      )}
    </fieldset>
  )
}
