/** Orders and builds worth trying, for the samples of commands. */

import { knownNeeds } from '#lib/rooms/care/facts/known-needs.ts'
import { itemLeft, levelsOf, sellable } from '#lib/rooms/pans/facts/levels.ts'
import { type BuildChoice, usualChoice } from '#lib/service/events/build-choice.ts'
import type { Build, RunningState, Ticket } from '#lib/service/state.ts'
import { findTicket, type QueuedBuild } from '#lib/service/tickets.ts'
import { askableAllergens } from '#lib/station/codes/askable.ts'
import { type Need, usualHandling } from '#lib/station/codes/codes.ts'
import { DIETS } from '#lib/station/codes/diets.ts'
import { itemOf } from '#lib/station/find.ts'

export const choices = (state: RunningState): readonly BuildChoice[] => {
  const levels = levelsOf(state)
  return state.station.items.map((item) => {
    const usual = usualChoice(item)
    const { gone } = itemLeft(state, levels, item.id)
    const base =
      item.base?.choices.find((choice) => sellable(state, levels, choice) > 0) ?? usual.base
    return {
      ...usual,
      base,
      parts: {
        ...usual.parts,
        ...Object.fromEntries(
          gone.map((id) => [
            id,
            { placement: 'no' as const, portions: 0, because: 'gone' as const },
          ]),
        ),
      },
    }
  })
}

export const otherChoice = (state: RunningState, choice: BuildChoice): readonly BuildChoice[] => {
  const item = itemOf(state.station, choice.item)
  const others = (item.base?.choices ?? []).filter((base) => base !== choice.base)
  const parts = item.parts
    .filter((part) => !part.required && part.component !== item.heart)
    .map(
      (part): BuildChoice => ({
        ...choice,
        parts: {
          ...choice.parts,
          [part.component]:
            choice.parts[part.component]?.placement === 'no'
              ? { placement: 'in', portions: 1, because: 'asked' }
              : { placement: 'no', portions: 0, because: 'asked' },
        },
      }),
    )
  return [...parts, ...others.map((base) => ({ ...choice, base }))]
}

/** For a held build: without what it can be without, and with all that was told. */
export const plainest = (state: RunningState, build: Build): readonly BuildChoice[] => {
  const { choice, hold } = build
  if (!hold) return []
  const item = itemOf(state.station, choice.item)
  const needs = knownNeeds(build)
  const out = item.parts.filter((part) => !part.required && part.component !== item.heart)
  const parts = Object.fromEntries(
    out.map(({ component }) => [
      component,
      { placement: 'no' as const, portions: 0, because: 'need' as const },
    ]),
  )
  const plain: BuildChoice = {
    ...choice,
    parts: { ...choice.parts, ...parts },
    asked: needs.length > 0 ? 'needs' : 'none',
    needs,
    agreed: true,
  }
  return item.base ? item.base.choices.map((base) => ({ ...plain, base })) : [plain]
}

export const needsToTry = (state: RunningState): readonly Need[] =>
  [...askableAllergens(state.station), ...DIETS].map((code) => ({
    code,
    handling: usualHandling(code),
    reason: null,
  }))

export const atBuild = ({ ticket, build }: QueuedBuild) => ({
  ticket: ticket.number,
  letter: build.letter,
})

/** The newest ticket's that are handed over, and all whose guests are to be found. */
export const handedOver = (state: RunningState): readonly QueuedBuild[] => {
  const numbers = new Set([
    ...Object.values(state.toFind).map((one) => one.ticket),
    ...Array.from({ length: 8 }, (_, index) => state.nextTicket - 1 - index),
  ])
  return [...numbers].flatMap((number) => {
    const ticket = findTicket(state, number)
    return (ticket?.builds ?? [])
      .filter((build) => build.state === 'handed-over')
      .flatMap((build) => (ticket ? [{ ticket, build }] : []))
  })
}

export const pastTickets = (state: RunningState): readonly Ticket[] =>
  Object.values(state.past).flatMap((chunk) => Object.values(chunk))
