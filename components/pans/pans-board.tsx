import { lazy, Suspense, useEffect, useMemo, useRef, useState } from 'react'
import type { Chosen } from '#components/job/chosen.ts'
import { foodName } from '#components/job/food-name.ts'
import { saidHere } from '#components/job/said-here.ts'
import { useActing } from '#components/live/acting.ts'
import { useForecast } from '#components/live/forecast.ts'
import { useServerTime } from '#components/live/server-time.ts'
import { aboutOf } from '#components/pans/about.ts'
import { DoNext, isUrgent } from '#components/pans/do-next.tsx'
import { LeadLine } from '#components/pans/lead-line.tsx'
import { mainOf } from '#components/pans/pan-main.ts'
import styles from '#components/pans/pans.module.css'
import { PansHeader } from '#components/pans/pans-header.tsx'
import {
  calmAt,
  nextAt,
  type PlacedTasks,
  placeTasks,
  sayCalm,
} from '#components/pans/placed-tasks.ts'
import { roundMarks } from '#components/pans/round-marks.ts'
import { Others, Strip } from '#components/pans/strip.tsx'
import { useTasks } from '#components/pans/use-tasks.ts'
import { useIsPhone, useWalk } from '#components/pans/use-walk.ts'
import { Walker } from '#components/pans/walker.tsx'
import { PansWordsProvider, usePansWords } from '#components/pans/words.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { calmOfLead, putOffOf } from '#lib/rooms/advice/views/calm.ts'
import { tasksOf } from '#lib/rooms/advice/views/do-next.ts'
import { panPictures } from '#lib/rooms/pans/facts/pans.ts'
import type { RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'

const loadJob = () => import('#components/pans/open-job.tsx')
const loadDates = () => import('#components/food/food-dates.tsx')
const loadSetUp = () => import('#components/food/set-up-form.tsx')

/** Heavier than the line, and wanted once something is tapped: fetched once the line stands. */
const JobTitle = lazy(async () => ({ default: (await loadJob()).JobTitle }))
const OpenJob = lazy(async () => ({ default: (await loadJob()).OpenJob }))

/** Before anyone needs them, so that they open without a network as well. */
const PRELOAD_AFTER_MS = 500

const preload = () => {
  for (const load of [loadJob, loadDates, loadSetUp]) load().catch(() => undefined)
}

/** How often what depends on the time alone is worked out anew. */
const STEP_MS = 5_000

/** Nothing is typed in them, so that another pan may be tapped. */
const FREE: ReadonlySet<Chosen['task']> = new Set(['pan', 'behind'])

function Board({ state }: { readonly state: RunningState }) {
  const words = usePansWords()
  const acting = useActing(words.loadRefusals)
  const forecast = useForecast()
  const now = Math.max(state.at, Math.floor(useServerTime() / STEP_MS) * STEP_MS)
  const [chosen, setChosen] = useState<Chosen | null>(null)
  const cameFrom = useRef<HTMLElement | null>(null)
  const line = useRef<HTMLDivElement>(null)
  const pictures = panPictures(state)
  const pans = useMemo(() => pansOf(state.station).map(({ id }) => id), [state.station])

  const choose = (next: Chosen) => {
    if (chosen === null && document.activeElement instanceof HTMLElement)
      cameFrom.current = document.activeElement
    // In a round, and at the end of a day, what was done last stays said while the next is asked for.
    const goesOn = next.task === 'round' || chosen?.task === 'end'
    if (!goesOn || acting.said?.kind === 'refused') acting.hush()
    setChosen(next)
  }
  const back = () => {
    setChosen(null)
    requestAnimationFrame(() => {
      if (cameFrom.current?.isConnected) cameFrom.current.focus()
    })
  }

  useEffect(() => {
    const timer = setTimeout(preload, PRELOAD_AFTER_MS)
    return () => clearTimeout(timer)
  }, [])

  const tasks = useTasks(state, acting, choose)
  const here = saidHere(words, state, now)
  const putOff = putOffOf(state, forecast, now)
  const rushUntil = forecast?.rushUntil ?? null
  const placed: PlacedTasks = {
    ...placeTasks(words, state, tasksOf(state, forecast, now), putOff, here),
    go: (one) => void tasks.go(one.task, one.told),
  }
  const isPhone = useIsPhone()
  const walk = useWalk(line, pans, {
    first: placed.next?.told.about.pans[0] ?? null,
    isWalked: isPhone && chosen === null,
  })
  const next =
    walk.pan === null || placed.next?.told.about.pans.length === 0
      ? placed.next
      : nextAt(placed, walk.pan)
  const about = chosen
    ? aboutOf(state, chosen)
    : walk.pan === null
      ? (next?.told.about ?? { pans: [], vessel: null })
      : { pans: [walk.pan], vessel: next?.told.about.vessel ?? null }
  const calm =
    walk.pan === null
      ? sayCalm(words, calmOfLead(state, forecast, now), here)
      : calmAt(words, foodName(state, 'pan', walk.pan))
  const seen = walk.pan === null ? undefined : pictures[walk.pan]
  const main = seen && mainOf(words, seen)
  const way = main ? { label: main.label, act: () => choose(main.opens) } : null
  const job = chosen && { state, task: chosen, now, onBack: back }

  return (
    <main
      className={styles.board}
      data-open={chosen?.task ?? 'none'}
      onKeyDown={(event) => {
        if (event.key === 'Escape' && chosen) back()
        if (walk.pan === null || !(event.target instanceof HTMLElement)) return
        if (event.key === 'ArrowLeft') walk.go(walk.index - 1)
        if (event.key === 'ArrowRight') walk.go(walk.index + 1)
      }}
    >
      <PansHeader
        state={state}
        said={acting.said}
        busy={acting.busy}
        rushUntil={rushUntil}
        job={
          job && (
            <Suspense fallback={null}>
              <JobTitle {...job} />
            </Suspense>
          )
        }
        onClose={() => choose({ task: 'close' })}
        onUnpaid={() => choose({ task: 'unpaid' })}
      />
      {isPhone && !job && (
        <Walker
          walk={walk}
          count={pans.length}
          first={
            placed.next && placed.next !== next
              ? {
                  title: placed.next.told.title,
                  isUrgent: isUrgent(placed.next.task),
                  go: () => walk.go(pans.indexOf(placed.next?.told.about.pans[0] ?? '')),
                }
              : null
          }
        />
      )}
      {job?.task.task === 'set-up' ? (
        <Suspense fallback={null}>
          <OpenJob {...job} acting={acting} choose={choose} />
        </Suspense>
      ) : (
        <Notch
          about={isPhone && !chosen ? [] : about.pans}
          kind={!chosen && next && isUrgent(next.task) ? 'no' : 'main'}
          className={styles.stage ?? ''}
        >
          <LeadLine
            ref={line}
            {...{ state, pictures, forecast, now, about, choose }}
            placed={chosen ? null : placed}
            marks={roundMarks(words, state, chosen, now)}
            isAtRest={chosen !== null && !FREE.has(chosen.task)}
          />
          <div
            className={styles.below}
            data-notch-panel=""
            data-calm={!job && !next ? '' : undefined}
          >
            {job ? (
              <Suspense fallback={null}>
                <OpenJob {...job} acting={acting} choose={choose} />
              </Suspense>
            ) : (
              <DoNext next={next} calm={calm} tasks={tasks} way={way} />
            )}
          </div>
        </Notch>
      )}
      {!job && (
        <>
          <Others placed={placed} />
          <Strip {...{ state, now, forecast, choose }} />
        </>
      )}
    </main>
  )
}

export function PansBoard(props: { readonly state: RunningState }) {
  return (
    <PansWordsProvider>
      <Board {...props} />
    </PansWordsProvider>
  )
}
