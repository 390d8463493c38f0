import styles from '#components/counter/panel.module.css'
import frame from '#components/counter/step.module.css'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { type CounterWords, useCounterWords } from '#components/counter/words.tsx'
import { useCrew } from '#components/live/crew.tsx'
import { Button } from '#components/ui/button.tsx'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { type NextStep, nextStep } from '#lib/rooms/orders/views/next-step.ts'
import { settleAll } from '#lib/rooms/orders/views/ordering.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findTicket, LETTERS } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** What is done next with the order; once it can be sent, the price with whether it is paid. */
export function SendButton({
  state,
  desk: { ordering, submit, tap },
  price,
}: {
  readonly state: RunningState
  readonly desk: OrderingDesk
  readonly price: (cents: number) => string
}) {
  const words = useCounterWords()
  const link = useCrew((view) => view.link)
  const next = nextStep(ordering, state)
  const { changing, current } = ordering
  const isSending = ordering.sending !== null
  if (!isSending && next.step !== 'order' && next.step !== 'send') {
    const { said, why, act } = wayOf(words, next, current, nameIn(state.station))
    return (
      <Button
        kind="main"
        size="large"
        className={`${frame.main} ${styles.main}`}
        sub={why}
        disabled={act === null}
        onClick={() => act && tap(act)}
      >
        {said}
      </Button>
    )
  }
  const total = settleAll(ordering, state).reduce(
    (sum, { settled }) => sum + (settled?.priceCents ?? 0),
    0,
  )
  const paid = changing ? (findTicket(state, changing.ticket)?.paid ?? false) : ordering.paid
  const said = changing ? words.sendChange : link === 'live' ? words.send : words.sendLater
  return (
    <>
      <Button
        kind="main"
        size="large"
        className={`${frame.main} ${styles.main}`}
        disabled={isSending || next.step !== 'send'}
        sub={
          changing && total > 0 ? `${price(total)} ${paid ? words.paid : words.unpaid}` : undefined
        }
        onClick={submit}
      >
        {isSending ? words.sending : said}
      </Button>
      {!changing && total > 0 && (
        <button
          type="button"
          className={styles.pay}
          data-paid={paid || undefined}
          aria-label={words.over.payToggle(price(total), paid)}
          disabled={isSending}
          onClick={() => tap({ act: 'paid' })}
        >
          <strong>{price(total)}</strong>
          <span>{paid ? words.paid : words.unpaid}</span>
          <small>{words.over.payTap(paid)}</small>
        </button>
      )}
    </>
  )
}

interface Way {
  readonly said: string
  readonly why: string
  /** null: nothing to tap here, but on the pans. */
  readonly act: Act | null
}

const wayOf = (
  words: CounterWords,
  next: Exclude<NextStep, { readonly step: 'order' | 'send' }>,
  current: number,
  nameOf: (id: string) => string,
): Way => {
  const letter = LETTERS.charAt(next.index)
  const isHere = next.index === current
  const goTo = { act: 'go-to', index: next.index } as const
  switch (next.step) {
    case 'base':
      return {
        said: words.chooseBase,
        why: words.chooseBaseWhy(next.bases.map(nameOf)),
        act: isHere ? null : goTo,
      }
    case 'say-again':
      return isHere
        ? { said: words.readAgain, why: words.readAgainWhy, act: { act: 'read-again' } }
        : { said: words.sayAgain(letter), why: words.sayAgainWhy(letter), act: goTo }
    case 'sign-on':
      return { said: words.signOn, why: words.signOnWhy, act: { act: 'in-charge' } }
    case 'accept':
      return {
        said: words.callInCharge,
        why: words.callInChargeFor(letter),
        act: isHere ? { act: 'in-charge' } : goTo,
      }
    case 'turn':
      return {
        said: isHere ? words.turn : words.turnTo(letter),
        why: words.turnWhy,
        act: { act: 'turn', index: next.index },
      }
  }
}
