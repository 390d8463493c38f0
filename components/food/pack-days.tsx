import { DatesStep } from '#components/food/dates-button.tsx'
import type { SaidDates } from '#components/food/said-dates.ts'
import styles from '#components/food/set-up.module.css'
import type { SetUp } from '#components/food/use-set-up.ts'
import job from '#components/job/job.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { daysOffered, judgeDates, noDates } from '#lib/rooms/food/views/date-entry.ts'
import { firstDayIs } from '#lib/rooms/pans/views/dates-asked.ts'
import { NOT_SAID, type SetUpRow } from '#lib/rooms/pans/views/set-up-row.ts'
import type { RunningState } from '#lib/service/state.ts'

interface PackDaysProps {
  readonly state: RunningState
  readonly now: number
  readonly setUp: SetUp
  readonly row: SetUpRow
  /** Opens all that can be said of its days, in the place of this. */
  readonly onMore: () => void
}

/** Since when a pack is open, by a tap: of two packs the earlier day holds, with a label made anew. */
export function PackDays({ state, now, setUp, row, onMore }: PackDaysProps) {
  const words = useFoodWords()
  const { pan } = row
  const { dates, alsoOpened, isLabelled } = setUp.of(pan)
  const { today, yesterday } = daysOffered(state.station, now)
  const saidOf = (preparedOn: string): SaidDates | null => {
    const entry = { ...(dates?.entry ?? noDates()), preparedOn }
    const { told, lastDay, isReady } = judgeDates(state.station, entry, null, now)
    return isReady && lastDay !== null ? { entry, told, lastDay } : null
  }
  const days = (of: string | null | undefined, legend: string, say: (day: string) => void) => (
    <Choice
      legend={legend}
      ways={[
        { id: today, label: words.dates.today },
        { id: yesterday, label: words.dates.yesterday },
        ...(of && of !== today && of !== yesterday ? [{ id: of, label: words.sayDate(of) }] : []),
      ]}
      chosen={of ?? null}
      onChoose={say}
    />
  )
  const first = dates?.told.preparedOn
  const isOfTwoDays =
    alsoOpened !== null && alsoOpened !== NOT_SAID && first !== undefined && alsoOpened !== first
  if (!row.isPack)
    return (
      <Button sub={dates ? undefined : words.dates.notSaid} onClick={onMore}>
        {dates ? words.dates.change(words.sayDate(dates.lastDay)) : words.dates.ask.made}
      </Button>
    )
  return (
    <>
      <div className={styles.days}>
        {days(first, words.setUp.openedOn, (day) =>
          setUp.say(pan, { dates: saidOf(day), isLabelled: false }),
        )}
        {alsoOpened !== null &&
          days(alsoOpened, words.setUp.secondPack, (day) =>
            setUp.say(pan, { alsoOpened: day, isLabelled: false }),
          )}
        <div className={styles.small}>
          <Button onClick={onMore}>{words.setUp.otherDay}</Button>
          <Button
            disabled={first === undefined}
            onClick={() =>
              setUp.say(pan, {
                alsoOpened: alsoOpened === null ? NOT_SAID : null,
                isLabelled: false,
              })
            }
          >
            {alsoOpened === null ? words.setUp.addPack : words.setUp.noSecondPack}
          </Button>
        </div>
      </div>
      {isOfTwoDays && row.openedOn !== null && (
        <label className={job.check}>
          <input
            type="checkbox"
            checked={isLabelled}
            onChange={(event) => setUp.say(pan, { isLabelled: event.target.checked })}
          />
          <span>
            {words.setUp.earliest(row.openedOn)} {words.setUp.labelled}
          </span>
        </label>
      )}
    </>
  )
}

interface AllDaysProps extends Omit<PackDaysProps, 'onMore'> {
  readonly onBack: () => void
}

/** First day, use-by, freezing: asked alone, never beside a pad that types something else. */
export function AllDays({ state, now, setUp, row, onBack }: AllDaysProps) {
  const words = useFoodWords()
  const { source, isPack, component, pan } = row
  return (
    <DatesStep
      {...{ state, now }}
      firstDay={source?.kind === 'batch' ? 'made' : firstDayIs(state.station, component)}
      batch={source?.kind === 'batch' ? source.id : null}
      said={setUp.of(pan).dates}
      none={isPack ? words.dates.noneOfPack : words.dates.none}
      onSaid={(dates) => {
        setUp.say(pan, { dates, isLabelled: false })
        onBack()
      }}
    />
  )
}
