import { useState } from 'react'
import type { Acting } from '#components/live/acting.ts'
import styles from '#components/start/in-charge.module.css'
import { useInChargeWords } from '#components/start/in-charge-words.tsx'
import { PassphraseField } from '#components/start/passphrase-field.tsx'
import type { RunningState } from '#lib/service/state.ts'

interface SignOnProps {
  readonly state: RunningState
  readonly acting: Acting
}

/** Whether the person in charge is signed on to the open service, and signing on and off. */
export function SignOn({ state, acting }: SignOnProps) {
  const words = useInChargeWords()
  const [passphrase, setPassphrase] = useState('')
  const [isSure, setSure] = useState(false)
  const since = state.inCharge

  const signOn = async () => {
    if (acting.busy || passphrase === '') return
    const typed = passphrase
    setPassphrase('')
    await acting.act({ type: 'signOn' }, words.signedOn, { passphrase: typed })
  }
  const signOff = async () => {
    if (acting.busy) return
    if (!isSure) return setSure(true)
    setSure(false)
    await acting.act({ type: 'signOff' }, words.signedOff)
  }

  return (
    <div className={styles.sign}>
      <p className={styles.on} data-on={since !== null}>
        {since === null ? words.off : words.on(words.sayClock(since, state.station.timeZone))}
      </p>
      {since === null ? (
        <form
          className={styles.form}
          onSubmit={(event) => {
            event.preventDefault()
            void signOn()
          }}
        >
          <PassphraseField label={words.passphrase} value={passphrase} onChange={setPassphrase} />
          <button type="submit" className={styles.main} disabled={acting.busy || passphrase === ''}>
            {words.signOn}
          </button>
        </form>
      ) : (
        <div className={styles.form}>
          {isSure && <p>{words.signOffWhy}</p>}
          <button
            type="button"
            className={styles.other}
            disabled={acting.busy}
            onClick={() => void signOff()}
          >
            {isSure ? words.signOffSure : words.signOff}
          </button>
        </div>
      )}
    </div>
  )
}
