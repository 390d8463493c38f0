import { setTimeout as pause } from 'node:timers/promises'
import { io, type Socket } from 'socket.io-client'
import { type Answer, PROTOCOL } from '#lib/protocol/wire.ts'
import type { Role } from '#lib/service/roles.ts'
import type { Command } from '#lib/spine/registry.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'

const BUSY_MS = 250

/** A command as it was sent, so that it can be sent again to the letter. */
export interface Given {
  readonly id: string
  readonly service: string
  readonly command: Command
}

export interface PlainClient {
  readonly socket: Socket
  /** Sends with no second try of its own, except where the server is busy; null: no answer came. */
  give(given: Given): Promise<Answer | null>
  close(): void
}

/** The barest client that speaks the protocol: it keeps nothing and repeats nothing. */
export const connectPlain = async (
  url: string,
  role: Role,
  station?: string,
): Promise<PlainClient> => {
  const token = await scriptsToken(url)
  const socket = io(url, {
    auth: {
      protocol: PROTOCOL,
      role,
      ...(token ? { token } : {}),
      ...(station === undefined ? {} : { station }),
    },
    transports: ['websocket'],
    forceNew: true,
    reconnection: false,
  })
  await new Promise<void>((settle, fail) => {
    socket.once('welcome', () => settle())
    socket.once('connect_error', fail)
  })
  const once = (given: Given): Promise<Answer | null> =>
    socket
      .timeout(30_000)
      .emitWithAck('command', { protocol: PROTOCOL, ...given })
      .then(
        (answer: Answer) => answer,
        () => null,
      )
  return {
    socket,
    give: async (given) => {
      let answer = await once(given)
      while (answer?.answer === 'not taken' && answer.because.code === 'busy') {
        await pause(BUSY_MS)
        answer = await once(given)
      }
      return answer
    },
    close: () => {
      socket.disconnect()
    },
  }
}
