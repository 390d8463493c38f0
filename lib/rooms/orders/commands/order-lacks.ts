/** All that an order's builds lack, told at once. */

import { goneBecause } from '#lib/rooms/making/facts/food-of-build.ts'
import { sumOf, type Wanted, wantedFrom } from '#lib/rooms/pans/facts/behind.ts'
import { keptFromChange, keptFromThem } from '#lib/rooms/pans/facts/kept.ts'
import { lacking, levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { type Selling, sellingNow } from '#lib/rooms/pans/facts/selling.ts'
import { takenComponents } from '#lib/service/events/build-choice.ts'
import type { AcceptedBuild } from '#lib/service/events/event.ts'
import type { Lack, NotLeft, Refusal } from '#lib/service/refusal.ts'
import { beyond, keptBy } from '#lib/service/reserved.ts'
import type { Build, RunningState } from '#lib/service/state.ts'

type Before = Pick<AcceptedBuild, 'choice' | 'takes'>

/** What isn't sold now. What a build was accepted with stays its own when it is changed. */
const notSold = (
  state: RunningState,
  { choice, takes }: AcceptedBuild,
  before: Before | null,
): readonly NotLeft[] => {
  if (state.notSelling.item[choice.item] !== undefined && choice.item !== before?.choice.item)
    return [{ code: 'not-selling', what: 'item', id: choice.item }]
  return takenComponents(choice)
    .filter(
      (id) =>
        state.notSelling.component[id] !== undefined && (takes[id] ?? 0) > (before?.takes[id] ?? 0),
    )
    .map((id) => ({ code: 'not-selling', what: 'component', id }))
}

const isAbout = (lack: NotLeft, component: string): boolean =>
  lack.code === 'not-selling' ? lack.id === component : lack.component === component

const without = ({ line, behind }: Wanted, lacks: readonly NotLeft[]): Wanted => {
  const rest = (amounts: Wanted['line']) =>
    Object.fromEntries(
      Object.entries(amounts).filter(([id]) => !lacks.some((lack) => isAbout(lack, id))),
    )
  return { line: rest(line), behind: rest(behind) }
}

const NOTHING: Wanted = { line: {}, behind: {} }

/** What isn't sold, and what the pans can't fill: a build that comes earlier is filled first. */
const notInPan = (
  selling: Selling,
  builds: readonly { readonly build: AcceptedBuild; readonly more: Wanted }[],
  before: Before | null,
): readonly { readonly lacks: readonly NotLeft[]; readonly fills: Wanted }[] => {
  let filled = NOTHING
  return builds.map(({ build, more }) => {
    const stopped = notSold(selling, build, before)
    // Another item takes other things: what else this one lacks is beside the point.
    if (stopped.some((lack) => lack.code === 'not-selling' && lack.what === 'item'))
      return { lacks: stopped, fills: NOTHING }
    const wanted = without(more, stopped)
    const of = ({ line, behind }: Wanted) => new Set([...Object.keys(line), ...Object.keys(behind)])
    const own = of(wanted)
    const gone = lacking(selling, {
      line: sumOf(filled.line, wanted.line),
      behind: sumOf(filled.behind, wanted.behind),
    })
      .filter(({ component }) => own.has(component))
      .map((one) => goneBecause(selling, one))
    const fills = without(wanted, gone)
    filled = {
      line: sumOf(filled.line, fills.line),
      behind: sumOf(filled.behind, fills.behind),
    }
    return { lacks: [...stopped, ...gone], fills }
  })
}

const kept = (state: RunningState, component: string): NotLeft => ({
  code: 'kept',
  component,
  for: state.keeps[component]?.for ?? [],
})

const told = (lacks: readonly Lack[]): Refusal | null => {
  const [first, ...others] = lacks
  if (!first) return null
  if (others.length > 0) return { code: 'lacks', lacks }
  const { letter: _, ...only } = first
  return only
}

const lettered = (letter: string, lacks: readonly NotLeft[]): readonly Lack[] =>
  lacks.map((lack) => ({ letter, ...lack }))

/** What the builds of an order lack that is sent now; null where all of them can be filled. */
export const lacksOfOrder = (
  state: RunningState,
  builds: readonly AcceptedBuild[],
  now: number,
): Refusal | null => {
  const selling = sellingNow(state, builds.length, now)
  const found = notInPan(
    selling,
    builds.map((build) => ({ build, more: wantedFrom(state, build.choice, build.takes) })),
    null,
  )
  const fromThem = keptFromThem(
    state,
    builds.map(({ choice }, index) => ({ choice, more: found[index]?.fills.line ?? {} })),
    (component) => levelOf(selling, component).remaining,
  )
  return told(
    builds.flatMap(({ letter }, index) =>
      lettered(letter, [
        ...(found[index]?.lacks ?? []),
        ...(fromThem[index] ?? []).map((component) => kept(state, component)),
      ]),
    ),
  )
}

/** What a change takes beyond what its build keeps already, from the line and from behind it. */
const moreThan = (state: RunningState, build: Build, to: AcceptedBuild): Wanted => {
  const had = wantedFrom(state, build.choice, keptBy(build))
  const wants = wantedFrom(state, to.choice, to.takes)
  return { line: beyond(had.line, wants.line), behind: beyond(had.behind, wants.behind) }
}

/** What a build lacks to become another now; null where nothing. */
export const lacksOfChange = (
  state: RunningState,
  at: { readonly ticket: number; readonly build: Build },
  to: AcceptedBuild,
  now: number,
): Refusal | null => {
  const selling = sellingNow(state, 1, now)
  const more = moreThan(state, at.build, to)
  const [found] = notInPan(selling, [{ build: to, more }], at.build)
  const lacks = found?.lacks ?? []
  const fromIt = keptFromChange(
    state,
    at,
    { choice: to.choice, takes: wantedFrom(state, to.choice, to.takes).line },
    (component) => levelOf(selling, component).remaining,
  ).filter((component) => !lacks.some((lack) => isAbout(lack, component)))
  return told(lettered(to.letter, [...lacks, ...fromIt.map((component) => kept(state, component))]))
}
