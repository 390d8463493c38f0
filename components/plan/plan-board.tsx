import { useState } from 'react'
import { Line } from '#components/line/line.tsx'
import { useActing } from '#components/live/acting.ts'
import { useIsPhone } from '#components/pans/use-walk.ts'
import { DayForm } from '#components/plan/day-form.tsx'
import { Legend } from '#components/plan/legend.tsx'
import { PanPanel } from '#components/plan/pan-panel.tsx'
import { Papers } from '#components/plan/papers.tsx'
import styles from '#components/plan/plan.module.css'
import { PlanHeader } from '#components/plan/plan-header.tsx'
import { PlanTasks } from '#components/plan/plan-tasks.tsx'
import { StackPan } from '#components/plan/stack-pan.tsx'
import { TakePlan } from '#components/plan/take-plan.tsx'
import { TaskList } from '#components/plan/task-list.tsx'
import timesStyles from '#components/plan/times.module.css'
import { ToSettle, UnreadyPanel } from '#components/plan/unready-panel.tsx'
import { useAhead } from '#components/plan/use-ahead.ts'
import { usePlan, withWay } from '#components/plan/use-plan.ts'
import { usePlanWords } from '#components/plan/words.tsx'
import { MissedDoors } from '#components/prep/doors-missed.tsx'
import { useCrewInitials } from '#components/prep/use-crew-initials.ts'
import { Notch } from '#components/ui/notch.tsx'
import type { Unready, WayOut } from '#lib/prep/prep-plan.ts'
import type { AheadAnswer } from '#lib/rooms/prep/views/ahead.ts'
import { withReader } from '#lib/rooms/prep/views/crew-entry.ts'
import { fromLarder, highestOf } from '#lib/rooms/prep/views/par-told.ts'
import {
  crewNames,
  lackOf,
  type PlanEntry,
  planCommandOf,
} from '#lib/rooms/prep/views/plan-entry.ts'
import { loadsABlock } from '#lib/rooms/prep/views/stacks.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf, pansOf } from '#lib/station/find.ts'

interface BoardProps {
  readonly state: RunningState
  readonly plan: ServicePlan
  readonly answer: AheadAnswer
  /** Initials by the id of each entry of the crew. */
  readonly told: Readonly<Record<string, string>>
  readonly onGuests: (guests: number | null) => void
}

