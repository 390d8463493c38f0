import { useState } from 'react'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import { foodName } from '#components/job/food-title.ts'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { PortionSteps } from '#components/job/portion-steps.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useSettled } from '#components/ui/settled.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { amountOf } from '#lib/rooms/pans/facts/pans.ts'
import { WASTE_REASONS, type WasteReason } from '#lib/service/events/stock-event.ts'
import { componentIn } from '#lib/service/held-stock.ts'

/** What was spilled, dropped, tasted or eaten by the crew, with its reason. */
export function WasteForm({ state, acting, food, onBack }: FormProps<'waste'>) {
  const words = useFoodWords()
  const component = componentIn(state.station, food.pan) ?? ''
  const each = state.portions[component]?.amount ?? 1
  const most = Math.max(1, Math.ceil((state.pans[food.pan]?.amount ?? 0) / each))
  const [count, setCount] = useState(1)
  const [reason, setReason] = useState<WasteReason | null>(null)
  const settled = useSettled(food.pan)
  const level = levelOf(state, component)
  const amount = amountOf(state, component, count)
  const act = async () => {
    if (reason === null || !settled() || acting.busy) return
    const done = words.forms.wasteDone(foodName(state, 'pan', food.pan), count)
    if (await acting.act({ type: 'waste', pan: food.pan, amount, reason }, done)) onBack()
  }
  return (
    <div className={forms.one}>
      <ChoiceRow
        legend={words.forms.reason}
        options={WASTE_REASONS.map((id) => ({ id, label: words.forms.wasteReason[id] }))}
        value={reason}
        onChange={setReason}
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
        <p className={forms.warn}>{words.wouldBeShort(Math.ceil(level.onTickets / each))}</p>
      )}
      <div className={forms.send}>
        {reason === null && <p className={forms.ready}>{words.forms.wasteLack}</p>}
        <button
          type="button"
          className={forms.main}
          disabled={acting.busy || reason === null}
          onClick={() => void act()}
        >
          {words.forms.wasteSend(count)}
        </button>
      </div>
    </div>
  )
}
