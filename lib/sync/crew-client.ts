/**
 * A crew screen's copy of a service, over a transport that is passed in: it follows the log by
 * position, keeps what waits to be sent, and gives every command the same id however often it is
 * sent. Knows nothing of sockets, browsers or screens.
 */
import { serviceFor } from '#lib/protocol/service-id.ts'
import { type Answer, PROTOCOL } from '#lib/protocol/wire.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import type { Command } from '#lib/spine/registry.ts'
import { type Copy, foldNewer, takeReply } from '#lib/sync/catch-up.ts'
import { type CrewView, isNewer, NO_VIEW } from '#lib/sync/crew-view.ts'
import { isSettled } from '#lib/sync/is-settled.ts'
import { createLater } from '#lib/sync/later.ts'
import type { Outbox, Pending } from '#lib/sync/outbox.ts'
import type { Transport } from '#lib/sync/transport.ts'

/** What proves the person in charge for one command. */
export interface Proof {
  readonly passphrase: string
}

export interface CrewClient {
  view(): CrewView
  subscribe(listener: () => void): () => void
  /**
   * Sends a command and keeps sending it until it is accepted or refused. One that is proved by a
   * passphrase is kept in memory only, and is gone when the page is loaded anew.
   */
  send(command: Command, id?: string, proof?: Proof): Promise<Answer>
  close(): void
}

export interface CrewClientPorts {
  readonly transport: Transport
  readonly outbox: Outbox
  readonly newId: () => string
  /** Monotonic milliseconds. */
  readonly monotonic: () => number
  readonly later: (act: () => void, ms: number) => () => void
  /** Fold and keep the state; off for the pick-up screen, which is sent pictures. */
  readonly folds: boolean
}

const AGAIN_AFTER_MS = 1_000

