import { type ReactNode, Suspense, useState } from 'react'
import styles from '#components/counter/ask.module.css'
import { AskTiles } from '#components/counter/ask-tiles.tsx'
import { LaterPart } from '#components/counter/later.tsx'
import { parts } from '#components/counter/later-parts.ts'
import { NeedsBand } from '#components/counter/needs-band.tsx'
import { SentBanner, type SentWords } from '#components/counter/sent-banner.tsx'
import frame from '#components/counter/step.module.css'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { WaitingOrders } from '#components/counter/waiting-orders.tsx'
import { useCounterWords } from '#components/counter/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { EMPTY_DRAFT } from '#lib/rooms/orders/facts/draft.ts'
import { waitIfSent } from '#lib/rooms/orders/facts/guest-wait.ts'
import { keptNeeds } from '#lib/rooms/orders/views/changing.ts'
import { settleAll } from '#lib/rooms/orders/views/ordering.ts'
import { toAskOf } from '#lib/rooms/orders/views/to-ask-of.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, LETTERS } from '#lib/service/tickets.ts'

interface AskStepProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
  readonly sentWords: SentWords | null
  /** What every screen has at its top. */
  readonly top: ReactNode
}

/**
 * Allergies and diet first, in words to say aloud, over the line. What the guest tells marks its pans
 * there, and each item says over them whether it fits; nothing that can be tapped moves.
 */
export function AskStep({ state, desk, sentWords, top }: AskStepProps) {
  const words = useCounterWords()
  const { ordering, tap } = desk
  const [behind, setBehind] = useState<'more' | 'detail' | null>(null)
  const draft = ordering.drafts[ordering.current] ?? EMPTY_DRAFT
  const { needs } = draft
  const { telling } = ordering
  const kept = keptNeeds(ordering, state)
  const isIdle =
    ordering.drafts.length === 1 && draft.item === null && !ordering.changing && !telling
  const offer = settleAll(ordering, state)[ordering.current]?.offer
  const close = () => setBehind(null)
  const told = { station: state.station, needs, kept, tap, close }
  const isClosing = behind === 'more' || (behind === 'detail' && needs.length > 0)
  return (
    <section className={frame.step} aria-labelledby="ask">
      <div className={`${frame.band} ${styles.band}`}>
        <h2
          id="ask"
          className={needs.length > 0 || telling ? 'visually-hidden' : styles.question}
          tabIndex={-1}
          data-step=""
        >
          {words.question}
        </h2>
        {telling && (
          <p className={styles.telling}>
            {words.needs.tellTitle(buildName(telling.ticket, telling.letter))}
          </p>
        )}
        {(needs.length > 0 || telling) && (
          <NeedsBand state={state} desk={desk} kept={kept} detail={() => setBehind('detail')} />
        )}
        {isIdle && needs.length === 0 && (
          <Button onClick={() => tap({ act: 'tickets' })}>
            {words.ticketsOpen(Object.keys(state.tickets).length)}
          </Button>
        )}
        {top}
      </div>
      <Suspense fallback={<div className={styles.closer} />}>
        {isClosing ? (
          <div className={styles.closer}>
            <LaterPart of={behind === 'more' ? parts.moreNeeds : parts.needDetail} given={told} />
          </div>
        ) : (
          <>
            <AskTiles state={state} desk={desk} kept={kept} more={() => setBehind('more')} />
            <Suspense fallback={<div className={styles.news} />}>
              {needs.length > 0 && !telling && offer ? (
                <div className={frame.menu}>
                  <LaterPart
                    of={parts.itemRows}
                    given={{
                      offer,
                      draft: EMPTY_DRAFT,
                      label: words.fits,
                      onChoose:
                        toAskOf(draft).length > 0 ? null : (item) => tap({ act: 'choose', item }),
                      wanted: null,
                    }}
                  />
                </div>
              ) : (
                <News state={state} desk={desk} isIdle={isIdle} sentWords={sentWords} />
              )}
            </Suspense>
          </>
        )}
      </Suspense>
      <Suspense fallback={<div className={frame.room} />}>
        {offer && <LaterPart of={parts.lineTold} given={{ offer }} />}
      </Suspense>
    </section>
  )
}

/** What the student is to know between two answers: numbers to tell, orders that wait, what is held. */
function News({
  state,
  desk,
  isIdle,
  sentWords,
}: {
  readonly state: RunningState
  readonly desk: OrderingDesk
  readonly isIdle: boolean
  readonly sentWords: SentWords | null
}) {
  const words = useCounterWords()
  const { ordering, tap } = desk
  const draft = ordering.drafts[ordering.current]
  const wait = isIdle ? waitIfSent(state, 1) : null
  return (
    <div className={styles.news}>
      {ordering.current > 0 && draft?.asked === null && <SameGuest desk={desk} />}
      {!isIdle && !ordering.telling && <LaterPart of={parts.orderBar} given={{ state, desk }} />}
      {isIdle && sentWords && <SentBanner words={sentWords} />}
      {isIdle && <LaterPart of={parts.heldStrip} given={{ state, tap }} />}
      <WaitingOrders state={state} ordering={ordering} tap={tap} />
      {isIdle && (
        <p className={styles.hint}>
          {words.askFirst} {wait && words.waitIsNow(wait)}
        </p>
      )}
      <p className={styles.aside}>{words.otherNeeds}</p>
      {isIdle && <p className={styles.aside}>{state.station.name}</p>}
    </div>
  )
}

function SameGuest({ desk: { ordering, tap } }: { readonly desk: OrderingDesk }) {
  const words = useCounterWords()
  const index = ordering.current - 1
  const before = ordering.drafts[index]
  if (!before || (before.asked !== 'none' && before.asked !== 'needs')) return null
  return (
    <Button
      sub={words.needsOf(
        before.asked === 'none',
        before.needs.map(({ code, handling }) => words.need(code, handling)),
      )}
      onClick={() => tap({ act: 'same-guest', index })}
    >
      {words.sameGuest(LETTERS.charAt(index))}
    </Button>
  )
}
