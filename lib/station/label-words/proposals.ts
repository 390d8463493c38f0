/** What the marks of a list come to, by allergen: one proposal each, with the words for it. */
import type { Mark, Proposal } from '#lib/station/label-words/read-list.ts'

export interface Proposed {
  readonly code: string
  readonly proposes: Proposal
  readonly marks: readonly Mark[]
}

/** The first that a mark proposes holds: what only the reader can say goes before a warning. */
const WORST_FIRST: readonly Proposal[] = ['contains', 'ask', 'may-contain', 'free']

/** One that is declared free and named beside it contradicts itself: that is asked. */
const together = (all: readonly Proposal[]): Proposal => {
  const worst = WORST_FIRST.find((one) => all.includes(one)) ?? 'ask'
  return all.includes('free') && worst !== 'free' ? 'ask' : worst
}

/** In the order in which they are first named. */
export const proposalsOf = (marks: readonly Mark[]): readonly Proposed[] =>
  [...new Set(marks.map(({ code }) => code))].map((code) => {
    const own = marks.filter((one) => one.code === code)
    return { code, proposes: together(own.map(({ proposes }) => proposes)), marks: own }
  })
