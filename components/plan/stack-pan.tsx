import styles from '#components/plan/stack.module.css'
import { usePlanWords } from '#components/plan/words.tsx'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import type { ParTold } from '#lib/rooms/prep/facts/told-par.ts'
import { dotsOf, portionsWith } from '#lib/rooms/prep/views/par-told.ts'
import { blocksOf, dotPlaces } from '#lib/rooms/prep/views/stacks.ts'
import { loadTotal } from '#lib/station/portion-amount.ts'
import type { Component } from '#lib/station/station-document.ts'

interface StackPanProps {
  readonly component: Component
  readonly choice: PrepChoice | null
  readonly told: ParTold | null
  /** Portions as high as the fullest stack. */
  readonly most: number
  /** Loads that one block is. */
  readonly scale: number
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
  scale,
  pan,
  isChosen,
  onChoose,
}: StackPanProps) {
  const words = usePlanWords()
  const loads = choice?.loads ?? 0
  const made = choice?.portions ?? 0
  const portions = told ? portionsWith(told, made) : made
  const atHand = portions - made
  const dots = told ? dotsOf(told, portions) : []
  const places = dotPlaces(
    dots.map((dot) => dot.portions),
    most,
  )
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
            <b className={styles.count} data-long={portions >= 100 ? '' : undefined}>
              {portions === 0 ? words.noLoads : portions}
            </b>
            {blocksOf({ loads, made, atHand }, scale, most).map((block, index) => (
              <span
                // biome-ignore lint/suspicious/noArrayIndexKey: blocks have nothing else of their own
                key={index}
                data-at-hand={block.of === 'larder' ? '' : undefined}
                style={{ height: block.height }}
              >
                {block.portions}
              </span>
            ))}
          </span>
          {told && (
            <span className={styles.dots}>
              {dots.map(({ isEnough }, index) => (
                <span
                  // biome-ignore lint/suspicious/noArrayIndexKey: days have nothing else of their own
                  key={index}
                  data-short={isEnough ? undefined : ''}
                  style={places[index]}
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
