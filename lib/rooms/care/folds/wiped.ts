/**
 * What was in pans, or shared a scoop with them, until they were cleaned: food that was taken before
 * has met it all the same, and is judged by it when more is told of that later.
 */
import type { BackupPan, HeldStock } from '#lib/service/food-state.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import type { RunningState, Wiped } from '#lib/service/state.ts'

type Stocks = Readonly<Record<string, HeldStock | BackupPan>>

const ofPans = (
  { station }: RunningState,
  where: 'line' | 'behind',
  [before, after]: readonly [Stocks, Stocks],
  until: number,
): readonly Wiped[] =>
  before === after
    ? []
    : Object.entries(before).flatMap(([id, then]) => {
        const now = after[id]
        if (now === then || then.soiledBy.length === 0) return []
        // What stays in a pan that is loaded anew is in that load from then on.
        const isSameLoad = now?.loadedIn === then.loadedIn
        const component = componentIn(station, id)
        if (component === undefined) return []
        return then.soiledBy
          .filter((by) => !isSameLoad || !now?.soiledBy.includes(by))
          .map(
            (by): Wiped => ({
              where,
              component,
              by,
              from: then.probedIn?.[by] ?? then.loadedIn ?? 0,
              until,
            }),
          )
      })

const ofLent = (before: RunningState, after: RunningState, until: number): readonly Wiped[] =>
  before.lent === after.lent
    ? []
    : Object.entries(before.lent).flatMap(([key, { component, by, sinceIn = 0 }]) =>
        after.lent[key] ? [] : [{ where: 'lent', component, by, from: sinceIn, until }],
      )

/**
 * Folded after every event, whatever it was: nothing that was in a pan is forgotten.
 * @param until the event's position in the log
 */
export const withWiped = (
  before: RunningState,
  after: RunningState,
  until: number,
): RunningState => {
  const more = [
    ...ofPans(before, 'line', [before.pans, after.pans], until),
    ...ofPans(before, 'behind', [before.backupPans, after.backupPans], until),
    ...ofLent(before, after, until),
  ]
  return more.length === 0 ? after : { ...after, wiped: [...(before.wiped ?? []), ...more] }
}
