import { useState } from 'react'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { PortionSteps } from '#components/job/portion-steps.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useSettled } from '#components/ui/settled.ts'
import { KEPT_APART } from '#lib/rooms/pans/facts/kept.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { amountOf } from '#lib/rooms/pans/facts/pans.ts'
import { nameIn } from '#lib/station/name-in.ts'

const DIETS = ['vegetarian', 'vegan'] as const

/** Portions that only some orders may take from now on. */
export function KeepForm({ state, acting, food, onBack }: FormProps<'keep'>) {
  const words = useFoodWords()
  const { component } = food
  const name = nameIn(state.station)
  const level = levelOf(state, component)
  const most = Math.max(1, level.portionsLeft)
  const [count, setCount] = useState(Math.min(4, most))
  const [whom, setWhom] = useState<readonly string[]>([])
  const settled = useSettled(component)
  const items = state.station.items
    .filter(
      ({ heart, parts, base }) =>
        heart === component ||
        parts.some((one) => one.component === component) ||
        base?.choices.includes(component),
    )
    .map(({ id }) => id)
  const act = async () => {
    if (!settled() || acting.busy) return
    const command = { type: 'keep', component, portions: count, for: [...whom] } as const
    if (await acting.act(command, words.advice.done.saved(name(component), count))) onBack()
  }
  return (
    <div className={forms.one}>
      <PortionSteps
        label={words.forms.saveHow}
        value={count}
        amount={words.amount(amountOf(state, component, count), level.unit)}
        least={1}
        most={most}
        onChange={setCount}
      />
      <fieldset className={forms.choices}>
        <legend>{words.forms.saveFor}</legend>
        {[...items, KEPT_APART, ...DIETS].map((id) => (
          <button
            key={id}
            type="button"
            aria-pressed={whom.includes(id)}
            onClick={() =>
              setWhom(whom.includes(id) ? whom.filter((one) => one !== id) : [...whom, id])
            }
          >
            <b>{words.savedForName(id, name)}</b>
          </button>
        ))}
      </fieldset>
      <p className={forms.note}>{words.forms.saveWhy}</p>
      <div className={forms.send}>
        <button
          type="button"
          className={forms.main}
          disabled={acting.busy || whom.length === 0}
          onClick={() => void act()}
        >
          {words.forms.saveSend(count)}
        </button>
      </div>
    </div>
  )
}
