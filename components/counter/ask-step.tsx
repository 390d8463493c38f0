import styles from '#components/counter/ask.module.css'
import shared from '#components/counter/counter.module.css'
import { OrderBar } from '#components/counter/order-bar.tsx'
import { SentBanner, type SentWords } from '#components/counter/sent-banner.tsx'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { WaitingOrders } from '#components/counter/waiting-orders.tsx'
import { isDiet, type Need, type NeedCode } from '#lib/needs/codes.ts'
import type { RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import type { Act } from '#lib/views/order-act.ts'
import { counter } from '#lib/words/counter-en.ts'

/** In the order in which the tiles stand; the widest name takes two places. */
const TILES: readonly NeedCode[] = [
  'milk',
  'egg',
  'wheat',
  'soy',
  'peanut',
  'tree-nuts',
  'fish',
  'sesame',
  'shellfish',
  'vegetarian',
  'vegan',
]

interface AskStepProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
  readonly sentWords: SentWords | null
}

/** Allergies and diet first, in words to say aloud. Idle, it shows what was just sent. */
export function AskStep({ state, desk, sentWords }: AskStepProps) {
  const { ordering, tap } = desk
  const draft = ordering.drafts[ordering.current]
  const needs = draft?.needs ?? []
  const isIdle = ordering.drafts.length === 1 && draft?.item === null && !ordering.changing
  return (
    <section className={styles.ask} aria-labelledby="ask">
      <div className={styles.top}>
        <div className={styles.news}>
          {!isIdle && <OrderBar state={state} desk={desk} />}
          {isIdle && sentWords && <SentBanner words={sentWords} />}
          <WaitingOrders state={state} ordering={ordering} tap={tap} />
          {isIdle && <p className={styles.hint}>{counter.askFirst}</p>}
        </div>
        {isIdle && (
          <button type="button" className={shared.button} onClick={() => tap({ act: 'tickets' })}>
            {counter.ticketsOpen(openBuilds(state).length)}
          </button>
        )}
      </div>
      <h2 id="ask" className={styles.question} tabIndex={-1} data-step="">
        {counter.question}
      </h2>
      <div className={styles.tiles}>
        <button
          type="button"
          className={styles.none}
          data-clear={needs.length > 0 || undefined}
          onClick={() => tap({ act: 'asked-none' })}
        >
          {needs.length > 0 ? counter.clearNeeds : counter.askedNone}
        </button>
        <button type="button" className={styles.notSure} onClick={() => tap({ act: 'not-sure' })}>
          <strong>{counter.notSure}</strong>
          <small>{counter.notSureHint}</small>
        </button>
        {TILES.map((code) => (
          <Tile key={code} code={code} need={needs.find((one) => one.code === code)} tap={tap} />
        ))}
      </div>
      <NeedsPanel needs={needs} tap={tap} />
    </section>
  )
}

function Tile({
  code,
  need,
  tap,
}: {
  readonly code: NeedCode
  readonly need: Need | undefined
  readonly tap: (act: Act) => void
}) {
  return (
    <button
      type="button"
      className={styles.tile}
      data-code={code}
      data-diet={isDiet(code) || undefined}
      data-handling={need?.handling}
      aria-pressed={need !== undefined}
      onClick={() => tap({ act: 'need', code })}
    >
      <strong>{counter.needTile[code]}</strong>
      {need && <small>{counter.asked(code, need.handling)}</small>}
    </button>
  )
}

function NeedsPanel({
  needs,
  tap,
}: {
  readonly needs: readonly Need[]
  readonly tap: (act: Act) => void
}) {
  if (needs.length === 0)
    return (
      <div className={styles.panel} data-idle="">
        <div className={styles.words}>
          <p>{counter.caution}</p>
          <p>{counter.otherNeeds}</p>
        </div>
      </div>
    )
  const allergens = needs.filter((one) => !isDiet(one.code))
  return (
    <div className={styles.panel}>
      <div className={styles.words}>
        {allergens.length > 0 && (
          <div className={styles.handlings}>
            {allergens.map(({ code, handling }) => (
              <button
                key={code}
                type="button"
                className={styles.handling}
                data-handling={handling}
                aria-label={counter.changeHandling(code, handling)}
                onClick={() => tap({ act: 'handling', code })}
              >
                <strong>{counter.need(code, handling)}</strong>
                <small>{counter.tapFor(handling)}</small>
              </button>
            ))}
          </div>
        )}
        {needs.some((one) => one.handling === 'keep-apart') && (
          <p className={styles.sayAloud}>{counter.saySharedLine}</p>
        )}
        <p>{counter.cautionShort}</p>
      </div>
      <button type="button" className={shared.main} onClick={() => tap({ act: 'said-needs' })}>
        {counter.saidNeeds}
      </button>
    </div>
  )
}
