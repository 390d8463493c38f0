/** Requests as no client library would write them. */
import { connect } from 'node:net'

export interface RawAnswer {
  /** 0 where the connection ended without one. */
  readonly status: number
  readonly text: string
  /** How the server says that it may be sent. */
  readonly continued: boolean
}

/**
 * Writes to a port of this machine, and reads until the server ends the connection or is quiet.
 * @param later written so many milliseconds apart, as a slow sender does
 */
export const rawHttp = (
  port: number,
  text: string,
  {
    later = [],
    everyMs = 0,
    quietMs = 400,
  }: { later?: readonly string[]; everyMs?: number; quietMs?: number } = {},
): Promise<RawAnswer> =>
  new Promise((settle) => {
    const socket = connect({ port, host: '127.0.0.1' })
    let heard = ''
    let quiet: NodeJS.Timeout | undefined
    const rest = [...later]
    const sending = setInterval(() => {
      const part = rest.shift()
      if (part === undefined) clearInterval(sending)
      else socket.write(part)
    }, everyMs || 1)
    const end = (): void => {
      clearTimeout(quiet)
      clearInterval(sending)
      socket.destroy()
      const last = heard.replace(/^HTTP\/1\.1 100 Continue\r\n\r\n/, '')
      settle({
        status: Number(/^HTTP\/1\.1 (\d{3})/.exec(last)?.[1] ?? 0),
        text: heard,
        continued: heard !== last,
      })
    }
    socket.on('data', (part) => {
      heard += part.toString('latin1')
      clearTimeout(quiet)
      quiet = setTimeout(end, quietMs)
    })
    socket.on('error', end)
    socket.on('close', end)
    socket.write(text)
  })
