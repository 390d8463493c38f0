import type { Choose } from '#components/job/chosen.ts'
import { saidHere } from '#components/job/said-here.ts'
import type { Acting } from '#components/live/acting.ts'
import { DoNextCard } from '#components/pans/do-next-card.tsx'
import { ItemsCard } from '#components/pans/items-card.tsx'
import styles from '#components/pans/pans.module.css'
import { sayCalm, sayTask } from '#components/pans/task-said.ts'
import { ThenCard } from '#components/pans/then-card.tsx'
import { useTasks } from '#components/pans/use-tasks.ts'
import { usePansWords } from '#components/pans/words.tsx'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import { notLastingOf, putOffOf, tasksOf } from '#lib/rooms/advice/views/do-next.ts'
import type { RunningState } from '#lib/service/state.ts'

interface TaskCardsProps {
  readonly state: RunningState
  readonly forecast: StationForecast | null
  readonly now: number
  readonly acting: Acting
  readonly choose: Choose
}

/** One thing to do next, what comes after it, and what can still be sold. */
export function TaskCards({ state, forecast, now, acting, choose }: TaskCardsProps) {
  const words = usePansWords()
  const tasks = useTasks(state, acting, choose)
  const here = saidHere(words, state, now)
  const [next, ...then] = tasksOf(state, forecast, now)
  const putOff = putOffOf(state, forecast, now)
  const rushUntil = forecast?.rushUntil ?? null
  const calm = sayCalm(words, { rushUntil, notLasting: notLastingOf(forecast, putOff) }, here)
  return (
    <div className={styles.cards}>
      <DoNextCard
        task={next ?? null}
        said={next ? sayTask(words, state, next, here) : calm}
        tasks={tasks}
      />
      <ThenCard
        state={state}
        then={then}
        putOff={putOff}
        here={here}
        tasks={tasks}
        rushUntil={rushUntil}
        choose={choose}
      />
      <ItemsCard state={state} onItem={(id) => choose({ kind: 'item', id })} />
    </div>
  )
}
