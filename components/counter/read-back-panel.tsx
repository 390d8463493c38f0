import { type ReactNode, useRef, useState } from 'react'
import { MarkedSentences } from '#components/counter/marked-sentences.tsx'
import { NameButton } from '#components/counter/name-button.tsx'
import { NoteSaid } from '#components/counter/note-said.tsx'
import styles from '#components/counter/panel.module.css'
import { sayBlocked } from '#components/counter/say-note.ts'
import { SendButton } from '#components/counter/send-button.tsx'
import frame from '#components/counter/step.module.css'
import { useFit } from '#components/counter/use-fit.ts'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { useCounterWords } from '#components/counter/words.tsx'
import { useNarrow } from '#components/device/use-device.ts'
import { Button } from '#components/ui/button.tsx'
import { waitIfSent } from '#lib/rooms/orders/facts/guest-wait.ts'
import { settleAll } from '#lib/rooms/orders/views/ordering.ts'
import { markedSince } from '#lib/rooms/orders/views/reading.ts'
import type { RunningState } from '#lib/service/state.ts'
import { isPluralIn, nameIn } from '#lib/station/name-in.ts'

interface ReadBackPanelProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
}

/** The sentence to say, what stands in the way of it, and beside it the button that sends. */
export function ReadBackPanel({ state, desk }: ReadBackPanelProps) {
  const words = useCounterWords()
  const { ordering, isLate, tap } = desk
  const { station } = state
  const found = settleAll(ordering, state)[ordering.current]
  const settled = found?.settled
  const price = (cents: number) => words.sayCents(cents, station.currency)
  if (isLate)
    return (
      <Upper
        spoken={words.waitWhy}
        main={
          <Button
            kind="main"
            size="large"
            className={`${frame.main} ${styles.main}`}
            onClick={() => tap({ act: 'next-guest' })}
          >
            {words.nextGuest}
          </Button>
        }
        mark={{ 'data-late': '' }}
      >
        <p className={styles.title}>{words.waitTitle}</p>
        <p>{words.waitWhy}</p>
      </Upper>
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
  const { note } = ordering
  return (
    <Upper
      spoken={note || settled?.blocked ? null : words.readBackText(sentences)}
      main={<SendButton state={state} desk={desk} price={price} />}
      naming={!ordering.changing && <NameButton desk={desk} />}
      mark={{ 'data-note': note?.kind }}
    >
      {note && (
        <NoteSaid station={station} note={note} drafts={ordering.drafts} className={styles.note} />
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
        !note && (
          <>
            <p className={styles.title}>{words.chooseFirst}</p>
            {wait && <p>{words.waitIsNow(wait)}</p>}
          </>
        )
      )}
    </Upper>
  )
}

/** Letters that stand on three lines at the foot of a phone; what is longer opens by itself. */
const THREE_LINES = 64

/**
 * The button at the left and what is said beside it. On a phone both are at the foot, and what has no
 * room there, or is tapped, lies large over the menu, where no pan is.
 */
function Upper({
  spoken,
  main,
  naming,
  mark,
  children,
}: {
  /** null: what stands there is no sentence to say, and is opened. */
  readonly spoken: string | null
  readonly main: ReactNode
  /** On a phone the name is asked where what is said is open. */
  readonly naming?: ReactNode
  readonly mark: Readonly<Record<`data-${string}`, string | undefined>>
  readonly children: ReactNode
}) {
  const words = useCounterWords()
  const narrow = useNarrow()
  const said = useRef<HTMLDivElement>(null)
  const [turned, setTurned] = useState<{ readonly of: string | null; readonly open: boolean }>()
  useFit(said)
  const isLong = spoken === null || spoken.length > THREE_LINES
  const isOpen = turned?.of === spoken ? turned.open : isLong
  return (
    <div className={`${frame.upper} ${styles.upper}`}>
      <div className={`${frame.side} ${styles.foot}`} data-open={isOpen || undefined}>
        {main}
        {narrow && isOpen && spoken !== null && naming}
      </div>
      <div ref={said} className={styles.said} data-open={isOpen || undefined} {...mark}>
        {children}
      </div>
      {narrow && (
        <button
          type="button"
          className={styles.open}
          data-open={isOpen || undefined}
          aria-label={isOpen ? words.over.backToMenu : words.over.readLarge}
          aria-expanded={isOpen}
          onClick={() => setTurned({ of: spoken, open: !isOpen })}
        >
          <svg viewBox="0 0 40 12" aria-hidden="true">
            <path d={isOpen ? 'M4 3l16 7 16-7' : 'M4 10l16-7 16 7'} />
          </svg>
        </button>
      )}
    </div>
  )
}
