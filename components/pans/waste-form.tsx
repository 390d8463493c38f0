import { useState } from 'react'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import { foodName } from '#components/job/food-name.ts'
import { JobForm } from '#components/job/job-form.tsx'
import { PortionSteps } from '#components/job/steps.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { Note } from '#components/ui/note.tsx'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { amountOf } from '#lib/rooms/pans/facts/pans.ts'
import { WASTE_REASONS, type WasteReason } from '#lib/service/events/stock-event.ts'
import { componentIn } from '#lib/service/held-stock.ts'

/** What was spilled, dropped, tasted or eaten by the crew, with its reason. */
export function WasteForm({ state, acting, task, choose, onBack }: TaskProps<'waste'>) {
  const words = useFoodWords()
  const { pan } = task
  const component = componentIn(state.station, pan) ?? ''
  const each = state.portions[component]?.amount ?? 1
  const most = Math.max(1, Math.ceil((state.pans[pan]?.amount ?? 0) / each))
  const [count, setCount] = useState(1)
  const [reason, setReason] = useState<WasteReason | null>(null)
  const level = levelOf(state, component)
  const amount = amountOf(state, component, count)
  const job = useJob({
    acting,
    about: pan,
    lacks: [reason === null ? words.forms.wasteLack : null],
    command: () => (reason === null ? null : { type: 'waste', pan, amount, reason }),
    done: words.forms.wasteDone(foodName(state, 'pan', pan), count),
    after: onBack,
  })
  return (
    <JobForm job={job} send={words.forms.wasteSend(count)}>
      <ChoiceRow
        legend={words.forms.reason}
        options={WASTE_REASONS.map((id) => ({
          id,
          label: words.forms.wasteReason[id],
          ...(id === 'spoiled' ? { more: words.forms.wasteSpoiled } : {}),
        }))}
        value={reason}
        onChange={(one) =>
          // What spoiled in a pan isn't a portion of it: all of it goes, or somebody decides.
          one === 'spoiled'
            ? choose({ task: 'throw-out', early: { what: 'pan', id: pan } })
            : setReason(one)
        }
      />
      <PortionSteps
        label={words.forms.wasteHow}
        value={count}
        amount={words.amount(amount, level.unit)}
        least={1}
        most={most}
        onChange={setCount}
      />
      {level.remaining < amount && level.onTickets > 0 && (
        <Note kind="no">{words.wouldBeShort(Math.ceil(level.onTickets / each))}</Note>
      )}
    </JobForm>
  )
}
