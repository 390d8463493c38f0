import styles from '#components/plan/panel.module.css'
import type { PlanNow } from '#components/plan/use-plan.ts'
import { usePlanWords } from '#components/plan/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { makingMinutes, type PrepChoice } from '#lib/prep/food-of.ts'
import type { AheadAnswer } from '#lib/rooms/prep/views/ahead.ts'
import { isEnough, loadSize, oneMoreWasted, withLoads } from '#lib/rooms/prep/views/loads.ts'
import { loadTotal } from '#lib/station/portion-amount.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

interface PanPanelProps {
  readonly station: StationDocument
  readonly component: Component
  readonly now: PlanNow
  readonly answer: AheadAnswer
}

const MINUTES_STEP = 5

/** What of it is told beside: how many want it, on how many days that is enough, what one more leaves. */
function Told({ station, component, now, answer }: PanPanelProps) {
  const words = usePlanWords()
  const alike = answer.wanted[component.id]
  const choice = now.foods.find((one) => one.component === component.id)
  if (!alike) return null
  const portions = choice?.portions ?? 0
  const wasted = oneMoreWasted(
    component,
    alike,
    portions,
    loadSize(station, component, answer.yields),
  )
  const yields = answer.yields?.[component.id]
  const enough = isEnough(alike, portions).filter((is) => is).length
  return (
    <p>
      {words.take(alike.mean, now.guests)} {words.enough(enough)}{' '}
      {wasted !== null && words.oneMore(words.centsIn(station.locale, wasted, station.currency))}{' '}
      {yields &&
        component.remake &&
        words.measured.ofLoad(component.remake.portionsPerLoad, yields)}
    </p>
  )
}

/** How it is made, as far as that is open for this food. */
function How({
  component,
  choice,
  set,
}: {
  readonly component: Component
  readonly choice: PrepChoice
  readonly set: (choice: PrepChoice) => void
}) {
  const words = usePlanWords()
  const isCooked = component.food.kind !== 'ready' && component.food.kind !== 'not-cooked'
  const { minutes, isGuess } = makingMinutes(component, choice)
  const toggle = (key: 'ahead' | 'fromRoom' | 'frozen') => {
    const { [key]: is, ...rest } = choice
    set(is ? rest : { ...rest, [key]: true })
  }
  const ways = [
    ...(isCooked && component.held === 'hot' ? (['ahead'] as const) : []),
    ...(!isCooked && component.held === 'cold' ? (['fromRoom'] as const) : []),
    'frozen' as const,
  ]
  const later = (by: number) => set({ ...choice, minutes: Math.max(1, minutes + by) })
  return (
    <div className={styles.how}>
      {ways.map((key) => (
        <button
          key={key}
          type="button"
          aria-pressed={choice[key] === true}
          onClick={() => toggle(key)}
        >
          {words.how[key]}
        </button>
      ))}
      {choice.coolsIn && (
        <button
          type="button"
          aria-pressed
          onClick={() => {
            const { coolsIn: _, ...rest } = choice
            set(rest)
          }}
        >
          {words.inIce(choice.coolsIn.total)}
        </button>
      )}
      <span className={styles.minutes}>
        <button type="button" aria-label={words.minutesLess} onClick={() => later(-MINUTES_STEP)}>
          −
        </button>
        <span>{words.minutes(minutes, isGuess)}</span>
        <button type="button" aria-label={words.minutesMore} onClick={() => later(MINUTES_STEP)}>
          +
        </button>
      </span>
    </div>
  )
}

/** The chosen pan: its loads, how they are made, and what they mean for the day. */
export function PanPanel(props: PanPanelProps) {
  const { station, component, now } = props
  const words = usePlanWords()
  const size = loadSize(station, component, props.answer.yields)
  const choice = now.foods.find((one) => one.component === component.id) ?? null
  const loads = choice?.loads ?? 0
  const change = (by: number) => {
    const next = loads + by
    if (next <= 0) now.dropFood(component.id)
    else
      now.setFood(
        withLoads(choice ?? { component: component.id, loads: 1, portions: size }, next, size),
      )
  }
  return (
    <div className={styles.pan}>
      <div className={styles.told}>
        <h2>
          {words.panTitle(component.name, loads, loadTotal(component, choice?.portions ?? 0))}
        </h2>
        <Told {...props} />
        {choice && <How {...{ component, choice }} set={now.setFood} />}
      </div>
      <div className={styles.loads}>
        <Button
          aria-label={`−1 ${words.fewerLoads}`}
          disabled={loads === 0}
          sub={words.fewerLoads}
          onClick={() => change(-1)}
        >
          −1
        </Button>
        <Button
          aria-label={`+1 ${words.moreLoads}`}
          sub={words.moreLoads}
          onClick={() => change(1)}
        >
          +1
        </Button>
      </div>
    </div>
  )
}
