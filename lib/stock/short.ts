import { pansOf } from '#lib/menu/find.ts'
import type { Amounts } from '#lib/service/build-choice.ts'
import type { Taking } from '#lib/service/event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'
import { levelOf } from '#lib/stock/levels.ts'

/**
 * Builds that the pans can no longer fill, by name, with the component that each lacks. What is
 * being made is filled first, then by number, so the newest builds are hit first. A stopped build
 * wants what it takes or what it becomes, whichever is more.
 */
export const shortBuilds = (state: RunningState): ReadonlyMap<string, string> => {
  const short = new Map<string, string>()
  const owed = state.station.components.filter((one) => levelOf(state, one.id).remaining < 0)
  if (owed.length === 0) return short
  const queue = openBuilds(state).filter(({ build }) => build.state !== 'made')
  const inOrder = [
    ...queue.filter(({ build }) => build.state === 'making'),
    ...queue.filter(({ build }) => build.state === 'waiting'),
  ]
  for (const { id } of owed) {
    let inPan = levelOf(state, id).inPan
    for (const { ticket, build } of inOrder) {
      const changed = build.stop?.to?.takes[id] ?? 0
      const wanted = Math.max(build.takes[id] ?? 0, changed)
      if (wanted === 0) continue
      if (wanted <= inPan) inPan -= wanted
      else short.set(buildName(ticket.number, build.letter), id)
    }
  }
  return short
}

export interface Withdrawal {
  readonly took: readonly Taking[]
  /** What was taken beyond what the pans were counted to hold. */
  readonly uncounted: Amounts
}

/** Takes amounts out of the pans, each component's pans in the order of the line. */
export const withdraw = (state: RunningState, takes: Amounts): Withdrawal => {
  const took: Taking[] = []
  const uncounted: Record<string, number> = {}
  for (const [component, amount] of Object.entries(takes)) {
    let wanted = amount
    for (const pan of pansOf(state.station)) {
      const held = state.pans[pan.id]
      if (pan.component !== component || !held || wanted === 0) continue
      const taking = Math.min(held.amount, wanted)
      if (taking > 0)
        took.push({ pan: pan.id, load: held.load, counted: held.counted, amount: taking })
      wanted -= taking
    }
    if (wanted > 0) uncounted[component] = wanted
  }
  return { took, uncounted }
}
