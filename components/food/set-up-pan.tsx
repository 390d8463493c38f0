import type { ReactNode } from 'react'
import { KeptProbe } from '#components/food/kept-probe.tsx'
import { PackDays } from '#components/food/pack-days.tsx'
import styles from '#components/food/set-up.module.css'
import { SetUpSource } from '#components/food/set-up-source.tsx'
import type { SetUp } from '#components/food/use-set-up.ts'
import type { Choose } from '#components/job/chosen.ts'
import job from '#components/job/job.module.css'
import { PortionSteps } from '#components/job/steps.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Note } from '#components/ui/note.tsx'
import { howProbed } from '#lib/rooms/food/views/reading-entry.ts'
import { clockHours, isOnTime } from '#lib/rooms/pans/facts/clock-at-load.ts'
import { amountOf } from '#lib/rooms/pans/facts/pans.ts'
import { isAsked, type SetUpRow } from '#lib/rooms/pans/views/set-up-row.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'
import { portionOf } from '#lib/station/portion.ts'
import { loadTotal } from '#lib/station/portion-amount.ts'

interface SetUpPanProps {
  readonly state: RunningState
  readonly choose: Choose
  readonly now: number
  readonly setUp: SetUp
  readonly row: SetUpRow
  /** Past this pan, or with what is ready. */
  readonly ways: ReactNode
  readonly onDays: () => void
}

/** One pan of the sheet: how much, out of what, its days, and how it is read. */
export function SetUpPan({ state, choose, now, setUp, row, ways, onDays }: SetUpPanProps) {
  const words = useFoodWords()
  const { pan, component: id, wait, source, portions, most, isAll, capacity, pot, holds } = row
  const component = componentOf(state.station, id)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const unit = state.portions[id]?.unit ?? 'mg'
  // A stand-in's portion is another one than the station's.
  const hasOwnTool = state.portions[id]?.amount === portionOf(component).amount
  const amount = words.amount(amountOf(state, id, portions), unit)
  const said = setUp.of(pan)
  const isLeft = wait?.why === 'left'
  const isTold = wait !== null && (!isAsked(wait) || wait.why === 'read-again')
  const asks = source !== null && holds === null && !isLeft
  return (
    <>
      <div className={styles.head}>
        <p>
          <b className={job.large}>{component.name}</b>
          {asks && capacity !== null && <span>{words.setUp.full(capacity)}</span>}
        </p>
        <a
          className={styles.paper}
          href={`/paper/set-up${location.search}`}
          target="_blank"
          rel="noopener"
        >
          {words.setUp.onPaper}
        </a>
        {ways}
      </div>
      {holds !== null && <p>{words.setUp.holds(holds)}</p>}
      {said.refused !== null && <Note kind="no">{said.refused}</Note>}
      {isTold && !isLeft && (
        <Note kind={wait.why === 'out-of-limits' ? 'no' : 'watch'}>
          {words.setUp.inFull(wait, component.portion.tool === 'cup', time)}
        </Note>
      )}
      {asks && !isAll && said.alsoOpened === null && (
        <PortionSteps
          label={words.forms.goesIn}
          value={portions}
          amount={hasOwnTool ? words.setUp.total(loadTotal(component, portions)) : amount}
          least={1}
          most={most}
          onChange={(count) => setUp.say(pan, { portions: count })}
        />
      )}
      {holds === null && said.alsoOpened === null && (
        <SetUpSource {...{ state, choose, setUp, row }} />
      )}
      {asks && row.asksDates && <PackDays {...{ state, now, setUp, row }} onMore={onDays} />}
      {asks && row.asksWashed && (
        <label className={job.check}>
          <input
            type="checkbox"
            checked={said.washed}
            onChange={(event) => setUp.say(pan, { washed: event.target.checked })}
          />
          {words.forms.washed}
        </label>
      )}
      {asks && row.needsReading && (
        <>
          {isOnTime(state.station, pan) && (
            <p className={styles.how}>{words.forms.startsClock(clockHours(state.station))}</p>
          )}
          {said.alsoOpened === null && (
            <p className={styles.how}>
              {pot
                ? words.setUp.pot(words.sayDegrees(pot.temperature), time(pot.at))
                : words.round.how[howProbed(component)]}
            </p>
          )}
          {setUp.isProbeUsed(pan) && <p className={job.probeFirst}>{words.round.clean}</p>}
          <KeptProbe key={pan} form={setUp.form(pan)} beside={null} isCrowded={false} />
        </>
      )}
    </>
  )
}
