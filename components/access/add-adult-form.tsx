import { useState } from 'react'
import { AdultFields, PassphraseLine } from '#components/access/adult-fields.tsx'
import { isRefused, type Refused, tell } from '#components/access/ask.ts'
import styles from '#components/access/page.module.css'
import { RefusedSaid } from '#components/access/refused-said.tsx'
import { useAccessWords } from '#components/access/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Note } from '#components/ui/note.tsx'
import { Panel } from '#components/ui/panel.tsx'
import type { AddAdult } from '#lib/access/http.ts'
import { adultLacks, NOBODY } from '#lib/access/new-adult.ts'

/** One more who answers for the line: somebody in charge vouches for them. */
export function AddAdultForm({
  onAdded,
  onClose,
}: {
  readonly onAdded: () => void
  readonly onClose: () => void
}) {
  const words = useAccessWords()
  const [adult, setAdult] = useState(NOBODY)
  const [role, setRole] = useState<AddAdult['role']>('lead')
  const [proof, setProof] = useState('')
  const [refused, setRefused] = useState<Refused | null>(null)
  const [added, setAdded] = useState<string | null>(null)
  const [isBusy, setBusy] = useState(false)
  const wrong = adultLacks(adult, [])
  const lacks =
    wrong === 'no-name'
      ? words.house.lacksName
      : wrong === 'too-short'
        ? words.house.lacksLonger
        : wrong !== null
          ? words.refused[wrong]
          : proof === ''
            ? words.devices.proof
            : null
  const add = async () => {
    if (lacks !== null || isBusy) return
    setBusy(true)
    setRefused(null)
    setAdded(null)
    const asked: AddAdult = { ...adult, role, proof }
    const answer = await tell('/access/adults', asked)
    setBusy(false)
    setProof('')
    if (isRefused(answer)) return setRefused(answer)
    setAdded(adult.name)
    setAdult(NOBODY)
    onAdded()
  }
  return (
    <Panel
      className={styles.panel ?? ''}
      title={words.devices.addAdult}
      label={words.devices.addAdult}
      back={words.devices.close}
      onBack={onClose}
    >
      <form
        className={styles.form}
        onSubmit={(event) => {
          event.preventDefault()
          void add()
        }}
      >
        <Choice
          legend={words.devices.addAs}
          isBare
          ways={[
            { id: 'lead', label: words.devices.asLead },
            { id: 'in-charge', label: words.devices.asInCharge },
          ]}
          chosen={role}
          onChoose={setRole}
        />
        <AdultFields adult={adult} onAdult={setAdult} />
        <PassphraseLine label={words.devices.proof} value={proof} onChange={setProof} />
        <RefusedSaid refused={refused} notIt={words.passphrase.notInCharge} />
        {added !== null && (
          <Note kind="done" role="status">
            {words.devices.added(added)}
          </Note>
        )}
        <div className={styles.acts}>
          <Button kind="main" size="large" type="submit" disabled={isBusy} lacks={lacks}>
            {words.devices.add}
          </Button>
        </div>
      </form>
    </Panel>
  )
}
