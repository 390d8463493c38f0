import { isRunning, type ServiceState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'

export interface PickUpBuild {
  /** "21A": nothing that tells who or what it is for. `called`: its guest is asked to the counter. */
  readonly name: string
  readonly state: 'waiting' | 'making' | 'made' | 'called'
  /** When it reached that state, epoch milliseconds. */
  readonly since: number
}

/** All that the pick-up screen is ever told: numbers and states, no items, needs or names. */
export interface PickUpPicture {
  readonly open: boolean
  readonly station: string
  /** Of no real guests; left away where they are. */
  readonly demo?: true
  /** How many pans stand in each well, left to right: the line, drawn bare. */
  readonly wells: readonly number[]
  readonly builds: readonly PickUpBuild[]
}

export const pickUpPicture = (state: ServiceState): PickUpPicture => ({
  open: state.stage === 'open',
  station: isRunning(state) ? state.station.name : '',
  ...(isRunning(state) && state.kind === 'demo' ? { demo: true as const } : {}),
  wells: isRunning(state) ? state.station.line.wells.map((well) => well.pans.length) : [],
  builds: openBuilds(state).flatMap(({ ticket, build }): PickUpBuild[] => {
    const { letter, state: stands, since, hold } = build
    const name = buildName(ticket.number, letter)
    if (stands !== 'waiting' && stands !== 'making' && stands !== 'made') return []
    // What is held isn't given out: its guest is asked, at the counter, and nobody else is told why.
    return hold ? [{ name, state: 'called', since: hold.at }] : [{ name, state: stands, since }]
  }),
})
