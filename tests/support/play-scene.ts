/** Plays a scene on a running server as its lead, whatever service stood there before. */

import { isDeepStrictEqual } from 'node:util'
import { isRunning, type RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import type { Command } from '#lib/spine/registry.ts'
import { labelOf, withoutReaders } from '#lib/station/label.ts'
import { demoStation } from '#server/demo-station.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { makeHouse, PASSPHRASE } from '#tests/support/make-house.ts'
import { type Scene, scenes } from '#tests/support/scenes.ts'

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
  Object.keys(state.batches).every((id) => id.startsWith('opening-')) &&
  [state.keeps, state.standIns, state.toThrowOut].every((all) => Object.keys(all).length === 0) &&
  Object.values(state.pans).every(({ load, amount, full }) => load === 1 && amount === full)

/** Nothing is closed before what is off sale or has to be thrown out is initialed. */
const throwOutAll = async (lead: Lead): Promise<void> => {
  const { toThrowOut, pans, backupPans, batches } = stateOf(lead)
  const off = (what: 'pan' | 'backup' | 'batch', all: Readonly<Record<string, Off>>) =>
    Object.entries(all)
      .filter(([, { offSale }]) => offSale !== null)
      .map(([id]) => ({ what, id }))
  for (const { what, id } of [
    ...Object.values(toThrowOut),
    ...off('pan', pans),
    ...off('backup', backupPans),
    ...off('batch', batches),
  ])
    await give(lead, { type: 'throwOut', what, id, reason: 'other', initials: 'AB' })
  for (const [id, { cooling, thrownOutAt }] of Object.entries(batches))
    if (cooling.length > 0 && thrownOutAt === null)
      await give(lead, { type: 'throwOut', what: 'batch', id, reason: 'other', initials: 'AB' })
}

/** Nothing is closed before somebody answered for what was handed over with food that was found bad. */
const answerAll = async (lead: Lead, url: string): Promise<void> => {
  const lists = Object.values(stateOf(lead).toTell)
  if (lists.length > 0) await makeHouse(url)
  for (const { what, id, builds } of lists)
    await give(
      lead,
      { type: 'answerHandedOver', what, id, answer: 'told', seen: builds.length, initials: 'AB' },
      { passphrase: PASSPHRASE },
    )
}

interface Off {
  readonly offSale: unknown
}

/** A new demo service with loaded pans, whatever stood before it. */
const startOver = async (lead: Lead, url: string): Promise<void> => {
  if (isUntouched(stateOf(lead))) return
  while (stateOf(lead).stage === 'open') {
    const [first] = openBuilds(stateOf(lead))
    if (!first) {
      // Told, and the food left with the guest: nothing opens again.
      for (const { ticket, letter } of Object.values(stateOf(lead).toFind))
        await give(lead, { type: 'acknowledge', ticket, letter, foodInIt: false })
      await throwOutAll(lead)
      await answerAll(lead, url)
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
  const { serverOffset } = lead.view()
  // Sent at once, so that they are decided one after the other and committed together.
  const now = Math.floor(performance.now() + serverOffset) - 1_000
  await Promise.all(
    openingCommands(station, now, { isDated: true }).map((step) => give(lead, step)),
  )
}

/** Labels outlive a service: what an earlier scene or story changed is read again as the demo has it. */
const labelsAsInvented = ({ station }: RunningState): readonly Command[] =>
  withoutReaders(demoStation).ingredients.flatMap((one): Command[] => {
    const now = station.ingredients.find(({ id }) => id === one.id)
    return isDeepStrictEqual(now, one)
      ? []
      : [{ type: 'changeLabel', ingredient: one.id, label: labelOf(one), product: 'same' }]
  })

/**
 * Signs the person in charge on, where nobody is yet in a house that is made first.
 * @throws where its person in charge has another passphrase
 */
export const signOn = async (url: string): Promise<void> => {
  await makeHouse(url)
  const { client, close } = connectCrew(url, 'lead')
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
    await startOver(client, url)
    await signOn(url)
    await whenView(client, ({ state }) => state.inCharge !== null)
    for (const step of scenes[scene]) await give(client, step(stateOf(client)))
  } finally {
    close()
  }
}
