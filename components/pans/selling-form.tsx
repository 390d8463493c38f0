import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { useSelling } from '#components/live/selling.ts'
import { Button } from '#components/ui/button.tsx'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { effectOfStopping, itemPictures } from '#lib/rooms/pans/views/items-left.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** Stops or resumes selling a component or an item, once it was said what that means. */
export function SellingForm({ state: told, acting, task, onBack }: TaskProps<'selling'>) {
  const words = useFoodWords()
  const { what, id } = task
  const state = useSelling(told, 1)
  const name = nameIn(state.station)
  const item = itemPictures(state).find((one) => one.id === id)
  const selling = state.notSelling[what][id] === undefined
  const left =
    what === 'item' ? (item?.remaining ?? 0) : Math.max(0, levelOf(told, id).portionsLeft)
  const because = !selling
    ? [what === 'item' ? words.resumeItemWhy : words.resumeWhy(left)]
    : what === 'item'
      ? [words.stopStays]
      : [...words.effect(effectOfStopping(told, id), id, name), words.stopStays]
  const job = useJob({
    acting,
    about: id,
    command: () => ({ type: selling ? 'stopSelling' : 'resumeSelling', what, id }),
    done: selling ? words.done.stopped(name(id)) : words.done.resumed(name(id)),
    after: onBack,
  })
  return (
    <JobForm
      job={job}
      kind={selling ? 'no' : 'main'}
      send={selling ? words.stopSelling : words.resumeSelling}
      ways={<Button onClick={onBack}>{selling ? words.goOnSelling : words.leaveStopped}</Button>}
    >
      <p className={styles.large}>{words.leftFact(left)}</p>
      {because.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </JobForm>
  )
}
