import { useLayoutEffect, useRef, useState } from 'react'
import type { DrawnWell } from '#components/menu/line/drawn.ts'
import lineStyles from '#components/menu/line/line-above.module.css'
import panStyles from '#components/menu/line/pan-above.module.css'
import { placed } from '#components/menu/line/placed.ts'
import styles from '#components/menu/touch/touch.module.css'
import { useMenuWords } from '#components/menu/words.tsx'
import { wellFromAbove } from '#lib/measure/well-layout.ts'

/** What touches each other, to be drawn as a thread through its pans. */
export interface Thread {
  readonly id: string
  readonly components: readonly string[]
  readonly isChosen: boolean
}

interface Point {
  readonly x: number
  readonly y: number
}

/** A thread that sags from pan to pan, CSS pixels. */
const pathOf = (points: readonly Point[]): string =>
  points
    .map(({ x, y }, at) => {
      const before = points[at - 1]
      if (!before) return `M${x} ${y}`
      return `Q${(before.x + x) / 2} ${Math.max(before.y, y) + 18} ${x} ${y}`
    })
    .join(' ')

interface LitLineProps {
  readonly wells: readonly DrawnWell[]
  readonly threads: readonly Thread[]
  /** Components whose pans are lit. */
  readonly lit: ReadonlySet<string>
  readonly onPan: ((component: string) => void) | null
}

/** The line from above with threads through what touches. */
export function LitLine({ wells, threads, lit, onPan }: LitLineProps) {
  const { line: words } = useMenuWords()
  const root = useRef<HTMLDivElement>(null)
  const [middles, setMiddles] = useState<ReadonlyMap<string, Point>>(new Map())
  // biome-ignore lint/correctness/useExhaustiveDependencies: another line stands elsewhere
  useLayoutEffect(() => {
    const at = root.current
    if (!at) return
    const measure = () => {
      const frame = at.getBoundingClientRect()
      const found = new Map<string, Point>()
      for (const pan of at.querySelectorAll<HTMLElement>('[data-of]')) {
        const { left, top, width, height } = pan.getBoundingClientRect()
        const of = pan.dataset.of ?? ''
        if (!found.has(of))
          found.set(of, {
            x: left - frame.left + at.scrollLeft + width / 2,
            y: top - frame.top + height * 0.82,
          })
      }
      setMiddles(found)
    }
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(at)
    return () => watch.disconnect()
  }, [wells])
  return (
    <div
      ref={root}
      className={`${lineStyles.line} ${styles.line}`}
      style={{ '--wells': Math.max(3, wells.length) } as React.CSSProperties}
    >
      <ol aria-label={words.line}>
        {wells.map(({ well, pans, held }, number) => (
          <li key={well} className={lineStyles.well} data-held={held}>
            <div className={lineStyles.opening}>
              {wellFromAbove(pans).stands.map((stand) => {
                const pan = pans.find((one) => one.pan === stand.pan)
                if (!pan) return null
                const name = pan.name === '' ? words.noName : pan.name
                return (
                  <button
                    key={pan.pan}
                    type="button"
                    className={panStyles.pan}
                    style={placed(stand)}
                    data-of={pan.component}
                    data-notch={lit.has(pan.component) ? 'lit' : undefined}
                    data-size={pan.size}
                    data-set=""
                    aria-pressed={lit.has(pan.component)}
                    aria-label={words.pan(name, pan.size, number + 1)}
                    disabled={onPan === null}
                    onClick={() => onPan?.(pan.component)}
                  >
                    <span className={panStyles.food}>
                      {pan.lines.map((one) => (
                        <b key={one}>{one}</b>
                      ))}
                    </span>
                  </button>
                )
              })}
            </div>
          </li>
        ))}
      </ol>
      <svg className={styles.threads} aria-hidden="true">
        {threads.map(({ id, components, isChosen }) => (
          <path
            key={id}
            data-chosen={isChosen || undefined}
            d={pathOf(
              components
                .flatMap((one) => middles.get(one) ?? [])
                .toSorted((one, other) => one.x - other.x),
            )}
          />
        ))}
      </svg>
    </div>
  )
}
