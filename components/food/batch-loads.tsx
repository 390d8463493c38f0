import styles from '#components/food/batch-loads.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { loadsOf } from '#lib/rooms/food/views/batch-loads.ts'
import type { RunningState } from '#lib/service/state.ts'

/** The loads of one batch as pots, each by itself; nothing where there is only one. */
export function BatchLoads({ state, id }: { readonly state: RunningState; readonly id: string }) {
  const words = useFoodWords()
  const loads = loadsOf(state, id)
  if (loads.length < 2) return null
  return (
    <ol className={styles.loads} aria-label={words.batches.eachLoad}>
      {loads.map((stage, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a load has no name but its place
        <li key={index} data-stage={stage}>
          <b>{index + 1}</b> {words.batches.loadIs[stage]}
        </li>
      ))}
    </ol>
  )
}
