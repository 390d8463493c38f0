import { backupsOf, behindOf, owedBehind, takenBehind } from '#lib/rooms/pans/facts/behind.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import type { Amounts, BuildChoice } from '#lib/service/events/build-choice.ts'
import type { AcceptedBuild } from '#lib/service/events/event.ts'
import type { Taking } from '#lib/service/events/taking.ts'
import { isUsable, stockOf } from '#lib/service/held-stock.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'
import { linePansOf } from '#lib/station/find.ts'

/** What a build would take in place of what it takes. */
export interface Instead extends Pick<AcceptedBuild, 'choice' | 'takes'> {
  /** "21A" */
  readonly build: string
}

const wantedOf = (build: Build, id: string): number =>
  Math.max(build.takes[id] ?? 0, build.stop?.to?.takes[id] ?? 0)

/**
 * What builds lack that the pans can no longer fill, by name: each component with what is there for
 * it at its turn, in the component's unit. What is being made is filled first, then by number, so
 * the newest builds are hit first. A stopped build wants what it takes or what it becomes, whichever
 * is more.
 * @param instead how it would be, were one of them another
 */
export const lackingBuilds = (
  state: RunningState,
  instead: Instead | null = null,
): ReadonlyMap<string, Amounts> => {
  const short = new Map<string, Amounts>()
  const owed = state.station.components.filter(
    ({ id }) =>
      instead !== null ||
      levelOf(state, id).remaining < 0 ||
      owedBehind(state, id) > behindOf(state, id),
  )
  if (owed.length === 0) return short
  const queue = openBuilds(state).filter(({ build }) => build.state !== 'made')
  const inOrder = [
    ...queue.filter(({ build }) => build.state === 'making'),
    ...queue.filter(({ build }) => build.state === 'waiting'),
  ]
  for (const { id } of owed) {
    let inPan = levelOf(state, id).inPan
    let behind = behindOf(state, id)
    for (const { ticket, build } of inOrder) {
      const name = buildName(ticket.number, build.letter)
      const other = instead?.build === name ? instead : null
      const wanted = other ? (other.takes[id] ?? 0) : wantedOf(build, id)
      if (wanted === 0) continue
      const isBehind = takenBehind(state, (other ?? build).choice).includes(id)
      if (isBehind && wanted <= behind) behind -= wanted
      else if (!isBehind && wanted <= inPan) inPan -= wanted
      else short.set(name, { ...short.get(name), [id]: isBehind ? behind : inPan })
    }
  }
  return short
}

/** Builds that the pans can no longer fill, by name, with a component that each lacks. */
export const shortBuilds = (state: RunningState): ReadonlyMap<string, string> =>
  new Map([...lackingBuilds(state)].map(([name, lacks]) => [name, Object.keys(lacks).at(-1) ?? '']))

export interface Withdrawal {
  readonly took: readonly Taking[]
  /** What was taken beyond what the pans were counted to hold. */
  readonly uncounted: Amounts
}

/** Pans to take from, the ones that may be sold from first. */
const sources = (state: RunningState, component: string, isBehind: boolean) => {
  // What is kept apart came out of the back-up pan, however that was counted, and never off the line.
  if (isBehind) return backupsOf(state, component).map((id) => ({ what: 'backup' as const, id }))
  const line = linePansOf(state.station, component).map(({ id }) => ({ what: 'pan' as const, id }))
  const usable = line.filter(({ id }) => isUsable(state, 'pan', id))
  return [...usable, ...line.filter((one) => !usable.includes(one))]
}

/** Components out of their back-up pans; one that was only said to stand ready is counted on the line. */
const apartOf = (
  state: RunningState,
  choice: BuildChoice | null,
  behind: readonly string[] | undefined,
): readonly string[] => {
  if (behind === undefined) return choice ? takenBehind(state, choice) : []
  const filled = Object.values(state.backupPans).filter(({ load }) => load > 0)
  return behind.filter((id) => filled.some(({ component }) => component === id))
}

/**
 * Takes amounts out of the pans, each component's pans in the order of the line; what a kept-apart
 * build takes from a protected back-up pan comes out of that.
 * @param behind components that it began to take so; as the kitchen stands where left away
 */
export const withdraw = (
  state: RunningState,
  takes: Amounts,
  choice: BuildChoice | null = null,
  behind?: readonly string[],
): Withdrawal => {
  const apart = apartOf(state, choice, behind)
  const took: Taking[] = []
  const uncounted: Record<string, number> = {}
  for (const [component, amount] of Object.entries(takes)) {
    let wanted = amount
    for (const { what, id } of sources(state, component, apart.includes(component))) {
      const held = stockOf(state, what, id)
      if (!held || wanted === 0) continue
      const taking = Math.min(held.amount, wanted)
      if (taking > 0) {
        const { load, counted, batches } = held
        const of = batches.length > 0 ? { batches } : {}
        took.push({ pan: id, load, counted, amount: taking, ...of })
      }
      wanted -= taking
    }
    if (wanted > 0) uncounted[component] = wanted
  }
  return { took, uncounted }
}
