import { nanoid } from 'nanoid'
import { useRef, useState } from 'react'
import { useAccess } from '#components/access/use-access.ts'
import styles from '#components/larder/larder.module.css'
import { useLarderWords } from '#components/larder/larder-words.tsx'
import { reasonsNot, waitsForLabel } from '#components/larder/lot-said.ts'
import {
  type Asked,
  amountTyped,
  askedAs,
  type Into,
  intoWhich,
  takingOf,
  weighedIn,
} from '#components/larder/take-entry.ts'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Field } from '#components/ui/field.tsx'
import { Note } from '#components/ui/note.tsx'
import type { NotTheOldest } from '#lib/larder/event.ts'
import type { LotShown } from '#lib/larder/shelf-view.ts'
import type { ServicesHere } from '#lib/rooms/day/views/services-here.ts'

const LOOK_EVERY_MS = 3_000

/** The socket comes with the first taking: who looks at the shelves needs none. */
const loadSendTo = async () => (await import('#components/larder/send-to.ts')).sendTo

export interface Told {
  readonly is: 'done' | 'no'
  readonly what: string
}

interface TakeIntoProps {
  readonly lot: LotShown
  /** Of the same food the one that goes before it; null where it goes first. */
  readonly older: LotShown | null
  readonly onOlder: (lot: string) => void
  readonly initials: string
  /** What came of it, in words; the shelves are looked at again. */
  readonly onTold: (told: Told) => void
}

/** Takes a lot, or some of it, into the open service of the station or one that is planned. */
export function TakeInto({ lot, older, onOlder, initials, onTold }: TakeIntoProps) {
  const words = useLarderWords()
  const { seen } = useAccess<ServicesHere>('/services', LOOK_EVERY_MS)
  const [text, setText] = useState('')
  const [why, setWhy] = useState<NotTheOldest | null>(null)
  const [isAsked, setAsked] = useState(false)
  const [busy, setBusy] = useState(false)
  /** What isn't answered goes again under its id, so that it is taken once. */
  const waiting = useRef<Asked | null>(null)

  if (lot.barred !== null)
    return (
      <p>
        {words.sayLotProblem(
          lot.barred,
          (at) => words.dayAndTime(words.sayDay(at, lot.timeZone), words.sayTime(at, lot.timeZone)),
          (id) => id,
          words.sayMuch,
        )}
      </p>
    )
  const isPieces = lot.unit === 'piece'
  const unit = weighedIn(lot)
  const amount = amountTyped(lot, text)
  const saysWhy = isAsked || !lot.isFirst
  const say = (much: number) => words.sayMuch(much, lot.unit)

  const zone = seen?.station?.timeZone ?? lot.timeZone
  const nameOf = ({ planned }: Into) =>
    planned === null ? words.take.openOne : words.sayPlanned(planned, zone)

  const take = async (into: Into): Promise<void> => {
    if (amount === null) return
    const command = takingOf(lot.lot, amount, { why: saysWhy ? why : null, initials })
    const { service } = into
    const asked = askedAs(waiting.current, service, command, nanoid)
    waiting.current = asked
    setBusy(true)
    const answer = await loadSendTo()
      .then((sendTo) => sendTo(service, asked.id, command))
      .catch(() => null)
    setBusy(false)
    if (answer === null) return onTold({ is: 'no', what: words.take.unknown })
    waiting.current = null
    if (answer.answer === 'accepted')
      return onTold({ is: 'done', what: words.take.done(say(amount), lot.name, nameOf(into)) })
    const { sayRefusal, sayNotTaken } = await words.loadRefusals()
    if (answer.answer === 'not taken')
      return onTold({ is: 'no', what: sayNotTaken(answer.because) })
    const { refusal } = answer
    if (refusal.code === 'cannot-take-lot' && refusal.problem.code === 'older-lot') setAsked(true)
    const what = sayRefusal(
      refusal,
      (one) => (one === lot.component ? lot.name : one),
      (at) => words.sayTime(at, lot.timeZone),
    )
    onTold({ is: 'no', what: words.take.notTaken(lot.name, what) })
  }

  // Read first, or a reason told: until then nothing else is asked.
  const isHeldBack = waitsForLabel(older) && why === null
  const whyNot = (
    <Choice
      legend={words.take.whyNotFirst}
      ways={reasonsNot(older).map((one) => ({ id: one, label: words.take.why[one] }))}
      chosen={why}
      onChoose={setWhy}
    />
  )
  const services = seen === null ? [] : intoWhich(seen)
  return (
    <fieldset className={styles.take}>
      <legend>{words.take.title}</legend>
      {older && isHeldBack && (
        <>
          <Note kind="watch" role="status">
            {words.take.labelFirst(older.lastDay === null ? null : words.sayDate(older.lastDay))}
          </Note>
          <Button kind="main" onClick={() => onOlder(older.lot)}>
            {words.take.toOlder}
          </Button>
          {whyNot}
        </>
      )}
      {seen !== null && services.length === 0 ? (
        <p>
          {words.take.nowhere} <a href="/">{words.toFirstPage}</a>
        </p>
      ) : isHeldBack ? null : (
        <>
          <div className={styles.fields}>
            <Field
              label={words.take.amount}
              value={text}
              placeholder={words.take.all(say(lot.amount))}
              inputMode="decimal"
              maxLength={7}
              side={<span>{isPieces ? words.take.pieces : unit}</span>}
              onChange={(event) => setText(event.target.value)}
            />
            {saysWhy && whyNot}
          </div>
          <div className={styles.acts}>
            {services.map((one) => (
              <Button
                key={one.service}
                disabled={busy || amount === null}
                sub={amount === null ? words.take.noAmount : words.take.much(say(amount))}
                onClick={() => void take(one)}
              >
                {words.take.into(nameOf(one))}
              </Button>
            ))}
          </div>
        </>
      )}
    </fieldset>
  )
}
