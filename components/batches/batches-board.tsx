import { useMemo, useRef, useState } from 'react'
import styles from '#components/batches/batches.module.css'
import { useBatchesWords } from '#components/batches/words.tsx'
import type { Chosen } from '#components/job/chosen.ts'
import { useActing } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { useServerTime } from '#components/live/server-time.ts'
import { aboutOf } from '#components/pans/about.ts'
import { LeadLine } from '#components/pans/lead-line.tsx'
import { JobTitle, OpenJob } from '#components/pans/open-job.tsx'
import board from '#components/pans/pans.module.css'
import header from '#components/pans/pans-header.module.css'
import type { PlacedTasks } from '#components/pans/placed-tasks.ts'
import { useIsPhone, useWalk } from '#components/pans/use-walk.ts'
import { Walker } from '#components/pans/walker.tsx'
import { PansWordsProvider, usePansWords } from '#components/pans/words.tsx'
import { Button, ButtonLink } from '#components/ui/button.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { toAnswer } from '#lib/rooms/day/facts/ends/to-answer.ts'
import { coolBy } from '#lib/rooms/food/facts/cooling/cool-by.ts'
import { type BatchStage, batchPictures } from '#lib/rooms/food/views/batch-strip.ts'
import { canStart, loadsPlanned, toStart } from '#lib/rooms/food/views/start-batch.ts'
import { panPictures } from '#lib/rooms/pans/facts/pans.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface BatchesBoardProps {
  readonly state: RunningState
  /** The civil date that it is planned for. */
  readonly on: string
  /** When its doors were to close, epoch milliseconds. */
  readonly closesAt: number
}

/** How often what depends on the time alone is worked out anew. */
const STEP_MS = 5_000

/** Of a service that isn't open nothing is loaded, sold or closed. */
const AHEAD: ReadonlySet<Chosen['task']> = new Set([
  'start-batch',
  'batch',
  'read',
  'resolve',
  'throw-out',
  'clock',
  'end',
])

/** Nothing is asked of it until the doors open. */
const RESTS: ReadonlySet<BatchStage> = new Set(['ready', 'cooled'])

/** No task hangs below a pan; the times that bind what stands behind it do. */
const NO_TASKS: PlacedTasks = {
  ...{ next: null, below: {}, putOff: {}, others: [], most: 1 },
  go: () => undefined,
}

const wayTo = (page: string): string => `${page}${location.search}`

