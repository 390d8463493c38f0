/** Portions kept for some orders: nobody else is sold them. */
import type { Amounts, BuildChoice } from '#lib/service/events/build-choice.ts'
import { isKeptApart } from '#lib/service/events/build-choice.ts'
import { beyond, keptBy } from '#lib/service/reserved.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import type { Keep } from '#lib/service/stock-state.ts'

/** For whom portions are kept: builds that are kept apart from anything. */
export const KEPT_APART = 'kept-apart'

/** Portions that are still kept. */
export const portionsKept = (keep: Keep): number => Math.max(0, keep.portions - keep.taken)

export const isKeptFor = (keep: Keep, choice: BuildChoice): boolean =>
  keep.for.some(
    (one) =>
      one === choice.item ||
      (one === KEPT_APART && isKeptApart(choice)) ||
      choice.needs.some(({ code }) => code === one),
  )

/** What is kept of a component from those for whom it isn't, in its unit. */
export const keptAmount = (state: RunningState, component: string): number => {
  const keep = state.keeps[component]
  return keep ? portionsKept(keep) * (state.portions[component]?.amount ?? 0) : 0
}

/** A build that is asked for, with what it takes beyond what it has already. */
export interface Asking {
  readonly choice: BuildChoice
  readonly more: Amounts
}

/**
 * Components of which builds ask for what is kept for others, of each of them; an earlier one is
 * filled first. `remaining` says what is left of a component before them, in its unit.
 */
export const keptFromThem = (
  state: RunningState,
  asking: readonly Asking[],
  remaining: (component: string) => number,
): readonly (readonly string[])[] => {
  const kept = asking.map((): string[] => [])
  for (const [component, keep] of Object.entries(state.keeps)) {
    const portion = state.portions[component]?.amount ?? 1
    const wants = ({ more }: Asking): number => more[component] ?? 0
    const own = asking
      .filter(({ choice }) => isKeptFor(keep, choice))
      .reduce((sum, one) => sum + wants(one), 0)
    let free = remaining(component) - own - Math.max(0, portionsKept(keep) * portion - own)
    for (const [index, one] of asking.entries()) {
      if (wants(one) === 0 || isKeptFor(keep, one.choice)) continue
      if (wants(one) <= free) free -= wants(one)
      else kept[index]?.push(component)
    }
  }
  return kept
}

/** As above, of a change: a build that is no longer one of those gives back what was kept for it. */
export const keptFromChange = (
  state: RunningState,
  at: { readonly ticket: number; readonly build: Build },
  to: { readonly choice: BuildChoice; readonly takes: Amounts },
  remaining: (component: string) => number,
): readonly string[] => {
  const kept: string[] = []
  const has = keptBy(at.build)
  const more = beyond(has, to.takes)
  for (const [component, keep] of Object.entries(state.keeps)) {
    const wanted = to.takes[component] ?? 0
    const wasOwn = at.ticket >= keep.fromTicket && isKeptFor(keep, at.build.choice)
    if (isKeptFor(keep, to.choice) || wanted === 0) continue
    if (!wasOwn && (more[component] ?? 0) === 0) continue
    const portion = state.portions[component]?.amount ?? 1
    const given = wasOwn ? (at.build.takes[component] ?? 0) : 0
    const stays = Math.min(keep.portions * portion, portionsKept(keep) * portion + given)
    if (remaining(component) + (has[component] ?? 0) - wanted < stays) kept.push(component)
  }
  return kept
}
