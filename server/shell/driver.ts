import { setTimeout as pause } from 'node:timers/promises'
import type { Socket } from 'socket.io-client'
import { z } from 'zod'
import { serviceFor } from '#lib/protocol/service-id.ts'
import { type Answer, MOST_MESSAGE_BYTES, PROTOCOL } from '#lib/protocol/wire.ts'
import { itemLeft, levelsOf } from '#lib/rooms/pans/facts/levels.ts'
import type { Role } from '#lib/service/roles.ts'
import { isRunning } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import type { Command } from '#lib/spine/registry.ts'
import { samplesFor } from '#lib/spine/samples/samples.ts'
import type { CrewClient } from '#lib/sync/crew-client.ts'
import { whenView } from '#server/shell/crew-connection.ts'

const commandLineSchema = z.strictObject({
  command: z.unknown(),
  id: z.string().optional(),
  service: z.string().optional(),
  passphrase: z.string().optional(),
})

type CommandLine = z.infer<typeof commandLineSchema>

const lineSchema = z.union([
  commandLineSchema,
  z.strictObject({ ask: z.enum(['samples', 'stock', 'state']) }),
  z.strictObject({ raw: z.unknown() }),
])

export interface DriverPorts {
  readonly client: CrewClient
  readonly socket: Socket
  readonly role: Role
  readonly newId: () => string
}

const ANSWER_WITHIN_MS = 15_000

/** A script is quicker than hands: where the server asks for a pause, the same is sent again. */
const BUSY_MS = 250
const MOST_BUSY = 20

const BACK_WITHIN_MS = 15_000

const tooLarge = (message: unknown): boolean =>
  Buffer.byteLength(JSON.stringify(message) ?? '') > MOST_MESSAGE_BYTES - ENVELOPE_BYTES

/** What the transport puts around a message, at most. */
const ENVELOPE_BYTES = 64

/** An answer as a line: the code of a refusal beside it. */
const lineOf = (answer: Answer): object => {
  switch (answer.answer) {
    case 'accepted':
      return answer
    case 'refused': {
      const { code, ...values } = answer.refusal
      return { id: answer.id, answer: 'refused', code, values }
    }
    case 'not taken':
      return { id: answer.id, answer: 'not taken', code: answer.because.code }
  }
}

