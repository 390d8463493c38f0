import { useState } from 'react'
import { CleanedProbe } from '#components/food/cleaned-probe.tsx'
import { DatesButton, DatesStep } from '#components/food/dates-button.tsx'
import { PutAmount } from '#components/food/put-amount.tsx'
import { PutFrom } from '#components/food/put-from.tsx'
import { type PutTarget, usePut } from '#components/food/use-put.ts'
import { portionsIn } from '#components/job/food-name.ts'
import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import { ProbeFields } from '#components/job/probe-fields.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useJob } from '#components/job/use-job.ts'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { washingMatters } from '#lib/rooms/care/facts/product-before.ts'
import { carriedAlong } from '#lib/rooms/food/facts/probe-trail.ts'
import { loadBrings } from '#lib/rooms/food/views/round.ts'
import { usualLoads } from '#lib/rooms/pans/facts/pans-to-do.ts'
import { firstDayIs } from '#lib/rooms/pans/views/dates-asked.ts'
import { boundAt, findBackup } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Command } from '#lib/spine/registry.ts'
import { componentOf, findPan } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'

const freeBackup = (state: RunningState, component: string): string | null =>
  state.station.backups.find(
    (one) =>
      one.component === component &&
      (state.backupPans[one.id]?.amount ?? 0) <= 0 &&
      boundAt(state, 'backup', one.id) === undefined,
  )?.id ?? null

type Told = ReturnType<ReturnType<typeof usePut>['told']>

interface PutJobProps
  extends Pick<TaskProps<'put'>, 'state' | 'acting' | 'now' | 'choose' | 'onBack'> {
  readonly target: PutTarget
  readonly send: string
  readonly done: string
  /** What becomes of what stands there; '' where nothing does. */
  readonly before: string
  /** It was soiled: it is asked whether it was emptied and washed. */
  readonly asksWashed: boolean
  readonly command: (told: Told, washed: boolean) => Command
  /** A back-up place of the same food that is free; null where there is none. */
  readonly behind: string | null
}

/** What goes in, how much of it, and its reading: one press once all of it is there. */
function PutJob(props: PutJobProps) {
  const words = useFoodWords()
  const { state, acting, now, choose, onBack, target, before, asksWashed, behind } = props
  const put = usePut(state, target, now)
  const [isTyped, onTyped] = useState(false)
  const [isDating, setDating] = useState(false)
  const asksDates = isDating && put.asksDates
  const batch = put.source?.kind === 'batch' ? put.source.id : null
  const firstDay = batch === null ? firstDayIs(state.station, target.component) : 'made'
  const { entry, judged } = put.form
  const asksReading = put.needsReading && put.isLoadable
  const brings = asksReading ? loadBrings(state, target.id, entry.probe) : null
  const { carries } = carriedAlong(state, target.id, batch)
  // By then it is said what goes in: the question has its room.
  const isAsking = brings !== null && judged.temperature !== null
  const isEnd = brings !== null && entry.cleaned === false
  const job = useJob({
    acting,
    about: `${put.source?.kind} ${asksDates}`,
    lacks: [
      put.isLoadable ? null : words.forms.putLack,
      put.isDateLacking ? words.dates.lack.preparedOn[firstDay] : null,
      put.isWeightLacking ? words.forms.weighLack : null,
      asksWashed && !put.washed ? words.forms.washedLack : null,
      isAsking && entry.cleaned === undefined ? words.round.lackClean : null,
    ],
    form: put.needsReading ? put.form : null,
    command: () => props.command(put.told(), put.washed),
    done: props.done,
    after: onBack,
  })
  // Its days are asked alone: never beside a pad that types something else.
  if (asksDates)
    return (
      <DatesStep
        {...{ state, now, firstDay, batch }}
        said={put.dates}
        none={put.isFromPack ? words.dates.noneOfPack : words.dates.none}
        onSaid={(said) => {
          put.setDates(said)
          setDating(false)
        }}
      />
    )
  const pad = (
    <ReadingPad
      form={put.form}
      weight={
        put.weight && {
          text: put.weight.text,
          unit: words.forms.unit[put.weight.unit],
          isTyped,
          onTyped,
          onText: (text) => put.weight && put.setWeight({ ...put.weight, text }),
        }
      }
    />
  )
  return (
    <JobForm
      job={job}
      kind={isEnd || (put.needsReading && judged.verdict === 'not-met') ? 'no' : 'main'}
      send={
        put.source && put.source.kind !== 'plain' && judged.verdict === 'not-met'
          ? words.forms.readOut(put.form.typed && words.sayDegrees(put.form.typed))
          : props.send
      }
      sub={isEnd ? words.round.endsShort('backup') : undefined}
      side={put.needsReading ? pad : undefined}
      note={words.forms.putNote(put.clockHours, put.source?.heldBy === 'dry')}
    >
      {!isAsking && (
        <PutFrom state={state} put={put} choose={choose} component={target.component} />
      )}
      {behind !== null && put.source?.kind === 'batch' && (
        <Button
          sub={words.forms.putBehindWhy}
          onClick={() => choose({ task: 'fill-backup', id: behind })}
        >
          {words.forms.putBehind}
        </Button>
      )}
      {put.source && <PutAmount {...{ state, put, target, onTyped }} isShort={isAsking} />}
      {put.asksDates && (!isAsking || put.isDateLacking) && (
        <DatesButton
          said={put.dates}
          firstDay={firstDay}
          unless={put.isFromPack ? words.dates.packNotSaid : words.dates.notSaid}
          onOpen={() => setDating(true)}
        />
      )}
      {before !== '' && <Note kind="watch">{before}</Note>}
      {asksWashed && (
        <label className={styles.check}>
          <input
            type="checkbox"
            checked={put.washed}
            onChange={(event) => put.setWashed(event.target.checked)}
          />
          {words.forms.washed}
        </label>
      )}
      {carries && <Note kind="no">{words.round.carries(carries.map(nameIn(state.station)))}</Note>}
      {brings !== null && <CleanedProbe {...{ brings, state }} form={put.form} what="backup" />}
      {put.needsReading && <ProbeFields form={put.form} />}
    </JobForm>
  )
}

