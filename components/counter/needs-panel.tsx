import styles from '#components/counter/ask.module.css'
import shared from '#components/counter/counter.module.css'
import { sayRow } from '#components/counter/say-row.ts'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { useCounterWords } from '#components/counter/words.tsx'
import { EMPTY_DRAFT } from '#lib/rooms/orders/facts/draft.ts'
import { staysApart } from '#lib/rooms/orders/views/changing.ts'
import { itemRows } from '#lib/rooms/orders/views/counter.ts'
import { settleAll } from '#lib/rooms/orders/views/ordering.ts'
import { toAskOf } from '#lib/rooms/orders/views/to-ask-of.ts'
import type { RunningState } from '#lib/service/state.ts'
import { hasKinds } from '#lib/station/codes/askable.ts'
import type { Need } from '#lib/station/codes/codes.ts'

interface NeedsPanelProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
  readonly kept: readonly Need[]
  readonly detail: () => void
}

/** Beyond so many, only what is needed to answer the guest stays in sight. */
const FEW = 3

/** What the guest told so far, what fits by that, and the way on. */
export function NeedsPanel({ state, desk: { ordering, tap }, kept, detail }: NeedsPanelProps) {
  const words = useCounterWords()
  const draft = ordering.drafts[ordering.current] ?? EMPTY_DRAFT
  const { needs } = draft
  const asked = toAskOf(draft)
  if (needs.length === 0)
    return (
      <div className={styles.panel} data-idle="">
        <div className={styles.words}>
          <p>{words.caution}</p>
          <p>{words.otherNeeds}</p>
        </div>
      </div>
    )
  const isApart = needs.some((one) => one.handling === 'keep-apart')
  const noOne = isApart && state.inCharge === null
  return (
    <div className={styles.panel} data-many={needs.length > FEW || undefined}>
      <div className={styles.words}>
        <div className={styles.handlings}>
          {needs.map(({ code, handling }) => (
            <button
              key={code}
              type="button"
              className={styles.handling}
              data-handling={handling}
              aria-label={words.changeHandling(code, handling)}
              disabled={staysApart(kept, code)}
              onClick={() => tap({ act: 'handling', code })}
            >
              <strong>
                {needs.length > FEW ? words.needTile(code) : words.need(code, handling)}
              </strong>
              <small>{staysApart(kept, code) ? words.stays : words.tapFor(code, handling)}</small>
            </button>
          ))}
          <button type="button" className={styles.closer} onClick={detail}>
            {needs.some(({ code }) => hasKinds(state.station, code))
              ? words.detail
              : words.detailReason}
          </button>
        </div>
        <Fits state={state} ordering={ordering} />
        {isApart && <p className={styles.sayAloud}>{words.saySharedLine}</p>}
        {asked.length > 0 && <p className={styles.sayAloud}>{words.askLeftOut(asked)}</p>}
        <p className={styles.small}>{words.cautionShort}</p>
      </div>
      <div className={styles.ways}>
        {noOne && (
          <button
            type="button"
            className={`${shared.button} ${styles.noOne}`}
            onClick={() => tap({ act: 'in-charge' })}
          >
            {words.signOn}
            <small role="alert">{words.noOneInCharge}</small>
          </button>
        )}
        {asked.length > 0 && (
          <button
            type="button"
            className={shared.button}
            onClick={() => {
              for (const code of asked) tap({ act: 'handling', code })
            }}
          >
            {words.leftOutApart}
          </button>
        )}
        <button
          type="button"
          className={shared.main}
          onClick={() =>
            tap(asked.length > 0 ? { act: 'said-needs', isSaid: true } : { act: 'said-needs' })
          }
        >
          {asked.length > 0 ? words.leftOutSaid : words.saidNeeds}
        </button>
      </div>
    </div>
  )
}

/** Every item at once, so that the guest has an answer before anything is chosen. */
function Fits({
  state,
  ordering,
}: {
  readonly state: RunningState
  readonly ordering: OrderingDesk['ordering']
}) {
  const words = useCounterWords()
  const offer = settleAll(ordering, state)[ordering.current]?.offer
  if (!offer) return null
  return (
    <ul className={styles.fits} aria-label={words.fits}>
      {itemRows(offer, EMPTY_DRAFT).map((row) => {
        const { kind, short } = sayRow(words, offer, row)
        return (
          <li key={row.item.id} data-fit={kind}>
            <strong>
              {row.item.name}
              {row.blocked === null && <small>{words.left(row.left)}</small>}
            </strong>
            <span>{short}</span>
          </li>
        )
      })}
    </ul>
  )
}
