import styles from '#components/plan/panel.module.css'
import type { PlanNow } from '#components/plan/use-plan.ts'
import { usePlanWords } from '#components/plan/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { makingMinutes, type PrepChoice } from '#lib/prep/food-of.ts'
import { loadSize } from '#lib/rooms/prep/facts/load-size.ts'
import type { AheadAnswer } from '#lib/rooms/prep/views/ahead.ts'
import { withLoads } from '#lib/rooms/prep/views/loads.ts'
import {
  dotsOf,
  enoughDays,
  insteadOf,
  oneMoreLeft,
  portionsWith,
} from '#lib/rooms/prep/views/par-told.ts'
import { loadTotal } from '#lib/station/portion-amount.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

interface PanPanelProps {
  readonly station: StationDocument
  readonly component: Component
  readonly now: PlanNow
  readonly answer: AheadAnswer
}

const MINUTES_STEP = 5

/** One sentence of what its loads mean, then the figures that it rests on. */
function Told({ station, component, now, answer }: PanPanelProps) {
  const words = usePlanWords()
  const told = answer.wanted[component.id]
  const choice = now.foods.find((one) => one.component === component.id)
  if (!told) return null
  const { par } = words
  const portions = portionsWith(told, choice?.portions ?? 0)
  const more = oneMoreLeft(told, portions, loadSize(station, component, answer.yields))
  const money = (cents: number) => words.centsIn(station.locale, cents, station.currency)
  const dots = dotsOf(told, portions).filter(({ isEnough }) => isEnough).length
  const first = told.atHand.lots[0]
  const enough = enoughDays(told, portions)
  const isShort = enough * 2 <= told.days.length
  const instead = insteadOf(station, component.id, now.entry.items)
  const yields = answer.yields?.[component.id]
  return (
    <>
      <p className={styles.sentence}>
        <b data-short={(isShort && instead.length === 0) || undefined}>
          {par.enough(portions, enough)}
        </b>{' '}
        {isShort && instead.length > 0 && `${par.instead(instead.map(({ name }) => name))} `}
        {par.oneMore(money(more))}
      </p>
      <ul className={styles.figures}>
        <li>{par.take(told.mean, told.share, now.guests)}</li>
        <li>{par.from(answer.past)}</li>
        {told.atHand.portions > 0 && (
          <li>{par.atHand(told.atHand.portions, first?.lastDay ?? null)}</li>
        )}
        {told.taken > 0 && <li>{par.taken(told.taken)}</li>}
        {told.atHand.promised.map(({ on, lots }) => (
          <li key={on}>{par.promised(on, lots)}</li>
        ))}
        {told.atHand.others > 0 && <li>{par.notCounted(told.atHand.others)}</li>}
        <li>{par.left(money(told.leftCents), told.isCarried)}</li>
        <li>{par.lost(money(told.lostCents))}</li>
        {told.real !== null && <li>{par.dots(told.real, dots)}</li>}
        {yields && component.remake && (
          <li>{words.measured.ofLoad(component.remake.portionsPerLoad, yields)}</li>
        )}
      </ul>
    </>
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
