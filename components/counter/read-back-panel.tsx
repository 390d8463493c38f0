import shared from '#components/counter/counter.module.css'
import { MarkedSentences } from '#components/counter/marked-sentences.tsx'
import { lacksIn, NoteSaid } from '#components/counter/note-said.tsx'
import styles from '#components/counter/panel.module.css'
import { sayBlocked } from '#components/counter/say-note.ts'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { type CounterWords, useCounterWords } from '#components/counter/words.tsx'
import { useCrew } from '#components/live/crew.tsx'
import { waitIfSent } from '#lib/rooms/orders/facts/guest-wait.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { type NextStep, nextStep } from '#lib/rooms/orders/views/next-step.ts'
import { settleAll } from '#lib/rooms/orders/views/ordering.ts'
import { markedSince } from '#lib/rooms/orders/views/reading.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findTicket, LETTERS } from '#lib/service/tickets.ts'
import { isPluralIn, nameIn } from '#lib/station/name-in.ts'

/** Characters beyond which the sentence is set smaller or has more room, so that it is in sight. */
const MOST = 220
const LONG = 190
/** The wait stands on a line of its own below. */
const LONG_WITH_WAIT = 120
/** The button that asks to read it again takes the room of so many characters more. */
const BESIDE_READ_AGAIN = 60

interface ReadBackPanelProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
}

/** The sentence to say, what stands in the way of it, and the button that sends. */
export function ReadBackPanel({ state, desk }: ReadBackPanelProps) {
  const words = useCounterWords()
  const { ordering, isLate, tap } = desk
  const all = settleAll(ordering, state)
  const found = all[ordering.current]
  const settled = found?.settled
  const station = state.station
  const price = (cents: number) => words.sayCents(cents, station.currency)
  if (isLate)
    return (
      <div className={styles.panel} data-late="">
        <div className={styles.said}>
          <p className={styles.title}>{words.waitTitle}</p>
          <p>{words.waitWhy}</p>
        </div>
        <button type="button" className={shared.main} onClick={() => tap({ act: 'next-guest' })}>
          {words.nextGuest}
        </button>
      </div>
    )
  const wait = ordering.changing ? null : waitIfSent(state, ordering.drafts.length)
  const before = ordering.sending === null ? ordering.drafts[ordering.current]?.said : null
  const marked =
    found?.reading && settled && !settled.blocked
      ? markedSince(before?.statements ?? null, found.reading.statements)
      : []
  const sentences = words.sayReadBack(
    marked.map(({ statement }) => statement),
    nameIn(station),
    price,
    isPluralIn(station),
  )
  const isMarked = marked.some(({ mark }) => mark !== 'same')
  const length =
    words.readBackText(sentences).length +
    (ordering.note ? 80 : 0) +
    (isMarked ? BESIDE_READ_AGAIN : 0)
  return (
    <div
      className={styles.panel}
      data-note={ordering.note?.kind}
      data-lacks={lacksIn(station, ordering.note, ordering.drafts) !== null || undefined}
      data-long={
        length > MOST ? 'most' : length > (wait ? LONG_WITH_WAIT : LONG) ? 'long' : undefined
      }
    >
      <div className={styles.said}>
        {ordering.note && (
          <NoteSaid
            station={station}
            note={ordering.note}
            drafts={ordering.drafts}
            className={styles.note}
          />
        )}
        {found && settled ? (
          settled.blocked ? (
            <p className={styles.note}>
              {sayBlocked(words, station, settled.item.id, settled.blocked)}
            </p>
          ) : (
            <>
              <MarkedSentences sentences={sentences} marked={marked} />
              {wait && <p className={styles.wait}>{words.sayWait(wait)}</p>}
            </>
          )
        ) : (
          !ordering.note && (
            <>
              <p className={styles.title}>{words.chooseFirst}</p>
              {wait && <p>{words.waitIsNow(wait)}</p>}
            </>
          )
        )}
      </div>
      <SendButton state={state} desk={desk} price={price} />
    </div>
  )
}

function SendButton({
  state,
  desk: { ordering, submit, tap },
  price,
}: ReadBackPanelProps & { readonly price: (cents: number) => string }) {
  const words = useCounterWords()
  const link = useCrew((view) => view.link)
  const all = settleAll(ordering, state)
  const next = nextStep(ordering, state)
  const { changing, current } = ordering
  if (ordering.sending === null && next.step !== 'order' && next.step !== 'send')
    return <BeforeSending state={state} next={next} current={current} tap={tap} />
  const total = all.reduce((sum, { settled }) => sum + (settled?.priceCents ?? 0), 0)
  const isPaid = changing ? (findTicket(state, changing.ticket)?.paid ?? false) : ordering.paid
  const isReady = ordering.sending === null && next.step === 'send'
  const said = changing ? words.sendChange : link === 'live' ? words.send : words.sendLater
  return (
    <button type="button" className={shared.main} disabled={!isReady} onClick={submit}>
      {ordering.sending === null ? said : words.sending}
      {total > 0 && (
        <small>
          {price(total)} {isPaid ? words.paid : words.unpaid}
        </small>
      )}
    </button>
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

function BeforeSending({
  state,
  next,
  current,
  tap,
}: {
  readonly state: RunningState
  readonly next: Exclude<NextStep, { readonly step: 'order' | 'send' }>
  readonly current: number
  readonly tap: (act: Act) => void
}) {
  const words = useCounterWords()
  const { said, why, act } = wayOf(words, next, current, nameIn(state.station))
  return (
    <button
      type="button"
      className={`${shared.main} ${styles.before}`}
      disabled={act === null}
      onClick={() => act && tap(act)}
    >
      {said}
      <small>{why}</small>
    </button>
  )
}
