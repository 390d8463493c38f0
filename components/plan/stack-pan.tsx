import styles from '#components/plan/stack.module.css'
import { usePlanWords } from '#components/plan/words.tsx'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import type { DaysAlike } from '#lib/rooms/prep/facts/days-alike.ts'
import { isEnough } from '#lib/rooms/prep/views/loads.ts'
import { loadTotal } from '#lib/station/portion-amount.ts'
import type { Component } from '#lib/station/station-document.ts'

/** How high the fullest stack stands, CSS pixels, and what a dot takes of it. */
const HIGH_PX = 100
const DOT_PX = 11
const COLUMNS = 3

const heightOf = (portions: number, most: number): number =>
  Math.round((portions / Math.max(1, most)) * HIGH_PX)

/** Ten days as dots at the height of what they would want: none over another. */
const dotsOf = (alike: DaysAlike, most: number): readonly { left: number; bottom: number }[] => {
  const tops: number[] = []
  return alike.days.map((portions, index) => {
    const column = index % COLUMNS
    const bottom = Math.max(heightOf(portions, most) - DOT_PX, tops[column] ?? 0)
    tops[column] = bottom + DOT_PX
    return { left: column * DOT_PX, bottom }
  })
}

interface StackPanProps {
  readonly component: Component
  readonly choice: PrepChoice | null
  readonly alike: DaysAlike | null
  /** Portions as high as the fullest stack. */
  readonly most: number
  readonly pan: string
  readonly isChosen: boolean
  readonly onChoose: () => void
}

/** A pan of the plan: its loads stand up from it, with the days that they are enough for beside. */
export function StackPan({
  component,
  choice,
  alike,
  most,
  pan,
  isChosen,
  onChoose,
}: StackPanProps) {
  const words = usePlanWords()
  const loads = choice?.loads ?? 0
  const portions = choice?.portions ?? 0
  const each = loads === 0 ? 0 : portions / loads
  const enough = alike ? isEnough(alike, portions) : []
  return (
    <button
      type="button"
      className={styles.pan}
      data-notch={pan}
      aria-pressed={isChosen}
      aria-label={words.panTitle(component.name, loads, loadTotal(component, portions))}
      onClick={onChoose}
    >
      <span className={styles.above} aria-hidden="true">
        <span className={styles.both}>
          <span className={styles.stack}>
            <b className={styles.count}>{loads === 0 ? words.noLoads : portions}</b>
            {Array.from({ length: loads }, (_, load) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: loads have nothing else of their own
              <span key={load} style={{ height: Math.max(14, heightOf(each, most)) }}>
                {each}
              </span>
            ))}
          </span>
          {alike && (
            <span className={styles.dots}>
              {dotsOf(alike, most).map(({ left, bottom }, index) => (
                <span
                  key={`${left}-${bottom}`}
                  data-short={enough[index] ? undefined : ''}
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
