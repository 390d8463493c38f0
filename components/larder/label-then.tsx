import { useState } from 'react'
import styles from '#components/larder/larder.module.css'
import { useLarderWords } from '#components/larder/larder-words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Field } from '#components/ui/field.tsx'
import type { LarderCommand } from '#lib/larder/command.ts'
import { PACKS, type Pack } from '#lib/larder/relabelled.ts'
import type { RelabelledHere } from '#lib/larder/shelf-view.ts'

interface LabelThenProps {
  readonly lot: string
  readonly changed: RelabelledHere
  readonly ask: (command: LarderCommand, passphrase: string) => void
}

/** Of which pack it was made: said by the person in charge, before any of it is taken. */
export function LabelThen({ lot, changed, ask }: LabelThenProps) {
  const words = useLarderWords().label
  const [pack, setPack] = useState<Pack | null>(null)
  const [passphrase, setPassphrase] = useState('')
  const { ingredient, name, was, is, version } = changed
  const lacks = pack === null ? words.lacksPack : passphrase === '' ? words.lacksPassphrase : null
  const send = () => {
    if (pack === null) return
    ask({ type: 'confirmLotLabel', lot, ingredient, pack, saw: version }, passphrase)
    setPassphrase('')
  }
  return (
    <fieldset className={styles.question}>
      <legend>{words.title(name)}</legend>
      <div className={styles.labels}>
        <p>{words.wasRead(was)}</p>
        <p>{words.isRead(is)}</p>
      </div>
      <div className={styles.fields}>
        <Choice
          legend={words.which}
          ways={PACKS.map((one) => ({ id: one, label: words.pack[one], more: words.counts[one] }))}
          chosen={pack}
          onChoose={setPack}
        />
        <Field
          label={words.passphrase}
          type="password"
          value={passphrase}
          maxLength={200}
          onChange={(event) => setPassphrase(event.target.value)}
        />
        <Button kind="main" lacks={lacks} onClick={send}>
          {words.send}
        </Button>
      </div>
      <p>{words.nobody}</p>
    </fieldset>
  )
}
