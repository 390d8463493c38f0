import type { ReactNode } from 'react'
import styles from '#components/job/reading-pad.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { ReadingForm } from '#components/job/use-reading.ts'
import { Choice } from '#components/ui/choice.tsx'
import { NumberPad } from '#components/ui/number-pad.tsx'
import { typed } from '#lib/measure/number-pad.ts'
import type { EntryVerdict } from '#lib/rooms/food/views/reading-entry.ts'

interface PadDisplayProps {
  readonly text: string
  readonly unit: string
  readonly verdict?: EntryVerdict | null
}

/** What stands on a pad, and what that comes to. */
export function PadDisplay({ text, unit, verdict = null }: PadDisplayProps) {
  const words = useFoodWords()
  return (
    <output className={styles.display} data-verdict={verdict ?? 'none'}>
      <b>
        {text === '' ? '–' : text.replace('-', '−')} {unit}
      </b>
      <span>{verdict && words.readings.verdict[verdict]}</span>
    </output>
  )
}

interface ReadingPadProps {
  readonly form: ReadingForm
  /** A weight that the same pad types while it is the one chosen; null where none is asked for. */
  readonly weight?: {
    readonly text: string
    readonly unit: string
    readonly isTyped: boolean
    readonly onTyped: (is: boolean) => void
    readonly onText: (text: string) => void
  } | null
  /** Said beneath the display. */
  readonly children?: ReactNode
}

/** A temperature as it is read off a probe, on large keys. */
export function ReadingPad({ form, weight = null, children }: ReadingPadProps) {
  const words = useFoodWords()
  const { entry, judged, house, change } = form
  const typesWeight = weight?.isTyped === true
  return (
    <section data-pad="" className={styles.reading} aria-label={words.readings.temperature}>
      {typesWeight ? (
        <PadDisplay text={weight.text} unit={weight.unit} />
      ) : (
        <PadDisplay
          text={entry.text}
          unit={words.readings.scale(entry.scale)}
          verdict={judged.verdict}
        />
      )}
      {weight && (
        <Choice
          legend={words.readings.types}
          isBare
          ways={[
            { id: 'temperature', label: words.readings.typesTemperature },
            { id: 'weight', label: words.readings.typesWeight },
          ]}
          chosen={typesWeight ? 'weight' : 'temperature'}
          onChoose={(id) => weight.onTyped(id === 'weight')}
        />
      )}
      {children}
      <NumberPad
        words={words.readings}
        text={typesWeight ? weight.text : entry.text}
        decimals={typesWeight ? 3 : 1}
        onChange={(text) => (typesWeight ? weight.onText(text) : change({ text }))}
        side={
          house === 'C' && !typesWeight ? (
            <button
              type="button"
              aria-label={words.readings.minus}
              onClick={() => change({ text: typed(entry.text, '-') })}
            >
              −
            </button>
          ) : null
        }
      />
    </section>
  )
}
