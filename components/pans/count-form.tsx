import { useState } from 'react'
import { foodName } from '#components/job/food-name.ts'
import { JobForm } from '#components/job/job-form.tsx'
import { PortionSteps } from '#components/job/steps.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { amountOf, mostPortions, panPictures } from '#lib/rooms/pans/facts/pans.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import { findPan } from '#lib/station/find.ts'

/** What a pan is counted to hold; of one that was counted to nothing, that this was a slip. */
export function CountForm({ state, acting, task, choose, onBack }: TaskProps<'count'>) {
  const words = useFoodWords()
  const picture = panPictures(state)[task.pan]
  const pan = findPan(state.station, task.pan)
  const held = picture ? Math.floor(picture.amount / picture.each) : 0
  const [count, setCount] = useState(held)
  const isEnded = state.pans[task.pan]?.ended === true
  const amount = amountOf(state, componentIn(state.station, task.pan) ?? '', count)
  const job = useJob({
    acting,
    about: isEnded,
    lacks: [isEnded && count === 0 ? words.onLine.countLack : null],
    command: () => {
      const command = { type: 'correct', pan: task.pan, amount, kind: 'count' } as const
      return isEnded ? { ...command, was: 'slip' } : command
    },
    done: words.done.correct(foodName(state, 'pan', task.pan), count),
    after: onBack,
  })
  if (!picture || !pan) return null
  return (
    <JobForm
      job={job}
      send={isEnded ? words.wasSlip(count) : words.countIs(count)}
      ways={
        isEnded && (
          <Button onClick={() => choose({ task: 'put', pan: task.pan, way: 'load' })}>
            {words.loadIt}
          </Button>
        )
      }
    >
      <PortionSteps
        label={words.reallyHolds}
        value={count}
        amount={words.amount(amount, picture.unit)}
        least={0}
        most={mostPortions(state, pan)}
        onChange={setCount}
      />
      <p>{isEnded ? words.countedToNothing : words.countWas(held)}</p>
      {!isEnded && picture.onTickets > count && (
        <Note kind="no">{words.wouldBeShort(picture.onTickets)}</Note>
      )}
    </JobForm>
  )
}
