/** Days with a larder between them: a told clock, services by their id, and what is done at the shelves. */
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import { isRunning, type RunningState } from '#lib/service/state.ts'
import type { Command } from '#lib/spine/registry.ts'
import { larderScreen as words } from '#lib/words/larder/screen-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { root } from '#server/root.ts'
import type { connectCrew } from '#server/shell/crew-connection.ts'
import { type LaunchedServer, launchServer } from '#tests/support/launch-server.ts'
import { expect } from './station.ts'

type Crew = ReturnType<typeof connectCrew>
type Client = Crew['client']

/** A server whose clock begins there, and is ahead by each of `passes` in turn at SIGUSR2. */
export const launchTold = (
  beginsAt: number,
  passes: readonly number[],
  { data, port = 0 }: { readonly data: string; readonly port?: number },
): Promise<LaunchedServer> =>
  launchServer({
    data,
    port,
    nodeArguments: ['--import', join(root, 'tests/support/told-clock.mjs')],
    env: {
      LEVEL_SCOOP_TEST_BEGINS_AT: String(beginsAt),
      LEVEL_SCOOP_TEST_PASSES_MS: passes.join(','),
    },
  })

/** Lunch on a day, on the demo's line as an own one. */
export const planOn = (on: string): Command => ({
  type: 'plan',
  station: demoStation.id,
  kind: 'real',
  on,
  doorsOpen: '11:00',
  doorsClose: '13:00',
  bells: null,
  guests: { walkIn: 40, groups: [] },
  items: null,
  crew: [{ initials: 'KT', adult: true, from: '07:30', to: '20:00' }],
})

export const openState = (client: Client): RunningState => {
  const { state } = client.view()
  if (!isRunning(state)) throw new Error('no service is open')
  return state
}

/** Of the service that is open. */
export const does = async (client: Client, commands: readonly Command[]): Promise<void> => {
  for (const command of commands)
    expect(await client.send(command), JSON.stringify(command)).toMatchObject({
      answer: 'accepted',
    })
}

/** Of a service by its id, which no screen follows. */
export const gives = async (
  { socket }: Pick<Crew, 'socket'>,
  service: string,
  commands: readonly Command[],
): Promise<void> => {
  for (const command of commands) {
    const message = { protocol: PROTOCOL, id: `c-${service}-${command.type}`, service, command }
    expect(
      await socket.timeout(10_000).emitWithAck('command', message),
      JSON.stringify(command),
    ).toMatchObject({ answer: 'accepted' })
  }
}

export const shelfOf = (page: Page, name: string) => page.getByRole('region', { name })

export const lotJobs = (page: Page) => page.getByRole('region', { name: words.jobs })

/** A container is chosen on its shelf and read. */
export const readLot = async (page: Page, name: RegExp, degrees: string): Promise<void> => {
  await page.getByRole('button', { name }).click()
  const jobs = lotJobs(page)
  await jobs.getByLabel(words.initials).fill('KT')
  await jobs.getByLabel(words.degrees).fill(degrees)
  await jobs.getByLabel(words.probe).fill('probe 1')
  await jobs.getByRole('button', { name: words.read }).click()
  await expect(page.getByText(words.done)).toBeVisible()
}
