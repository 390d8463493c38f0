import { sourceSaid } from '#components/food/source-said.ts'
import type { SetUp } from '#components/food/use-set-up.ts'
import type { Choose } from '#components/job/chosen.ts'
import styles from '#components/job/job.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Button } from '#components/ui/button.tsx'
import { sourceKey } from '#lib/rooms/pans/views/put-sources.ts'
import type { SetUpRow } from '#lib/rooms/pans/views/set-up-row.ts'
import type { RunningState } from '#lib/service/state.ts'

interface SetUpSourceProps {
  readonly state: RunningState
  readonly choose: Choose
  readonly setUp: SetUp
  readonly row: SetUpRow
}

/** Out of what it comes: what can't go in says why, and the pan may be left empty for now. */
export function SetUpSource({ state, choose, setUp, row }: SetUpSourceProps) {
  const words = useFoodWords()
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const isLeft = row.wait?.why === 'left'
  return (
    <fieldset className={styles.choices}>
      <legend className="visually-hidden">{words.forms.whatGoesIn}</legend>
      {row.sources.map((source) => {
        const { name, more, off } = sourceSaid(words, state, row.component, source)
        return (
          <Button
            key={sourceKey(source)}
            disabled={off}
            aria-pressed={!isLeft && source === row.source}
            sub={more}
            onClick={() =>
              setUp.say(row.pan, { source: sourceKey(source), isLeft: false, dates: null })
            }
          >
            {name}
          </Button>
        )
      })}
      {row.making.map((at) => (
        <Button key={at} disabled sub={words.setUp.making}>
          {words.setUp.batchOf(time(at))}
        </Button>
      ))}
      {row.wait?.why === 'no-batch' && !row.wait.isMaking && (
        <Button onClick={() => choose({ task: 'start-batch', component: row.component })}>
          {words.forms.startBatch}
        </Button>
      )}
      {row.source !== null && (
        <Button
          aria-pressed={isLeft}
          sub={words.setUp.leaveWhy}
          onClick={() => setUp.say(row.pan, { isLeft: !isLeft })}
        >
          {words.setUp.leave}
        </Button>
      )}
    </fieldset>
  )
}
