import {
  type BrowserContext,
  type BrowserContextOptions,
  test as base,
  type ConsoleMessage,
  expect,
  type Page,
} from '@playwright/test'
import { cookieName } from '#server/access/caller.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'
import { type LaunchedServer, launchServer, temporaryFolder } from '#tests/support/launch-server.ts'
import { makeHouse } from '#tests/support/make-house.ts'

/** Words of the console that a test expects, such as those of a connection that it cuts. */
export type ExpectedConsole = (...patterns: readonly RegExp[]) => void

interface OfTest {
  /** Whether pages are a lead's device, as whoever owns the data folder; else they walk the demo. */
  readonly proved: boolean
  /**
   * Opens a page in a browser context of its own: a path of the worker's server, or a whole address
   * of another one. `options` say which device it is.
   */
  readonly open: (
    path: string,
    options?: BrowserContextOptions,
    isProved?: boolean,
  ) => Promise<Page>
  /**
   * Ends a server of the test's own, its pages first: one that is still open would ask in vain, and
   * say so. It must end in order, with nothing on stderr.
   */
  readonly endServer: (server: LaunchedServer) => Promise<void>
  readonly expectConsole: ExpectedConsole
}

interface OfPages {
  readonly consoleProblems: string[]
  /** Whatever the test opened. */
  readonly opened: Page[]
}

interface OfWorker {
  /**
   * Whose server a worker opens. Who makes a house or publishes gives it a name of its own: the next
   * story of the worker would otherwise find no demo, or a house with somebody else's station.
   */
  readonly houseOf: string
  readonly server: LaunchedServer
}

/** The only name under which pages are opened here. */
const OWN_NAME = 'station.test'

/** Whether a page asks somebody else than the station for something. */
const isElsewhere = (address: string): boolean => {
  const { protocol, hostname } = new URL(address)
  const isNone = ['data:', 'blob:', 'about:'].includes(protocol)
  return !isNone && hostname !== OWN_NAME
}

/**
 * Adds to `problems` what a page's console complains of, and what it asks of another host, until
 * the answer is called.
 */
export const watch = (page: Page, problems: string[]): (() => void) => {
  const onAddress = (address: { url(): string }): void => {
    if (isElsewhere(address.url())) problems.push(`another host was asked: ${address.url()}`)
  }
  const onConsole = (message: ConsoleMessage): void => {
    if (message.type() === 'error' || message.type() === 'warning')
      problems.push(`${page.url()}: ${message.text()}`)
  }
  const onError = (error: Error): void => {
    problems.push(`${page.url()}: ${error.message}`)
  }
  page.on('request', onAddress)
  page.on('websocket', onAddress)
  page.on('console', onConsole)
  page.on('pageerror', onError)
  return () => {
    page.off('request', onAddress)
    page.off('websocket', onAddress)
    page.off('console', onConsole)
    page.off('pageerror', onError)
  }
}

/**
 * Makes the house of a page's server, and makes whatever a context opens there a lead's device.
 * @param url of the server, or of a page of it
 */
export const joinContext = async (context: BrowserContext, url: string): Promise<void> => {
  const { port, origin } = new URL(url)
  const server = `http://127.0.0.1:${port}`
  await makeHouse(server)
  const token = (await scriptsToken(server)) ?? ''
  const [house = ''] = token.split('.')
  await context.addCookies([
    // Of all its pages: a browser gives a cookie the folder of its address.
    { name: cookieName(house), value: token, url: origin, httpOnly: true, sameSite: 'Strict' },
  ])
}

const endInOrder = async (server: LaunchedServer): Promise<void> => {
  const { code, stderr } = await server.stop()
  expect(stderr, 'what the server said on stderr').toBe('')
  expect(code, 'how the server ended').toBe(0)
}

/**
 * One server a worker, on a port and a data folder of its own; pages on http://station.test, which
 * fail the test by anything on their console that wasn't expected.
 */
export const test = base.extend<OfTest & OfPages, OfWorker>({
  proved: [false, { option: true }],
  houseOf: ['nobody', { option: true, scope: 'worker' }],
  server: [
    async ({ browserName: _, houseOf: __ }, use) => {
      const server = await launchServer({ data: temporaryFolder(true) })
      await use(server)
      await endInOrder(server)
    },
    { scope: 'worker', timeout: 300_000 },
  ],
  consoleProblems: async ({ browserName: _ }, use) => {
    await use([])
  },
  expectConsole: async ({ consoleProblems }, use) => {
    const expected: RegExp[] = []
    await use((...patterns) => expected.push(...patterns))
    const unexpected = consoleProblems.filter(
      (problem) => !expected.some((pattern) => pattern.test(problem)),
    )
    expect(unexpected, 'what the console said').toEqual([])
  },
  opened: async ({ browserName: _ }, use) => {
    await use([])
  },
  endServer: async ({ opened }, use) => {
    await use(async (server) => {
      const { origin } = new URL(server.pageUrl)
      for (const page of opened)
        if (!page.isClosed() && new URL(page.url()).origin === origin) await page.context().close()
      await endInOrder(server)
    })
  },
  baseURL: async ({ server }, use) => {
    await use(server.pageUrl)
  },
  page: async ({ page, consoleProblems, expectConsole: _ }, use) => {
    watch(page, consoleProblems)
    await use(page)
  },
  open: async (
    { browser, server, proved, consoleProblems, opened, expectConsole: _ },
    use,
    info,
  ) => {
    const { viewport, hasTouch } = info.project.use
    await use(async (path, options = {}, isProved = proved) => {
      const context = await browser.newContext({
        baseURL: new URL(path, server.pageUrl).origin,
        ...(viewport === undefined ? {} : { viewport }),
        ...(hasTouch === undefined ? {} : { hasTouch }),
        ...options,
      })
      if (isProved) await joinContext(context, new URL(path, server.pageUrl).href)
      const page = await context.newPage()
      watch(page, consoleProblems)
      await page.goto(path)
      opened.push(page)
      return page
    })
    for (const page of opened) await page.context().close()
  },
})

export { expect }

/** Waits until React took the page over: its own keys are on the elements then. */
export const untilHydrated = async (page: Page): Promise<void> => {
  await page.waitForFunction(() => {
    const main = document.querySelector('main')
    return main !== null && Object.keys(main).some((key) => key.startsWith('__reactFiber'))
  })
}
