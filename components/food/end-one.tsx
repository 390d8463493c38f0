import { useState } from 'react'
import { DayReadings } from '#components/food/day-readings.tsx'
import { EndAmountSteps } from '#components/food/end-amount-steps.tsx'
import { EndCool } from '#components/food/end-cool.tsx'
import styles from '#components/food/end-form.module.css'
import { EndLeft } from '#components/food/end-left.tsx'
import { useEndAmount } from '#components/food/use-end-amount.ts'
import { WeightPad } from '#components/food/weight-pad.tsx'
import { foodName } from '#components/job/food-name.ts'
import job from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { ProbeFields } from '#components/job/probe-fields.tsx'
import { InitialsField } from '#components/job/proof-fields.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import { Steps } from '#components/job/steps.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { useInitials } from '#components/job/use-proof.ts'
import { useReading } from '#components/job/use-reading.ts'
import { useIsPhone } from '#components/pans/use-walk.ts'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { civilDate, dayBefore } from '#lib/measure/civil.ts'
import { hotFood, hotSum } from '#lib/rooms/day/facts/ends/hot-food.ts'
import { coolEnd } from '#lib/rooms/day/views/cool-end.ts'
import { barredTogether, type EndStep } from '#lib/rooms/day/views/end-step.ts'
import { hoursToStay } from '#lib/rooms/food/facts/cooling/who-stays.ts'
import { coolLimit, readingOf } from '#lib/rooms/food/views/reading-entry.ts'
import type { End } from '#lib/safety/ends.ts'
import { HOUR_MS, MINUTE_MS } from '#lib/safety/limits.ts'
import { limitsOf } from '#lib/service/food-limits.ts'

type Props = TaskProps<'end'>

/** All that is hot goes at once. */
type Ending = End | 'all-hot'

