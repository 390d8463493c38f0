import styles from '#components/counter/ask.module.css'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { useCounterWords } from '#components/counter/words.tsx'
import { useNarrow } from '#components/device/use-device.ts'
import { Button } from '#components/ui/button.tsx'
import { EMPTY_DRAFT } from '#lib/rooms/orders/facts/draft.ts'
import { staysApart } from '#lib/rooms/orders/views/changing.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { toAskOf } from '#lib/rooms/orders/views/to-ask-of.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, LETTERS } from '#lib/service/tickets.ts'
import { hasKinds } from '#lib/station/codes/askable.ts'
import type { Need } from '#lib/station/codes/codes.ts'

interface NeedsBandProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
  readonly kept: readonly Need[]
  readonly detail: () => void
}

/** So many stand side by side, each changed by one tap; more are named together. */
const MOST = 4
/** Letters of a name that stand on a chip at full size. */
const LONG = 14
/** Beyond so many each is set smaller. */
const FEW = 2

/** In the question's place once it was answered: what the guest told, and what to say to that. */
export function NeedsBand({ state, desk: { ordering, tap }, kept, detail }: NeedsBandProps) {
  const words = useCounterWords()
  const draft = ordering.drafts[ordering.current] ?? EMPTY_DRAFT
  const { needs } = draft
  const { telling } = ordering
  const asked = toAskOf(draft)
  const isApart = needs.some((one) => one.handling === 'keep-apart')
  const noOne = isApart && state.inCharge === null && !telling
  // A phone has room for what has to be answered first; the tile takes the need back.
  const isFirst = useNarrow() && (noOne || asked.length > 0)
  return (
    <>
      {needs.length > 0 && (
        <NeedChips
          needs={needs}
          kept={kept}
          tap={tap}
          state={state}
          detail={detail}
          isShort={isFirst}
        />
      )}
      {!telling && (
        <div
          className={styles.lead}
          data-tight={
            needs.length > FEW || kept.length > 0 || ordering.drafts.length > 1 || undefined
          }
        >
          <Whose desk={{ ordering }} />
          {asked.length > 0 && <p>{words.askLeftOut(asked)}</p>}
          {isApart && !noOne && <p>{words.saySharedLine}</p>}
          {kept.length > 0 && <small>{words.staysWhy}</small>}
        </div>
      )}
      {noOne && (
        <Button
          kind="no"
          className={styles.way}
          data-wide=""
          sub={<span role="alert">{words.noOneInCharge}</span>}
          onClick={() => tap({ act: 'in-charge' })}
        >
          {words.signOn}
        </Button>
      )}
      {asked.length > 0 && (
        <Button
          className={styles.way}
          onClick={() => {
            for (const code of asked) tap({ act: 'handling', code })
          }}
        >
          {words.leftOutApart}
        </Button>
      )}
      {!isFirst && (
        <Button
          className={styles.way}
          onClick={() => tap(telling ? { act: 'start-over' } : { act: 'asked-none' })}
        >
          {telling
            ? words.needs.tellNothing
            : kept.length > 0
              ? words.nothingMore
              : words.clearNeeds}
        </Button>
      )}
    </>
  )
}

/** Which build is asked about, where there are several or it was sent already. */
function Whose({
  desk: {
    ordering: { changing, drafts, current },
  },
}: {
  readonly desk: Pick<OrderingDesk, 'ordering'>
}) {
  const words = useCounterWords()
  if (changing) return <b>{words.changing(buildName(changing.ticket, changing.letter))}</b>
  return drafts.length > 1 ? <b>{LETTERS.charAt(current)}</b> : null
}

function NeedChips({
  needs,
  kept,
  tap,
  state,
  detail,
  isShort,
}: {
  readonly needs: readonly Need[]
  readonly kept: readonly Need[]
  readonly tap: (act: Act) => void
  readonly state: RunningState
  readonly detail: () => void
  /** Where there is no room to look closer at one. */
  readonly isShort: boolean
}) {
  const words = useCounterWords()
  const narrow = useNarrow()
  if (needs.length > (narrow ? 1 : MOST))
    return (
      <button
        type="button"
        className={styles.chip}
        data-all=""
        data-handling={needs.find((one) => one.handling === 'keep-apart')?.handling}
        onClick={detail}
      >
        {words.needsTold(needs).join(' · ')} <small>{words.changeNeeds}</small>
      </button>
    )
  return (
    <div className={styles.chips} data-many={needs.length > FEW || undefined}>
      {needs.map(({ code, handling }) => {
        const stays = staysApart(kept, code)
        return (
          <button
            key={code}
            type="button"
            className={styles.chip}
            data-handling={handling}
            aria-label={words.changeHandling(code, handling)}
            disabled={stays}
            onClick={() => tap({ act: 'handling', code })}
          >
            <strong data-long={words.needTile(code).length > LONG || undefined}>
              {words.needTile(code)}
            </strong>
            <span>{words.asked(code, handling)}</span>
            <small>
              {stays
                ? words.stays
                : needs.length > FEW
                  ? words.changeNeeds
                  : words.tapFor(code, handling)}
            </small>
          </button>
        )
      })}
      {!isShort && (
        <Button className={styles.way} onClick={detail}>
          {needs.some(({ code }) => hasKinds(state.station, code))
            ? words.detail
            : words.detailReason}
        </Button>
      )}
    </div>
  )
}
