import { foodName } from '#components/job/food-name.ts'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { ProbeFields } from '#components/job/probe-fields.tsx'
import { ReadingScale } from '#components/job/probe-scale.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { useReading } from '#components/job/use-reading.ts'
import { Note } from '#components/ui/note.tsx'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { heldByAt } from '#lib/rooms/food/facts/place-now.ts'
import { holdingLimit, readingOf } from '#lib/rooms/food/views/reading-entry.ts'
import { placeOf } from '#lib/service/place.ts'
import { componentOf } from '#lib/station/find.ts'

/** A reading of a pan that stands on the line or behind it, or of a batch that waits. */
export function ReadForm({ state, acting, task, now, onBack }: TaskProps<'read'>) {
  const words = useFoodWords()
  const { what, id } = task
  const place = placeOf(state, task)
  const component = componentOf(state.station, place?.component ?? '')
  const heldBy = heldByAt(state, task, now) ?? component.held
  const isHeld = heldBy === 'hot' || heldBy === 'cold'
  const form = useReading(
    state,
    component.id,
    heldBy === 'hot' ? 'hot-holding' : isHeld ? 'cold-holding' : 'time-start',
    isHeld ? holdingLimit(state.station, component, heldBy) : null,
  )
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const times = foodTimes(state, what, id, now)
  const earlier = place?.readings.slice(-4) ?? []
  const isOut = form.judged.verdict === 'not-met'
  const job = useJob({
    acting,
    about: id,
    form,
    command: () => {
      const reading = readingOf(form.entry)
      const initials = form.entry.initials.trim()
      return reading && { type: 'readTemperature', what, id, reading, initials }
    },
    done: () => {
      const reading = readingOf(form.entry)
      return words.forms.readDone(
        foodName(state, what, id),
        reading ? words.sayDegrees(reading) : '',
      )
    },
    after: onBack,
  })
  return (
    <JobForm
      job={job}
      kind={isOut ? 'no' : 'main'}
      send={(isOut ? words.forms.readOut : words.forms.readSend)(
        form.typed && words.sayDegrees(form.typed),
      )}
      scale={<ReadingScale form={form} />}
      side={<ReadingPad form={form} />}
    >
      <p className={styles.large}>
        {form.places.includes('middle-stirred') ? words.forms.readHow : words.forms.readPiece}
      </p>
      <p>
        {times?.newest
          ? words.forms.newest(words.sayDegrees(times.newest.temperature), time(times.newest.at))
          : words.forms.never}{' '}
        {times?.nextBy ? words.forms.nextBy(time(times.nextBy)) : ''}
      </p>
      {earlier.length > 1 && (
        <ul className={styles.facts}>
          {earlier.map((one) => (
            <li key={one.at}>{words.read(words.sayDegrees(one.temperature), time(one.at))}</li>
          ))}
        </ul>
      )}
      {times?.offSale && <Note kind="no">{words.forms.resolveWhy[times.offSale.why]}</Note>}
      <ProbeFields form={form} />
    </JobForm>
  )
}
