import { once } from 'node:events'
import { createServer, type Server } from 'node:http'
import { createServer as createSecureServer } from 'node:https'
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
import { type Certificate, readCertificate } from '#server/http/certificate.ts'
import { createEdge } from '#server/http/edge.ts'
import { listenerOptions, openFront } from '#server/http/front.ts'
import { WITHIN_MS } from '#server/http/limits.ts'
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

/** The user's own certificate, null where none is set; a start that people can mend ends here. */
const openCertificate = ({ certificate: files }: Config): Certificate | null => {
  if (files === null) return null
  const read = readCertificate(files, Date.now())
  return read.ok ? read.certificate : giveUp(read.problem)
}

const createListener = (certificate: Certificate | null): Server =>
  certificate === null
    ? createServer(listenerOptions)
    : createSecureServer({
        ...listenerOptions,
        cert: certificate.cert,
        key: certificate.key,
        minVersion: 'TLSv1.2',
        handshakeTimeout: WITHIN_MS.tls,
      })

const listen = async (
  httpServer: Server,
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
  const certificate = openCertificate(config)
  const secure = certificate !== null
  const httpServer = createListener(certificate)
  const edge = createEdge({ secure, extraHosts: config.extraHosts })
  let port = config.port
  const { development } = config
  const pages = config.screens ? await openPages({ folder: root, development, port }) : null
  endOnFault(log, () => station)
  if (config.screens && pages === null) giveUp(words.screensMissing)
  const about = await readAbout(root)
  station = await compose({ config, httpServer, edge, build: pages?.build ?? 'none', log })
  const answer = createAnswer({
    about,
    health: station.health,
    access: station.access,
    keeping: station.keeping,
    setDemoOpen: station.setDemoOpen,
    allergens: station.allergens,
    routes: station.routes,
    pages,
    edge,
    development,
    port: () => port,
    log,
  })
  openFront({ httpServer, edge, answer, more: development, log })
  const refused = await listen(httpServer, config)
  if (refused !== null) {
    await station.closeStores()
    giveUp(listenSentence(refused, config))
  }
  httpServer.on('error', (fault) => log.error({ err: fault }, 'the http server failed'))
  port = (httpServer.address() as AddressInfo).port
  const { dataFolder, host } = config
  const note = runningNote(dataFolder, { host, port, secure })
  const closePages = async () => pages?.close()
  // Before the note: whoever reads it may send a signal at once.
  endWhenAsked(createEnding({ httpServer, station, closePages, forget: note.remove, log }))
  note.write()
  const lan = lanAddresses(port, secure)
  const secret = station.access.secret()
  console.log(greeting({ version: about.version, dataFolder, host, port, secure, lan, secret }))
  for (const warning of certificate?.warnings ?? []) console.error(warning)
}

const read = readConfig(process.env, root)
if (!read.ok) giveUp(words.settingsWrong, ...read.problems)
else {
  const log = pino({ level: read.config.logLevel }, pino.destination({ dest: 2, sync: true }))
  await serve(read.config, log)
}
