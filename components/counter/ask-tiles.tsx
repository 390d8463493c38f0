import styles from '#components/counter/ask.module.css'
import { LaterPart } from '#components/counter/later.tsx'
import { parts } from '#components/counter/later-parts.ts'
import { NeedTile } from '#components/counter/need-tile.tsx'
import frame from '#components/counter/step.module.css'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { useCounterWords } from '#components/counter/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { EMPTY_DRAFT } from '#lib/rooms/orders/facts/draft.ts'
import { askTiles } from '#lib/rooms/orders/views/ask-tiles.ts'
import { toAskOf } from '#lib/rooms/orders/views/to-ask-of.ts'
import type { RunningState } from '#lib/service/state.ts'
import { kindsOf } from '#lib/station/codes/askable.ts'
import type { Need, NeedCode } from '#lib/station/codes/codes.ts'

interface AskTilesProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
  readonly kept: readonly Need[]
  readonly more: () => void
}

/** The answers: none leads, and becomes the way on once something is told; each need has its tile. */
export function AskTiles({ state, desk, kept, more }: AskTilesProps) {
  const words = useCounterWords()
  const { ordering, tap } = desk
  const { needs } = ordering.drafts[ordering.current] ?? EMPTY_DRAFT
  const { tiles, more: others } = askTiles(state.station)
  const isKindOf = (group: NeedCode, code: NeedCode) => kindsOf(state.station, group).includes(code)
  const rare = needs.filter(
    ({ code }) => others.includes(code) && !tiles.some((tile) => isKindOf(tile, code)),
  )
  return (
    <div className={frame.upper}>
      {ordering.telling ? (
        <LaterPart of={parts.tellPanel} given={{ state, at: ordering.telling, needs, tap }} />
      ) : (
        <Answer desk={desk} />
      )}
      <div className={styles.tiles}>
        {tiles.map((code) => (
          <NeedTile
            key={code}
            code={code}
            need={needs.find((one) => one.code === code)}
            stays={kept.some((one) => one.code === code)}
            kinds={needs.filter((one) => isKindOf(code, one.code))}
            tap={tap}
          />
        ))}
        <button
          type="button"
          className={styles.tile}
          data-more=""
          data-told={rare.length > 0 || undefined}
          onClick={more}
        >
          <strong>{words.more}</strong>
          {rare.length > 0 && (
            <small>{rare.map(({ code }) => words.needTile(code)).join(', ')}</small>
          )}
        </button>
      </div>
    </div>
  )
}

function Answer({ desk: { ordering, tap } }: { readonly desk: OrderingDesk }) {
  const words = useCounterWords()
  const draft = ordering.drafts[ordering.current] ?? EMPTY_DRAFT
  const isTold = draft.needs.length > 0
  const isAsked = toAskOf(draft).length > 0
  return (
    <div className={`${frame.side} ${styles.answer}`}>
      <Button
        kind="main"
        size="large"
        className={frame.main}
        onClick={() =>
          tap(
            !isTold
              ? { act: 'asked-none' }
              : isAsked
                ? { act: 'said-needs', isSaid: true }
                : { act: 'said-needs' },
          )
        }
      >
        {isTold ? (isAsked ? words.leftOutSaid : words.saidNeeds) : words.askedNone}
      </Button>
      <p className={styles.caution}>{words.caution}</p>
      <Button
        className={styles.sure}
        sub={words.notSureHint}
        onClick={() => tap({ act: 'not-sure' })}
      >
        {words.notSure}
      </Button>
    </div>
  )
}