/** Loads, changes or tops up a pan of the line. */
export function PutForm({ state, acting, task, now, choose, onBack }: TaskProps<'put'>) {
  const words = useFoodWords()
  const { pan: id, way } = task
  const pan = findPan(state.station, id)
  const held = state.pans[id]
  if (!pan || !held) return null
  const name = nameIn(state.station)(pan.component)
  const portion = state.portions[pan.component]?.amount ?? 1
  const isTopUp = way === 'top-up'
  const away = way === 'change' ? portionsIn(state, id) : 0
  const isFirst = way === 'load' && held.load === 0
  /** Before the service one pan after the other is loaded. */
  const done = () => {
    const next = usualLoads(state).find((one) => one.pan !== id)?.pan
    if (isFirst && next !== undefined) choose({ task: 'put', pan: next, way: 'load' })
    else onBack()
  }
  const before = isTopUp
    ? words.forms.topUpWhy
    : held.amount > 0
      ? words.forms.oldGoesAway(Math.round(held.amount / portion))
      : ''
  const command = (told: Told, washed: boolean): Command => {
    const { weighedMg, heldBy, ...added } = told
    if (isTopUp) return { type: 'topUp', pan: id, ...added }
    const all = {
      pan: id,
      ...added,
      ...(weighedMg === undefined ? {} : { weighedMg }),
      ...(heldBy === undefined ? {} : { heldBy }),
    }
    return way === 'load'
      ? { type: 'load', ...all, ...(washed ? { washed } : {}) }
      : { type: 'changePan', ...all }
  }
  return (
    <PutJob
      {...{ state, acting, now, choose, before, command }}
      onBack={done}
      target={{
        component: pan.component,
        id,
        usual: isTopUp
          ? Math.max(1, pan.usualPortions - Math.round(held.amount / portion))
          : pan.usualPortions,
        holds: isTopUp ? held.amount : 0,
        heldBy: isTopUp ? (held.food?.heldBy ?? null) : null,
        isWhole: !isTopUp,
      }}
      send={away > 0 ? words.forms.changeSend(away) : words.forms.put[way]}
      behind={away > 0 ? freeBackup(state, pan.component) : null}
      done={words.forms.isLoaded(name)}
      asksWashed={way === 'load' && washingMatters(state, id)}
    />
  )
}

/** Fills a back-up pan, so that it stands ready. */
export function FillForm({ state, acting, task, now, choose, onBack }: TaskProps<'fill-backup'>) {
  const words = useFoodWords()
  const backup = findBackup(state.station, task.id)
  if (!backup) return null
  const { component } = backup
  const name = componentOf(state.station, component).name
  const usual = state.station.line.wells
    .flatMap((well) => well.pans)
    .find((pan) => pan.component === component)?.usualPortions
  const command = (told: Told): Command => ({
    type: 'setBackup',
    component,
    backup: task.id,
    ready: true,
    ...told,
  })
  return (
    <PutJob
      {...{ state, acting, now, choose, onBack, command }}
      target={{ component, id: task.id, usual: usual ?? 1, holds: 0, heldBy: null, isWhole: true }}
      send={words.forms.fill}
      done={words.forms.isFilled(name)}
      before=""
      asksWashed={false}
      behind={null}
    />
  )
}
