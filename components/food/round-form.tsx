import { useState } from 'react'
import { ReadingStep } from '#components/food/reading-step.tsx'
import { ResolveForm } from '#components/food/resolve-form.tsx'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import { foodName } from '#components/job/food-name.ts'
import styles from '#components/job/job.module.css'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Button } from '#components/ui/button.tsx'
import { stepAt } from '#lib/rooms/food/views/round.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import { keyOf } from '#lib/service/held-stock.ts'

type Why = 'later' | 'empty' | 'changed'

const isSame = (one: Place, other: Place): boolean => one.what === other.what && one.id === other.id

/** All readings that are due, one after the other: the pan that is read is the one that is lit. */
export function RoundForm({ state, acting, task, now, choose, onBack }: TaskProps<'round'>) {
  const words = useFoodWords()
  const { of, at, since } = task
  const [isNotThis, setNotThis] = useState(false)
  const step = stepAt(state, at, now)
  const after = of.slice(of.findIndex((one) => isSame(one, at)) + 1)
  const next = after.find((one) => stepAt(state, one, now) !== null) ?? null
  const nextName = next && foodName(state, next.what, next.id)
  const onward = (list: typeof of = of) => {
    if (next) choose({ task: 'round', of: list, at: next, since })
    else onBack()
  }
  const goOn = (
    <Button key="onward" kind="main" size="large" onClick={() => onward()}>
      {words.round.onward(nextName)}
    </Button>
  )
  if (step === null)
    return (
      <div className={styles.what}>
        <p className={styles.large}>{words.round.gone}</p>
        {goOn}
      </div>
    )
  if (step.why === 'out')
    return (
      <ResolveForm
        {...{ state, acting, now, choose }}
        task={{ task: 'resolve', what: at.what, id: at.id }}
        onBack={() => onward()}
        onward={goOn}
      />
    )
  const isPan = at.what === 'pan'
  const notThis = (why: Why) => {
    if (why === 'later') onward([...of.filter((one) => !isSame(one, at)), at])
    else if (!isPan) choose({ task: 'throw-out', early: at })
    else if (why === 'empty') choose({ task: 'count', pan: at.id })
    else choose({ task: 'put', pan: at.id, way: 'change' })
  }
  const because: readonly Why[] = [
    ...(next ? (['later'] as const) : []),
    ...(at.what === 'batch' ? [] : (['empty'] as const)),
    ...(isPan ? (['changed'] as const) : []),
  ]
  return (
    <ReadingStep
      key={keyOf(at.what, at.id)}
      {...{ state, acting, now, step }}
      sub={nextName === null ? words.round.last : words.round.next(nextName, next?.what ?? 'pan')}
      instead={
        isNotThis ? (
          <ChoiceRow
            legend={words.round.whyNot}
            options={[
              ...because.map((id) => ({ id, label: words.round.notBecause[id] })),
              { id: 'read', label: words.round.notBecause.read } as const,
            ]}
            value={null}
            onChange={(why) => (why === 'read' ? setNotThis(false) : notThis(why))}
          />
        ) : undefined
      }
      beside={
        because.length > 0 && (
          <Button onClick={() => setNotThis(true)}>{words.round.notThis}</Button>
        )
      }
      onDone={(isOut) => {
        if (!isOut) onward()
      }}
    />
  )
}
