import { useEffect, useRef, useState } from 'react'
import styles from '#components/plan/times.module.css'
import { usePlanWords } from '#components/plan/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { civilDate } from '#lib/measure/civil.ts'
import type { Prepared, Unready, WayOut } from '#lib/prep/prep-plan.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** In the place of taking the plan: which time falls to nobody, and the way to it. */
export function ToSettle({
  station,
  prepared,
  lack,
  onLead,
}: {
  readonly station: StationDocument
  readonly prepared: Prepared
  readonly lack: Unready
  readonly onLead: () => void
}) {
  const words = usePlanWords()
  const { timeZone } = station
  const task = prepared.tasks.find(({ id }) => id === lack.task)
  const food = lack.component === null ? '' : nameIn(station)(lack.component)
  const clock = words.sayClock(lack.at, timeZone)
  const title = words.toSettle(words.weekday(civilDate(lack.at, timeZone)), clock)
  const sub = words.toSettleOf(task ? words.taskName(task, food) : null, prepared.unready.length)
  // What it leads to is drawn on a phone only, and heard everywhere.
  return (
    <Button kind="no" size="large" sub={sub} aria-label={`${title} ${sub}`} onClick={onLead}>
      {title}
    </Button>
  )
}

/** What falls to nobody, one at a time in order, with every way out that there is. */
export function UnreadyPanel({
  station,
  prepared,
  isLedTo,
  onWay,
}: {
  readonly station: StationDocument
  readonly prepared: Prepared
  /** It was asked for by the button, which is far from it on a phone. */
  readonly isLedTo: boolean
  readonly onWay: (unready: Unready, way: WayOut) => void
}) {
  const words = usePlanWords()
  const [index, setIndex] = useState(0)
  const section = useRef<HTMLElement>(null)
  useEffect(() => {
    if (!isLedTo) return
    section.current?.focus({ preventScroll: true })
    section.current?.scrollIntoView({ block: 'nearest' })
  }, [isLedTo])
  const { unready, tasks } = prepared
  const shown = unready[Math.min(index, unready.length - 1)]
  if (!shown) return null
  const onNext = () => setIndex((index + 1) % unready.length)
  const clock = (at: number) => words.sayClock(at, station.timeZone)
  const name = nameIn(station)
  const task = tasks.find(({ id }) => id === shown.task)
  const say = { clock, item: name }
  return (
    <section ref={section} tabIndex={-1} className={styles.unready} aria-label={words.ways}>
      <p role="alert" className={styles.lack}>
        {task ? (
          <>
            <b>{words.lack(shown.why, clock(shown.at))}</b>{' '}
            {words.taskName(task, shown.component === null ? '' : name(shown.component))}
          </>
        ) : (
          words.crewLack(clock(shown.at), clock(shown.to))
        )}
      </p>
      <div className={styles.ways}>
        {shown.waysOut.map((way) => {
          const { label, more } = words.way(way, say)
          return way.way === 'none' ? (
            <p key={way.way}>
              <b>{label}.</b> {more}
            </p>
          ) : (
            <Button
              key={way.way}
              kind={way.way === 'cook-in-the-morning' ? 'main' : 'plain'}
              sub={more}
              onClick={() => onWay(shown, way)}
            >
              {label}
            </Button>
          )
        })}
      </div>
      {unready.length > 1 && (
        <Button kind="quiet" aria-label={words.nextLack} onClick={() => onNext()}>
          {`${Math.min(index, unready.length - 1) + 1} / ${unready.length}`}
        </Button>
      )}
    </section>
  )
}
