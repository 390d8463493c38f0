import { useState } from 'react'
import { Steps } from '#components/job/steps.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Button } from '#components/ui/button.tsx'

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
      <Button kind="quiet" onClick={() => setAgo(0)}>
        {words.batches.earlier}
      </Button>
    )
  return (
    <Steps
      label={label}
      shown={words.batches.earlierAt(words.sayTime(at, timeZone), ago)}
      by={[-60, -5, 5, 60]}
      onStep={(by) => setAgo(Math.max(0, Math.min(MOST_MINUTES, ago - by)))}
    />
  )
}
