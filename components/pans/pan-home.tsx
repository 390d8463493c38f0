import { OffSaleNote } from '#components/food/off-sale-note.tsx'
import type { Chosen } from '#components/job/chosen.ts'
import job from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useForecast } from '#components/live/forecast.ts'
import { EyeCheck, type Look } from '#components/pans/eye-check.tsx'
import { biasOf } from '#components/pans/pan-facts.ts'
import { mainOf } from '#components/pans/pan-main.ts'
import { Button } from '#components/ui/button.tsx'
import { useSettled } from '#components/ui/settled.ts'
import { needsReading } from '#lib/rooms/food/facts/food-now.ts'
import { portionsKept } from '#lib/rooms/pans/facts/kept.ts'
import { panPictures } from '#lib/rooms/pans/facts/pans.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import { componentOf } from '#lib/station/find.ts'

/** All that can be done with a pan: one look, one large way on, and the others. */
export function PanHome({ state, acting, task, now, choose, onBack }: TaskProps<'pan'>) {
  const words = useFoodWords()
  const forecast = useForecast()
  const { pan } = task
  const settled = useSettled(pan)
  const picture = panPictures(state)[pan]
  if (!picture) return null
  const component = componentOf(state.station, componentIn(state.station, pan) ?? '')
  const held = state.pans[pan]
  const isEmpty = picture.amount === 0
  const hasFood = !isEmpty && picture.trouble !== 'throw-out'
  const heldBy = held?.food?.heldBy ?? component.held
  const keep = state.keeps[component.id]
  const kept = keep ? portionsKept(keep) : 0
  const isStoodIn = state.standIns[component.id] !== undefined
  const bias = biasOf(words, forecast, component.id, component.name)
  const look = async (quarters: Look) => {
    if (!settled() || acting.busy) return
    const done = words.done.looked(component.name, words.looks[quarters])
    if (await acting.act({ type: 'correct', pan, quarters }, done)) onBack()
  }
  const endSaving = () => {
    const done = words.done.savingEnded(component.name)
    if (!acting.busy) void acting.act({ type: 'endKeep', component: component.id }, done)
  }
  const way = (label: string, next: Chosen, off = false) => ({
    label,
    off,
    act: () => choose(next),
  })
  // What must not be served isn't read well, saved or put on a clock by whoever taps it.
  const isBad = picture.trouble === 'off-sale' || picture.trouble === 'throw-out'
  const others: readonly { label: string; act: () => void; off: boolean }[] = [
    ...(needsReading(heldBy) && !isBad
      ? [way(words.readTemperature, { task: 'read', what: 'pan', id: pan }, !hasFood)]
      : []),
    ...(picture.selling || isBad
      ? []
      : [way(words.changePan, { task: 'put', pan, way: isEmpty ? 'load' : 'change' })]),
    way(words.topUp, { task: 'put', pan, way: 'top-up' }, !hasFood || picture.trouble !== null),
    ...(picture.unit === 'mg' ? [way(words.weigh, { task: 'weigh', pan }, !hasFood)] : []),
    way(words.correct, { task: 'count', pan }, isEmpty && !held?.ended),
    way(words.waste, { task: 'waste', pan }, isEmpty),
    kept > 0
      ? { label: words.endSaving(kept), act: endSaving, off: false }
      : way(words.saveSome, { task: 'keep', component: component.id }, isBad),
    ...('gPerCup' in component.portion
      ? [
          way(isStoodIn ? words.scoopBack : words.scoopMissing, {
            task: 'scoop',
            component: component.id,
          }),
        ]
      : []),
    way(words.wrongScoop, { task: 'other-scoop', pan }),
    way(words.behindIt, { task: 'behind', component: component.id }),
    ...(hasFood &&
    !isBad &&
    heldBy !== 'dry' &&
    heldBy !== 'time' &&
    state.station.safety.timeProcedure
      ? [way(words.startClock, { task: 'clock', what: 'pan', id: pan })]
      : []),
    ...(picture.selling || isBad
      ? [
          way(picture.selling ? words.stopSelling : words.resumeSelling, {
            task: 'selling',
            what: 'component',
            id: component.id,
          }),
        ]
      : []),
  ]
  const main = mainOf(words, picture)
  return (
    <JobForm
      job={{ lack: null, busy: acting.busy, send: () => choose(main.opens) }}
      kind={picture.trouble === null ? 'main' : 'no'}
      send={main.label}
      side={bias === '' ? undefined : <p className={job.large}>{bias}</p>}
    >
      <OffSaleNote {...{ state, now }} what="pan" id={pan} />
      {!isBad && (
        <EyeCheck busy={acting.busy || !hasFood} onLook={(quarters) => void look(quarters)} />
      )}
      <div className={job.many}>
        {others.map(({ label, act, off }) => (
          <Button key={label} disabled={off} onClick={act}>
            {label}
          </Button>
        ))}
      </div>
    </JobForm>
  )
}
