import { type ReactNode, useState } from 'react'
import { ChangeFields, PassphraseLine } from '#components/access/adult-fields.tsx'
import type { ListedAdult } from '#components/access/adult-rows.tsx'
import { isRefused, type Refused, tell } from '#components/access/ask.ts'
import styles from '#components/access/page.module.css'
import { RefusedSaid } from '#components/access/refused-said.tsx'
import { useAccessWords } from '#components/access/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Panel } from '#components/ui/panel.tsx'
import type { ChangePassphrase, RemoveAdult } from '#lib/access/http.ts'
import { passphraseProblem } from '#lib/access/passphrase.ts'

interface FormProps {
  readonly adult: ListedAdult
  readonly onDone: (said: string) => void
  readonly onClose: () => void
}

/** One thing done to an adult, by a passphrase. */
function AdultForm({
  title,
  what,
  lacks,
  kind,
  act,
  onAct,
  onClose,
  children,
}: {
  readonly title: string
  readonly what: string
  readonly lacks: string | null
  readonly kind: 'main' | 'no'
  readonly act: string
  /** Null where it was done. */
  readonly onAct: () => Promise<Refused | null>
  readonly onClose: () => void
  readonly children: ReactNode
}) {
  const words = useAccessWords()
  const [refused, setRefused] = useState<Refused | null>(null)
  const [isBusy, setBusy] = useState(false)
  const submit = async () => {
    if (lacks !== null || isBusy) return
    setBusy(true)
    setRefused(null)
    setRefused(await onAct())
    setBusy(false)
  }
  return (
    <Panel
      className={styles.panel ?? ''}
      title={title}
      label={title}
      back={words.devices.close}
      onBack={onClose}
    >
      <form
        className={styles.form}
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <p className={styles.said}>{what}</p>
        {children}
        <RefusedSaid refused={refused} />
        <div className={styles.acts}>
          <Button kind={kind} size="large" type="submit" disabled={isBusy} lacks={lacks}>
            {act}
          </Button>
        </div>
      </form>
    </Panel>
  )
}

/** An adult's own: the passphrase of before, then the new one. */
export function ChangePassphraseForm({ adult, onDone, onClose }: FormProps) {
  const { devices: words, house, refused } = useAccessWords()
  const [before, setBefore] = useState('')
  const [passphrase, setPassphrase] = useState('')
  const problem = passphraseProblem(passphrase)
  const lacks =
    before === ''
      ? words.lacksBefore
      : problem === 'too-short'
        ? house.lacksLonger
        : problem !== null
          ? refused[problem]
          : passphrase === before
            ? words.lacksOther
            : null
  const change = async () => {
    const asked: ChangePassphrase = { name: adult.name, before, passphrase }
    const answer = await tell('/access/passphrase', asked)
    if (!isRefused(answer)) onDone(words.changed(adult.name))
    else if (answer.code === 'not-it') setBefore('')
    return isRefused(answer) ? answer : null
  }
  return (
    <AdultForm
      title={words.changeOf(adult.name)}
      what={words.changeWhat(adult.name)}
      lacks={lacks}
      kind="main"
      act={words.change}
      onAct={change}
      onClose={onClose}
    >
      <ChangeFields
        before={before}
        passphrase={passphrase}
        onBefore={setBefore}
        onPassphrase={setPassphrase}
      />
    </AdultForm>
  )
}

/** Somebody in charge takes an adult out: their passphrase is the confirmation. */
export function TakeOutForm({
  adult,
  devices,
  onDone,
  onClose,
}: FormProps & {
  /** How many of theirs go with them. */
  readonly devices: number
}) {
  const { devices: words } = useAccessWords()
  const [proof, setProof] = useState('')
  const takeOut = async () => {
    const asked: RemoveAdult = { adult: adult.id, proof }
    const answer = await tell('/access/adults/remove', asked)
    setProof('')
    if (!isRefused(answer)) onDone(words.removed(adult.name))
    return isRefused(answer) ? answer : null
  }
  return (
    <AdultForm
      title={words.takeOutOf(adult.name)}
      what={words.takeOutSure(adult.name, devices)}
      lacks={proof === '' ? words.lacksProof : null}
      kind="no"
      act={words.takeOutOf(adult.name)}
      onAct={takeOut}
      onClose={onClose}
    >
      <PassphraseLine label={words.proof} value={proof} onChange={setProof} />
    </AdultForm>
  )
}
