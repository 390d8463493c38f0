import { useState } from 'react'
import styles from '#components/receiving/panel.module.css'
import { useReceivingWords } from '#components/receiving/words.tsx'
import { NumberPad } from '#components/ui/number-pad.tsx'
import type { JudgedReceiving, ReceivingEntry } from '#lib/larder/receiving-entry.ts'
import type { ReceivingShown } from '#lib/larder/receiving-view.ts'
import { type PadKey, typed } from '#lib/measure/number-pad.ts'
import { typedFigures } from '#lib/measure/typed-day.ts'
import { arrivalLimit, readAtArrival } from '#lib/safety/receiving.ts'

type Slot = 'degrees' | 'date' | 'packs'

interface PadSlotsProps {
  readonly entry: ReceivingEntry
  readonly judged: JudgedReceiving
  readonly shown: ReceivingShown
  readonly onChange: (part: Partial<ReceivingEntry>) => void
}

const TYPED: Readonly<Record<Slot, (text: string, key: PadKey) => string>> = {
  degrees: (text, key) => typed(text, key, 1),
  date: typedFigures,
  packs: (text, key) => typed(text, key, 0),
}

/** What is typed in figures, on one pad: the temperature, the date, and how many packs. */
export function PadSlots({ entry, judged, shown, onChange }: PadSlotsProps) {
  const words = useReceivingWords()
  const { comes } = entry
  const read = comes === null ? 'nothing' : readAtArrival(comes)
  const isRead = read === 'food' || read === 'air'
  const [chosen, setChosen] = useState<Slot | null>(null)
  const slot: Slot =
    chosen === 'degrees' && !isRead ? 'date' : (chosen ?? (isRead ? 'degrees' : 'date'))
  const limit = comes === null ? null : arrivalLimit(comes, shown.limits)
  const tooFar = judged.against?.code === 'too-warm' || judged.against?.code === 'not-hot'
  const isMonthFirst = shown.dayOrder === 'month-first'
  const slots: readonly {
    readonly id: Slot
    readonly name: string
    readonly figure: string
    readonly says: string | null
    readonly bad: boolean
  }[] = [
    ...(isRead && comes !== null && limit
      ? [
          {
            id: 'degrees' as const,
            name: words.read[comes],
            figure: words.degrees(entry.degrees, shown.scale),
            says: words.limit(limit, shown.scale),
            bad: tooFar,
          },
        ]
      : []),
    {
      id: 'date',
      name: words.slots.date,
      figure: entry.hasNoDate ? words.noDate : words.date(entry.date, isMonthFirst),
      says:
        judged.useBy === null
          ? null
          : words.dateSaid(judged.useBy, judged.useBy.slice(0, 4) === shown.today.slice(0, 4)),
      bad: judged.against?.code === 'past-date',
    },
    {
      id: 'packs',
      name: words.packs,
      figure: entry.packs === '' ? '–' : entry.packs,
      says: null,
      bad: false,
    },
  ]
  const change = (text: string) =>
    onChange(
      slot === 'date'
        ? { date: text, hasNoDate: false }
        : slot === 'degrees'
          ? { degrees: text, isSure: false }
          : { packs: text },
    )
  return (
    <div className={styles.pad}>
      <div className={styles.slots}>
        {slots.map(({ id, name, figure, says, bad }) => (
          <button
            key={id}
            type="button"
            className={styles.slot}
            data-bad={bad || undefined}
            data-small={id === 'packs' || undefined}
            aria-pressed={id === slot}
            onClick={() => setChosen(id)}
          >
            <span>{name}</span>
            <b data-empty={!/\d/.test(figure) || undefined}>{figure}</b>
            {says !== null && <i>{says}</i>}
          </button>
        ))}
      </div>
      <NumberPad
        words={words.keys}
        text={slot === 'degrees' ? entry.degrees : slot === 'date' ? entry.date : entry.packs}
        decimals={slot === 'degrees' ? 1 : 0}
        type={TYPED[slot]}
        onChange={change}
        side={
          slot === 'degrees' && shown.scale === 'C' ? (
            <button
              type="button"
              aria-label={words.keys.minus}
              onClick={() => change(typed(entry.degrees, '-'))}
            >
              −
            </button>
          ) : null
        }
      />
    </div>
  )
}