function Board({ state, plan, answer, told, onGuests }: BoardProps) {
  const words = usePlanWords()
  const { station } = state
  const acting = useActing(words.loadRefusals)
  const now = usePlan(state, plan, answer, told)
  const isPhone = useIsPhone()
  const pans = pansOf(station)
  const [pan, setPan] = useState(pans[0]?.id ?? '')
  const [isDay, setIsDay] = useState(false)
  /** How often the button led to what falls to nobody. */
  const [led, setLed] = useState(0)
  const [isPrinting, setIsPrinting] = useState(false)
  const { prepared, entry } = now
  const chosen = pans.find(({ id }) => id === pan)
  const names = now.typedNames ?? crewNames(plan.crew, told, words.person)
  const stacks = Object.entries(answer.wanted).map(([id, told]) => {
    const food = now.foods.find(({ component }) => component === id)
    const made = food?.portions ?? 0
    return { loads: food?.loads ?? 0, atHand: fromLarder(told), most: highestOf(told, made) }
  })
  const most = Math.max(1, ...stacks.map((one) => one.most))
  const scale = loadsABlock(stacks)
  const sendPlan = async (): Promise<boolean> => {
    if (!now.isPlanChanged) return true
    // What is lacking is said there, and typed.
    if (lackOf(entry) !== null) setIsDay(true)
    else return acting.act(planCommandOf(entry, station.id), words.form.changed)
    return false
  }
  const take = async () => {
    const { foods, ownTable } = now
    if (await sendPlan()) await acting.act({ type: 'planPrep', foods, ownTable }, words.taken)
  }
  const setEntry = (next: PlanEntry) => {
    now.setEntry(next)
    acting.hush()
  }
  const onWay = (unready: Unready, way: WayOut) => {
    acting.hush()
    const choice = now.foods.find(({ component }) => component === unready.component)
    const taken = choice && withWay(choice, way)
    if (taken) now.setFood(taken)
    else if (way.way === 'smaller-menu') {
      const left = (entry.items ?? station.items.map(({ id }) => id)).filter(
        (id) => !way.items.includes(id),
      )
      if (unready.component !== null) now.dropFood(unready.component)
      if (way.items.length > 0) setEntry({ ...entry, items: left })
    } else if (way.way === 'another-reader') {
      setEntry(withReader(entry, way, station.timeZone))
      setIsDay(true)
    }
  }
  if (isDay)
    return (
      <main className={styles.dayPage}>
        <h1>{words.titleOf(plan.on)}</h1>
        <DayForm
          {...{ entry, acting }}
          station={answer.station}
          onEntry={setEntry}
          onBack={() => setIsDay(false)}
          send={{
            label: words.form.change,
            go: () => void sendPlan().then((is) => is && setIsDay(false)),
          }}
        />
      </main>
    )
  if (isPrinting)
    return (
      <main>
        <Papers onBack={() => setIsPrinting(false)} />
      </main>
    )
  const [toSettle] = prepared.unready
  const isLacking = prepared.unready.some(({ component }) => component === chosen?.component)
  const hasRaw = now.asPrep.foods.some(({ raw }) => raw)
  return (
    <main className={styles.board}>
      <PlanHeader
        {...{ plan, now, answer, onGuests }}
        assemblers={state.assemblers}
        isOpen={state.stage === 'open'}
        onDay={() => setIsDay(true)}
        onPrint={state.prep === undefined ? null : () => setIsPrinting(true)}
        onEntry={setEntry}
      />
      <MissedDoors {...{ station, words }} missed={now.missed} opensAt={plan.opensAt} />
      <Notch about={[pan]} kind={isLacking ? 'no' : 'main'} className={styles.stage ?? ''}>
        <div className={styles.line}>
          <Legend
            scale={scale}
            hasLarder={stacks.some(({ atHand }) => atHand > 0)}
            isReal={Object.values(answer.wanted).every(({ real }) => real !== null)}
          />
          <Line
            station={station}
            label={words.title}
            wrap="by-well"
            className={styles.wells ?? ''}
            renderPan={(one, component) => (
              <StackPan
                {...{ component, most, scale }}
                pan={one.id}
                choice={now.foods.find((food) => food.component === component.id) ?? null}
                told={answer.wanted[component.id] ?? null}
                isChosen={one.id === pan}
                onChoose={() => setPan(one.id)}
              />
            )}
          />
        </div>
        <section
          className={styles.panel}
          style={{
            order: station.line.wells.findIndex(({ pans: of }) => chosen && of.includes(chosen)),
          }}
          data-notch-panel=""
        >
          {chosen && (
            <PanPanel
              {...{ station, now, answer }}
              component={componentOf(station, chosen.component)}
            />
          )}
          <TakePlan
            {...{ now, acting, hasRaw }}
            toSettle={
              toSettle ? (
                <ToSettle
                  {...{ station, prepared }}
                  lack={toSettle}
                  onLead={() => {
                    const of = pans.find(({ component }) => component === toSettle.component)
                    if (of) setPan(of.id)
                    setLed(led + 1)
                  }}
                />
              ) : null
            }
            toBatches={state.stage === 'planned' && state.prep !== undefined}
            onTake={() => void take()}
          />
        </section>
      </Notch>
      <div className={timesStyles.area}>
        {toSettle && <UnreadyPanel key={led} isLedTo={led > 0} {...{ station, prepared, onWay }} />}
        {isPhone ? (
          <TaskList {...{ station, prepared, names }} />
        ) : (
          <PlanTasks {...{ station, prepared, names }} asPrep={now.asPrep} />
        )}
      </div>
    </main>
  )
}

/** A planned service over its line; the figures of its day come from the server. */
export function PlanBoard({
  state,
  plan,
}: {
  readonly state: RunningState
  readonly plan: ServicePlan
}) {
  const words = usePlanWords()
  const [guests, setGuests] = useState(state.expected)
  const ahead = useAhead({
    guests,
    service: state.service,
    plan: JSON.stringify(plan),
  })
  const told = useCrewInitials(state.service, plan.crew)
  const [shown, setShown] = useState(told)
  if (told !== null && told !== shown) setShown(told)
  if (ahead.is === 'there' && shown !== null)
    return <Board {...{ state, plan }} told={shown} answer={ahead.answer} onGuests={setGuests} />
  return (
    <main className={styles.quiet}>
      <h1>{words.titleOf(plan.on)}</h1>
      <p role="status">
        {ahead.is === 'refused'
          ? words.notYours
          : ahead.is === 'lost'
            ? words.lost
            : words.connecting}
      </p>
    </main>
  )
}
