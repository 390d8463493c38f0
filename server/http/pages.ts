import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from 'node:url'
import type { Pages } from '#server/http/answer.ts'
import { readPageHashes } from '#server/http/security-headers.ts'

export interface OpenPages extends Pages {
  /** Identity of the build, as the pages carry it. */
  readonly build: string
  close(): Promise<void>
}

/**
 * Next, prepared. Loaded only when screens are wanted: it takes most of the start.
 * @returns null where the screens were never built
 * @throws what Next throws when it can't prepare
 */
export const openPages = async (setup: {
  readonly folder: string
  readonly development: boolean
  readonly port: number
}): Promise<OpenPages | null> => {
  const built = join(setup.folder, '.next')
  const build = setup.development ? 'development' : readBuild(built)
  if (build === null) return null
  const { default: next } = await import('next')
  const app = next({
    dev: setup.development,
    dir: setup.folder,
    hostname: 'station.test',
    port: setup.port,
    quiet: !setup.development,
  })
  await app.prepare()
  const handle = app.getRequestHandler()
  return {
    build,
    hashes: setup.development ? new Map() : readPageHashes(built),
    answer: (request, response) => handle(request, response, parse(request.url ?? '/', true)),
    close: () => app.close(),
  }
}

const readBuild = (built: string): string | null => {
  try {
    return readFileSync(join(built, 'BUILD_ID'), 'utf8').trim()
  } catch {
    return null
  }
}
