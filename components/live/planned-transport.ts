import type { Followed } from '#lib/protocol/wire.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { type Copy, takeReply } from '#lib/sync/catch-up.ts'
import type { Transport, TransportHandlers } from '#lib/sync/transport.ts'

const NOTHING: Copy = { state: NOT_OPENED, position: 0 }

/** Folds what is newer; null on a gap, or where this copy can't be what the server holds. */
const folded = (copy: Copy, events: readonly Recorded[]): Copy | null => {
  let { state, position } = copy
  try {
    for (const event of events) {
      if (event.position <= position) continue
      if (event.position !== position + 1) return null
      state = evolve(state, event)
      position = event.position
    }
  } catch {
    return null
  }
  return { state, position }
}

/**
 * A connection that follows a service that is planned, by its id, in the place of the station's
 * newest. The crew's screens fold what happens in an open service alone, so that they stay light:
 * here all is folded, and what is behind is given what it came to.
 */
export const plannedTransport = (service: string, inner: Transport): Transport => {
  let copy = NOTHING
  let handlers: TransportHandlers | null = null
  const told = (at: number) => handlers?.pulse({ at, service, position: copy.position })

  const ask = async (): Promise<Followed> => {
    const reply = await inner.follow({ service, position: copy.position })
    if (reply.kind === 'snapshot') {
      const taken = takeReply(copy, reply, copy.position)
      copy = { state: taken.state, position: taken.position }
    } else if (reply.kind === 'events') {
      const next = folded(copy, reply.events)
      if (next === null && copy.position > 0) {
        copy = NOTHING
        return ask()
      }
      copy = next ?? copy
    } else return reply
    return { kind: 'snapshot', ...copy }
  }

  return {
    listen: (own) => {
      handlers = own
      inner.listen({
        ...own,
        welcome: (message) => {
          copy = NOTHING
          own.welcome({ ...message, service })
        },
        events: (message) => {
          if (message.service !== service) return
          const next = folded(copy, message.events)
          copy = next ?? NOTHING
          const at = message.events.at(-1)?.at
          // Behind by one at least: what it came to is asked for.
          if (at !== undefined)
            handlers?.pulse({ at, service, position: Math.max(1, copy.position) })
        },
        pulse: ({ at }) => told(at),
        forecast: () => undefined,
        guests: () => undefined,
      })
    },
    follow: ask,
    // A plan that is said again is of the service that it is said in.
    command: (message) =>
      inner.command(message.command.type === 'plan' ? { ...message, service } : message),
    again: () => inner.again(),
    close: () => inner.close(),
  }
}
