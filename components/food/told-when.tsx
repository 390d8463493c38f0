import { useState } from 'react'
import forms from '#components/job/forms.module.css'
import { MinuteSteps } from '#components/job/minute-steps.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'

const MINUTE_MS = 60_000
const MOST_MINUTES = 48 * 60

export interface ToldWhen {
  /** Minutes before now; null: it is now. */
  readonly ago: number | null
  setAgo(minutes: number | null): void
  /** Epoch milliseconds; undefined: now. */
  readonly at: number | undefined
}

/** When something was, where it is told later than it happened. */
export const useToldWhen = (now: number): ToldWhen => {
  const [ago, setAgo] = useState<number | null>(null)
  return { ago, setAgo, at: ago === null ? undefined : now - ago * MINUTE_MS }
}

interface ToldWhenStepsProps {
  readonly when: ToldWhen
  readonly label: string
  readonly timeZone: string
}

/** One small button as long as it is now; the time in large steps once it was earlier. */
export function ToldWhenSteps({ when, label, timeZone }: ToldWhenStepsProps) {
  const words = useFoodWords()
  const { ago, at, setAgo } = when
  if (ago === null || at === undefined)
    return (
      <button type="button" className={forms.small} onClick={() => setAgo(0)}>
        {words.batches.earlier}
      </button>
    )
  return (
    <MinuteSteps
      label={label}
      shown={words.batches.earlierAt(words.sayTime(at, timeZone), ago)}
      steps={[-60, -5, 5, 60]}
      onStep={(by) => setAgo(Math.max(0, Math.min(MOST_MINUTES, ago - by)))}
    />
  )
}
