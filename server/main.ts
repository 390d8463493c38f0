import { once } from 'node:events'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import pino, { type Logger } from 'pino'
import { houseWords as words } from '#lib/words/house/house-en.ts'
import { readAbout } from '#server/about.ts'
import { composeStation, type Station } from '#server/compose.ts'
import { type Config, readConfig } from '#server/config.ts'
import { createEnding, endOnFault, endWhenAsked } from '#server/ending.ts'
import { greeting } from '#server/greeting.ts'
import { lanAddresses } from '#server/http/addresses.ts'
import { createAnswer } from '#server/http/answer.ts'
import { openPages } from '#server/http/pages.ts'
import { root } from '#server/root.ts'
import { runningNote } from '#server/running-note.ts'
import { StoreProblem, storeProblemSentence } from '#server/store/store-problem.ts'

/** Ends a start that people can mend: a sentence on stderr, 1 to whoever asked. */
const giveUp = (...lines: readonly string[]): never => {
  for (const line of lines) console.error(line)
  process.exit(1)
}

const listenSentence = (problem: NodeJS.ErrnoException, { host, port }: Config): string => {
  if (problem.code === 'EADDRINUSE') return words.portTaken(port)
  if (problem.code === 'EACCES') return words.portForbidden(port)
  if (problem.code === 'EADDRNOTAVAIL' || problem.code === 'ENOTFOUND') {
    return words.hostNotHere(host)
  }
  return words.notListening(problem.message)
}

const compose = async (setup: Parameters<typeof composeStation>[0]): Promise<Station> => {
  try {
    return await composeStation(setup)
  } catch (problem) {
    if (problem instanceof StoreProblem) giveUp(storeProblemSentence(problem))
    throw problem
  }
}

const listen = async (
  httpServer: ReturnType<typeof createServer>,
  config: Config,
): Promise<NodeJS.ErrnoException | null> => {
  try {
    httpServer.listen({ port: config.port, host: config.host })
    await once(httpServer, 'listening')
    return null
  } catch (problem) {
    if (problem instanceof Error) return problem
    throw problem
  }
}

const serve = async (config: Config, log: Logger): Promise<void> => {
  let station: Station | null = null
  endOnFault(log, () => station)
  const httpServer = createServer()
  let port = config.port
  const { development } = config
  const pages = config.screens ? await openPages({ folder: root, development, port }) : null
  endOnFault(log, () => station)
  if (config.screens && pages === null) giveUp(words.screensMissing)
  const about = await readAbout(root)
  station = await compose({ config, httpServer, build: pages?.build ?? 'none', log })
  const answer = createAnswer({
    about,
    health: station.health,
    inCharge: station.inCharge,
    allergens: station.allergens,
    pages,
    extraHosts: config.extraHosts,
    development,
    port: () => port,
    log,
  })
  httpServer.on('request', (request, response) => void answer(request, response))
  const refused = await listen(httpServer, config)
  if (refused !== null) {
    await station.closeStores()
    giveUp(listenSentence(refused, config))
  }
  httpServer.on('error', (fault) => log.error({ err: fault }, 'the http server failed'))
  port = (httpServer.address() as AddressInfo).port
  const { dataFolder, host } = config
  const note = runningNote(dataFolder, { host, port })
  const closePages = async () => pages?.close()
  // Before the note: whoever reads it may send a signal at once.
  endWhenAsked(createEnding({ httpServer, station, closePages, forget: note.remove, log }))
  note.write()
  console.log(greeting({ version: about.version, dataFolder, host, port, lan: lanAddresses(port) }))
}

const read = readConfig(process.env, root)
if (!read.ok) giveUp(words.settingsWrong, ...read.problems)
else {
  const log = pino({ level: read.config.logLevel }, pino.destination({ dest: 2, sync: true }))
  await serve(read.config, log)
}
