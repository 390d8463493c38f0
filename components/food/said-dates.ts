import type { DateEntry } from '#lib/rooms/food/views/date-entry.ts'
import type { FirstDayIs } from '#lib/rooms/pans/views/dates-asked.ts'
import type { CivilDate } from '#lib/safety/date-stamp.ts'
import type { ToldDates } from '#lib/safety/told-dates.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Days that were said and can be, with the last day that comes of them. */
export interface SaidDates {
  readonly entry: DateEntry
  readonly told: ToldDates
  readonly lastDay: CivilDate
}

/** What the questions after its days are given. */
export interface FoodDatesProps {
  readonly state: RunningState
  readonly now: number
  readonly firstDay: FirstDayIs
  /** The batch that it is of; null where it is of none. */
  readonly batch: string | null
  readonly said: SaidDates | null
  /** null: nothing is said. */
  readonly onSaid: (said: SaidDates | null) => void
  /** What the button says that leaves the days unsaid. */
  readonly none: string
}
