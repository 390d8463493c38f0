import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useForecast } from '#components/live/forecast.ts'
import { shortWays } from '#lib/rooms/pans/facts/short-ways.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { pansOf } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** The builds that the pans can't fill, newest first, and what can be done for each. */
export function ShortForm({ state, acting, food, choose }: FormProps<'short'>) {
  const words = useFoodWords()
  const { component } = food
  const forecast = useForecast()
  const name = nameIn(state.station)
  const ways = shortWays(state, (id) => forecast?.components[id]?.underway[0]?.at ?? null).filter(
    (one) => one.component === component,
  )
  const pan = pansOf(state.station).find((one) => one.component === component)?.id
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const wait = (ticket: number, letter: string, build: string) => {
    if (!acting.busy)
      void acting.act({ type: 'wait', ticket, letter }, words.forms.shortWaitSend(build))
  }
  return (
    <div className={forms.one}>
      <p>{ways.length === 0 ? words.forms.shortNone : words.forms.shortHow}</p>
      <ul className={forms.list}>
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
              <button
                type="button"
                disabled={acting.busy}
                onClick={() => wait(one.ticket, one.letter, one.build)}
              >
                {words.forms.shortWaits}
              </button>
            )}
            <a href="/counter">{words.forms.shortToCounter}</a>
          </li>
        ))}
      </ul>
      {pan !== undefined && state.pans[pan]?.offSale && (
        <div className={forms.send}>
          <button
            type="button"
            className={forms.stop}
            onClick={() =>
              choose({ kind: 'food', food: { task: 'resolve', what: 'pan', id: pan } })
            }
          >
            {words.whatMayBeDone}
          </button>
        </div>
      )}
      {pan !== undefined && !state.pans[pan]?.offSale && (
        <div className={forms.send}>
          <button
            type="button"
            className={forms.main}
            onClick={() =>
              choose({
                kind: 'food',
                food: {
                  task: 'put',
                  pan,
                  way: state.pans[pan]?.amount === 0 ? 'load' : 'change',
                },
              })
            }
          >
            {state.pans[pan]?.amount === 0 ? words.loadPan : words.changePan}
          </button>
        </div>
      )}
    </div>
  )
}
