import { useAccess } from '#components/access/use-access.ts'
import job from '#components/job/job.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { LarderShown } from '#lib/larder/shelf-view.ts'
import { thrownOutSoFar } from '#lib/rooms/day/views/day-amounts.ts'
import { nextPlanned, type ServicesHere } from '#lib/rooms/day/views/services-here.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

const LOOK_EVERY_MS = 15_000

/** What went into the bin by now, and what is there for the next service. */
export function CloseNotes({ state }: { readonly state: RunningState }) {
  const words = useFoodWords()
  const { station } = state
  const { seen } = useAccess<ServicesHere>('/services', LOOK_EVERY_MS)
  const { seen: larder } = useAccess<LarderShown>('/larder/now', LOOK_EVERY_MS)
  const { foods, cents, isAll } = thrownOutSoFar(state)
  const next = seen && nextPlanned(seen)
  const said = foods.map(({ component, amount }) =>
    words.ends.food(
      nameIn(station)(component),
      words.amount(amount, state.portions[component]?.unit ?? 'mg'),
    ),
  )
  const there = (larder?.lots ?? [])
    .filter((lot) => lot.bound === null && lot.station === station.id)
    .map(({ name, amount, unit }) => words.ends.food(name, words.amount(amount, unit)))
  return (
    <>
      <p className={job.small}>
        <b>{words.ends.thrownSoFar}</b>{' '}
        {said.length === 0
          ? words.ends.nothingThrown
          : words.ends.thrown(
              said,
              cents > 0 ? words.centsIn(station.locale, cents, station.currency) : null,
              isAll,
            )}
      </p>
      {seen && (
        <p className={job.small}>
          <b>{words.ends.nextTitle}</b>{' '}
          {next ? words.ends.nextIs(next.on, next.doorsOpen) : words.ends.nextNone}
          {larder && ` ${words.ends.larderHas(there)}`}
        </p>
      )}
    </>
  )
}
