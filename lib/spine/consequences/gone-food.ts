/** What is being made, and what stands made, goes with food that is thrown out. */
import { buildPassed } from '#lib/rooms/food/facts/build-passed.ts'
import { madeWith } from '#lib/rooms/making/facts/made-with-food.ts'
import type { Consequence } from '#lib/service/consequence.ts'
import type { BuildStopped } from '#lib/service/events/event.ts'
import type { ThrowOutPassed } from '#lib/service/events/food-event.ts'
import { isHeldForPan } from '#lib/service/folding/pan-hold.ts'
import { boundAt, componentIn } from '#lib/service/held-stock.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'
import { gone } from '#lib/spine/consequences/places.ts'

const READS = ['toThrowOut', 'pans', 'backupPans'] as const

/**
 * Stops of what is being made with such food: what is in it is thrown out, and it is made again from
 * what is left. One that is stopped for anything else stays so.
 */
export const stopsOfGone: Consequence = {
  name: 'stops-of-gone',
  reads: READS,
  follow: (happened) => {
    const components = new Set(
      gone(happened).map(({ id }) => componentIn(happened.after.station, id)),
    )
    if (components.size === 0) return []
    return openBuilds(happened.after).flatMap(({ ticket, build }): BuildStopped[] =>
      build.state === 'making' &&
      (build.stop === null || isHeldForPan(build)) &&
      Object.entries(build.takes).some(([id, amount]) => amount > 0 && components.has(id))
        ? [
            {
              type: 'buildStopped',
              ticket: ticket.number,
              letter: build.letter,
              reason: 'throw-out',
              to: null,
            },
          ]
        : [],
    )
  },
}

/** Made builds that are thrown out with the food which they took: initialled, and made again. */
export const madeOfGone: Consequence = {
  name: 'made-of-gone',
  reads: READS,
  follow: (happened) => {
    const { before, after } = happened
    const found = new Map<string, ThrowOutPassed>()
    for (const { takesAlong, ...suspect } of gone(happened)) {
      if (takesAlong === null) continue
      for (const { ticket, build } of madeWith(before, suspect)) {
        const id = buildName(ticket.number, build.letter)
        if (boundAt(after, 'build', id)) continue
        found.set(id, buildPassed(build, id, takesAlong))
      }
    }
    return [...found.values()]
  },
}
