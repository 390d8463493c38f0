import { type ComponentType, useEffect, useRef } from 'react'
import { HandedOverForm } from '#components/care/handed-over-form.tsx'
import { ScoopForm } from '#components/care/scoop-form.tsx'
import { BatchForm } from '#components/food/batch-form.tsx'
import { BehindList } from '#components/food/behind-list.tsx'
import { ClockForm } from '#components/food/clock-form.tsx'
import { FillForm, PutForm } from '#components/food/put-form.tsx'
import { ReadForm } from '#components/food/read-form.tsx'
import { ResolveForm } from '#components/food/resolve-form.tsx'
import { SanitizerForm } from '#components/food/sanitizer-form.tsx'
import { ShelfForm } from '#components/food/shelf-form.tsx'
import { StartBatchForm } from '#components/food/start-batch-form.tsx'
import { ThrowOutForm } from '#components/food/throw-out-form.tsx'
import type { FoodTask } from '#components/job/chosen.ts'
import styles from '#components/job/food-dialog.module.css'
import { foodTitle } from '#components/job/food-title.ts'
import type { FoodDialogProps, FormProps } from '#components/job/form-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Connection } from '#components/live/connection.tsx'
import { KeepForm } from '#components/pans/keep-form.tsx'
import { ShortForm } from '#components/pans/short-form.tsx'
import { WasteForm } from '#components/pans/waste-form.tsx'
import { WeighForm } from '#components/pans/weigh-form.tsx'
import type { ReadHere } from '#lib/station/read-here.ts'

const READ_HERE: Readonly<Record<ReadHere, ComponentType<FormProps<'read-here'>>>> = {
  shelf: ShelfForm,
  sanitizer: SanitizerForm,
}

function Form(props: FoodDialogProps) {
  const { food, ...rest } = props
  switch (food.task) {
    case 'put':
      return <PutForm {...rest} food={food} />
    case 'fill-backup':
      return <FillForm {...rest} food={food} />
    case 'read':
      return <ReadForm {...rest} food={food} />
    case 'clock':
      return <ClockForm {...rest} food={food} />
    case 'resolve':
      return <ResolveForm {...rest} food={food} />
    case 'handed-over':
      return <HandedOverForm {...rest} food={food} />
    case 'weigh':
      return <WeighForm {...rest} food={food} />
    case 'waste':
      return <WasteForm {...rest} food={food} />
    case 'keep':
      return <KeepForm {...rest} food={food} />
    case 'scoop':
      return <ScoopForm {...rest} food={food} />
    case 'short':
      return <ShortForm {...rest} food={food} />
    case 'behind':
      return <BehindList {...rest} food={food} />
    case 'read-here': {
      const ReadHereForm = READ_HERE[food.of]
      return <ReadHereForm {...rest} food={food} />
    }
    case 'start-batch':
      return <StartBatchForm {...rest} food={food} />
    case 'batch':
      return <BatchForm {...rest} food={food} />
    case 'throw-out':
      return <ThrowOutForm {...rest} food={food} />
  }
}

const keyOf = (food: FoodTask): string => Object.values(food).map(String).join(' ')

/** One job with food, over the board: what, how much, and the reading that goes with it. */
export function FoodDialog(props: FoodDialogProps) {
  const words = useFoodWords()
  const { state, acting, food, onBack } = props
  const dialog = useRef<HTMLDialogElement>(null)
  const heading = useRef<HTMLHeadingElement>(null)
  const title = foodTitle(words, state, food)
  const key = keyOf(food)
  useEffect(() => dialog.current?.showModal(), [])
  // biome-ignore lint/correctness/useExhaustiveDependencies: each job begins at its head
  useEffect(() => {
    heading.current?.focus({ preventScroll: true })
    dialog.current?.scrollTo(0, 0)
  }, [key])
  return (
    <dialog ref={dialog} className={styles.dialog} aria-label={title} onClose={onBack}>
      <header className={styles.header}>
        <h2 ref={heading} tabIndex={-1}>
          {title}
        </h2>
        <div className={styles.link}>
          <Connection />
          <p role="status" className={styles.said} data-kind={acting.said?.kind ?? 'none'}>
            {acting.busy ? words.forms.working : acting.said?.text}
          </p>
        </div>
        <button type="button" className={styles.back} onClick={() => dialog.current?.close()}>
          {words.forms.back}
        </button>
      </header>
      <Form key={key} {...props} />
    </dialog>
  )
}
