import shared from '#components/counter/counter.module.css'
import styles from '#components/counter/tickets.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import { clockDoubtOf } from '#lib/rooms/food/facts/clock-doubt.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import type { ShortWays } from '#lib/rooms/pans/facts/short-ways.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface ShortProps {
  readonly state: RunningState
  readonly short: ShortWays
}

/** What the pans lack for a build, and by when there is more. */
export function ShortWhy({ state, short }: ShortProps) {
  const words = useCounterWords()
  const name = nameIn(state.station)(short.component)
  const isHeldBack = levelOf(state, short.component).heldBack > 0
  const more =
    short.ready > 0
      ? words.ranShort.shortReady(short.ready)
      : short.waitUntil === null
        ? words.ranShort.shortNoMore
        : words.ranShort.shortMore(words.sayTime(short.waitUntil, state.station.timeZone))
  return (
    <p className={styles.warning}>
      {short.waits
        ? words.ranShort.shortWaits(name)
        : clockDoubtOf(state, short.component) !== null
          ? words.ranShort.shortClock(name)
          : isHeldBack
            ? words.ranShort.shortOffSale(name)
            : words.ranShort.short(name)}{' '}
      {more}
    </p>
  )
}

/** What can be done for a short build: left out, swapped, waited for, or cancelled. */
export function ShortChoices({
  state,
  short,
  busy,
  tap,
  onWait,
  onCancel,
}: ShortProps & {
  readonly busy: boolean
  readonly tap: (act: Act) => void
  readonly onWait: () => void
  readonly onCancel: () => void
}) {
  const words = useCounterWords()
  const { build, ticket, letter, component, canLeaveOut, swaps } = short
  const name = nameIn(state.station)
  const change = (base?: string) =>
    tap({
      act: 'change-build',
      ticket,
      letter,
      without: component,
      ...(base === undefined ? {} : { base }),
    })
  return (
    <>
      {canLeaveOut && (
        <button
          type="button"
          className={shared.button}
          aria-label={words.ranShort.leaveOutOf(build, name(component))}
          disabled={busy}
          onClick={() => change()}
        >
          {words.ranShort.leaveOut(name(component))}
        </button>
      )}
      {swaps.slice(0, 2).map((base) => (
        <button
          key={base}
          type="button"
          className={shared.button}
          aria-label={words.ranShort.swapOf(build, name(base))}
          disabled={busy}
          onClick={() => change(base)}
        >
          {words.ranShort.swap(name(base))}
        </button>
      ))}
      {!canLeaveOut && swaps.length === 0 && (
        <button
          type="button"
          className={shared.button}
          aria-label={words.ranShort.swapItemOf(build)}
          disabled={busy}
          onClick={() => change()}
        >
          {words.ranShort.swapItem}
        </button>
      )}
      {!short.waits && (
        <button
          type="button"
          className={shared.button}
          aria-label={words.ranShort.waitFor(build)}
          disabled={busy}
          onClick={onWait}
        >
          {words.ranShort.guestWaits}
        </button>
      )}
      <button
        type="button"
        className={shared.button}
        aria-label={words.cancelAsk(build)}
        disabled={busy}
        onClick={onCancel}
      >
        {words.cancel}
      </button>
    </>
  )
}