function Board({ state, on, closesAt }: BatchesBoardProps) {
  const words = useBatchesWords()
  const lead = usePansWords()
  const acting = useActing(lead.loadRefusals)
  const now = Math.max(state.at, Math.floor(useServerTime() / STEP_MS) * STEP_MS)
  const [chosen, setChosen] = useState<Chosen | null>(null)
  const [hint, setHint] = useState<string | null>(null)
  const line = useRef<HTMLDivElement>(null)
  const pans = useMemo(() => pansOf(state.station).map(({ id }) => id), [state.station])
  const isPhone = useIsPhone()
  const walk = useWalk(line, pans, { first: null, isWalked: isPhone && chosen === null })
  const made = canStart(state)
  // Never opened, it is closed from here: each batch comes to an end of its own.
  const [left] = closesAt <= now ? toAnswer(state) : []
  const isAllStarted = toStart(state).length === 0
  const name = nameIn(state.station)
  const time = (at: number) => lead.sayTime(at, state.station.timeZone)
  const clock = (at: number) => lead.sayClock(at, state.station.timeZone)
  const pots = batchPictures(state, now)
  const limits = limitsOf(state.station)
  const cooling = pots.flatMap(({ id, component }) => {
    const cools = coolBy(state, id, now)
    const { scale } = state.station.safety
    return cools
      ? [{ id, name: name(component), said: lead.batches.coolPot(cools, limits, scale, clock) }]
      : []
  })
  const pot = pots.find(({ stage }) => !RESTS.has(stage))
  const isAllMade = isAllStarted && pots.length > 0 && !pot && !left && cooling.length === 0
  const rests = isAllMade ? words.allMade : isAllStarted ? words.allStarted : words.first
  const marks = Object.fromEntries(
    pans.flatMap((pan) => {
      const component = componentIn(state.station, pan) ?? ''
      if (!made.some(({ id }) => id === component)) return [[pan, words.fromPack]]
      const loads = loadsPlanned(state, component)
      return loads === null ? [] : [[pan, words.toMake(loads)]]
    }),
  )

  const choose = (next: Chosen): void => {
    acting.hush()
    setHint(null)
    if (next.task !== 'pan') {
      if (AHEAD.has(next.task)) setChosen(next)
      // All of it is answered; it is dropped on the first page.
      else if (next.task === 'close') setChosen(null)
      return
    }
    const component = componentIn(state.station, next.pan) ?? ''
    if (made.some(({ id }) => id === component)) setChosen({ task: 'start-batch', component })
    else setHint(words.ofPack(name(component)))
  }
  const job = chosen && { state, task: chosen, now, onBack: () => setChosen(null) }
  const about = chosen ? aboutOf(state, chosen) : { pans: [], vessel: null }
  return (
    <main
      className={board.board}
      data-open={chosen?.task ?? 'none'}
      onKeyDown={(event) => {
        if (event.key === 'Escape') setChosen(null)
      }}
    >
      <header className={header.header}>
        {job ? (
          <JobTitle {...job} />
        ) : (
          <div className={header.title}>
            <h1>{words.title(on)}</h1>
          </div>
        )}
        <div className={header.link}>
          <p role="status" className={header.said} data-kind={acting.said?.kind ?? 'none'}>
            {acting.said?.kind === 'refused' && job ? null : acting.said?.text}
          </p>
          <Connection />
        </div>
      </header>
      {isPhone && !job && <Walker walk={walk} count={pans.length} first={null} />}
      <Notch about={about.pans} className={board.stage ?? ''}>
        <LeadLine
          ref={line}
          {...{ state, now, about, choose }}
          pictures={panPictures(state)}
          forecast={null}
          placed={chosen ? null : NO_TASKS}
          marks={marks}
          isAtRest={chosen !== null}
        />
        <div className={board.below} data-notch-panel="" data-calm={job ? undefined : ''}>
          {job ? (
            <OpenJob {...job} acting={acting} choose={choose} />
          ) : (
            <div className={styles.rest}>
              <p>{hint ?? (left ? words.over : rests)}</p>
              {cooling.length > 0 && !left && (
                <ul className={styles.cooling} aria-label={words.cools}>
                  {cooling.map((one) => (
                    <li key={one.id}>
                      <b>{one.name}</b> {one.said}
                    </li>
                  ))}
                </ul>
              )}
              <nav className={styles.ways}>
                {left ? (
                  <Button
                    kind="main"
                    onClick={() => choose({ task: 'end', at: { what: left.what, id: left.id } })}
                  >
                    {words.endFood}
                  </Button>
                ) : (
                  <>
                    {isAllMade && (
                      <ButtonLink kind="main" href={wayTo('/')}>
                        {words.toPlanned}
                      </ButtonLink>
                    )}
                    {isAllStarted && pot && (
                      <Button kind="main" onClick={() => choose({ task: 'batch', id: pot.id })}>
                        {words.goOn(name(pot.component), lead.batches.stage(pot, time))}
                      </Button>
                    )}
                    <Button
                      kind={isAllStarted ? 'plain' : 'main'}
                      onClick={() =>
                        choose(
                          walk.pan === null
                            ? { task: 'start-batch', component: null }
                            : { task: 'pan', pan: walk.pan },
                        )
                      }
                    >
                      {lead.batches.start}
                    </Button>
                  </>
                )}
                {!isAllMade && <a href={wayTo('/')}>{words.toPlanned}</a>}
                <a href={wayTo('/prep')}>{words.toPrep}</a>
              </nav>
            </div>
          )}
        </div>
      </Notch>
    </main>
  )
}

/** The line as it will be: what is made for it stands behind its pan, as a pot. */
export function BatchesBoard(props: BatchesBoardProps) {
  return (
    <PansWordsProvider>
      <Board {...props} />
    </PansWordsProvider>
  )
}
