import { type FormEvent, useEffect, useRef, useState } from 'react'
import shared from '#components/counter/counter.module.css'
import styles from '#components/counter/in-charge.module.css'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { useCrew, useSend } from '#components/live/crew.tsx'
import { nameIn } from '#lib/menu/name-in.ts'
import type { Answer } from '#lib/protocol/wire.ts'
import { CAUTION_REASONS, type CautionReason } from '#lib/service/caution-reasons.ts'
import type { RunningState } from '#lib/service/state.ts'
import { acceptedSince, cautionNumbers } from '#lib/views/acceptance.ts'
import { foodOfSettled } from '#lib/views/draft.ts'
import { tellFinding } from '#lib/views/finding-told.ts'
import { settleAll } from '#lib/views/ordering.ts'
import { counter } from '#lib/words/counter-en.ts'
import { sayFinding } from '#lib/words/findings-en.ts'
import { inChargeEn } from '#lib/words/in-charge-en.ts'
import { sayNotTaken, sayRefusal } from '#lib/words/refusals-en.ts'

/** Shorter ones are never a passphrase: the server wouldn't take them. */
const SHORTEST = 8

interface InChargeStepProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
}

/** The adult signs on, and accepts with the guest what the build in sight has to be asked for. */
export function InChargeStep({ state, desk: { ordering, tap } }: InChargeStepProps) {
  const send = useSend()
  const link = useCrew((view) => view.link)
  const [reason, setReason] = useState<CautionReason | null>(null)
  const [said, setSaid] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const before = useRef<ReadonlySet<number> | null>(null)
  const field = useRef<HTMLInputElement>(null)
  const settled = settleAll(ordering, state)[ordering.current]?.settled ?? null
  const asks = ordering.from === 'choose' && settled !== null && settled.toAccept.length > 0
  const isOn = state.inCharge !== null
  const name = nameIn(state.station)

  useEffect(() => {
    if (!before.current || !settled) return
    const { choice, toAccept } = settled
    const caution = acceptedSince(state.cautions, before.current, choice, toAccept)
    if (caution !== null) tap({ act: 'caution-accepted', caution, food: foodOfSettled(settled) })
  }, [state.cautions, settled, tap])

  const isDone = (answer: Answer): boolean => {
    if (answer.answer === 'accepted') return true
    setSaid(
      answer.answer === 'refused' ? sayRefusal(answer.refusal, name) : sayNotTaken(answer.because),
    )
    return false
  }
  const prove = async (passphrase: string): Promise<void> => {
    const proof = { passphrase }
    if (!isOn && !isDone(await send({ type: 'signOn' }, undefined, proof))) return
    if (!asks || !settled || reason === null) {
      tap({ act: 'back' })
      return
    }
    before.current = cautionNumbers(state.cautions)
    const { choice } = settled
    if (!isDone(await send({ type: 'acceptCaution', build: choice, reason }, undefined, proof)))
      before.current = null
  }
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    const passphrase = field.current?.value ?? ''
    if (passphrase.length < SHORTEST) setSaid(inChargeEn.tooShort)
    else if (asks && reason === null) setSaid(inChargeEn.chooseReason)
    else {
      setSaid(null)
      setBusy(true)
      if (field.current) field.current.value = ''
      void prove(passphrase).finally(() => setBusy(false))
    }
  }
  const label = asks ? (isOn ? inChargeEn.accept : inChargeEn.signOnAndAccept) : inChargeEn.signOn
  return (
    <section className={styles.step} aria-labelledby="in-charge">
      <div className={styles.read}>
        <h2 id="in-charge" tabIndex={-1} data-step="">
          {asks ? inChargeEn.cautionTitle(settled.item.name) : inChargeEn.signOnTitle}
        </h2>
        {asks && (
          <>
            <p className={styles.needs}>
              {inChargeEn.keptFrom(
                settled.choice.needs
                  .map(({ code, handling }) => counter.need(code, handling))
                  .join(' · '),
              )}
            </p>
            <ul className={styles.cautions}>
              {settled.toAccept.map((one) => {
                const text = sayFinding(tellFinding(state.station, one))
                return <li key={`${text} ${one.need}`}>{text}.</li>
              })}
            </ul>
          </>
        )}
        <p>{asks ? inChargeEn.cautionWhy : inChargeEn.signOnWhy}</p>
        {!asks && isOn && <p className={styles.needs}>{inChargeEn.signedOn}</p>}
      </div>
      <form className={styles.prove} onSubmit={submit}>
        {asks && (
          <fieldset className={styles.reasons}>
            <legend>{inChargeEn.why}</legend>
            {CAUTION_REASONS.map((one) => (
              <button
                key={one}
                type="button"
                className={styles.reason}
                aria-pressed={reason === one}
                onClick={() => setReason(one)}
              >
                {inChargeEn.reason(one)}
              </button>
            ))}
          </fieldset>
        )}
        {(asks || !isOn) && (
          <label className={styles.passphrase}>
            {inChargeEn.passphrase}
            <input ref={field} type="password" autoComplete="off" maxLength={200} />
          </label>
        )}
        <p role="status" className={styles.said}>
          {busy
            ? link === 'live'
              ? inChargeEn.working
              : inChargeEn.noConnection
            : (said ?? (link === 'live' ? '' : inChargeEn.noConnection))}
        </p>
        <div className={styles.ways}>
          <button type="button" className={shared.button} onClick={() => tap({ act: 'back' })}>
            {asks ? inChargeEn.decline : inChargeEn.back}
          </button>
          {(asks || !isOn) && (
            <button type="submit" className={shared.main} disabled={busy || link !== 'live'}>
              {label}
            </button>
          )}
        </div>
      </form>
    </section>
  )
}
