import { useState } from 'react'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { PortionSteps } from '#components/job/steps.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { Button } from '#components/ui/button.tsx'
import { KEPT_APART } from '#lib/rooms/pans/facts/kept.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { amountOf } from '#lib/rooms/pans/facts/pans.ts'
import { nameIn } from '#lib/station/name-in.ts'

const DIETS = ['vegetarian', 'vegan'] as const

/** Portions that only some orders may take from now on. */
export function KeepForm({ state, acting, task, onBack }: TaskProps<'keep'>) {
  const words = useFoodWords()
  const { component } = task
  const name = nameIn(state.station)
  const level = levelOf(state, component)
  const most = Math.max(1, level.portionsLeft)
  const [count, setCount] = useState(Math.min(4, most))
  const [whom, setWhom] = useState<readonly string[]>([])
  const items = state.station.items
    .filter(
      ({ heart, parts, base }) =>
        heart === component ||
        parts.some((one) => one.component === component) ||
        base?.choices.includes(component),
    )
    .map(({ id }) => id)
  const job = useJob({
    acting,
    about: component,
    lacks: [whom.length === 0 ? words.forms.keepLack : null],
    command: () => ({ type: 'keep', component, portions: count, for: [...whom] }),
    done: words.advice.done.saved(name(component), count),
    after: onBack,
  })
  return (
    <JobForm job={job} send={words.forms.saveSend(count)}>
      <PortionSteps
        label={words.forms.saveHow}
        value={count}
        amount={words.amount(amountOf(state, component, count), level.unit)}
        least={1}
        most={most}
        onChange={setCount}
      />
      <fieldset className={styles.choices}>
        <legend>{words.forms.saveFor}</legend>
        {[...items, KEPT_APART, ...DIETS].map((id) => (
          <Button
            key={id}
            aria-pressed={whom.includes(id)}
            onClick={() =>
              setWhom(whom.includes(id) ? whom.filter((one) => one !== id) : [...whom, id])
            }
          >
            {words.savedForName(id, name)}
          </Button>
        ))}
      </fieldset>
      <p>{words.forms.saveWhy}</p>
    </JobForm>
  )
}
