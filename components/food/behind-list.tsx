import { useState } from 'react'
import type { Chosen } from '#components/job/chosen.ts'
import styles from '#components/job/job.module.css'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { sayLastUse } from '#components/pans/pan-facts.ts'
import { Button } from '#components/ui/button.tsx'
import { needsReading } from '#lib/rooms/food/facts/food-now.ts'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { batchPictures } from '#lib/rooms/food/views/batch-strip.ts'
import { clockDoubt, isForSale, isKeptBack } from '#lib/service/held-stock.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

type Backup = StationDocument['backups'][number]

/** One back-up pan: what it holds, and what can be done with it. */
function BackupRow(props: TaskProps<'behind'> & { readonly backup: Backup }) {
  const words = useFoodWords()
  const { state, acting, now, choose, backup } = props
  const { id, component, kept, protected: guarded } = backup
  const [isSure, setSure] = useState(false)
  const name = nameIn(state.station)(component)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const pan = state.backupPans[id]
  const amount = pan?.amount ?? 0
  const isBad = amount > 0 && isKeptBack(state, 'backup', id)
  const count = Math.floor(amount / (state.portions[component]?.amount ?? 1))
  const times = foodTimes(state, 'backup', id, now)
  const doubt = isForSale(state, 'backup', id) ? clockDoubt(state, 'backup', id) : null
  const said =
    amount <= 0
      ? [words.forms.behindEmpty]
      : [
          words.forms.portions(count),
          ...(times?.offSale ? [words.dontServe] : []),
          ...(doubt === null ? [] : [words.clockJumped, words.clockHelps[doubt]]),
          ...(times?.newest
            ? [words.read(words.sayDegrees(times.newest.temperature), time(times.newest.at))]
            : []),
          ...(times?.nextBy ? [words.readNext(time(times.nextBy))] : []),
          ...(times?.throwOutAt ? [words.throwOutAt(time(times.throwOutAt))] : []),
          ...sayLastUse(words, state, times),
        ]
  const putAway = () => {
    if (acting.busy) return
    setSure(false)
    const command = { type: 'setBackup', component, backup: id, ready: false } as const
    void acting.act(command, words.forms.behindAwayDone(name))
  }
  const ways: readonly (readonly [string, Chosen])[] =
    amount <= 0
      ? [[words.forms.behindFill, { task: 'fill-backup', id }]]
      : isBad
        ? pan?.offSale
          ? [[words.whatMayBeDone, { task: 'resolve', what: 'backup', id }]]
          : [[words.toThrowOut, { task: 'throw-out', early: null }]]
        : needsReading(pan?.food?.heldBy ?? 'dry')
          ? [[words.forms.behindRead, { task: 'read', what: 'backup', id }]]
          : []
  return (
    <li data-bad={isBad || undefined}>
      <div>
        <b>{name}</b> {words.forms.backupIs(kept, guarded)}
        <p>{said.join(' · ')}</p>
      </div>
      {ways.map(([label, chosen]) => (
        <Button key={label} onClick={() => choose(chosen)}>
          {label}
        </Button>
      ))}
      {amount > 0 && !isBad && (
        <>
          {isSure && <Button onClick={() => setSure(false)}>{words.forms.behindAwayNot}</Button>}
          <Button disabled={acting.busy} onClick={() => (isSure ? putAway() : setSure(true))}>
            {isSure ? words.forms.behindAwayYes(count) : words.forms.behindAway}
          </Button>
        </>
      )}
    </li>
  )
}

/** What stands behind one pan, or behind all: batches, and back-up pans with what can be done. */
export function BehindList(props: TaskProps<'behind'>) {
  const words = useFoodWords()
  const { state, now, choose, task } = props
  const name = nameIn(state.station)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const isOf = (component: string) => task.component === null || component === task.component
  const batches = batchPictures(state, now).filter((one) => isOf(one.component))
  const backups = state.station.backups.filter((one) => isOf(one.component))
  return (
    <div className={styles.what} data-scrolls="">
      <ul className={styles.grid} aria-label={words.forms.behindTitle}>
        {batches.map((one) => (
          <li key={one.id}>
            <div>
              <b>{name(one.component)}</b> {words.forms.behindBatch}
              <p>{words.batches.stage(one, time)}</p>
            </div>
            <Button onClick={() => choose({ task: 'batch', id: one.id })}>
              {words.forms.open}
            </Button>
          </li>
        ))}
        {backups.map((one) => (
          <BackupRow key={one.id} {...props} backup={one} />
        ))}
      </ul>
      {batches.length + backups.length === 0 && <p>{words.forms.behindNoBatch}</p>}
      {task.component !== null && (
        <div className={styles.others}>
          <Button onClick={() => choose({ task: 'start-batch', component: task.component })}>
            {words.batches.start}
          </Button>
        </div>
      )}
    </div>
  )
}
