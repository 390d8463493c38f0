import type { Consequence } from '#lib/service/consequence.ts'
import type { BuildHeld } from '#lib/service/events/event.ts'
import { isStale } from '#lib/service/known.ts'
import { findBuild, openBuilds } from '#lib/service/tickets.ts'

/**
 * Food is taken anew for what is made again: with an older document than the newest nobody can say
 * whether that fits. What was accepted before and isn't made again goes on.
 */
export const remadeUnread: Consequence = {
  name: 'remade-unread',
  reads: ['tickets'],
  follow: ({ before, after, known }) =>
    openBuilds(after).flatMap(({ ticket, build }): BuildHeld[] => {
      const { letter, choice, hold, remakes, told } = build
      if (hold || build.state !== 'waiting' || choice.needs.length === 0) return []
      const earlier = findBuild(before, ticket.number, letter)
      const isAgain = earlier !== undefined && earlier.remakes < remakes
      return isAgain && isStale(after, known)
        ? [
            {
              type: 'buildHeld',
              ticket: ticket.number,
              letter,
              reason: told ? 'need' : 'label',
            },
          ]
        : []
    }),
}
