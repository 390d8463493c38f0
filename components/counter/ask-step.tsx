import { Suspense, useState } from 'react'
import styles from '#components/counter/ask.module.css'
import shared from '#components/counter/counter.module.css'
import { LaterPart } from '#components/counter/later.tsx'
import { parts } from '#components/counter/later-parts.ts'
import { NeedsPanel } from '#components/counter/needs-panel.tsx'
import { SentBanner, type SentWords } from '#components/counter/sent-banner.tsx'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { WaitingOrders } from '#components/counter/waiting-orders.tsx'
import { useCounterWords } from '#components/counter/words.tsx'
import { waitIfSent } from '#lib/rooms/orders/facts/guest-wait.ts'
import { askTiles } from '#lib/rooms/orders/views/ask-tiles.ts'
import { keptNeeds } from '#lib/rooms/orders/views/changing.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, LETTERS } from '#lib/service/tickets.ts'
import { kindsOf } from '#lib/station/codes/askable.ts'
import { isDiet, type Need, type NeedCode } from '#lib/station/codes/codes.ts'

interface AskStepProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
  readonly sentWords: SentWords | null
}

/** Allergies and diet first, in words to say aloud. Idle, it shows what was just sent. */
export function AskStep({ state, desk, sentWords }: AskStepProps) {
  const words = useCounterWords()
  const { ordering, tap } = desk
  const [behind, setBehind] = useState<'more' | 'detail' | null>(null)
  const draft = ordering.drafts[ordering.current]
  const needs = draft?.needs ?? []
  const { telling } = ordering
  const kept = keptNeeds(ordering, state)
  const isIdle =
    ordering.drafts.length === 1 && draft?.item === null && !ordering.changing && !telling
  const wait = isIdle ? waitIfSent(state, 1) : null
  const close = () => setBehind(null)
  const detail = () => setBehind('detail')
  return (
    <section className={styles.ask} aria-labelledby="ask">
      <div className={styles.top}>
        <div className={styles.news}>
          {!isIdle && !telling && <LaterPart of={parts.orderBar} given={{ state, desk }} />}
          {telling && (
            <p className={styles.telling}>
              {words.needs.tellTitle(buildName(telling.ticket, telling.letter))}
            </p>
          )}
          {isIdle && sentWords && <SentBanner words={sentWords} />}
          {isIdle && <LaterPart of={parts.heldStrip} given={{ state, tap }} />}
          <WaitingOrders state={state} ordering={ordering} tap={tap} />
          {isIdle && (
            <p className={styles.hint}>
              {words.askFirst} {wait && words.waitIsNow(wait)}
            </p>
          )}
        </div>
        {ordering.current > 0 && draft?.asked === null && needs.length === 0 && (
          <SameGuest current={ordering.current} drafts={ordering.drafts} tap={tap} />
        )}
        {isIdle && (
          <button type="button" className={shared.button} onClick={() => tap({ act: 'tickets' })}>
            {words.ticketsOpen(Object.keys(state.tickets).length)}
          </button>
        )}
      </div>
      <h2 id="ask" className={styles.question} tabIndex={-1} data-step="">
        {words.question}
      </h2>
      <Suspense fallback={<div className={styles.tiles} />}>
        {behind === 'detail' && needs.length > 0 ? (
          <LaterPart
            of={parts.needDetail}
            given={{ station: state.station, needs, kept, tap, close }}
          />
        ) : (
          <>
            {behind === 'more' ? (
              <LaterPart
                of={parts.moreNeeds}
                given={{ station: state.station, needs, kept, tap, close }}
              />
            ) : (
              <Tiles
                state={state}
                needs={needs}
                kept={kept}
                desk={desk}
                more={() => setBehind('more')}
              />
            )}
            {telling ? (
              <LaterPart
                of={parts.tellPanel}
                given={{ state, at: telling, needs, kept, tap, detail }}
              />
            ) : (
              <NeedsPanel state={state} desk={desk} kept={kept} detail={detail} />
            )}
          </>
        )}
      </Suspense>
    </section>
  )
}

