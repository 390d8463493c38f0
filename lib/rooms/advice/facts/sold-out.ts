import type { Suggestion } from '#lib/estimate/station-forecast.ts'
import { isOffSale } from '#lib/rooms/making/facts/food-of-build.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { readyBehind, underwayOf } from '#lib/rooms/pans/facts/supply.ts'
import { instantAt } from '#lib/service/minute.ts'
import type { RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'

const lastLoad = (state: RunningState, component: string): number =>
  pansOf(state.station).reduce(
    (latest, pan) =>
      pan.component === component ? Math.max(latest, state.pans[pan.id]?.loadedAt ?? 0) : latest,
    0,
  )

/** Items that can't be sold without a component, as the others are now. */
const itemsWithout = (state: RunningState, component: string): readonly string[] =>
  state.station.items
    .filter(
      ({ heart, parts, base }) =>
        heart === component ||
        parts.some((part) => part.required && part.component === component) ||
        (base?.choices.includes(component) &&
          base.choices.every((id) => levelOf(state, id).portionsLeft === 0)),
    )
    .map(({ id }) => id)

/**
 * Components of which none is left to sell, though there were some. What the lead answered isn't
 * told again until more was loaded; what is stopped by our choice, or off sale, isn't sold out. What items are sold
 * without, and none stands behind of, is only shown: there is nothing to do, and what is told is scarce.
 */
export const soldOut = (state: RunningState, now: number): readonly Suggestion[] =>
  state.station.components.flatMap(({ id }): Suggestion[] => {
    const hadSome = (state.accounts[id]?.loaded ?? 0) > 0
    if (!hadSome || state.notSelling.component[id] !== undefined) return []
    if (levelOf(state, id).portionsLeft > 0 || isOffSale(state, id)) return []
    const key = `sold-out ${id}`
    const told = state.adviceLog.findLast((one) => one.key === key)
    const isAnswered = told?.answer === 'done' || told?.answer === 'declined'
    if (isAnswered && lastLoad(state, id) <= instantAt(state, told.answeredAt ?? told.at)) return []
    const portion = state.portions[id]?.amount ?? 1
    const next = underwayOf(state, id, now)[0]
    const items = itemsWithout(state, id)
    const behind = Math.floor(readyBehind(state, id) / portion)
    if (items.length === 0 && behind === 0) return []
    return [
      {
        key,
        kind: 'sold-out',
        saves: items.length,
        reason: {
          why: 'sold-out',
          component: id,
          items,
          behind,
          nextAt: next ? instantAt(state, next.at) : null,
        },
      },
    ]
  })
