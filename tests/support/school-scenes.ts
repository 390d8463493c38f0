/** A school's line in the states of its day before: what is planned, taken, done and late. */
import { join } from 'node:path'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import { crewOf } from '#lib/rooms/prep/views/crew-entry.ts'
import type { Command } from '#lib/spine/registry.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { root } from '#server/root.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { type LaunchedServer, launchServer, temporaryFolder } from '#tests/support/launch-server.ts'
import { makeHouse } from '#tests/support/make-house.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { SCHOOL } from '#tests/support/school-line.ts'
import { ofPortions } from '#tests/support/service.ts'

const MINUTE = 60_000
const at = (clock: string): number => Date.parse(`${clock}-06:00`)

/** The service that the scenes plan. */
export const FRIDAY = 's-friday'

const planned = (more: Partial<Extract<Command, { type: 'plan' }>> = {}): Command => ({
  type: 'plan',
  station: SCHOOL.id,
  kind: 'real',
  on: '2026-12-04',
  doorsOpen: '11:20',
  doorsClose: '12:20',
  bells: 'usual',
  guests: { walkIn: 34, groups: [{ label: 'Grade 9', guests: 12, at: '11:40' }] },
  items: null,
  crew: ['2026-12-03', '2026-12-04'].flatMap((on) => crewOf(SCHOOL, 'usual', on)),
  ...more,
})

/** As an adult and a student stay on Thursday, so that what is cooked then is read as it cools. */
const STAYING = [
  { initials: 'KT', adult: true, on: '2026-12-03', from: '12:20', to: '20:30' },
  { initials: 'AB', adult: false, on: '2026-12-03', from: '12:20', to: '14:00' },
]

const LOADS: Readonly<Record<string, number>> = { pita: 3, slaw: 2, peppers: 2 }

const loads = (more: Readonly<Record<string, object>> = {}): Command => ({
  type: 'planPrep',
  ownTable: false,
  foods: SCHOOL.components.map(({ id, remake }) => {
    const count = LOADS[id] ?? 1
    const each = remake?.portionsPerLoad ?? 24
    return { component: id, loads: count, portions: count * each, ...more[id] }
  }),
})

interface SchoolScene {
  /** Published beside the school's line. */
  readonly more?: readonly StationDocument[]
  /** Epoch milliseconds. */
  readonly begins: number
  readonly steps: readonly Command[]
  /** So much time passes, and these follow. */
  readonly passesMs?: number
  readonly after?: readonly Command[]
}

/** Thursday and Friday, half past seven in the morning. */
const THURSDAY = at('2026-12-03T07:30:00')
const MORNING = at('2026-12-04T07:30:00')

const READ = { scale: 'F', probe: 'probe 1', where: 'middle-stirred' } as const

const COOLING = {
  begins: at('2026-12-03T12:25:00'),
  steps: [
    planned({
      crew: [...STAYING, ...crewOf(SCHOOL, 'usual', '2026-12-04')],
    }),
    loads({ beans: { ahead: true } }),
  ],
  passesMs: 60 * MINUTE,
  after: [
    { type: 'startBatch', batch: 'b1', component: 'beans', loads: 1 },
    {
      type: 'recordCooking',
      batch: 'b1',
      reading: { ...READ, tenths: 1710 },
      initials: 'KT',
    },
  ],
} as const satisfies SchoolScene

const schoolScenes = {
  'school, nothing planned': { begins: THURSDAY, steps: [] },
  'school, two stations': {
    begins: THURSDAY,
    more: [{ ...SCHOOL, id: 'soup-line', name: 'Soup line' }],
    steps: [planned()],
  },
  'school, never opened': { begins: THURSDAY, steps: [planned()], passesMs: 30 * 60 * MINUTE },
  'school, planned': { begins: THURSDAY, steps: [planned()] },
  'school, taken': { begins: THURSDAY, steps: [planned(), loads()] },
  'school, at work': {
    begins: MORNING,
    steps: [planned(), loads()],
    passesMs: 82 * MINUTE,
    after: [
      { type: 'tickTask', task: 'make.tuna', initials: 'AB' },
      { type: 'passTask', task: 'make.slaw', far: 2, where: 'table', initials: 'CD' },
    ],
  },
  'school, late': { begins: MORNING, steps: [planned(), loads()], passesMs: 217 * MINUTE },
  'school, cooling': COOLING,
  'school, to cool': {
    ...COOLING,
    after: [
      ...COOLING.after,
      { type: 'finishBatch', batch: 'b1', amount: ofPortions('beans', 12), loads: 1 },
    ],
  },
} as const satisfies Readonly<Record<string, SchoolScene>>

export type SchoolSceneName = keyof typeof schoolScenes

export const isOfSchool = (scene: string): scene is SchoolSceneName => scene in schoolScenes

/**
 * A server of its own on which the scene stands, with its person in charge signed on nowhere.
 * @throws where a command isn't accepted
 */
export const schoolServer = async (name: SchoolSceneName): Promise<LaunchedServer> => {
  const { begins, steps, more = [], passesMs = 0, after = [] }: SchoolScene = schoolScenes[name]
  const data = temporaryFolder(true)
  await publishIn(data, SCHOOL, ...more)
  const server = await launchServer({
    data,
    nodeArguments: ['--import', join(root, 'tests/support/told-clock.mjs')],
    env: {
      LEVEL_SCOOP_TEST_BEGINS_AT: String(begins),
      LEVEL_SCOOP_TEST_PASSES_MS: String(passesMs),
    },
  })
  await makeHouse(server.url)
  const { client, socket, close } = connectCrew(server.url, 'lead')
  const give = async (commands: readonly Command[]): Promise<void> => {
    for (const [index, command] of commands.entries()) {
      const id = `${name} ${index} ${command.type}`.replaceAll(/[ ,]+/g, '-')
      const message = { protocol: PROTOCOL, id, service: FRIDAY, command }
      const answer: { readonly answer: string } = await socket
        .timeout(10_000)
        .emitWithAck('command', message)
      if (answer.answer !== 'accepted')
        throw new Error(`${JSON.stringify(command)} got ${JSON.stringify(answer)}`)
    }
  }
  try {
    await whenView(client, ({ link }) => link === 'live')
    await give(steps)
    if (passesMs > 0) {
      const was = client.view().serverOffset
      server.signal('SIGUSR2')
      await whenView(client, ({ serverOffset }) => serverOffset > was + MINUTE / 2)
    }
    await give(after)
    return server
  } finally {
    close()
  }
}
