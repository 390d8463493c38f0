import { type FormEvent, useEffect, useRef, useState } from 'react'
import shared from '#components/counter/counter.module.css'
import styles from '#components/counter/in-charge.module.css'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { useCounterWords } from '#components/counter/words.tsx'
import { useCrew, useSend } from '#components/live/crew.tsx'
import { tellFinding } from '#lib/needs/finding-told.ts'
import type { Answer } from '#lib/protocol/wire.ts'
import { foodOfSettled } from '#lib/rooms/orders/facts/draft.ts'
import { acceptedSince, cautionNumbers } from '#lib/rooms/orders/views/acceptance.ts'
import { settleAll } from '#lib/rooms/orders/views/ordering.ts'
import { CAUTION_REASONS, type CautionReason } from '#lib/service/events/caution-reasons.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** Shorter ones are never a passphrase: the server wouldn't take them. */
const SHORTEST = 8

interface InChargeStepProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
}

/** The adult signs on, and accepts with the guest what the build in sight has to be asked for. */
export function InChargeStep({ state, desk: { ordering, tap } }: InChargeStepProps) {
  const words = useCounterWords()
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
      answer.answer === 'refused'
        ? words.sayRefusal(answer.refusal, name)
        : words.sayNotTaken(answer.because),
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
    if (passphrase.length < SHORTEST) setSaid(words.inCharge.tooShort)
    else if (asks && reason === null) setSaid(words.inCharge.chooseReason)
    else {
      setSaid(null)
      setBusy(true)
      if (field.current) field.current.value = ''
      void prove(passphrase).finally(() => setBusy(false))
    }
  }
  const label = asks
    ? isOn
      ? words.inCharge.accept
      : words.inCharge.signOnAndAccept
    : words.inCharge.signOn
  return (
    <section className={styles.step} aria-labelledby="in-charge">
      <div className={styles.read}>
        <h2 id="in-charge" tabIndex={-1} data-step="">
          {asks ? words.inCharge.cautionTitle(settled.item.name) : words.inCharge.signOnTitle}
        </h2>
        {asks && (
          <>
            <p className={styles.needs}>
              {words.inCharge.guestSaid(
                settled.choice.needs
                  .map(({ code, handling }) => words.need(code, handling))
                  .join(' · '),
              )}
            </p>
            <ul className={styles.cautions}>
              {settled.toAccept.map((one) => {
                const text = words.sayFinding(tellFinding(state.station, one))
                return <li key={`${text} ${one.need}`}>{text}.</li>
              })}
            </ul>
          </>
        )}
        <p>{asks ? words.inCharge.cautionWhy : words.inCharge.signOnWhy}</p>
        {!asks && isOn && <p className={styles.needs}>{words.inCharge.signedOn}</p>}
      </div>
      <form className={styles.prove} onSubmit={submit}>
        {asks && (
          <fieldset className={styles.reasons}>
            <legend>{words.inCharge.why}</legend>
            {CAUTION_REASONS.map((one) => (
              <button
                key={one}
                type="button"
                className={styles.reason}
                aria-pressed={reason === one}
                onClick={() => setReason(one)}
              >
                {words.inCharge.reason(one)}
              </button>
            ))}
          </fieldset>
        )}
        {(asks || !isOn) && (
          <label className={styles.passphrase}>
            {words.inCharge.passphrase}
            <input ref={field} type="password" autoComplete="off" maxLength={200} />
          </label>
        )}
        <p role="status" className={styles.said}>
          {busy
            ? link === 'live'
              ? words.inCharge.working
              : words.inCharge.noConnection
            : (said ?? (link === 'live' ? '' : words.inCharge.noConnection))}
        </p>
        <div className={styles.ways}>
          <button type="button" className={shared.button} onClick={() => tap({ act: 'back' })}>
            {asks ? words.inCharge.decline : words.inCharge.back}
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
