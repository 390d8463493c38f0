import { pansOf } from '#lib/menu/find.ts'
import type { RunningState } from '#lib/service/state.ts'

/**
 * Pans after a scoop of the component `by` went into one: that pan, and each pan of `by`, into
 * which the scoop goes back. Null where all of them were marked so before.
 */
export const soiledPans = (
  { station, pans }: RunningState,
  pan: string,
  by: string,
): RunningState['pans'] | null => {
  const places = pansOf(station)
  const component = places.find((one) => one.id === pan)?.component
  if (component === undefined || component === by) return null
  const marks = [
    { pan, by },
    ...places.filter((one) => one.component === by).map(({ id }) => ({ pan: id, by: component })),
  ].flatMap((mark) => {
    const held = pans[mark.pan]
    return held && !held.soiledBy.includes(mark.by) ? [[mark.pan, held, mark.by] as const] : []
  })
  if (marks.length === 0) return null
  return {
    ...pans,
    ...Object.fromEntries(
      marks.map(([id, held, foreign]) => [id, { ...held, soiledBy: [...held.soiledBy, foreign] }]),
    ),
  }
}
