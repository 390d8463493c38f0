import { useState } from 'react'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { sayLastUse } from '#components/pans/pan-facts.ts'
import { needsReading } from '#lib/rooms/food/facts/food-now.ts'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { batchPictures } from '#lib/rooms/food/views/batch-strip.ts'
import { clockDoubt, isForSale, isKeptBack } from '#lib/service/held-stock.ts'
import { nameIn } from '#lib/station/name-in.ts'
import { readHere } from '#lib/station/read-here.ts'

/** More back-up pans than that stand closer, so that all are in sight. */
const ROOMY = 6

/** All that doesn't stand on the line: batches, and the back-up pans with what can be done. */
export function BehindList({ state, acting, now, choose }: FormProps<'behind'>) {
  const words = useFoodWords()
  const name = nameIn(state.station)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const [away, setAway] = useState<string | null>(null)
  const batches = batchPictures(state, now)
  const putAway = (id: string, component: string) => {
    if (acting.busy) return
    setAway(null)
    const command = { type: 'setBackup', component, backup: id, ready: false } as const
    void acting.act(command, words.forms.behindAwayDone(name(component)))
  }
  const backupSaid = (id: string, component: string, amount: number): string => {
    if (amount <= 0) return words.forms.behindEmpty
    const times = foodTimes(state, 'backup', id, now)
    const count = Math.floor(amount / (state.portions[component]?.amount ?? 1))
    const doubt = isForSale(state, 'backup', id) ? clockDoubt(state, 'backup', id) : null
    return [
      words.forms.portions(count),
      ...(times?.offSale ? [words.dontServe] : []),
      ...(doubt === null ? [] : [words.clockJumped, words.clockHelps[doubt]]),
      ...(times?.newest
        ? [words.read(words.sayDegrees(times.newest.temperature), time(times.newest.at))]
        : []),
      ...(times?.nextBy ? [words.readNext(time(times.nextBy))] : []),
      ...(times?.throwOutAt ? [words.throwOutAt(time(times.throwOutAt))] : []),
      ...sayLastUse(words, state, times),
    ].join(' · ')
  }
  return (
    <div className={forms.behind} data-many={state.station.backups.length > ROOMY || undefined}>
      <section>
        <h3>{words.forms.behindBatches}</h3>
        {batches.length === 0 && <p>{words.forms.behindNoBatch}</p>}
        <ul className={forms.list}>
          {batches.map((one) => (
            <li key={one.id}>
              <div>
                <b>{name(one.component)}</b>
                <p>{words.batches.stage(one, time)}</p>
              </div>
              <button
                type="button"
                onClick={() => choose({ kind: 'food', food: { task: 'batch', id: one.id } })}
              >
                {words.forms.open}
              </button>
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h3>{words.forms.behindPans}</h3>
        <ul className={forms.pans}>
          {state.station.backups.map(({ id, component, kept, protected: guarded }) => {
            const pan = state.backupPans[id]
            const amount = pan?.amount ?? 0
            const isBad = isKeptBack(state, 'backup', id)
            const count = Math.floor(amount / (state.portions[component]?.amount ?? 1))
            const heldBy = pan?.food?.heldBy ?? 'dry'
            const open = (food: Parameters<typeof choose>[0] & { kind: 'food' }) => () =>
              choose(food)
            return (
              <li key={id} data-bad={(amount > 0 && isBad) || undefined}>
                <div>
                  <b>{name(component)}</b> {words.forms.backupIs(kept, guarded)}
                  <p>{backupSaid(id, component, amount)}</p>
                </div>
                <span>
                  {amount <= 0 ? (
                    <button
                      type="button"
                      onClick={open({ kind: 'food', food: { task: 'fill-backup', id } })}
                    >
                      {words.forms.behindFill}
                    </button>
                  ) : isBad ? (
                    <button
                      type="button"
                      onClick={open({
                        kind: 'food',
                        food: pan?.offSale
                          ? { task: 'resolve', what: 'backup', id }
                          : { task: 'throw-out', early: null },
                      })}
                    >
                      {pan?.offSale ? words.whatMayBeDone : words.toThrowOut}
                    </button>
                  ) : away === id ? (
                    <>
                      <button
                        type="button"
                        disabled={acting.busy}
                        onClick={() => putAway(id, component)}
                      >
                        {words.forms.behindAwayYes(count)}
                      </button>
                      <button type="button" onClick={() => setAway(null)}>
                        {words.forms.behindAwayNot}
                      </button>
                    </>
                  ) : (
                    <>
                      {needsReading(heldBy) && (
                        <button
                          type="button"
                          onClick={open({
                            kind: 'food',
                            food: { task: 'read', what: 'backup', id },
                          })}
                        >
                          {words.forms.behindRead}
                        </button>
                      )}
                      <button type="button" disabled={acting.busy} onClick={() => setAway(id)}>
                        {words.forms.behindAway}
                      </button>
                    </>
                  )}
                </span>
              </li>
            )
          })}
        </ul>
        {readHere(state.station).map((of) => (
          <button
            key={of}
            type="button"
            className={forms.small}
            onClick={() => choose({ kind: 'food', food: { task: 'read-here', of } })}
          >
            {words.readHere[of].title}
          </button>
        ))}
      </section>
    </div>
  )
}
