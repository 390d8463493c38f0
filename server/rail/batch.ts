import type { Answer } from '#lib/protocol/wire.ts'
import { type Command, decide } from '#lib/service/decide.ts'
import { due } from '#lib/service/due.ts'
import type { Recorded, ServiceEvent } from '#lib/service/event.ts'
import { evolve } from '#lib/service/evolve.ts'
import type { Role } from '#lib/service/roles.ts'
import { isRunning, type RunningState, type ServiceState } from '#lib/service/state.ts'
import type { LoggedAnswer } from '#server/event-log/port.ts'
import { fingerprintOf, keptApart } from '#server/rail/fingerprint.ts'
import type { RailPorts } from '#server/rail/rail-ports.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'

export interface Ordered {
  readonly id: string
  readonly command: Command
  readonly by: Role
  readonly settle: (answer: Answer) => void
}

/** What the server itself has to say: events by the state that they are decided on. */
export type Note = (state: RunningState, now: number) => readonly ServiceEvent[]

export interface Batch {
  readonly entries: readonly Recorded[]
  readonly answers: readonly LoggedAnswer<StoredAnswer>[]
  readonly names: readonly { readonly id: string; readonly name: string }[]
  readonly replies: readonly { readonly order: Ordered; readonly answer: StoredAnswer }[]
}

interface Start {
  readonly state: ServiceState
  readonly position: number
  /** Epoch milliseconds. */
  readonly now: number
  readonly jumpedBy: number
}

const USED_FOR_SOMETHING_ELSE: StoredAnswer = {
  answer: 'refused',
  refusal: { code: 'id-used-for-something-else' },
}

/** Decides commands in order, each on the state that the ones before it will leave. Stores nothing. */
export const createBatch = async (
  ports: RailPorts,
  start: Start,
  orders: readonly Ordered[],
  notes: readonly Note[] = [],
): Promise<Batch> => {
  const { service, log, logger } = ports
  let { state, position } = start
  const entries: Recorded[] = []
  const answers: LoggedAnswer<StoredAnswer>[] = []
  const names: { id: string; name: string }[] = []
  const replies: { order: Ordered; answer: StoredAnswer }[] = []
  const answered = new Map<string, LoggedAnswer<StoredAnswer>>()
  const now = Math.max(start.now, state.at)

  const record = (events: readonly ServiceEvent[], command: string | null, dueAt?: number) => {
    let next = state
    let at = position
    const recorded: Recorded[] = []
    for (const event of events) {
      at += 1
      const stamped: Recorded = {
        ...event,
        position: at,
        at: now,
        command,
        ...(dueAt === undefined ? {} : { due: dueAt }),
      }
      next = evolve(next, stamped)
      recorded.push(stamped)
    }
    state = next
    position = at
    entries.push(...recorded)
  }

  if (start.jumpedBy !== 0 && state.stage === 'open')
    record([{ type: 'clockJumped', byMs: start.jumpedBy }], null)
  for (const fallen of due(state, now)) {
    try {
      record([fallen.event], null, fallen.due)
    } catch (error) {
      logger.error({ err: error, service, type: fallen.event.type }, 'what fell due failed')
    }
  }

  for (const note of notes) {
    try {
      if (isRunning(state)) record(note(state, now), null)
    } catch (error) {
      logger.error({ err: error, service }, 'a note failed')
    }
  }

  /** The batch may be ahead of what is kept: then its own is the newest. */
  const newestRevision = (): number | null => {
    const newest = state.station === null ? null : ports.newestRevision(state.station.id)
    return newest === null ? null : Math.max(newest, state.revision ?? 0)
  }

  const decideOne = (order: Ordered): StoredAnswer => {
    try {
      const decision = decide(state, order.command, {
        now,
        by: order.by,
        service,
        station: ports.station,
        otherIsOpen: ports.otherIsOpen(service),
        newestRevision: newestRevision(),
        ...(ports.knownBias ? { knownBias: ports.knownBias } : {}),
      })
      if ('refusal' in decision) {
        record(decision.also ?? [], order.id)
        return { answer: 'refused', refusal: decision.refusal }
      }
      record(decision.events, order.id)
      return { answer: 'accepted', position }
    } catch (error) {
      logger.error({ err: error, service, command: order.command.type }, 'a command failed')
      return { answer: 'refused', refusal: { code: 'could-not-decide' } }
    }
  }

  for (const order of orders) {
    const fingerprint = fingerprintOf(order.command)
    const known = answered.get(order.id) ?? (await log.answerTo(service, order.id))
    if (known) {
      const answer = known.fingerprint === fingerprint ? known.answer : USED_FOR_SOMETHING_ELSE
      replies.push({ order, answer })
      continue
    }
    const before = position
    const answer = decideOne(order)
    const logged = { command: order.id, fingerprint, answer }
    answered.set(order.id, logged)
    answers.push(logged)
    replies.push({ order, answer })
    const name = keptApart(order.command)
    // Initials go with what was recorded, also where the command was refused for it.
    const isRecorded = answer.answer === 'accepted' || position > before
    if (isRecorded && name !== undefined) names.push({ id: order.id, name })
  }
  return { entries, answers, names, replies }
}
