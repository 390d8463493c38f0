import { useState } from 'react'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import styles from '#components/job/job.module.css'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Button } from '#components/ui/button.tsx'
import { useSettled } from '#components/ui/settled.ts'
import { hasBackup } from '#lib/rooms/care/facts/soiling.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import { pansOf } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'

const WHERE = ['line', 'behind', 'both'] as const
type Where = (typeof WHERE)[number]

/** Whose scoop went into the pan: one tap, in the order of the line. */
export function OtherScoop({ state, acting, task, choose, onBack }: TaskProps<'other-scoop'>) {
  const words = useFoodWords()
  const [scoop, setScoop] = useState<string | null>(null)
  const settled = useSettled(`${task.pan} ${scoop}`)
  const component = componentIn(state.station, task.pan) ?? ''
  const name = nameIn(state.station)
  const isSoiledBy = (by: string) => state.pans[task.pan]?.soiledBy.includes(by) ?? false
  const others = [...new Set(pansOf(state.station).map((one) => one.component))].filter(
    (one) => one !== component,
  )
  const isBehind = hasBackup(state, component)
  const soil = async (by: string, where: Where) => {
    if (!settled() || acting.busy) return
    const tell = (backup: boolean) =>
      acting.act(
        { type: 'soilPan', pan: task.pan, by, ...(backup ? { backup } : {}) },
        (backup ? words.done.soiledBackup : words.done.soiled)(name(component), name(by)),
      )
    // Who isn't sure says both; the one on the line may be known already.
    const isTold = where === 'behind' || (where === 'both' && isSoiledBy(by)) || (await tell(false))
    if (isTold && (where === 'line' || (await tell(true)))) onBack()
  }
  return (
    <div className={styles.what}>
      <p>{words.whoseScoopWhy(name(component))}</p>
      {scoop !== null && (
        <p className={styles.large}>
          {words.whoseScoop} {name(scoop)}
        </p>
      )}
      {scoop === null ? (
        <ChoiceRow
          legend={words.whoseScoop}
          options={others.map((id) => ({
            id,
            label: name(id),
            off: acting.busy || (!isBehind && isSoiledBy(id)),
          }))}
          value={null}
          onChange={(one) => (isBehind ? settled() && setScoop(one) : void soil(one, 'line'))}
        />
      ) : (
        <ChoiceRow
          legend={words.whichPan(name(component), name(scoop))}
          options={WHERE.map((id) => ({
            id,
            label:
              id === 'behind'
                ? words.coveredBackup
                : id === 'line'
                  ? words.onTheLine
                  : words.bothPans,
            off: acting.busy || (id === 'line' && isSoiledBy(scoop)),
          }))}
          value={null}
          onChange={(one) => void soil(scoop, one)}
        />
      )}
      <div className={styles.ways}>
        <Button
          kind="quiet"
          onClick={() => (scoop === null ? choose({ task: 'pan', pan: task.pan }) : setScoop(null))}
        >
          {scoop === null ? words.notThis : words.back}
        </Button>
      </div>
    </div>
  )
}
