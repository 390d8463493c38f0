/** Changes that guests asked for, by what the log says of them. */
import type { Recorded } from '#lib/service/events/event.ts'
import { buildName } from '#lib/service/tickets.ts'

/** By build: a change waits for its stop to be answered, or was dropped by a hold and isn't made good. */
export type AskedChanges = Map<string, 'waits' | 'dropped'>

export const follow = (changes: AskedChanges, event: Recorded): void => {
  if (!('letter' in event) || !('ticket' in event)) return
  const build = buildName(event.ticket, event.letter)
  const now = changes.get(build)
  switch (event.type) {
    case 'buildStopped':
      if (event.to) changes.set(build, 'waits')
      break
    case 'buildHeld':
    case 'needTold':
      if (now === 'waits') changes.set(build, 'dropped')
      break
    case 'stopAcknowledged':
      if (now === 'waits') changes.delete(build)
      break
    case 'buildChanged':
    case 'buildCancelled':
      changes.delete(build)
      break
    default:
  }
}
