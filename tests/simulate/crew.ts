/** The counter and the assemblers of a simulated service. */

import type { Wait } from '#lib/estimate/wait.ts'
import { levelsOf, sellable } from '#lib/rooms/pans/facts/levels.ts'
import { waitNow } from '#lib/rooms/pans/facts/wait-now.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import { portionsTaken, usualChoice } from '#lib/service/events/build-choice.ts'
import { findBuild, openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'
import type { Agenda } from '#tests/simulate/agenda.ts'
import type { Chance } from '#tests/simulate/chance.ts'
import type { Room } from '#tests/simulate/room.ts'
import { itemCalled } from '#tests/simulate/scenario.ts'
import type { Stock } from '#tests/simulate/stock.ts'
import type { Guest, Wish } from '#tests/simulate/world.ts'

export interface Waited {
  readonly said: Wait
  readonly seconds: number
}

export interface Crew {
  readonly arrive: (guest: Guest, minute: number) => void
  readonly waits: readonly Waited[]
  /** Builds that somebody wanted and didn't get whole: a part, its base or all of it was gone. */
  readonly notWhole: () => number
}

const MEAN_SECONDS = 36
const BUILD_SD = 0.35
const HAND_OVER_MINUTES = 0.7

/** What the counter can still sell of a component in an item, whole portions. */
interface Left {
  (component: string, item: string): number
  readonly take: (component: string, portions: number) => void
}

export const createCrew = (room: Room, stock: Stock, agenda: Agenda, chance: Chance): Crew => {
  let busy = 0
  let notWhole = 0
  const waits: Waited[] = []
  const said = new Map<number, { readonly wait: Wait; readonly at: number }>()

  /** What of a wish can be sold; what is gone is lost. Null where it can't be made at all. */
  const take = (wish: Wish, left: Left, minute: number): BuildChoice | null => {
    const item = itemCalled(wish.item)
    const has = (id: string): number => left(id, item.id)
    if (has(item.heart) < 1) {
      stock.lose(item.heart, wish.parts[item.heart] ?? 1, minute)
      room.must(minute, { type: 'wantedGone', component: item.heart })
      return null
    }
    let base = wish.base
    if (base !== null && has(base) < 1) {
      stock.lose(base, 1, minute)
      room.must(minute, { type: 'wantedGone', component: base })
      base = item.base?.choices.find((other) => has(other) >= 1) ?? null
      if (base === null) return null
    }
    const usual = usualChoice(item)
    const parts: Record<string, BuildChoice['parts'][string]> = {}
    for (const part of item.parts) {
      const id = part.component
      const want = wish.parts[id] ?? 0
      const portions = Math.min(want, has(id))
      if (portions < want) stock.lose(id, want - portions, minute)
      const placement = usual.parts[id]?.placement === 'side' ? 'side' : 'in'
      parts[id] =
        portions > 0
          ? { placement, portions, because: 'asked' }
          : { placement: 'no', portions: 0, because: want > 0 ? 'gone' : 'asked' }
      left.take(id, portions)
    }
    if (base !== null) left.take(base, 1)
    return { ...usual, base, parts }
  }

  const without = (choice: BuildChoice, id: string): BuildChoice | null => {
    const item = itemCalled(choice.item)
    if (id === item.heart || item.parts.find((one) => one.component === id)?.required) return null
    if (choice.base === id) {
      const other = item.base?.choices.find((one) => one !== id && stock.isThere(one, 1))
      return other === undefined ? null : { ...choice, base: other }
    }
    return {
      ...choice,
      parts: { ...choice.parts, [id]: { placement: 'no', portions: 0, because: 'gone' } },
    }
  }

  /** A build that the pans can't fill: without the component, or cancelled. */
  const goWithout = ({ ticket, build }: QueuedBuild, id: string, minute: number): void => {
    const at = { ticket: ticket.number, letter: build.letter }
    notWhole += 1
    stock.lose(id, portionsTaken(build.choice, id), minute)
    const to = without(build.choice, id)
    if (to === null || room.give(minute, { type: 'change', ...at, to, readBack: true }) !== null)
      room.give(minute, { type: 'cancel', ...at })
  }

  const finish = (queued: QueuedBuild, minute: number): void => {
    const at = { ticket: queued.ticket.number, letter: queued.build.letter }
    room.must(minute, { type: 'finish', ...at })
    busy -= 1
    const asked = said.get(at.ticket)
    const isLast = room
      .state()
      .tickets[`t${at.ticket}`]?.builds.every(
        ({ state }) => state !== 'waiting' && state !== 'making',
      )
    if (asked && isLast) {
      said.delete(at.ticket)
      waits.push({ said: asked.wait, seconds: (minute - asked.at) * 60 })
    }
    agenda.at(minute + HAND_OVER_MINUTES * chance.factor(0.4), (later) =>
      room.give(later, { type: 'handOver', ...at }),
    )
    work(minute)
  }

  const start = (minute: number): boolean => {
    for (const queued of openBuilds(room.state())) {
      const { ticket, build } = queued
      if (build.state !== 'waiting') continue
      const at = { ticket: ticket.number, letter: build.letter }
      const missing = Object.keys(build.takes).find(
        (id) => !stock.isThere(id, portionsTaken(build.choice, id)),
      )
      if (missing !== undefined) {
        stock.read(missing, 'count', minute)
        stock.refill(minute)
        if (!stock.isThere(missing, portionsTaken(build.choice, missing)))
          goWithout(queued, missing, minute)
        return true
      }
      const refusal = room.give(minute, { type: 'start', ...at, seen: build.version })
      if (refusal?.code === 'short') {
        // The pans are counted too low: a look mends that, or the build goes without.
        stock.read(refusal.component, 'count', minute)
        if (room.give(minute, { type: 'start', ...at, seen: build.version }) !== null) {
          goWithout(queued, refusal.component, minute)
          return true
        }
      } else if (refusal) throw new Error(`start refused: ${refusal.code}`)
      for (const id of Object.keys(build.takes))
        stock.of(id).promised += portionsTaken(build.choice, id)
      busy += 1
      const parts = 0.5 + 0.08 * Object.keys(build.takes).length
      const takes = (MEAN_SECONDS / 60) * parts * chance.factor(BUILD_SD)
      agenda.at(minute + takes, (done) => finish(queued, done))
      return true
    }
    return false
  }

  const work = (minute: number): void => {
    while (busy < room.state().assemblers && start(minute)) {}
  }

  const changed = (choice: BuildChoice): BuildChoice => {
    const item = itemCalled(choice.item)
    const free = item.parts.filter((part) => !part.required && part.component !== item.heart)
    const part = free[chance.oneOf(free.map(() => 1))]
    if (!part) return choice
    const isIn = choice.parts[part.component]?.placement !== 'no'
    return {
      ...choice,
      parts: {
        ...choice.parts,
        [part.component]: isIn
          ? { placement: 'no', portions: 0, because: 'asked' }
          : { placement: 'in', portions: 1, because: 'asked' },
      },
    }
  }

  return {
    waits,
    notWhole: () => notWhole,
    arrive: (guest, minute) => {
      const state = room.state()
      const levels = levelsOf(state)
      const taken = new Map<string, number>()
      const left: Left = Object.assign(
        (id: string, item: string) => sellable(state, levels, id, item) - (taken.get(id) ?? 0),
        {
          take: (id: string, portions: number) => {
            taken.set(id, (taken.get(id) ?? 0) + portions)
          },
        },
      )
      const builds = guest.wishes.flatMap((wish, index): BuildChoice[] => {
        const other = guest.instead[index]
        const isWhole =
          Object.entries(wish.parts).every(
            ([id, portions]) => portions === 0 || left(id, wish.item) >= portions,
          ) &&
          (wish.base === null || left(wish.base, wish.item) >= 1)
        if (!isWhole) notWhole += 1
        const choice = take(wish, left, minute) ?? (other ? take(other, left, minute) : null)
        return choice ? [choice] : []
      })
      if (builds.length === 0) return
      const wait = waitNow(state, builds.length)
      const ticket = state.nextTicket
      room.must(minute, { type: 'send', builds, paid: true, readBack: true })
      if (wait) said.set(ticket, { wait, at: minute })
      const at = { ticket, letter: 'A' }
      if (guest.changesAfter !== null)
        agenda.at(minute + guest.changesAfter, (later) => {
          const build = findBuild(room.state(), ticket, 'A')
          if (build?.state !== 'waiting') return
          room.give(later, { type: 'change', ...at, to: changed(build.choice), readBack: true })
        })
      if (guest.cancelsAfter !== null)
        agenda.at(minute + guest.cancelsAfter, (later) => {
          if (findBuild(room.state(), ticket, 'A')?.state !== 'waiting') return
          room.give(later, { type: 'cancel', ...at })
        })
      work(minute)
    },
  }
}
