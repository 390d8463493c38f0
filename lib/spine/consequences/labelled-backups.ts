import { componentsWith } from '#lib/needs/made-with.ts'
import type { Consequence } from '#lib/service/consequence.ts'
import type { BackupSet } from '#lib/service/events/line-event.ts'
import { mayHold, stockOf, whereIs } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Whether the same food stands there as before. Food that was moved takes its label along. */
const isSameFood = (before: RunningState, after: RunningState, pan: string): boolean => {
  const what = whereIs(after, pan)
  return what === null || stockOf(before, what, pan)?.load === stockOf(after, what, pan)?.load
}

/** Protected back-up pans that hold something of a component, or would if a finish is taken back. */
const standingOf = ({ backupPans }: RunningState, component: string): readonly string[] =>
  Object.entries(backupPans)
    .filter(([, one]) => one.component === component && one.guarded && mayHold(one))
    .map(([id]) => id)

/**
 * Back-up pans of the product of before: no longer said to stand ready, also once what keeps one from
 * being served now is over.
 */
export const labelledBackups: Consequence = {
  name: 'labelled-backups',
  reads: ['mixing'],
  follow: ({ before, after }) =>
    Object.entries(after.mixing).flatMap(([ingredient, { pans }]) => {
      const known = before.mixing[ingredient]?.pans ?? []
      const isRelabelled = pans.some(
        (pan) => !known.includes(pan) && isSameFood(before, after, pan),
      )
      if (!isRelabelled) return []
      return componentsWith(after.station, ingredient).flatMap((component): BackupSet[] => {
        const gone = { type: 'backupSet', component, ready: false } as const
        const standing = standingOf(after, component)
        if (standing.length > 0) return standing.map((backup) => ({ ...gone, backup }))
        return after.backups[component] === undefined ? [] : [gone]
      })
    }),
}
