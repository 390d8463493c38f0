import type { ReactNode } from 'react'
import styles from '#components/pans/number-pad.module.css'
import { type FoodWords, useFoodWords } from '#components/pans/use-food-words.ts'
import { type PadKey, typed } from '#lib/measure/number-pad.ts'

const ROWS: readonly PadKey[] = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', 'back']

const shown = (key: PadKey): string => (key === 'back' ? '⌫' : key === '-' ? '−' : key)

const called = (words: FoodWords, key: PadKey): string | undefined =>
  ({ back: words.readings.takeBack, '-': words.readings.minus, '.': words.readings.point })[
    key as 'back'
  ]

interface NumberPadProps {
  readonly text: string
  readonly decimals: number
  readonly onChange: (text: string) => void
  /** Keys beside the digits: units, and what else belongs to the number. */
  readonly side: ReactNode
}

/** Large keys, so that no keyboard comes up and gloves are enough; a real keyboard works as well. */
export function NumberPad({ text, decimals, onChange, side }: NumberPadProps) {
  const words = useFoodWords()
  return (
    <fieldset className={styles.pad}>
      <legend className="visually-hidden">{words.readings.pad}</legend>
      <div className={styles.keys}>
        {ROWS.map((key) => (
          <button
            key={key}
            type="button"
            aria-label={called(words, key)}
            onClick={() => onChange(typed(text, key, decimals))}
          >
            {shown(key)}
          </button>
        ))}
      </div>
      <div className={styles.side}>{side}</div>
    </fieldset>
  )
}