function SameGuest({
  current,
  drafts,
  tap,
}: {
  readonly current: number
  readonly drafts: OrderingDesk['ordering']['drafts']
  readonly tap: (act: Act) => void
}) {
  const words = useCounterWords()
  const before = drafts[current - 1]
  if (!before || (before.asked !== 'none' && before.asked !== 'needs')) return null
  return (
    <button
      type="button"
      className={`${shared.button} ${styles.same}`}
      onClick={() => tap({ act: 'same-guest', index: current - 1 })}
    >
      {words.sameGuest(LETTERS.charAt(current - 1))}
      <small>
        {words.needsOf(
          before.asked === 'none',
          before.needs.map(({ code, handling }) => words.need(code, handling)),
        )}
      </small>
    </button>
  )
}

function Tiles({
  state,
  needs,
  kept,
  desk: { ordering, tap },
  more,
}: {
  readonly state: RunningState
  readonly needs: readonly Need[]
  readonly kept: readonly Need[]
  readonly desk: OrderingDesk
  readonly more: () => void
}) {
  const words = useCounterWords()
  const { tiles, more: others } = askTiles(state.station)
  const { telling } = ordering
  const toldOthers = needs.filter(
    ({ code }) => others.includes(code) && !tiles.some((tile) => isKindOf(state, tile, code)),
  )
  return (
    <div className={styles.tiles}>
      <button
        type="button"
        className={styles.none}
        data-clear={needs.length > 0 || telling ? '' : undefined}
        onClick={() => tap(telling ? { act: 'start-over' } : { act: 'asked-none' })}
      >
        {telling
          ? words.needs.tellNothing
          : kept.length > 0
            ? words.nothingMore
            : needs.length > 0
              ? words.clearNeeds
              : words.askedNone}
      </button>
      {!telling && (
        <button type="button" className={styles.notSure} onClick={() => tap({ act: 'not-sure' })}>
          <strong>{words.notSure}</strong>
          <small>{words.notSureHint}</small>
        </button>
      )}
      {tiles.map((code) => (
        <Tile
          key={code}
          code={code}
          need={needs.find((one) => one.code === code)}
          stays={kept.some((one) => one.code === code)}
          kinds={needs.filter((one) => isKindOf(state, code, one.code))}
          tap={tap}
        />
      ))}
      <button
        type="button"
        className={styles.tile}
        data-more=""
        data-told={toldOthers.length > 0 || undefined}
        onClick={more}
      >
        <strong>{words.more}</strong>
        {toldOthers.length > 0 && (
          <small>{toldOthers.map(({ code }) => words.needTile(code)).join(', ')}</small>
        )}
      </button>
    </div>
  )
}

const isKindOf = (state: RunningState, group: NeedCode, code: NeedCode): boolean =>
  kindsOf(state.station, group).includes(code)

function Tile({
  code,
  need,
  stays,
  kinds,
  tap,
}: {
  readonly code: NeedCode
  readonly need: Need | undefined
  readonly stays: boolean
  readonly kinds: readonly Need[]
  readonly tap: (act: Act) => void
}) {
  const words = useCounterWords()
  const handling = need?.handling ?? kinds[0]?.handling
  return (
    <button
      type="button"
      className={styles.tile}
      data-code={code}
      data-diet={isDiet(code) || undefined}
      data-handling={handling}
      aria-pressed={handling !== undefined}
      onClick={() => tap({ act: 'need', code })}
    >
      <strong>{words.needTile(code)}</strong>
      {need && <small>{words.asked(code, need.handling, stays)}</small>}
      {kinds.length > 0 && <small>{kinds.map((one) => words.needTile(one.code)).join(', ')}</small>}
    </button>
  )
}
