/** Services in the states that a screen must look right in, made of the same orders as at a counter. */
import { isDeepStrictEqual } from 'node:util'
import type { Need, NeedCode } from '#lib/needs/codes.ts'
import { type BuildChoice, isKeptApart } from '#lib/service/build-choice.ts'
import type { Command } from '#lib/service/decide.ts'
import { isRunning, type RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import { EMPTY_DRAFT, settle, type Wish } from '#lib/views/draft.ts'
import { offerFor } from '#lib/views/offer.ts'
import { backupsOf, demoStation, loadsOf } from '#server/demo-station.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'

/** A command, told from the service as it stands then. */
export type Step = (state: RunningState) => Command

interface Asked {
  readonly base?: string
  readonly wishes?: Readonly<Record<string, Wish>>
  readonly needs?: readonly Need[]
}

const NO: Wish = { placement: 'no', portions: 0 }
const WITH: Wish = { placement: 'in', portions: 1 }
const ON_THE_SIDE: Wish = { placement: 'side', portions: 1 }

const apart = (...codes: readonly NeedCode[]): readonly Need[] =>
  codes.map((code) => ({ code, handling: 'keep-apart', reason: null }))
const without = (...codes: readonly NeedCode[]): readonly Need[] =>
  codes.map((code) => ({ code, handling: 'leave-out', reason: null }))

/** What the counter would send for an item, as the pans and the guest's needs let it be made. */
const build =
  (item: string, { base, wishes = {}, needs = [] }: Asked = {}) =>
  (state: RunningState): BuildChoice => {
    const asked = needs.length > 0 ? 'needs' : 'none'
    const draft = { ...EMPTY_DRAFT, asked, needs, item, base: base ?? null, wishes } as const
    const settled = settle(offerFor(state, needs), draft)
    if (!settled || settled.blocked)
      throw new Error(`${item} can't be ordered: ${JSON.stringify(settled?.blocked)}`)
    return isKeptApart(settled.choice) ? { ...settled.choice, agreed: true } : settled.choice
  }

type Ordered = ReturnType<typeof build>

const send =
  (ordered: readonly Ordered[], more: { paid?: boolean; name?: string } = {}): Step =>
  (state) => ({
    type: 'send',
    readBack: true,
    builds: ordered.map((one) => one(state)),
    paid: more.paid ?? false,
    ...(more.name === undefined ? {} : { name: more.name }),
  })

type Stage = 'start' | 'finish' | 'handOver'
const STAGES: readonly Stage[] = ['start', 'finish', 'handOver']

/** Takes a build as far as `until`. */
const work = (ticket: number, letter: string, until: Stage): readonly Step[] =>
  STAGES.slice(0, STAGES.indexOf(until) + 1).map((type) => () => {
    const at = { ticket, letter }
    return type === 'start' ? { type, ...at, read: true } : { type, ...at }
  })

const portions = (pan: string, component: string, count: number): Step => {
  return (state) => ({
    type: 'correct',
    pan,
    amount: count * (state.portions[component]?.amount ?? Number.NaN),
  })
}

/** Told after sending, of the first build of a ticket. */
const tellNeed =
  (ticket: number, needs: readonly Need[]): Step =>
  () => ({ type: 'tellNeed', ticket, letter: 'A', asked: 'needs', needs })

const usualChicken = build('garden-chicken')
const usualBeans = build('bean-and-pepper')

/** No cheddar, the sauce on the side. */
const plainer = build('garden-chicken', {
  base: 'rice',
  wishes: { cheddar: NO, 'yogurt-sauce': ON_THE_SIDE },
})
const milkApart = build('bean-and-pepper', { needs: apart('milk') })

/** Everything that an item of the demo station can have at once. */
const fullest = build('garden-chicken', {
  base: 'rice',
  wishes: {
    peppers: { placement: 'side', portions: 2 },
    slaw: ON_THE_SIDE,
    cheddar: { placement: 'in', portions: 4 },
    almonds: ON_THE_SIDE,
    'yogurt-sauce': { placement: 'side', portions: 3 },
  },
})

const closeAndOpen = (kind: 'real'): readonly Step[] => [
  () => ({ type: 'close' }),
  (state) => ({ type: 'open', station: state.station.id, kind }),
]

/**
 * By name. A new server has a demo service open and its pans loaded: `quiet` leaves it so.
 * `rush` has builds in every state, one without cheddar and with the sauce on the side being made,
 * cheddar nearly gone and almonds sold out.
 */
export const scenes = {
  quiet: [],
  waiting: [send([usualChicken, usualBeans], { name: 'Robin' }), send([build('harbor-tuna')])],
  fullest: [send([fullest]), ...work(1, 'A', 'start')],
  reading: [send([milkApart]), send([usualChicken])],
  unread: [
    () => ({ type: 'notSameProduct', ingredient: 'pita' }),
    send([milkApart]),
    send([usualChicken]),
  ],
  apart: [
    send([
      build('bean-and-pepper', {
        needs: apart('milk', 'tree-nuts'),
        wishes: { slaw: { placement: 'side', portions: 2 } },
      }),
    ]),
    send([usualBeans]),
    ...work(1, 'A', 'start'),
  ],
  'all-apart': [
    send([
      build('bean-and-pepper', {
        needs: [...apart('milk', 'egg', 'fish', 'tree-nuts', 'wheat', 'peanut', 'sesame')],
      }),
    ]),
    ...work(1, 'A', 'start'),
  ],
  diet: [send([build('bean-and-pepper', { needs: without('vegan', 'sesame') })])],
  rush: [
    send([usualBeans, usualChicken], { paid: true }),
    ...work(1, 'A', 'handOver'),
    ...work(1, 'B', 'handOver'),
    send([usualChicken, usualBeans], { paid: true, name: 'Robin' }),
    ...work(2, 'A', 'finish'),
    ...work(2, 'B', 'finish'),
    send([milkApart]),
    ...work(3, 'A', 'finish'),
    portions('pan-cheddar', 'cheddar', 8),
    portions('pan-almonds', 'almonds', 0),
    send([plainer, build('harbor-tuna', { wishes: { peppers: WITH } })]),
    ...work(4, 'A', 'start'),
    send([build('bean-and-pepper', { needs: without('vegan') })], { paid: true }),
    send([build('garden-chicken', { needs: apart('milk') })]),
    send([usualChicken], { name: 'Alex' }),
  ],
  stopped: [
    send([usualChicken]),
    send([usualBeans]),
    ...work(1, 'A', 'start'),
    (state) => ({
      type: 'change',
      readBack: true,
      ticket: 1,
      letter: 'A',
      to: build('garden-chicken', {
        base: 'rice',
        wishes: { cheddar: NO, 'yogurt-sauce': NO, peppers: NO },
        needs: apart('peanut'),
      })(state),
    }),
  ],
  cancelled: [
    send([usualChicken]),
    ...work(1, 'A', 'start'),
    () => ({ type: 'cancel', ticket: 1, letter: 'A' }),
  ],
  'told-late': [
    send([usualChicken]),
    send([usualBeans]),
    ...work(1, 'A', 'start'),
    tellNeed(1, apart('milk', 'tree-nuts')),
  ],
  held: [
    send([usualChicken]),
    ...work(1, 'A', 'start'),
    tellNeed(1, apart('milk')),
    () => ({ type: 'acknowledge', ticket: 1, letter: 'A', foodInIt: true }),
  ],
  'to-find': [
    send([usualChicken]),
    send([usualBeans]),
    send([usualChicken]),
    send([plainer]),
    ...work(1, 'A', 'handOver'),
    ...work(2, 'A', 'finish'),
    ...work(3, 'A', 'finish'),
    ...work(4, 'A', 'finish'),
    tellNeed(1, apart('milk')),
    tellNeed(2, without('sesame')),
  ],
  soiled: [
    send([usualChicken]),
    ...work(1, 'A', 'start'),
    () => ({ type: 'soilPan', pan: 'pan-chicken', by: 'cheddar' }),
    () => ({ type: 'soilPan', pan: 'pan-rice', by: 'chicken' }),
  ],
  short: [
    send([usualChicken, usualChicken]),
    send([usualBeans]),
    portions('pan-chicken', 'chicken', 0),
  ],
  unloaded: closeAndOpen('real'),
  closed: [() => ({ type: 'close' })],
} as const satisfies Readonly<Record<string, readonly Step[]>>

export type Scene = keyof typeof scenes

type Lead = ReturnType<typeof connectCrew>['client']

const stateOf = (lead: Lead): RunningState => {
  const { state } = lead.view()
  if (!isRunning(state)) throw new Error('no service runs')
  return state
}

/** @throws where it isn't accepted */
const give = async (
  lead: Lead,
  command: Command,
  proof?: { readonly passphrase: string },
): Promise<void> => {
  const before = lead.view().service
  const answer = await lead.send(command, undefined, proof)
  if (answer.answer !== 'accepted')
    throw new Error(`${JSON.stringify(command)} got ${JSON.stringify(answer)}`)
  await whenView(lead, ({ position, service, state }) =>
    command.type === 'open'
      ? service !== before && isRunning(state) && state.service === service
      : position >= answer.position,
  )
}

const isUntouched = (state: RunningState): boolean =>
  state.stage === 'open' &&
  state.nextTicket === 1 &&
  state.kind === 'demo' &&
  Object.values(state.pans).every(({ load, amount, full }) => load === 1 && amount === full)

/** A new demo service with loaded pans, whatever stood before it. */
const startOver = async (lead: Lead): Promise<void> => {
  if (isUntouched(stateOf(lead))) return
  while (stateOf(lead).stage === 'open') {
    const [first] = openBuilds(stateOf(lead))
    if (!first) {
      // Told, and the food left with the guest: nothing opens again.
      for (const { ticket, letter } of Object.values(stateOf(lead).toFind))
        await give(lead, { type: 'acknowledge', ticket, letter, foodInIt: false })
      await give(lead, { type: 'close' })
      break
    }
    const at = { ticket: first.ticket.number, letter: first.build.letter }
    if (first.build.state === 'making' && first.build.stop)
      await give(lead, { type: 'acknowledge', ...at, foodInIt: false })
    else await give(lead, { type: 'cancel', ...at })
  }
  const { station } = stateOf(lead)
  await give(lead, { type: 'open', station: station.id, kind: 'demo' })
  for (const step of [...loadsOf(station), ...backupsOf(station)]) await give(lead, step)
}

/** Labels outlive a service: what an earlier scene or story changed is read again as the demo has it. */
const labelsAsInvented = ({ station }: RunningState): readonly Command[] =>
  demoStation.ingredients.flatMap(({ id: ingredient, name: _, ...label }): Command[] => {
    const now = station.ingredients.find(({ id }) => id === ingredient)
    return isDeepStrictEqual(now, { id: ingredient, name: _, ...label })
      ? []
      : [{ type: 'changeLabel', ingredient, label, product: 'same' }]
  })

/** The person in charge's on every server that scenes are played on. */
export const PASSPHRASE = 'kettle lantern orchard'

/**
 * Signs the person in charge on, who sets the passphrase first where none is.
 * @throws where the server has another one
 */
export const signOn = async (url: string): Promise<void> => {
  const { set } = (await (await fetch(`${url}/in-charge`)).json()) as { set: boolean }
  if (!set)
    await fetch(`${url}/in-charge/passphrase`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ passphrase: PASSPHRASE }),
    })
  const { client, close } = connectCrew(url, 'in-charge')
  try {
    await whenView(client, ({ state, link }) => link === 'live' && isRunning(state))
    if (stateOf(client).inCharge === null)
      await give(client, { type: 'signOn' }, { passphrase: PASSPHRASE })
    for (const command of labelsAsInvented(stateOf(client)))
      await give(client, command, { passphrase: PASSPHRASE })
  } finally {
    close()
  }
}

/**
 * Plays a scene on a running server as its lead, in a service of its own.
 * @throws where a command isn't accepted
 */
export const playScene = async (url: string, scene: Scene): Promise<void> => {
  const { client, close } = connectCrew(url, 'lead')
  try {
    await whenView(client, ({ state, link }) => link === 'live' && isRunning(state))
    await startOver(client)
    await signOn(url)
    await whenView(client, ({ state }) => state.inCharge !== null)
    for (const step of scenes[scene]) await give(client, step(stateOf(client)))
  } finally {
    close()
  }
}
