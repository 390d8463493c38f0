/** The transport over a socket.io client, which is passed in, so that lib needs no socket library. */
import type { ConnectRefusal } from '#lib/access/http.ts'
import type { Answer, CommandMessage, Followed, ServerMessages } from '#lib/protocol/wire.ts'
import type { Transport } from '#lib/sync/transport.ts'

/** What is used of a socket.io client. */
export interface SocketLike {
  /** Whether it tries by itself to get its connection back. */
  readonly active: boolean
  on(event: string, listener: (message: never) => void): unknown
  timeout(ms: number): { emitWithAck(event: string, ...messages: unknown[]): Promise<unknown> }
  connect(): unknown
  disconnect(): unknown
}

const REPLY_WITHIN_MS = 5_000

/** Our own server speaks the types of wire.ts; the version in the handshake guards it. */
export const createSocketTransport = (socket: SocketLike): Transport => ({
  listen: (handlers) => {
    const on = <Name extends keyof ServerMessages>(
      name: Name,
      listener: ServerMessages[Name],
    ): void => {
      socket.on(name, listener as (message: never) => void)
    }
    on('welcome', handlers.welcome)
    on('events', handlers.events)
    on('picture', handlers.picture)
    on('pulse', handlers.pulse)
    on('guests', handlers.guests)
    on('forecast', handlers.forecast)
    socket.on('disconnect', (reason: string) => {
      handlers.lost()
      // The one way of losing a connection after which socket.io doesn't try again by itself.
      if (reason === 'io server disconnect') socket.connect()
    })
    socket.on('connect_error', ({ message }: { message: ConnectRefusal }) =>
      socket.active ? handlers.lost() : handlers.lost(message),
    )
  },
  follow: async (message) =>
    (await socket.timeout(REPLY_WITHIN_MS).emitWithAck('follow', message)) as Followed,
  command: async (message: CommandMessage) =>
    (await socket.timeout(REPLY_WITHIN_MS).emitWithAck('command', message)) as Answer,
  again: () => {
    socket.connect()
  },
  close: () => {
    socket.disconnect()
  },
})
