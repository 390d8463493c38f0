import { type FormEvent, useRef } from 'react'
import styles from '#components/counter/bar.module.css'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { useCounterWords } from '#components/counter/words.tsx'
import { Button } from '#components/ui/button.tsx'

/** A name to call, where one is wanted. The number alone is the default. */
export function NameButton({
  desk: {
    ordering: { name },
    tap,
  },
}: {
  readonly desk: Pick<OrderingDesk, 'ordering' | 'tap'>
}) {
  const words = useCounterWords()
  const dialog = useRef<HTMLDialogElement>(null)
  const give = (given: string) => tap({ act: 'name', name: given })
  const keep = (event: FormEvent<HTMLFormElement>) => {
    const given = new FormData(event.currentTarget).get('name')
    give(typeof given === 'string' ? given : '')
  }
  return (
    <>
      <Button className={styles.way} onClick={() => dialog.current?.showModal()}>
        {name === '' ? words.addName : words.nameIs(name)}
      </Button>
      <dialog ref={dialog} className={styles.dialog} aria-label={words.addName}>
        <form method="dialog" onSubmit={keep}>
          <label htmlFor="name">{words.nameLabel}</label>
          <input id="name" name="name" defaultValue={name} maxLength={40} autoComplete="off" />
          <div>
            <Button kind="main" type="submit">
              {words.nameUse}
            </Button>
            <Button
              onClick={(event) => {
                give('')
                event.currentTarget.form?.reset()
                event.currentTarget.closest('dialog')?.close()
              }}
            >
              {words.nameNone}
            </Button>
          </div>
        </form>
      </dialog>
    </>
  )
}
