/** Saved yields that are taken out again, or counted after all: who and when, and nothing is deleted. */
import type { MarkAnswer, YieldsNow } from '#lib/tasting/http.ts'
import { yieldsApart, yieldsApartOf } from '#lib/tasting/stream.ts'
import { type MarkRefusal, type MarkYield, markProblem } from '#lib/tasting/yield-marks.ts'
import type { YieldSaved } from '#lib/tasting/yields.ts'
import type { Guests } from '#server/guests/port.ts'
import type { TastingStore } from '#server/tasting/sqlite.ts'

interface Ports {
  readonly store: Pick<TastingStore, 'marks' | 'mark'>
  readonly guests: Pick<Guests, 'put' | 'of' | 'services' | 'forget'>
  readonly now: () => number
  /** With their marks. */
  readonly yields: (station: string) => readonly YieldSaved[]
}

const refused = (refusal: MarkRefusal): MarkAnswer => ({ answer: 'refused', refusal })

export const createYieldMarks = ({ store, guests, now, yields }: Ports) => ({
  told: async (station: string): Promise<Pick<YieldsNow, 'yields' | 'initials'>> => {
    const held = await guests.of(yieldsApart(station), 'initials')
    const all = yields(station)
    const by = new Set(all.flatMap(({ out }) => out?.by ?? []))
    const initials = Object.entries(held).filter(([command]) => by.has(command))
    return { yields: all, initials: Object.fromEntries(initials) }
  },

  /** Durable when it settles. One at a time: what it is decided on mustn't change meanwhile. */
  mark: async (id: string, asked: MarkYield): Promise<MarkAnswer> => {
    const { station, yields: of, isOut } = asked
    const known = store.marks(station).find(({ by }) => by === id)
    if (known)
      return known.yields === of && known.isOut === isOut
        ? { answer: 'accepted' }
        : refused('id-used-for-something-else')
    const problem = markProblem(yields(station), asked)
    if (problem) return refused(problem)
    const body = (asked.initials ?? '').trim()
    await guests.put(yieldsApart(station), id, [{ kind: 'initials', body }])
    store.mark(station, { yields: of, isOut, at: now(), by: id })
    return { answer: 'accepted' }
  },

  /** Initials of marks of such times, and those that no mark came of. */
  forget: async (isToGo: (at: number) => boolean): Promise<void> => {
    for (const apart of await guests.services()) {
      const station = yieldsApartOf(apart)
      if (station === null) continue
      const still = new Set(store.marks(station).flatMap(({ at, by }) => (isToGo(at) ? [] : [by])))
      const held = Object.keys(await guests.of(apart, 'initials'))
      const gone = held.filter((one) => !still.has(one))
      if (gone.length > 0) await guests.forget(apart, ['initials'], gone)
    }
  },
})
