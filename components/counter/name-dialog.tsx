import type { FormEvent, Ref } from 'react'
import styles from '#components/counter/bar.module.css'
import shared from '#components/counter/counter.module.css'
import { useCounterWords } from '#components/counter/words.tsx'

interface NameDialogProps {
  readonly ref: Ref<HTMLDialogElement>
  readonly name: string
  readonly onName: (name: string) => void
}

/** A name to call, where one is wanted. The number alone is the default. */
export function NameDialog({ ref, name, onName }: NameDialogProps) {
  const words = useCounterWords()
  const keep = (event: FormEvent<HTMLFormElement>) => {
    const given = new FormData(event.currentTarget).get('name')
    onName(typeof given === 'string' ? given : '')
  }
  return (
    <dialog ref={ref} className={styles.dialog} aria-label={words.addName}>
      <form method="dialog" onSubmit={keep}>
        <label htmlFor="name">{words.nameLabel}</label>
        <input id="name" name="name" defaultValue={name} maxLength={40} autoComplete="off" />
        <div className={shared.row}>
          <button type="submit" className={shared.main}>
            {words.nameUse}
          </button>
          <button
            type="button"
            className={shared.button}
            onClick={(event) => {
              onName('')
              event.currentTarget.form?.reset()
              event.currentTarget.closest('dialog')?.close()
            }}
          >
            {words.nameNone}
          </button>
        </div>
      </form>
    </dialog>
  )
}
