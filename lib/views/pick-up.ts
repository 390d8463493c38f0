import { isRunning, type ServiceState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'

export interface PickUpBuild {
  /** "21A": nothing that tells who or what it is for. */
  readonly name: string
  readonly state: 'waiting' | 'making' | 'made'
  /** When it reached that state, epoch milliseconds. */
  readonly since: number
}

/** All that the pick-up screen is ever told: numbers and states, no items, needs or names. */
export interface PickUpPicture {
  readonly open: boolean
  readonly station: string
  /** How many pans stand in each well, left to right: the line, drawn bare. */
  readonly wells: readonly number[]
  readonly builds: readonly PickUpBuild[]
}

export const pickUpPicture = (state: ServiceState): PickUpPicture => ({
  open: state.stage === 'open',
  station: isRunning(state) ? state.station.name : '',
  wells: isRunning(state) ? state.station.line.wells.map((well) => well.pans.length) : [],
  builds: openBuilds(state).flatMap(({ ticket, build }) =>
    build.state === 'waiting' || build.state === 'making' || build.state === 'made'
      ? [
          {
            name: buildName(ticket.number, build.letter),
            state: build.state,
            since: build.since,
          },
        ]
      : [],
  ),
})
