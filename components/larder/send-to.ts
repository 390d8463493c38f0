/** One command to a service that the page doesn't follow: the connection is there for it alone. */
import { io } from 'socket.io-client'
import { untilAnswered } from '#components/larder/until-answered.ts'
import { type Answer, type Hello, PROTOCOL } from '#lib/protocol/wire.ts'
import type { Command } from '#lib/spine/registry.ts'
import { createSocketTransport } from '#lib/sync/socket-transport.ts'

const AGAIN_AFTER_MS = 400

/**
 * The server's answer; null where none came, and nobody knows whether it was done. Sent again under the
 * same id, it is done once.
 */
export const sendTo = async (
  service: string,
  id: string,
  command: Command,
): Promise<Answer | null> => {
  const page = new URLSearchParams(location.search)
  const station = page.get('station')
  const hello: Hello = {
    protocol: PROTOCOL,
    role: 'lead',
    ...(page.has('demo') && { house: 'demo' }),
    ...(station && { station }),
  }
  const socket = io({ auth: { ...hello }, transports: ['websocket'], timeout: 5_000 })
  const transport = createSocketTransport(socket)
  try {
    return await untilAnswered(
      () => transport.command({ protocol: PROTOCOL, id, service, command }),
      () => new Promise((go) => setTimeout(go, AGAIN_AFTER_MS)),
    )
  } finally {
    transport.close()
  }
}
