import styles from '#components/counter/tickets.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import type { Acting } from '#components/live/acting.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { clockDoubtOf } from '#lib/rooms/food/facts/clock-doubt.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { shortOffers } from '#lib/rooms/orders/views/short-offers.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import type { Selling } from '#lib/rooms/pans/facts/selling.ts'
import type { ShortWays } from '#lib/rooms/pans/facts/short-ways.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface ShortProps {
  readonly state: Selling
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
    <Note kind="watch">
      {short.waits
        ? words.ranShort.shortWaits(name)
        : clockDoubtOf(state, short.component) !== null
          ? words.ranShort.shortClock(name)
          : isHeldBack
            ? words.ranShort.shortOffSale(name)
            : words.ranShort.short(name)}{' '}
      {more}
    </Note>
  )
}

/** What a short build can become, each as it would be sent; or its guest waits. */
export function ShortChoices({
  state,
  short,
  acting,
  tap,
}: ShortProps & { readonly acting: Acting; readonly tap: (act: Act) => void }) {
  const words = useCounterWords()
  const name = nameIn(state.station)
  const { build, ticket, letter } = short
  const at = { ticket, letter }
  const offers = shortOffers(state, at)
  return (
    <div className={styles.ways}>
      {offers.map(({ way, priceCents }) => (
        <Button
          key={JSON.stringify(way)}
          aria-label={words.onTicket.wayOf(build, way, name)}
          disabled={acting.busy}
          sub={words.sayCents(priceCents, state.station.currency)}
          onClick={() => tap({ act: 'change-build', ...at, way })}
        >
          {words.onTicket.way(way, name)}
        </Button>
      ))}
      {offers.length === 0 && <p>{words.onTicket.noWay}</p>}
      {!short.waits && (
        <Button
          kind="quiet"
          aria-label={words.ranShort.waitFor(build)}
          disabled={acting.busy}
          onClick={() => void acting.act({ type: 'wait', ...at }, words.ranShort.saidWaits(build))}
        >
          {words.ranShort.guestWaits}
        </Button>
      )}
    </div>
  )
}
