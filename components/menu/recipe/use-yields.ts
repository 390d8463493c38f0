import { nanoid } from 'nanoid'
import { useRef, useState } from 'react'
import { isRefused, tell } from '#components/access/ask.ts'
import { type Measured, useMeasured } from '#components/menu/recipe/use-measured.ts'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import type { YieldMarked, YieldsNow } from '#lib/tasting/http.ts'

export interface CardYields extends Measured {
  readonly initials: YieldsNow['initials']
  readonly timeZone: string
  readonly busy: boolean
  /** Why the last one wasn't marked; null where it was. */
  readonly said: string | null
  /** Takes one out, or counts it after all; false where that wasn't taken. */
  readonly mark: (yields: string, isOut: boolean, initials: string) => Promise<boolean>
}

/** What own batches of this card really made; null until the server told it, and of what has no pan. */
export const useYields = (now: RecipeNow): CardYields | null => {
  const { draft } = now
  const { measured: words } = useRecipeWords()
  const { seen, again, of } = useMeasured(draft.station, now)
  const [busy, setBusy] = useState(false)
  const [said, setSaid] = useState<string | null>(null)
  /** What isn't answered goes again under its id, so that it is taken once. */
  const waiting = useRef<{ readonly asked: string; readonly id: string } | null>(null)
  const mark = async (yields: string, isOut: boolean, initials: string): Promise<boolean> => {
    const said = { station: draft.station, yields, isOut, initials: initials.trim() }
    const asked = JSON.stringify(said)
    const id = waiting.current?.asked === asked ? waiting.current.id : nanoid()
    waiting.current = { asked, id }
    setBusy(true)
    const told = await tell<YieldMarked>('/tasting/yield', { id, ...said })
    if (!isRefused(told)) waiting.current = null
    const why = isRefused(told)
      ? words.lostMark
      : told.answer.answer === 'refused'
        ? words.refusal[told.answer.refusal]
        : null
    setSaid(why)
    await again()
    setBusy(false)
    return why === null
  }
  if (seen === null || of === null) return null
  return {
    ...{ ...of, busy, said, mark },
    initials: seen.initials,
    timeZone: seen.timeZone ?? 'UTC',
  }
}
