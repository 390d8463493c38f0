import { foodName } from '#components/job/food-title.ts'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import { ReadyNote } from '#components/job/ready-note.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useReading } from '#components/job/use-reading.ts'
import { useSettled } from '#components/ui/settled.ts'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { heldByAt } from '#lib/rooms/food/facts/place-now.ts'
import { holdingLimit, readingOf } from '#lib/rooms/food/views/reading-entry.ts'
import { placeOf } from '#lib/service/place.ts'
import { componentOf } from '#lib/station/find.ts'

/** A reading of a pan that stands on the line or behind it, or of a batch that waits. */
export function ReadForm({ state, acting, food, now, onBack }: FormProps<'read'>) {
  const words = useFoodWords()
  const { what, id } = food
  const place = placeOf(state, food)
  const component = componentOf(state.station, place?.component ?? '')
  const heldBy = heldByAt(state, food, now) ?? component.held
  const isHeld = heldBy === 'hot' || heldBy === 'cold'
  const form = useReading(
    state,
    component.id,
    heldBy === 'hot' ? 'hot-holding' : isHeld ? 'cold-holding' : 'time-start',
    isHeld ? holdingLimit(state.station, component, heldBy) : null,
  )
  const settled = useSettled(id)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const times = foodTimes(state, what, id, now)
  const earlier = place?.readings.slice(-4) ?? []
  const isOut = form.judged.verdict === 'not-met'
  const act = async () => {
    const reading = readingOf(form.entry)
    if (!reading || !settled() || acting.busy) return
    const initials = form.entry.initials.trim()
    const said = words.forms.readDone(foodName(state, what, id), words.sayDegrees(reading))
    if (await acting.act({ type: 'readTemperature', what, id, reading, initials }, said)) {
      form.remember()
      onBack()
    }
  }
  return (
    <div className={forms.two}>
      <div className={forms.what}>
        <p>
          {times?.newest
            ? words.forms.newest(words.sayDegrees(times.newest.temperature), time(times.newest.at))
            : words.forms.never}{' '}
          {times?.nextBy ? words.forms.nextBy(time(times.nextBy)) : ''}
        </p>
        <p className={forms.large}>
          {form.places.includes('middle-stirred') ? words.forms.readHow : words.forms.readPiece}
        </p>
        {earlier.length > 1 && (
          <ul className={forms.plain}>
            {earlier.map((one) => (
              <li key={one.at}>{words.read(words.sayDegrees(one.temperature), time(one.at))}</li>
            ))}
          </ul>
        )}
        {times?.offSale && (
          <p className={forms.warn}>{words.forms.resolveWhy[times.offSale.why]}</p>
        )}
        <div className={forms.send}>
          <ReadyNote form={form} />
          <button
            type="button"
            className={isOut ? forms.stop : forms.main}
            disabled={acting.busy || !form.judged.isReady}
            onClick={() => void act()}
          >
            {(isOut ? words.forms.readOut : words.forms.readSend)(
              form.typed && words.sayDegrees(form.typed),
            )}
          </button>
        </div>
      </div>
      <ReadingPad form={form} />
    </div>
  )
}
