import type { CSSProperties } from 'react'
import styles from '#components/print/labels/labels.module.css'
import type { StockNow } from '#components/print/labels/use-stock.ts'
import { usePaperWords } from '#components/print/words.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { MOST_OFFSET, OFFSET_STEP, perSheet, STOCK_IDS } from '#lib/paper/labels/label-stock.ts'

interface StepperProps {
  readonly name: string
  readonly value: string
  readonly less: { readonly name: string; readonly go: (() => void) | null }
  readonly more: { readonly name: string; readonly go: (() => void) | null }
}

function Stepper({ name, value, less, more }: StepperProps) {
  return (
    <div className={styles.stepper}>
      <b>{name}</b>
      <button
        type="button"
        aria-label={less.name}
        disabled={less.go === null}
        onClick={() => less.go?.()}
      >
        −
      </button>
      <span>{value}</span>
      <button
        type="button"
        aria-label={more.name}
        disabled={more.go === null}
        onClick={() => more.go?.()}
      >
        +
      </button>
    </div>
  )
}

/** What labels are printed on, where the first sheet begins, and by how much the printer is off. */
export function StockPanel({ now }: { readonly now: StockNow }) {
  const { labels: words } = usePaperWords()
  const { stock, first, offset } = now
  const most = perSheet(stock)
  const moved = (axis: 'x' | 'y', by: number) => {
    const next = offset[axis] + by
    return Math.abs(next) > MOST_OFFSET ? null : () => now.move({ ...offset, [axis]: next })
  }
  return (
    <div className={styles.panel}>
      <Choice
        legend={words.stockIs}
        ways={STOCK_IDS.map((id) => ({
          id,
          label: words.stock[id].name,
          more: words.stock[id].size,
        }))}
        chosen={now.id}
        onChoose={now.choose}
      />
      {stock.kind === 'sheet' && (
        <div className={styles.stepper}>
          <Stepper
            name={words.first}
            value={words.firstOf(first, most)}
            less={{ name: words.fewer, go: first > 1 ? () => now.begin(first - 1) : null }}
            more={{ name: words.more, go: first < most ? () => now.begin(first + 1) : null }}
          />
          <div
            className={styles.sheet}
            style={{ gridTemplateColumns: `repeat(${stock.across}, 1fr)` } as CSSProperties}
            aria-hidden="true"
          >
            {Array.from({ length: most }, (_, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a place has no name but its number
              <i key={at} data-gone={at + 1 < first || undefined} />
            ))}
          </div>
        </div>
      )}
      <details>
        <summary>{words.offset}</summary>
        <Stepper
          name=""
          value={words.right(offset.x)}
          less={{ name: words.lefter, go: moved('x', -OFFSET_STEP) }}
          more={{ name: words.righter, go: moved('x', OFFSET_STEP) }}
        />
        <Stepper
          name=""
          value={words.down(offset.y)}
          less={{ name: words.higher, go: moved('y', -OFFSET_STEP) }}
          more={{ name: words.lower, go: moved('y', OFFSET_STEP) }}
        />
        <p className={styles.aside}>{words.measure}</p>
      </details>
    </div>
  )
}
