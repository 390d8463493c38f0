import shared from '#components/counter/counter.module.css'
import styles from '#components/counter/tickets.module.css'
import { nameIn } from '#lib/menu/name-in.ts'
import { clockDoubtOf } from '#lib/service/clock-doubt.ts'
import type { RunningState } from '#lib/service/state.ts'
import { levelOf } from '#lib/stock/levels.ts'
import type { ShortWays } from '#lib/stock/short-ways.ts'
import type { Act } from '#lib/views/counter-act.ts'
import { sayTime } from '#lib/words/clock-en.ts'
import { counter } from '#lib/words/counter-en.ts'
import { shortEn } from '#lib/words/short-en.ts'

interface ShortProps {
  readonly state: RunningState
  readonly short: ShortWays
}

/** What the pans lack for a build, and by when there is more. */
export function ShortWhy({ state, short }: ShortProps) {
  const name = nameIn(state.station)(short.component)
  const isHeldBack = levelOf(state, short.component).heldBack > 0
  const more =
    short.ready > 0
      ? shortEn.shortReady(short.ready)
      : short.waitUntil === null
        ? shortEn.shortNoMore
        : shortEn.shortMore(sayTime(short.waitUntil, state.station.timeZone))
  return (
    <p className={styles.warning}>
      {short.waits
        ? shortEn.shortWaits(name)
        : clockDoubtOf(state, short.component) !== null
          ? shortEn.shortClock(name)
          : isHeldBack
            ? shortEn.shortOffSale(name)
            : shortEn.short(name)}{' '}
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
          aria-label={shortEn.leaveOutOf(build, name(component))}
          disabled={busy}
          onClick={() => change()}
        >
          {shortEn.leaveOut(name(component))}
        </button>
      )}
      {swaps.slice(0, 2).map((base) => (
        <button
          key={base}
          type="button"
          className={shared.button}
          aria-label={shortEn.swapOf(build, name(base))}
          disabled={busy}
          onClick={() => change(base)}
        >
          {shortEn.swap(name(base))}
        </button>
      ))}
      {!canLeaveOut && swaps.length === 0 && (
        <button
          type="button"
          className={shared.button}
          aria-label={shortEn.swapItemOf(build)}
          disabled={busy}
          onClick={() => change()}
        >
          {shortEn.swapItem}
        </button>
      )}
      {!short.waits && (
        <button
          type="button"
          className={shared.button}
          aria-label={shortEn.waitFor(build)}
          disabled={busy}
          onClick={onWait}
        >
          {shortEn.guestWaits}
        </button>
      )}
      <button
        type="button"
        className={shared.button}
        aria-label={counter.cancelAsk(build)}
        disabled={busy}
        onClick={onCancel}
      >
        {counter.cancel}
      </button>
    </>
  )
}
