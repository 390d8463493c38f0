/** What is said of tasters goes with their tasting; initials as those of a service do. */
import { type BelievedTime, DAY_MS, isToGo } from '#lib/access/believed-time.ts'
import type { KeptThat } from '#lib/access/kept.ts'
import { tastingOf } from '#lib/tasting/stream.ts'
import { isToCome, type Tasting } from '#lib/tasting/tasting.ts'
import type { Guests } from '#server/guests/port.ts'

interface Ports {
  readonly tastings: {
    readonly all: () => readonly Tasting[]
    /** Initials of who marked a saved yield, of marks of such times. */
    readonly forgetMarks: (isToGo: (at: number) => boolean) => Promise<void>
  }
  readonly guests: Pick<Guests, 'forget' | 'services'>
}

type Forget = (apart: string) => Promise<unknown>

/**
 * Of one that nobody ended, a day after it was to end: who comes then is asked anew.
 * @param days after which initials go
 */
export const forgetTastings = async (
  { tastings, guests }: Ports,
  time: BelievedTime,
  days: number,
): Promise<void> => {
  const atEnd: Readonly<Record<KeptThat<{ readonly until: 'tasted' }>, Forget>> = {
    tasters: (apart) => guests.forget(apart, ['needs']),
  }
  const all = new Map(tastings.all().map((one) => [one.id, one]))
  for (const apart of await guests.services()) {
    const id = tastingOf(apart)
    if (id === null) continue
    const tasting = all.get(id)
    const isOver = !tasting || !isToCome(tasting) || time.believed > tasting.endsAt + DAY_MS
    if (isOver) for (const forget of Object.values(atEnd)) await forget(apart)
    const over = { closedAt: tasting?.endsAt ?? 0, seenAt: null }
    if (!tasting || isToGo(over, time, days)) await guests.forget(apart, ['initials'])
  }
  await tastings.forgetMarks((at) => isToGo({ closedAt: at, seenAt: null }, time, days))
}
