import type { ReactNode } from 'react'
import styles from '#components/ui/number-pad.module.css'
import { type PadKey, typed } from '#lib/measure/number-pad.ts'

const ROWS: readonly PadKey[] = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', 'back']

const shown = (key: PadKey): string => (key === 'back' ? '⌫' : key === '-' ? '−' : key)

/** What keys without a digit are called. */
export interface PadWords {
  readonly pad: string
  readonly takeBack: string
  readonly minus: string
  readonly point: string
}

const called = (words: PadWords, key: PadKey): string | undefined =>
  ({ back: words.takeBack, '-': words.minus, '.': words.point })[key as 'back']

interface NumberPadProps {
  readonly words: PadWords
  readonly text: string
  readonly decimals: number
  /** What is on the display after a key, where it is no number. */
  readonly type?: (text: string, key: PadKey) => string
  readonly onChange: (text: string) => void
  /** Keys beside the digits: units, and what else belongs to the number; null where there are none. */
  readonly side: ReactNode
}

/** Large keys, so that no keyboard comes up and gloves are enough; a real keyboard works as well. */
export function NumberPad({
  words,
  text,
  decimals,
  type = (before, key) => typed(before, key, decimals),
  onChange,
  side,
}: NumberPadProps) {
  return (
    <fieldset className={styles.pad} data-side={side === null ? undefined : ''}>
      <legend className="visually-hidden">{words.pad}</legend>
      <div className={styles.keys}>
        {ROWS.map((key) => (
          <button
            key={key}
            type="button"
            aria-label={called(words, key)}
            onClick={() => onChange(type(text, key))}
          >
            {shown(key)}
          </button>
        ))}
      </div>
      {side !== null && <div className={styles.side}>{side}</div>}
    </fieldset>
  )
}
