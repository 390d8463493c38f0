import { lazy, Suspense } from 'react'
import type { FoodDatesProps, SaidDates } from '#components/food/said-dates.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Button } from '#components/ui/button.tsx'
import type { FirstDayIs } from '#lib/rooms/pans/views/dates-asked.ts'

interface DatesButtonProps {
  readonly said: SaidDates | null
  readonly firstDay: FirstDayIs
  /** What holds while nothing is said; '' where that is told elsewhere. */
  readonly unless: string
  readonly onOpen: () => void
}

/** What is said of its days so far, and the way to say it. */
export function DatesButton({ said, firstDay, unless, onOpen }: DatesButtonProps) {
  const words = useFoodWords()
  return (
    <Button sub={!said && unless !== '' ? unless : undefined} onClick={onOpen}>
      {said ? words.dates.change(words.sayDate(said.lastDay)) : words.dates.ask[firstDay]}
    </Button>
  )
}

const loadDates = () => import('#components/food/food-dates.tsx')

/** Brings a calendar along, so that no other form waits for it. */
const FoodDates = lazy(async () => ({ default: (await loadDates()).FoodDates }))

/** Its questions, in the place of what goes in. */
export function DatesStep(props: FoodDatesProps) {
  return (
    <Suspense fallback={null}>
      <FoodDates {...props} />
    </Suspense>
  )
}