/** One place as it is asked what its food comes to. */
export function EndOne({
  state,
  acting,
  now,
  choose,
  onBack,
  step,
  day,
  setDay,
}: Props & {
  readonly step: EndStep
  readonly day: string | null
  readonly setDay: (day: string | null) => void
}) {
  const words = useFoodWords()
  const { place, offered, barred, heldBy, next } = step
  const { what, id, component } = place
  const allHot = hotSum(state, now)
  const { timeZone } = state.station
  const { scale } = state.station.safety
  const limits = limitsOf(state.station)
  // What cools is due hours later.
  const time = (at: number) => words.sayClock(at, timeZone)
  const isPhone = useIsPhone()
  const [end, setEnd] = useState<Ending | null>(null)
  const [hours, setHours] = useState<number | null>(null)
  const isThrown = end === 'throw-out' || end === 'all-hot'
  const kept = useInitials(false)
  const signed = useInitials(true)
  const initials = isThrown ? signed : kept
  const much = useEndAmount(state, place)
  const isRead = end === 'cool' && heldBy === 'hot'
  const cools = offered.some((one) => one.end === 'cool') ? coolEnd(state, place, now) : null
  // Of what cools already somebody may have said to stay: said anew where they leave too early.
  const isStayAsked = end === 'cool' && cools?.isStayed === false
  const form = useReading(state, component, 'hot-holding', coolLimit(limits, null))
  const unit = much.isPieces ? 'piece' : 'mg'
  const shown = words.amount(much.amount ?? place.amount, unit)
  const name = foodName(state, what, id)
  const onward = () => (next ? choose({ task: 'end', at: next }) : choose({ task: 'close' }))
  const readBy = end === 'cool' ? cools?.stages[0]?.by : undefined
  const doneAs = (one: End) =>
    readBy === undefined ? words.ends.done(name, one) : words.ends.doneCool(name, time(readBy))
  const sent = useJob({
    acting,
    about: `${what} ${id}`,
    lacks: [
      end === null ? words.ends.tapEnd : null,
      end !== 'all-hot' && much.amount === null ? words.ends.tapHow : null,
      isStayAsked && hours === null ? words.ends.tapPresent : null,
    ],
    form: isRead ? form : null,
    initials: isRead ? null : initials,
    command: () => {
      const by = isRead ? form.entry.initials.trim() : initials.text.trim()
      if (end === 'all-hot') return { type: 'throwOutHot', initials: by }
      const reading = isRead ? readingOf(form.entry) : null
      if (end === null || much.amount === null || (isRead && !reading)) return null
      return {
        type: 'endFood',
        what,
        id,
        end,
        amount: much.amount,
        how: much.how,
        initials: by,
        ...(day === null ? {} : { preparedOn: day }),
        ...(reading ? { reading } : {}),
        ...(isStayAsked && hours !== null
          ? { presentUntil: now + hours * HOUR_MS + MINUTE_MS }
          : {}),
      }
    },
    done: end === null ? '' : end === 'all-hot' ? words.ends.allHotDone : doneAs(end),
    after: onward,
  })
  const today = civilDate(now, timeZone)
  const isWeighed = much.how === 'weighed' && end !== 'all-hot'
  // Beside what is asked, where nothing is typed in figures: below it its last line was cut.
  const isBarredAside = !isPhone && !isRead && !isWeighed && barred.length > 0
  const coolFirst = cools && end !== 'all-hot' && <EndCool {...{ cools, state, now, time }} />
  const notOffered = (
    <div className={styles.notOffered}>
      {isBarredAside && coolFirst}
      <p className={job.small}>
        <b>{words.ends.notOffered}.</b> {words.ends.decides}
      </p>
      <ul className={styles.barred}>
        {barredTogether(barred).map(({ ends, why, paragraph }) => (
          <li key={ends.join()}>{words.ends.because(ends, why, paragraph)}</li>
        ))}
      </ul>
    </div>
  )
  const isTight = isPhone && isRead
  const side = isRead ? (
    <div className={styles.tight}>
      <ReadingPad form={form}>
        {isPhone && (
          <p className={job.legend}>
            <b>
              {words.readings.limitIs} {words.safety.limit(limits.coolingFrom, scale)}
            </b>
          </p>
        )}
      </ReadingPad>
    </div>
  ) : isWeighed ? (
    <WeightPad much={much} />
  ) : isBarredAside ? (
    notOffered
  ) : undefined
  const choosesEnd = (one: Ending) => {
    // The pad types the temperature then: a weight that wasn't typed before isn't asked for.
    if (one === 'cool' && much.amount === null) much.setHow('not-checked')
    setEnd(one)
    const hot = hotFood(state, now).map((each) => ({ what: each.what, id: each.id }))
    choose({ task: 'end', at: { what, id }, ...(one === 'all-hot' ? { hot } : {}) })
  }
  return (
    <JobForm
      job={sent}
      kind={isThrown ? 'no' : 'main'}
      send={end === null || end === 'all-hot' ? words.ends.allHotSend : words.ends.send(end, shown)}
      sub={
        end === 'all-hot'
          ? words.ends.allHotMore
          : next
            ? words.ends.next(foodName(state, next.what, next.id), next.what)
            : words.ends.last
      }
      side={side}
    >
      {!isTight && (
        <EndLeft {...{ state, step, much, now, isRead }} hot={end === 'all-hot' ? allHot : null} />
      )}
      {end !== 'all-hot' && !isTight && (
        <DayReadings read={step.read} limits={limits} time={time} />
      )}
      <div className={styles.ends} data-pad="">
        {(isTight ? offered.filter((one) => one.end === end) : offered).map((one) => (
          <Button
            key={one.end}
            aria-pressed={end === one.end}
            sub={
              one.end === 'cool' && cools
                ? words.ends.coolBy(cools.stages, scale, time)
                : words.ends.endMore[one.end]
            }
            onClick={() => choosesEnd(one.end)}
          >
            {words.ends.end[one.end]}
          </Button>
        ))}
        {isTight && (
          <Button kind="quiet" onClick={() => setEnd(null)}>
            {words.ends.other}
          </Button>
        )}
        {heldBy === 'hot' && !isTight && (
          <Button
            kind="no"
            aria-pressed={end === 'all-hot'}
            sub={words.ends.allHotIs(allHot)}
            onClick={() => choosesEnd('all-hot')}
          >
            {words.ends.allHot}
          </Button>
        )}
      </div>
      {isPhone && end === null && coolFirst}
      {isStayAsked && (
        <Steps
          label={words.ends.present}
          shown={hours === null ? words.ends.presentNot : time(now + hours * HOUR_MS)}
          by={[-1, 1]}
          isDead={(one) => hours !== null && (hours + one < 1 || hours + one > 12)}
          onStep={(one) => setHours(hours === null ? hoursToStay(cools.stages, now) : hours + one)}
        />
      )}
      {isRead && <ProbeFields form={form} />}
      {end !== 'all-hot' && <EndAmountSteps {...{ much, place }} isRead={isRead} />}
      {step.asksDay && (
        <Choice
          legend={words.ends.day}
          ways={[
            { id: today, label: words.ends.today },
            { id: dayBefore(today), label: words.ends.yesterday },
          ]}
          chosen={day}
          onChoose={setDay}
        />
      )}
      {!isRead && (
        <div className={styles.who}>
          <InitialsField initials={initials} />
          <Button onClick={() => (next ? choose({ task: 'end', at: next }) : onBack())}>
            {words.ends.later}
          </Button>
        </div>
      )}
      {barred.length > 0 && !isRead && !isBarredAside && notOffered}
    </JobForm>
  )
}
