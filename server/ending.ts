import type { Server } from 'node:http'
import type { Logger } from 'pino'
import { houseWords as words } from '#lib/words/house/house-en.ts'
import type { Station } from '#server/compose.ts'

const HARD_STOP_MS = 5_000

/**
 * A fault nobody caught: nothing more is acknowledged, the process ends with 1, and the next start
 * replays the log. Called again after Next prepared, whose own handler only logs and goes on.
 */
export const endOnFault = (log: Logger, station: () => Station | null): void => {
  for (const event of ['uncaughtException', 'unhandledRejection'] as const) {
    process.removeAllListeners(event)
    process.on(event, (fault: unknown) => {
      station()?.stopTaking()
      log.fatal({ err: fault }, event)
      console.error(words.failed)
      process.exit(1)
    })
  }
}

/**
 * Ends in the order that loses nothing: no new connection, no new command, the batch committed and
 * answered, sockets closed, screens closed, stores checkpointed and closed. Cut short at 5 s.
 */
export const createEnding = (parts: {
  readonly httpServer: Server
  readonly station: Station
  readonly closePages: () => Promise<void>
  /** Takes away what tells others that this server runs. */
  readonly forget: () => void
  readonly log: Logger
}): (() => Promise<void>) => {
  let ending: Promise<void> | null = null
  const end = async (): Promise<void> => {
    console.log(words.stopping)
    const cut = setTimeout(() => {
      console.error(words.stoppedHard)
      process.exit(1)
    }, HARD_STOP_MS)
    const { httpServer, station } = parts
    httpServer.close()
    httpServer.closeIdleConnections()
    station.stopTaking()
    await station.finish()
    await station.closeSockets()
    httpServer.closeAllConnections()
    await parts.closePages()
    await station.closeStores()
    parts.forget()
    clearTimeout(cut)
    console.log(words.stopped)
    process.exit(0)
  }
  return () => {
    ending ??= end().catch((fault: unknown) => {
      parts.log.fatal({ err: fault }, 'the end failed')
      console.error(words.failed)
      process.exit(1)
    })
    return ending
  }
}

/** Calls `end` at the signals that ask for it. */
export const endWhenAsked = (end: () => Promise<void>): void => {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.on(signal, () => void end())
  }
}