/** Answers one line of input with one object to print. Never throws. */
export const createDriver = ({ client, socket, role, newId }: DriverPorts) => {
  /** Rejects, also where a message is nested too deeply to be written. */
  const emit = async (name: string, message: unknown): Promise<unknown> =>
    socket.timeout(ANSWER_WITHIN_MS).emitWithAck(name, message)

  const request = async (message: unknown): Promise<object> => {
    const once = new AbortController()
    const dropped = new Promise<object>((resolve) => {
      const listener = () => resolve({ answer: 'not taken', code: 'connection-closed' })
      socket.once('disconnect', listener)
      once.signal.addEventListener('abort', () => socket.off('disconnect', listener))
    })
    const answered = emit('command', message).then(
      (answer) => lineOf(answer as Answer),
      (error: unknown) => ({
        answer: 'not taken',
        code: error instanceof RangeError ? 'cannot-be-sent' : 'no-answer',
      }),
    )
    const line = await Promise.race([answered, dropped])
    once.abort()
    return line
  }

  const CLOSED = { answer: 'not taken', code: 'connection-closed' }

  /** A command sent again has no second effect, so one that was cut off is, when the server is back. */
  const persist = async (message: unknown): Promise<object> => {
    for (let tries = 0; tries < MOST_BUSY; tries += 1) {
      if (!(await whenLive())) return CLOSED
      const line = await request(message)
      const code = 'code' in line ? line.code : null
      if (code === 'busy') await pause(BUSY_MS)
      else if (code !== 'connection-closed') return line
      else if (tooLarge(message)) return { answer: 'not taken', code: 'too-large' }
    }
    return CLOSED
  }

  /** What was accepted on this connection has been folded; a gap is closed first. */
  const settled = async (position: number): Promise<void> => {
    await whenView(client, (view) => view.position >= position, 5_000).catch(() => {})
  }

  let gaveUp = false

  /** Waits once for a server that is gone; after that, only asks whether it is back. */
  const whenLive = async (): Promise<boolean> => {
    const isLive = () => client.view().link === 'live' && socket.connected
    if (!isLive() && !gaveUp)
      await whenView(client, isLive, BACK_WITHIN_MS).catch(() => {
        gaveUp = true
      })
    if (isLive()) gaveUp = false
    return isLive()
  }

  /** What was sent under an id goes to the same service when it is sent again. */
  const services = new Map<string, string>()

  const serviceOf = (sent: unknown, id: string, isOpen: boolean): string => {
    const service =
      services.get(id) ??
      (isOpen ? serviceFor(sent as Command, id, null) : (client.view().service ?? 'none'))
    services.set(id, service)
    return service
  }

  const command = async ({
    command: sent,
    id = newId(),
    service,
    passphrase,
  }: CommandLine): Promise<object> => {
    const isOpen = z.object({ type: z.literal('open') }).safeParse(sent).success
    const isFirst = !services.has(id)
    const sentTo = service ?? serviceOf(sent, id, isOpen)
    const proof = passphrase === undefined ? {} : { passphrase }
    const message = { protocol: PROTOCOL, id, service: sentTo, command: sent, ...proof }
    const line = await persist(message)
    const accepted = z.object({ position: z.int() }).safeParse(line)
    if (accepted.success) {
      if (isOpen && isFirst)
        await whenView(client, (view) => view.service === sentTo, 5_000).catch(() => {})
      if (client.view().service === sentTo) await settled(accepted.data.position)
    }
    return { id, ...line }
  }

  /** Sent once, as it is: nothing says that sending it again would have no second effect. */
  const raw = async (message: unknown): Promise<object> => {
    if (!(await whenLive())) return CLOSED
    const line = await request(message)
    if (!socket.connected) await whenLive()
    return 'code' in line && line.code === 'connection-closed' && tooLarge(message)
      ? { answer: 'not taken', code: 'too-large' }
      : line
  }

  /** A round trip: what the server showed before this is folded when it is back. */
  const refresh = async (): Promise<void> => {
    await whenLive()
    const { service, position } = client.view()
    if (service !== null && socket.connected)
      await emit('follow', { service, position }).catch(() => {})
  }

  const ask = async (what: 'samples' | 'stock' | 'state'): Promise<object> => {
    await refresh()
    const { state, position, welcome } = client.view()
    if (what === 'state') return { position, hash: stateHash(state) }
    if (what === 'samples') return { samples: samplesFor(state, role, welcome?.station?.id ?? '') }
    if (!isRunning(state)) return { components: {}, items: {} }
    const levels = levelsOf(state)
    return {
      components: Object.fromEntries(
        Object.entries(levels).map(([id, { unit, inPan, onTickets, remaining }]) => [
          id,
          { unit, inPan, onTickets, remaining },
        ]),
      ),
      items: Object.fromEntries(
        state.station.items.map((item) => [
          item.id,
          { remaining: itemLeft(state, levels, item.id).remaining },
        ]),
      ),
    }
  }

  return async (line: string): Promise<object> => {
    let json: unknown
    try {
      json = JSON.parse(line)
    } catch {
      return { answer: 'not taken', code: 'not-json' }
    }
    const parsed = lineSchema.safeParse(json)
    if (!parsed.success) return { answer: 'not taken', code: 'not-a-line' }
    const wanted = parsed.data
    if ('ask' in wanted) return ask(wanted.ask)
    if ('raw' in wanted) return raw(wanted.raw)
    return command(wanted)
  }
}
