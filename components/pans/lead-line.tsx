import type { CSSProperties, Ref } from 'react'
import type { Choose } from '#components/job/chosen.ts'
import { Line } from '#components/line/line.tsx'
import type { About } from '#components/pans/about.ts'
import { Hanging } from '#components/pans/hanging.tsx'
import styles from '#components/pans/lead-line.module.css'
import { PanPlace } from '#components/pans/pan-place.tsx'
import type { PlacedTasks } from '#components/pans/placed-tasks.ts'
import { Vessels } from '#components/pans/vessels.tsx'
import { usePansWords } from '#components/pans/words.tsx'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { rowsOf, vesselsByPan } from '#lib/rooms/food/views/vessels.ts'
import { portionsKept } from '#lib/rooms/pans/facts/kept.ts'
import { biasThatMatters, outlookOf } from '#lib/rooms/pans/facts/pan-outlook.ts'
import type { PanPicture } from '#lib/rooms/pans/facts/pans.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface LeadLineProps {
  readonly state: RunningState
  readonly pictures: Readonly<Record<string, PanPicture>>
  readonly forecast: StationForecast | null
  readonly now: number
  /** What is done, or is to be done next. */
  readonly about: About
  /** What hangs below the pans; null while a job is open. */
  readonly placed: PlacedTasks | null
  /** What is typed below isn't lost by a tap up here. */
  readonly isAtRest: boolean
  /** By pan or lid: what it says in the place of its number, while a round of readings is taken. */
  readonly marks: Readonly<Record<string, string>>
  readonly choose: Choose
  readonly ref: Ref<HTMLDivElement>
}

/** The line with what is in it, what stands behind it, and what is to be done to each pan. */
export function LeadLine(props: LeadLineProps) {
  const words = usePansWords()
  const { state, pictures, forecast, now, about, placed, isAtRest, marks, choose, ref } = props
  const name = nameIn(state.station)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const vessels = vesselsByPan(state, now)
  const rows = Math.max(1, ...Object.values(vessels).map(rowsOf))
  const sizes = { '--rows': rows, '--hangs': placed?.most ?? 0 } as CSSProperties
  return (
    <div
      ref={ref}
      className={styles.line}
      style={sizes}
      inert={isAtRest}
      data-home={placed ? '' : undefined}
      data-swiped={placed ? '' : undefined}
    >
      <Line
        station={state.station}
        label={words.line}
        className={styles.walk ?? ''}
        renderPan={({ id }, component) => {
          const one = pictures[id]
          const keep = state.keeps[component.id]
          const times = foodTimes(state, 'pan', id, now)
          return one ? (
            <PanPlace
              picture={one}
              component={component}
              about={{
                outlook: outlookOf(forecast, component.id),
                times,
                kept: keep ? portionsKept(keep) : 0,
                isStoodIn: state.standIns[component.id] !== undefined,
                bias: biasThatMatters(forecast, component.id),
                name,
                time,
              }}
              isLit={about.pans.includes(id)}
              mark={marks[id]}
              behind={
                <Vessels
                  behind={component}
                  station={state.station}
                  vessels={vessels[id] ?? []}
                  lit={about.pans.length === 0 || about.pans.includes(id) ? about.vessel : null}
                  time={time}
                  marks={marks}
                  choose={choose}
                />
              }
              below={placed && <Hanging placed={placed} pan={id} times={times} time={time} />}
              onChoose={() => choose({ task: 'pan', pan: id })}
            />
          ) : null
        }}
      />
    </div>
  )
}
