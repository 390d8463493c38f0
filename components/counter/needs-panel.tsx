import styles from '#components/counter/ask.module.css'
import shared from '#components/counter/counter.module.css'
import { sayRow } from '#components/counter/say-row.ts'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { hasKinds } from '#lib/needs/askable.ts'
import type { Need } from '#lib/needs/codes.ts'
import type { RunningState } from '#lib/service/state.ts'
import { staysApart } from '#lib/views/changing.ts'
import { itemRows } from '#lib/views/counter.ts'
import { EMPTY_DRAFT } from '#lib/views/draft.ts'
import { settleAll } from '#lib/views/ordering.ts'
import { toAskOf } from '#lib/views/to-ask-of.ts'
import { counter } from '#lib/words/counter-en.ts'

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
  const draft = ordering.drafts[ordering.current] ?? EMPTY_DRAFT
  const { needs } = draft
  const asked = toAskOf(draft)
  if (needs.length === 0)
    return (
      <div className={styles.panel} data-idle="">
        <div className={styles.words}>
          <p>{counter.caution}</p>
          <p>{counter.otherNeeds}</p>
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
              aria-label={counter.changeHandling(code, handling)}
              disabled={staysApart(kept, code)}
              onClick={() => tap({ act: 'handling', code })}
            >
              <strong>
                {needs.length > FEW ? counter.needTile(code) : counter.need(code, handling)}
              </strong>
              <small>
                {staysApart(kept, code) ? counter.stays : counter.tapFor(code, handling)}
              </small>
            </button>
          ))}
          <button type="button" className={styles.closer} onClick={detail}>
            {needs.some(({ code }) => hasKinds(state.station, code))
              ? counter.detail
              : counter.detailReason}
          </button>
        </div>
        <Fits state={state} ordering={ordering} />
        {isApart && <p className={styles.sayAloud}>{counter.saySharedLine}</p>}
        {asked.length > 0 && <p className={styles.sayAloud}>{counter.askLeftOut(asked)}</p>}
        <p className={styles.small}>{counter.cautionShort}</p>
      </div>
      <div className={styles.ways}>
        {noOne && (
          <button
            type="button"
            className={`${shared.button} ${styles.noOne}`}
            onClick={() => tap({ act: 'in-charge' })}
          >
            {counter.signOn}
            <small role="alert">{counter.noOneInCharge}</small>
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
            {counter.leftOutApart}
          </button>
        )}
        <button
          type="button"
          className={shared.main}
          onClick={() =>
            tap(asked.length > 0 ? { act: 'said-needs', isSaid: true } : { act: 'said-needs' })
          }
        >
          {asked.length > 0 ? counter.leftOutSaid : counter.saidNeeds}
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
  const offer = settleAll(ordering, state)[ordering.current]?.offer
  if (!offer) return null
  return (
    <ul className={styles.fits} aria-label={counter.fits}>
      {itemRows(offer, EMPTY_DRAFT).map((row) => {
        const { kind, short } = sayRow(offer, row)
        return (
          <li key={row.item.id} data-fit={kind}>
            <strong>
              {row.item.name}
              {row.blocked === null && <small>{counter.left(row.left)}</small>}
            </strong>
            <span>{short}</span>
          </li>
        )
      })}
    </ul>
  )
}
