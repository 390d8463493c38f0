import { type FormEvent, useState } from 'react'
import styles from '#components/menu/label/reading.module.css'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import { PassphraseField } from '#components/start/passphrase-field.tsx'
import { Button } from '#components/ui/button.tsx'

interface SignOffProps {
  /** What is missing or wrong before it can be written down; null: nothing. */
  readonly lacks: string | null
  readonly today: string
  /** What was refused, in words. */
  readonly refused: string | null
  readonly busy: boolean
  readonly onWrite: (passphrase: string) => void
}

/** The person in charge writes the label down, with the passphrase, typed anew each time. */
export function SignOff({ lacks, today, refused, busy, onWrite }: SignOffProps) {
  const words = useLabelFormWords()
  const [passphrase, setPassphrase] = useState('')
  const write = (event: FormEvent) => {
    event.preventDefault()
    if (busy || lacks !== null || passphrase === '') return
    onWrite(passphrase)
    setPassphrase('')
  }
  const missing = lacks ?? (passphrase === '' ? words.noPassphrase : null)
  return (
    <form className={styles.sign} aria-label={words.signs} onSubmit={write}>
      <p>{words.today(today)}</p>
      <PassphraseField label={words.passphrase} value={passphrase} onChange={setPassphrase} />
      <Button type="submit" kind="main" size="large" lacks={busy ? words.writing : missing}>
        {words.write}
      </Button>
      <p role="status" className={styles.refused}>
        {refused}
      </p>
    </form>
  )
}
