/** Which protected back-up pans stand ready, kept in step with what they hold. */
import { isUsable } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { without } from '#lib/service/without.ts'

/**
 * Which components' protected back-up pans stand ready: the ones that hold food which may be sold.
 * One that was said to be ready without a word of what it holds stays as it was said.
 */
export const backupsInStep = (state: RunningState, components: readonly string[]): RunningState => {
  let backups = state.backups
  for (const component of components) {
    const own = Object.entries(state.backupPans).filter(([, one]) => one.component === component)
    if (own.every(([, one]) => one.load === 0)) continue
    const ready = own.filter(([id, one]) => one.guarded && isUsable(state, 'backup', id))
    if (ready.length === 0) backups = without(backups, component)
    else if (backups[component] === undefined)
      backups = { ...backups, [component]: Math.min(...ready.map(([, one]) => one.loadedAt)) }
  }
  return backups === state.backups ? state : { ...state, backups }
}
