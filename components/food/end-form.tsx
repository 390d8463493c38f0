import { useEffect, useState } from 'react'
import { EndOne } from '#components/food/end-one.tsx'
import job from '#components/job/job.module.css'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { toAnswer } from '#lib/rooms/day/facts/ends/to-answer.ts'
import { endStepAt } from '#lib/rooms/day/views/end-step.ts'
import { keyOf } from '#lib/service/held-stock.ts'

type Props = TaskProps<'end'>

/** What the food at one place comes to: only its lawful ends, and why not the others. */
export function EndForm(props: Props) {
  const words = useFoodWords()
  const { state, task, now } = props
  const [day, setDay] = useState<string | null>(null)
  const dates = day === null ? {} : { dates: { preparedOn: day } }
  const step = endStepAt(state, task.at, now, dates)
  const isGone = step === null
  const [first] = toAnswer(state)
  const { choose } = props
  // It went with others, or somebody else answered it: on to what is left.
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when there is nothing here any more
  useEffect(() => {
    if (!isGone) return
    choose(first ? { task: 'end', at: { what: first.what, id: first.id } } : { task: 'close' })
  }, [isGone, first?.what, first?.id])
  if (!step) return <p className={job.large}>{words.ends.gone}</p>
  return (
    <EndOne
      key={keyOf(task.at.what, task.at.id)}
      {...props}
      step={step}
      day={day}
      setDay={setDay}
    />
  )
}
