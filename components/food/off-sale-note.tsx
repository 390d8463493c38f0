import { useFoodWords } from '#components/job/use-food-words.ts'
import { Note } from '#components/ui/note.tsx'
import { heldByAt } from '#lib/rooms/food/facts/place-now.ts'
import { holdingLimit } from '#lib/rooms/food/views/reading-entry.ts'
import type { PlaceKind } from '#lib/service/events/food-event.ts'
import { placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

interface OffSaleNoteProps {
  readonly state: RunningState
  readonly what: PlaceKind
  readonly id: string
  readonly now: number
}

/** Why something isn't served: what was read, its limit, and who decides. Nothing where it is served. */
export function OffSaleNote({ state, what, id, now }: OffSaleNoteProps) {
  const words = useFoodWords()
  const placed = placeOf(state, { what, id })
  const offSale = placed?.offSale
  if (!placed || !offSale) return null
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const newest = offSale.why === 'out-of-limits' ? placed.readings.at(-1) : undefined
  const heldBy = heldByAt(state, { what, id }, now)
  const component = findComponent(state.station, placed.component)
  const limit =
    component && (heldBy === 'hot' || heldBy === 'cold')
      ? holdingLimit(state.station, component, heldBy)
      : null
  return (
    <Note kind="no">
      {newest ? (
        <b>
          {words.forms.resolveRead(
            words.sayDegrees(newest.temperature),
            time(newest.at),
            newest.where,
            limit && words.readings.limit(limit, newest.temperature.scale),
          )}
        </b>
      ) : (
        words.forms.resolveWhy[offSale.why]
      )}{' '}
      {offSale.lastGoodAt === null
        ? words.forms.resolveNoGood
        : words.forms.resolveLastGood(time(offSale.lastGoodAt))}{' '}
      {words.forms.resolveCall}
    </Note>
  )
}
