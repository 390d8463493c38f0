import styles from '#components/job/job.module.css'
import { JobForm } from '#components/job/job-form.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useForecast } from '#components/live/forecast.ts'
import { Button } from '#components/ui/button.tsx'
import { shortWays } from '#lib/rooms/pans/facts/short-ways.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { pansOf } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** The builds that the pans can't fill, newest first, and what can be done for each. */
export function ShortForm({ state, acting, task, choose }: TaskProps<'short'>) {
  const words = useFoodWords()
  const { component } = task
  const forecast = useForecast()
  const name = nameIn(state.station)
  const ways = shortWays(state, (id) => forecast?.components[id]?.underway[0]?.at ?? null).filter(
    (one) => one.component === component,
  )
  const pan = pansOf(state.station).find((one) => one.component === component)?.id ?? ''
  const held = state.pans[pan]
  const isEmpty = held?.amount === 0
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const wait = (ticket: number, letter: string, build: string) => {
    if (!acting.busy)
      void acting.act({ type: 'wait', ticket, letter }, words.forms.shortWaitSend(build))
  }
  const go = () =>
    choose(
      held?.offSale
        ? { task: 'resolve', what: 'pan', id: pan }
        : { task: 'put', pan, way: isEmpty ? 'load' : 'change' },
    )
  return (
    <JobForm
      job={{ lack: null, busy: acting.busy, send: go }}
      kind={held?.offSale ? 'no' : 'main'}
      send={held?.offSale ? words.whatMayBeDone : isEmpty ? words.loadPan : words.changePan}
    >
      <p>{ways.length === 0 ? words.forms.shortNone : words.forms.shortHow}</p>
      <ul className={styles.rows}>
        {ways.map((one) => (
          <li key={one.build}>
            <div>
              <b>{sayBuild(one.build)}</b> {words.stateName[one.state]}
              <p>
                {[
                  ...(one.canLeaveOut ? [words.forms.shortLeaveOut] : []),
                  ...(one.swaps.length > 0 ? [words.forms.shortSwap(one.swaps.map(name))] : []),
                  ...(!one.canLeaveOut && one.swaps.length === 0 ? [words.forms.shortOther] : []),
                  ...(one.ready > 0
                    ? [words.forms.shortReady]
                    : [
                        one.waitUntil === null
                          ? words.forms.shortWaitAny
                          : words.forms.shortWait(time(one.waitUntil)),
                      ]),
                  words.forms.shortCancel,
                ].join(' · ')}
              </p>
            </div>
            {one.waits ? (
              <span>{words.forms.shortWaits}</span>
            ) : (
              <Button
                disabled={acting.busy}
                onClick={() => wait(one.ticket, one.letter, one.build)}
              >
                {words.forms.shortWaits}
              </Button>
            )}
            <a href={`/counter${location.search}`}>{words.forms.shortToCounter}</a>
          </li>
        ))}
      </ul>
    </JobForm>
  )
}
