import { useState } from 'react'
import styles from '#components/start/in-charge.module.css'
import { useInChargeWords } from '#components/start/in-charge-words.tsx'
import { PassphraseField } from '#components/start/passphrase-field.tsx'

interface SetPassphraseProps {
  /** There is one already, so that it has to be known before it is changed. */
  readonly isChange: boolean
  readonly onSet: () => void
  readonly onBack: () => void
}

const codeOf = (answer: unknown): string =>
  typeof answer === 'object' && answer !== null && 'code' in answer ? String(answer.code) : 'failed'

const tell = async (body: { passphrase: string; before?: string }): Promise<string> => {
  try {
    const response = await fetch('/in-charge/passphrase', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    })
    return codeOf(await response.json())
  } catch {
    return 'failed'
  }
}

export function SetPassphrase({ isChange, onSet, onBack }: SetPassphraseProps) {
  const words = useInChargeWords()
  const [before, setBefore] = useState('')
  const [wanted, setWanted] = useState('')
  const [again, setAgain] = useState('')
  const [problem, setProblem] = useState('')
  const [isBusy, setBusy] = useState(false)

  const send = async () => {
    if (isBusy) return
    if (wanted !== again) return setProblem(words.notEqual)
    setBusy(true)
    setProblem('')
    const code = await tell(isChange ? { passphrase: wanted, before } : { passphrase: wanted })
    setBusy(false)
    if (code === 'set') onSet()
    else setProblem(words.problem[code] ?? words.failed)
  }

  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      {isChange && <PassphraseField label={words.before} value={before} onChange={setBefore} />}
      <PassphraseField label={words.wanted} isNew value={wanted} onChange={setWanted} />
      <PassphraseField label={words.again} isNew value={again} onChange={setAgain} />
      <p>{words.rule}</p>
      <p role="status" className={styles.problem}>
        {problem}
      </p>
      <div className={styles.pair}>
        <button
          type="submit"
          className={styles.main}
          disabled={isBusy || wanted === '' || again === '' || (isChange && before === '')}
        >
          {isChange ? words.changeNow : words.setNow}
        </button>
        <button type="button" className={styles.other} onClick={onBack}>
          {words.changeNot}
        </button>
      </div>
    </form>
  )
}
