import { nanoid } from 'nanoid'
import { useMemo, useRef, useState } from 'react'
import { isRefused, tell } from '#components/access/ask.ts'
import { useAccess } from '#components/access/use-access.ts'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import { type CorrectedYield, cardText, correctedYield } from '#lib/recipes/measured-yield.ts'
import { hashOf } from '#lib/service/state-hash.ts'
import type { YieldMarked, YieldsNow } from '#lib/tasting/http.ts'
import type { YieldSaved } from '#lib/tasting/yields.ts'

const LOOK_EVERY_MS = 10_000

export interface CardYields {
  /** Of the card as it stands now, the oldest first; those that were taken out too. */
  readonly own: readonly YieldSaved[]
  /** How many are of the card as it was before. */
  readonly earlier: number
  /** By those that count. */
  readonly corrected: CorrectedYield | null
  readonly initials: YieldsNow['initials']
  readonly timeZone: string
  readonly busy: boolean
  /** Why the last one wasn't marked; null where it was. */
  readonly said: string | null
  /** Takes one out, or counts it after all; false where that wasn't taken. */
  readonly mark: (yields: string, isOut: boolean, initials: string) => Promise<boolean>
}

/** What own batches of this card really made; null until the server told it, and of what has no pan. */
export const useYields = ({ draft, box, card, served }: RecipeNow): CardYields | null => {
  const { measured: words } = useRecipeWords()
  const { seen, again } = useAccess<YieldsNow>(
    `/tasting/yields?station=${draft.station}`,
    LOOK_EVERY_MS,
  )
  const [busy, setBusy] = useState(false)
  const [said, setSaid] = useState<string | null>(null)
  /** What isn't answered goes again under its id, so that it is taken once. */
  const waiting = useRef<{ readonly asked: string; readonly id: string } | null>(null)
  const hash = useMemo(() => card && hashOf(cardText(card, box)), [card, box])
  const component = served?.component
  const of = useMemo(() => {
    if (seen === null || hash === null || component === undefined) return null
    const all = seen.yields.filter((one) => one.component === component)
    const own = all.filter((one) => one.card === hash).sort((a, b) => (a.on < b.on ? -1 : 1))
    const counted = own.filter(({ out }) => out === null).map(({ ratio }) => ratio)
    return { own, earlier: all.length - own.length, corrected: correctedYield(counted) }
  }, [seen, hash, component])
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