export const createCrewClient = (ports: CrewClientPorts): CrewClient => {
  const { transport, outbox, monotonic } = ports
  const listeners = new Set<() => void>()
  const waiting = new Map<string, readonly ((answer: Answer) => void)[]>()
  const underway = new Set<string>()
  /** By command id, apart from what is pending, which is shown and stored. */
  const proofs = new Map<string, Proof>()
  /** Counts connections: what was asked over an earlier one isn't waited for any more. */
  let connection = 0
  let following = false
  let followAgain = false
  let closed = false
  let view: CrewView = NO_VIEW

  const set = (change: Partial<CrewView>): void => {
    view = { ...view, ...change }
    for (const listener of listeners) listener()
  }

  const hold = ({ state, position }: Copy): void => {
    if (state === view.state && position === view.position) return
    // Names go with the service: the server deletes them at the close, and so does every screen.
    set({ state, position, ...(state.stage === 'closed' ? { names: {}, forecast: null } : {}) })
  }

  const followLater = createLater(ports.later, AGAIN_AFTER_MS, () => void follow())
  const againLater = createLater(ports.later, AGAIN_AFTER_MS, () => transport.again())
  const sendLater = createLater(ports.later, AGAIN_AFTER_MS, () => sendAll())

  const follow = async (): Promise<void> => {
    const { service } = view
    if (service === null || closed) return
    if (following) {
      followAgain = true
      return
    }
    following = true
    followAgain = false
    followLater.cancel()
    const over = connection
    const from = ports.folds ? view.position : 0
    const followed = await transport.follow({ service, position: from }).catch(() => null)
    if (closed || over !== connection) return
    following = false
    if (service !== view.service) {
      void follow()
      return
    }
    if (followed === null || followed.kind === 'busy') {
      followLater.ask()
      return
    }
    if (followed.kind === 'picture') set({ picture: followed.picture })
    const taken = takeReply(view, followed, from)
    hold(taken)
    set({ link: 'live', heardAt: monotonic() })
    sendAll()
    if (!taken.isWhole) followLater.ask()
    else if (followAgain) void follow()
  }

  const settle = (id: string, answer: Answer): void => {
    for (const resolve of waiting.get(id) ?? []) resolve(answer)
    waiting.delete(id)
    underway.delete(id)
    proofs.delete(id)
    set({ pending: view.pending.filter((one) => one.id !== id) })
    outbox.remove(id).catch(() => undefined)
  }

  const sendOne = async (pending: Pending): Promise<void> => {
    if (underway.has(pending.id) || closed || view.link !== 'live') return
    underway.add(pending.id)
    const over = connection
    const message = { protocol: PROTOCOL, ...pending, ...proofs.get(pending.id) }
    const answer = await transport.command(message).catch(() => null)
    if (closed) return
    if (answer && isSettled(answer)) settle(pending.id, answer)
    else if (over === connection) {
      underway.delete(pending.id)
      sendLater.ask()
    }
  }

  const sendAll = (): void => {
    for (const pending of view.pending) void sendOne(pending)
  }

  const turnTo = (service: string | null): void => {
    if (service === view.service) return
    set({ service, position: 0, state: NOT_OPENED, picture: null, names: {}, forecast: null })
  }

  /** Forgets what is under way: its replies are lost with the connection. */
  const startOver = (): void => {
    connection += 1
    following = false
    underway.clear()
    followLater.cancel()
    sendLater.cancel()
  }

  transport.listen({
    welcome: (welcome) => {
      startOver()
      turnTo(welcome.service)
      const link = welcome.service === null ? 'live' : 'connecting'
      set({
        welcome,
        link,
        refused: null,
        heardAt: monotonic(),
        serverOffset: welcome.at - monotonic(),
      })
      if (welcome.service === null) sendAll()
      else void follow()
    },
    events: (message) => {
      set({ heardAt: monotonic() })
      if (message.service !== view.service || !ports.folds) return
      const folded = foldNewer(view, message.events)
      hold(folded)
      if (!folded.isWhole) void follow()
    },
    picture: ({ service, picture }) => {
      set({ heardAt: monotonic() })
      if (service === view.service) set({ picture })
    },
    pulse: (pulse) => {
      set({ heardAt: monotonic(), serverOffset: pulse.at - monotonic() })
      const isBehind = ports.folds && pulse.position > view.position
      if (pulse.service !== view.service) turnTo(pulse.service)
      else if (!isBehind && view.link === 'live') return
      void follow()
    },
    guests: (guests) => {
      if (guests.service !== view.service || view.state.stage === 'closed') return
      // An empty name is one to be forgotten.
      const names = Object.entries({ ...view.names, ...guests.names }).filter(([, name]) => name)
      set({ names: Object.fromEntries(names) })
    },
    forecast: ({ service, forecast }) => {
      if (service !== view.service || view.state.stage === 'closed') return
      if (isNewer(forecast, view.forecast)) set({ forecast })
    },
    lost: (refused) => {
      startOver()
      set({ link: 'lost', refused: refused ?? null })
      // Somebody may join on this device meanwhile, in another page of it too.
      if (refused) againLater.ask()
    },
  })

  outbox
    .all()
    .then((kept) => {
      const byId = new Map([...kept, ...view.pending].map((one) => [one.id, one]))
      set({ pending: [...byId.values()] })
      sendAll()
    })
    .catch(() => undefined)

  return {
    view: () => view,
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    send: (command, id = ports.newId(), proof) => {
      const known = view.pending.find((one) => one.id === id)
      const pending = known ?? { id, service: serviceFor(command, id, view.service), command }
      const answered = new Promise<Answer>((resolve) => {
        waiting.set(id, [...(waiting.get(id) ?? []), resolve])
      })
      if (!known) {
        if (proof) proofs.set(id, { passphrase: proof.passphrase })
        else outbox.put(pending).catch(() => undefined)
        set({ pending: [...view.pending, pending] })
      }
      void sendOne(pending)
      return answered
    },
    close: () => {
      closed = true
      proofs.clear()
      followLater.cancel()
      sendLater.cancel()
      againLater.cancel()
      transport.close()
    },
  }
}
