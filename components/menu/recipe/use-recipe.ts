import { useCallback, useMemo } from 'react'
import { tell } from '#components/access/ask.ts'
import { useAccess } from '#components/access/use-access.ts'
import { cardBoxOf, cardOf, type Vessel, vesselOf } from '#lib/editor/cards/card-box.ts'
import { type ServedAs, servedAsOf } from '#lib/editor/cards/served-as.ts'
import { type Draft, type Row, type Rows, rowOf, textsIn } from '#lib/editor/draft.ts'
import type { MenuDraft, SaveSteps } from '#lib/editor/http.ts'
import type { Step } from '#lib/editor/step.ts'
import type { Card, CardBox } from '#lib/recipes/card.ts'

const LOOK_EVERY_MS = 5_000

export interface RecipeNow {
  readonly draft: Draft
  readonly box: CardBox
  readonly card: Card | null
  readonly served: ServedAs | null
  readonly currency: string
  /** The station's, such as "2026-11-02". */
  readonly today: string
  /** Vessel that it is made in; null where nobody said. */
  readonly vessel: Vessel | null
  /** How it is made. */
  readonly steps: readonly string[]
  /** All of them or none; false where they weren't taken. */
  readonly take: (steps: readonly Step[]) => Promise<boolean>
  /** Changes a row; false where that wasn't taken. */
  readonly put: (
    entity: 'ingredient' | 'component' | 'recipe',
    id: string,
    fields: Row,
    clear?: readonly string[],
  ) => Promise<boolean>
}

/** A recipe of the draft as it stands now; null until the server told it. */
export const useRecipe = (
  station: string,
  recipe: string,
): { readonly now: RecipeNow | null; readonly refused: string | null } => {
  const { seen, refused, again } = useAccess<MenuDraft>(
    `/menu/draft?station=${station}`,
    LOOK_EVERY_MS,
  )
  const take = useCallback(
    async (steps: readonly Step[]) => {
      if (seen === null) return false
      const said: SaveSteps = { station, saw: seen.saw, steps }
      const answer = await tell<object>('/menu/steps', said)
      await again()
      return answer.code === 'done'
    },
    [seen, station, again],
  )
  const put = useCallback<RecipeNow['put']>(
    (entity, id, fields, clear = []) => take([{ do: 'put', entity, id, fields, clear }]),
    [take],
  )
  const now = useMemo((): RecipeNow | null => {
    if (seen === null) return null
    // Asked for without `after`, it is all of them.
    const draft: Draft = { station, rows: seen.rows as Rows }
    const said = draft.rows.house?.currency
    return {
      draft,
      box: cardBoxOf(draft),
      card: cardOf(draft, recipe),
      served: servedAsOf(draft, recipe),
      currency: typeof said === 'string' && /^[A-Z]{3}$/.test(said) ? said : 'USD',
      vessel: vesselOf(draft, recipe),
      today: seen.today,
      steps: textsIn(rowOf(draft, 'recipe', recipe), 'steps'),
      take,
      put,
    }
  }, [seen, station, recipe, take, put])
  return { now, refused }
}
