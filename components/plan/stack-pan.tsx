import styles from '#components/plan/stack.module.css'
import { usePlanWords } from '#components/plan/words.tsx'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import type { ParTold } from '#lib/rooms/prep/facts/told-par.ts'
import { type DayDot, dotsOf, portionsWith } from '#lib/rooms/prep/views/par-told.ts'
import { loadTotal } from '#lib/station/portion-amount.ts'
import type { Component } from '#lib/station/station-document.ts'

/** How high the fullest stack stands, CSS pixels, and what a dot takes of it. */
const HIGH_PX = 100
const DOT_PX = 11
const COLUMNS = 3

const heightOf = (portions: number, most: number): number =>
  Math.round((portions / Math.max(1, most)) * HIGH_PX)

/** Ten days as dots at the height of what they want: none over another. */
const placed = (days: readonly DayDot[], most: number) => {
  const tops: number[] = []
  return days.map(({ portions, isEnough }, index) => {
    const column = index % COLUMNS
    const bottom = Math.max(heightOf(portions, most) - DOT_PX, tops[column] ?? 0)
    tops[column] = bottom + DOT_PX
    return { left: column * DOT_PX, bottom, isEnough }
  })
}

interface StackPanProps {
  readonly component: Component
  readonly choice: PrepChoice | null
  readonly told: ParTold | null
  /** Portions as high as the fullest stack. */
  readonly most: number
  readonly pan: string
  readonly isChosen: boolean
  readonly onChoose: () => void
}

/** A pan of the plan: what is at hand and its loads stand up from it, the days that they are enough for beside. */
export function StackPan({
  component,
  choice,
  told,
  most,
  pan,
  isChosen,
  onChoose,
}: StackPanProps) {
  const words = usePlanWords()
  const loads = choice?.loads ?? 0
  const made = choice?.portions ?? 0
  const each = loads === 0 ? 0 : made / loads
  const portions = told ? portionsWith(told, made) : made
  const atHand = portions - made
  return (
    <button
      type="button"
      className={styles.pan}
      data-notch={pan}
      aria-pressed={isChosen}
      aria-label={words.panTitle(component.name, loads, loadTotal(component, made), atHand)}
      onClick={onChoose}
    >
      <span className={styles.above} aria-hidden="true">
        <span className={styles.both}>
          <span className={styles.stack}>
            <b className={styles.count}>{portions === 0 ? words.noLoads : portions}</b>
            {Array.from({ length: loads }, (_, load) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: loads have nothing else of their own
              <span key={load} style={{ height: Math.max(18, heightOf(each, most)) }}>
                {each}
              </span>
            ))}
            {atHand > 0 && (
              <span data-at-hand="" style={{ height: Math.max(18, heightOf(atHand, most)) }}>
                {atHand}
              </span>
            )}
          </span>
          {told && (
            <span className={styles.dots}>
              {placed(dotsOf(told, portions), most).map(({ left, bottom, isEnough }) => (
                <span
                  key={`${left}-${bottom}`}
                  data-short={isEnough ? undefined : ''}
                  style={{ left, bottom }}
                />
              ))}
            </span>
          )}
        </span>
      </span>
      <span className={styles.name}>
        {component.short.map((part) => (
          <span key={part}>{part}</span>
        ))}
      </span>
    </button>
  )
}
