import { sharingWith } from '#lib/rooms/care/facts/lent-scoops.ts'
import type { Mark } from '#lib/service/events/food-event.ts'
import { allStock, componentIn, mayHold, whereIs, withStock } from '#lib/service/held-stock.ts'
import type { PanState, RunningState } from '#lib/service/state.ts'
import { linePansOf, pansOf } from '#lib/station/find.ts'

/** Pans of the line with these marks beside what they had; null where all had them before. */
const marked = (
  pans: RunningState['pans'],
  marks: readonly Mark[],
): Readonly<Record<string, PanState>> | null => {
  const isNew = ({ pan, by }: Mark) => pans[pan]?.soiledBy.includes(by) === false
  const fresh = marks.filter(isNew).flatMap(({ pan, by }) => {
    const held = pans[pan]
    return held ? [[pan, { ...held, soiledBy: [...held.soiledBy, by] }] as const] : []
  })
  return fresh.length === 0 ? null : { ...pans, ...Object.fromEntries(fresh) }
}

/** Each pan of the line that holds `by`: its scoop goes back there with what it took of `component`. */
const returned = ({ station }: RunningState, component: string, by: string): readonly Mark[] =>
  component === by ? [] : linePansOf(station, by).map(({ id }) => ({ pan: id, by: component }))

/**
 * Pans after a scoop of the component `by` went into one: that pan, and each pan of `by`, into
 * which the scoop goes back. Null where all of them were marked so before.
 */
export const soiledPans = (
  state: RunningState,
  pan: string,
  by: string,
): RunningState['pans'] | null => {
  const component = pansOf(state.station).find((one) => one.id === pan)?.component
  if (component === undefined || component === by) return null
  return marked(state.pans, [{ pan, by }, ...returned(state, component, by)])
}

/** Pans of the line after a scoop of `by` was in a back-up pan of a component and went back. */
export const soiledFromBackup = (
  state: RunningState,
  component: string,
  by: string,
): RunningState['pans'] => marked(state.pans, returned(state, component, by)) ?? state.pans

/**
 * Back-up pans that hold something of a component, or held it until it was used up, whatever was found
 * of them before: food of them may be with a guest.
 */
export const backupsHolding = (
  { backupPans }: RunningState,
  component: string,
): readonly string[] =>
  Object.entries(backupPans)
    .filter(([, one]) => one.component === component && mayHold(one))
    .map(([id]) => id)

/** Whether a scoop may have been in a back-up pan of a component, instead of on the line. */
export const hasBackup = (state: RunningState, component: string): boolean =>
  state.backups[component] !== undefined || backupsHolding(state, component).length > 0

/**
 * Marks that a pan's change leaves on others: what it held of other components is still in those that
 * its scoop was in, or that share a lent one with it, though the pan itself is clean.
 */
export const leftOnOthers = (state: RunningState, pan: string): readonly Mark[] => {
  const of = componentIn(state.station, pan)
  if (of === undefined) return []
  const sharing = sharingWith(state, of)
  const held = [...new Set([...(state.pans[pan]?.soiledBy ?? []), ...sharing])]
  return allStock(state).flatMap(({ what, id, stock: { soiledBy } }) => {
    const own = componentIn(state.station, id) ?? of
    const had = soiledBy.includes(of) || (what === 'pan' && sharing.includes(own))
    if (own === of || !had) return []
    return held
      .filter((by) => by !== own && !soiledBy.includes(by))
      .map((by): Mark => ({ pan: id, by }))
  })
}

/** Folded: what another pan's change left. */
export const withLeft = (state: RunningState, marks: readonly Mark[]): RunningState =>
  marks.reduce<RunningState>(
    (so, { pan, by }) =>
      withStock(so, whereIs(so, pan) ?? 'backup', pan, (held) => ({
        ...held,
        soiledBy: [...held.soiledBy, by],
      })),
    state,
  )
